// Package keys holds every key of the screens in one place. A screen shows the help of those that work on
// it, taken from here, so that neither the line at the foot nor the page of keys can go out of step with
// what the keys do.
package keys

import (
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// Map holds every key of the program.
type Map struct {
	// At the mill.
	Laid, Undo, Redo, Pause, Recount, Note, Far, Help, Settings, Leave, Home key.Binding
	Broken, Knot, Package, WrongTurn, Righted, Missed, WrongPeg              key.Binding
	Tie, NoTie, Withdraw, Foot                                               key.Binding
	Yes, Other, Later                                                        key.Binding
	Retry, Beside, Refresh, Reopen                                           key.Binding
	// In a page that asks for a text.
	Keep, NextAnswer, PrevAnswer, Back key.Binding
	// On the settings page.
	Add, Confirm, Forget, NextSound, PrevSound, Sound key.Binding
	// At home.
	Away, Delete, BringBack, Shelves, Rename, Edit                  key.Binding
	Up, Down, First, Last, Filter, Open, New, Copy, Practice, Alone key.Binding
	// On the form.
	Left, Right, NextField, PrevField, NextPage, PrevPage, Begin, Choice, How, Rest, AtHand key.Binding
	NewLine, Take                                                                           key.Binding
	// Where a draft is chosen.
	Draft, Complete, NextFile, PrevFile key.Binding
	// Where a plan starts from what is known, at home and on the form, and where two warps are seen together.
	Known, FormKnown, Together key.Binding
	// AllKeys shows the list of keys where no letter is text, AllKeysTyping where letters are.
	AllKeys, AllKeysTyping key.Binding
	// On every page.
	Stop, Suspend, AnyBack key.Binding
}

// Bind makes a binding: its label and its meaning in the help, and the keys as the terminal names them.
func Bind(label, what string, names ...string) key.Binding {
	return key.NewBinding(key.WithKeys(names...), key.WithHelp(label, what))
}

// letter is a key that means the same with Caps Lock on.
func letter(l, what string, more ...string) key.Binding {
	return Bind(l, what, append([]string{l, strings.ToUpper(l)}, more...)...)
}

// forward are the keys that all mean "this pass is laid": a presenter's clicker or a foot pedal sends one
// of them as it comes out of the box.
var forward = []string{" ", "enter", "right", "down", "pgdown"}

// Default are the keys as they come.
func Default() Map {
	return Map{
		Laid:      Bind("space", "pass laid", forward...),
		Undo:      letter("u", "take back", "backspace", "pgup"),
		Redo:      letter("r", "bring back"),
		Pause:     letter("p", "pause"),
		Recount:   letter("c", "recount"),
		Note:      letter("n", "note"),
		Far:       letter("f", "far"),
		Help:      Bind("?", "keys", "?"),
		Settings:  letter("s", "settings"),
		Leave:     letter("q", "leave"),
		Home:      Bind("esc", "home", "esc"),
		Broken:    letter("b", "broken end"),
		Knot:      letter("k", "knot"),
		Package:   letter("a", "another package"),
		WrongTurn: letter("w", "wrong turn"),
		Righted:   letter("e", "twist taken out"),
		Missed:    letter("m", "missed opening"),
		WrongPeg:  letter("g", "wrong peg"),
		Tie:       letter("t", "count tie made"),
		NoTie:     letter("x", "no count tie"),
		Withdraw:  letter("d", "drop the last mark"),
		Foot:      letter("v", "foot: the other end"),
		Yes:       letter("y", "yes"),
		Other:     letter("o", "no, the other way"),
		Later:     letter("l", "later"),
		Retry:     letter("r", "try again"),
		Beside:    letter("n", "save as a new record"),
		Refresh:   letter("r", "look again"),
		Reopen:    letter("r", "open again"),

		Keep:       Bind("enter", "keep it", "enter"),
		NextAnswer: Bind("tab", "next field", "tab", "down"),
		PrevAnswer: Bind("shift+tab", "field before", "shift+tab", "up"),
		Back:       Bind("esc", "back", "esc"),

		Add:       letter("a", "a key of your own"),
		Confirm:   letter("y", "yes, use it"),
		Forget:    Bind("backspace", "forget the last key", "backspace"),
		NextSound: Bind("up/down", "sounds", "tab", "down"),
		PrevSound: Bind("up/down", "sounds", "shift+tab", "up"),
		Sound:     Bind("x", "on or off", "x", "X"),

		Up:        Bind("up/down", "move", "up", "k"),
		Down:      Bind("up/down", "move", "down", "j"),
		First:     Bind("home", "first", "home"),
		Last:      Bind("end", "last", "end"),
		Filter:    Bind("/", "find", "/"),
		Away:      letter("w", "put away"),
		Delete:    letter("d", "delete"),
		BringBack: letter("b", "bring back"),
		Rename:    letter("r", "rename"),
		Edit:      letter("e", "edit"),
		Shelves:   Bind("tab", "kept", "tab"),
		Open:      Bind("enter", "open", "enter", " "),
		New:       letter("n", "new"),
		Copy:      letter("c", "copy"),
		Practice:  letter("p", "practice"),
		Alone:     letter("a", "go on alone"),

		Left:      Bind("left", "other way", "left"),
		Right:     Bind("right", "change", "right", " "),
		NextField: Bind("tab", "next", "tab", "down", "enter"),
		PrevField: Bind("shift+tab", "before", "shift+tab", "up"),
		NextPage:  Bind("pgdn", "page", "pgdown"),
		PrevPage:  Bind("pgup", "page before", "pgup"),
		Begin:     Bind("ctrl+s", "wind", "ctrl+s"),
		Choice:    Bind("ctrl+g", "group", "ctrl+g"),
		How:       Bind("ctrl+o", "how", "ctrl+o"),
		Rest:      Bind("ctrl+r", "more", "ctrl+r"),
		AtHand:    Bind("ctrl+n", "at hand", "ctrl+n"),
		NewLine:   Bind("enter", "new line", "enter"),
		Take:      Bind("ctrl+t", "take it", "ctrl+t"),

		Draft:    letter("o", "open a draft"),
		Known:    letter("f", "what I know"),
		Together: letter("t", "together"),
		Complete: Bind("tab", "complete", "tab"),
		NextFile: Bind("up/down", "choose", "down"),
		PrevFile: Bind("up/down", "choose", "up"),

		FormKnown: Bind("f2", "what I know", "f2"),

		AllKeys:       Bind("?", "keys", "?"),
		AllKeysTyping: Bind("ctrl+l", "keys", "ctrl+l", "f1"),

		Stop:    Bind("ctrl+c", "leave at once", "ctrl+c"),
		Suspend: Bind("ctrl+z", "put aside until fg", "ctrl+z"),
		AnyBack: Bind("any other key", "back", "any other key"),
	}
}

// FormKeys are the keys of the form in the order of their use.
func (k Map) FormKeys() []key.Binding {
	return []key.Binding{k.Begin, k.NextField, k.NextPage, k.How, k.Rest, k.Choice}
}

// MillKeys are the keys that work while a pass is wound, in the order in which they are needed.
func (k Map) MillKeys() []key.Binding {
	return []key.Binding{k.Laid, k.Undo, k.Redo, k.Pause, k.Recount, k.Note, k.Broken, k.Knot, k.Package, k.WrongTurn,
		k.Righted,
		k.Missed, k.WrongPeg, k.Tie, k.NoTie, k.Withdraw, k.Yes, k.Other, k.Later, k.Foot, k.Far, k.Settings, k.Help,
		k.Leave, k.Stop,
		k.Suspend}
}

// Meaning is what a key does at the mill other than counting a pass; empty where it does nothing.
func (k Map) Meaning(msg tea.KeyMsg) string {
	for _, b := range k.MillKeys()[1:] {
		if Matches(msg, b) {
			return b.Help().Desc
		}
	}
	return ""
}

// fixed are the keys without which the program could not be left or worked: they can't get another meaning.
func (k Map) fixed() []key.Binding { return []key.Binding{k.Stop, k.Suspend, k.Leave, k.Undo} }

// MayBeOwn says whether a key may be given the meaning "this pass is laid".
func (k Map) MayBeOwn(msg tea.KeyMsg) bool { return !Matches(msg, k.fixed()...) }

// WithOwn adds keys of the weaver's own, as the terminal names them, to those that mean "this pass is laid",
// and takes them away from whatever else they meant at the mill.
func (k Map) WithOwn(own []string) Map {
	if len(own) == 0 {
		return k
	}
	for _, b := range []*key.Binding{&k.Redo, &k.Pause, &k.Recount, &k.Note, &k.Far, &k.Help, &k.Settings, &k.Home,
		&k.Broken, &k.Knot,
		&k.Package, &k.WrongTurn, &k.Righted, &k.Missed, &k.WrongPeg, &k.Tie, &k.NoTie, &k.Withdraw, &k.Foot, &k.Yes,
		&k.Other, &k.Later} {
		b.SetKeys(slices.DeleteFunc(slices.Clone(b.Keys()),
			func(name string) bool { return slices.Contains(own, name) })...)
	}
	k.Laid.SetKeys(append(slices.Clone(forward), own...)...)
	return k
}

// As gives a binding another word in the help line.
func As(b key.Binding, what string) key.Binding {
	b.SetHelp(b.Help().Key, what)
	return b
}

// Names are the keys of a binding as a person reads them.
func Names(b key.Binding) string {
	var out []string
	for _, name := range b.Keys() {
		switch {
		case name == " ":
			name = "space"
		case len(name) == 1 && name != strings.ToLower(name):
			continue // the same letter with Caps Lock
		}
		out = append(out, name)
	}
	return strings.Join(out, " ")
}
