// Package keys holds every key of the screens in one place. A screen shows the help of those that work on
// it, taken from here, so that neither the line at the foot nor the page of keys can go out of step with
// what the keys do.
package keys

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// Map holds every key of the program. A screen shows the help of those that work on it, taken from
// here, so that the line at the foot can't go out of step with the keys.
type Map struct {
	Laid, Undo, Pause, Recount, Note, Far, Help, Leave, Back, Stop                   key.Binding
	Up, Down, Left, Right, NextField, PrevField, Open, New, Practice                 key.Binding
	GoOn, Other, Done, Untick, Retry, Begin, Choice, Refresh, Home                   key.Binding
	How, Rest, NextPage, PrevPage, Copy                                              key.Binding
	Broken, Knot, Cone, WrongTurn, Missed, WrongPeg, Tie, Withdraw, Settings, AtHand key.Binding
	Bell, Forget, Any, AnyBack, Suspend, Keep, NextAnswer, PrevAnswer                key.Binding
}

// Bind makes a binding: its label and its meaning in the help, and the keys as the terminal names them.
func Bind(label, what string, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(label, what))
}

// forward are the keys that all mean "this is done, go on": a presenter's clicker or a foot pedal
// sends one of them as it comes out of the box.
var forward = []string{" ", "enter", "right", "down", "pgdown"}

// Default are the keys as they come.
func Default() Map {
	return Map{
		Laid:       Bind("space", "pass laid", forward...),
		Undo:       Bind("u", "undo", "u", "backspace", "pgup"),
		Pause:      Bind("p", "pause", "p"),
		Recount:    Bind("c", "recount", "c"),
		Note:       Bind("n", "note", "n"),
		Far:        Bind("f", "far", "f"),
		Help:       Bind("?", "keys", "?"),
		Leave:      Bind("q", "leave", "q"),
		Back:       Bind("esc", "back", "esc"),
		Stop:       Bind("ctrl+c", "leave at once", "ctrl+c"),
		Up:         Bind("up/down", "move", "up", "k"),
		Down:       Bind("up/down", "move", "down", "j"),
		Left:       Bind("left", "other way", "left"),
		Right:      Bind("right", "change", "right", " "),
		NextField:  Bind("tab", "next", "tab", "down", "enter"),
		PrevField:  Bind("shift+tab", "before", "shift+tab", "up"),
		Open:       Bind("enter", "open", "enter", " "),
		New:        Bind("n", "new", "n"),
		Practice:   Bind("p", "practice", "p"),
		GoOn:       Bind("space", "matches: go on", forward...),
		Other:      Bind("o", "the other way", "o"),
		Done:       Bind("space", "done", forward...),
		Untick:     Bind("u", "take back", "u", "backspace", "pgup"),
		Retry:      Bind("r", "try again", "r"),
		Begin:      Bind("ctrl+s", "wind", "ctrl+s"),
		Choice:     Bind("ctrl+g", "group", "ctrl+g"),
		Refresh:    Bind("r", "look again", "r"),
		Home:       Bind("enter", "home", "enter", " ", "esc"),
		How:        Bind("ctrl+o", "how", "ctrl+o"),
		Rest:       Bind("ctrl+r", "rest", "ctrl+r"),
		NextPage:   Bind("pgdn", "page", "pgdown"),
		PrevPage:   Bind("pgup", "page before", "pgup"),
		Copy:       Bind("c", "copy", "c"),
		Broken:     Bind("b", "broken end", "b"),
		Knot:       Bind("k", "knot", "k"),
		Cone:       Bind("y", "new cone", "y"),
		WrongTurn:  Bind("w", "wrong turn", "w"),
		Missed:     Bind("m", "missed opening", "m"),
		WrongPeg:   Bind("g", "wrong peg", "g"),
		Tie:        Bind("t", "tie made", "t"),
		Withdraw:   Bind("d", "drop the last mark", "d"),
		Settings:   Bind("s", "settings", "s"),
		Bell:       Bind("tab", "bell", "tab"),
		Forget:     Bind("backspace", "forget the last", "backspace"),
		Any:        Bind("any key", "use it", "any key"),
		AnyBack:    Bind("any key", "back", "any key"),
		Suspend:    Bind("ctrl+z", "put aside until fg", "ctrl+z"),
		Keep:       Bind("enter", "keep it", "enter"),
		NextAnswer: Bind("tab", "next field", "tab", "down"),
		PrevAnswer: Bind("shift+tab", "field before", "shift+tab", "up"),
		AtHand:     Bind("ctrl+n", "at hand", "ctrl+n"),
	}
}

// FormKeys are the keys of the form in the order of their use.
func (k Map) FormKeys() []key.Binding {
	return []key.Binding{k.Begin, k.NextField, k.NextPage, k.How, k.Rest, k.Choice}
}

// As gives a binding another word in the help line.
func As(b key.Binding, what string) key.Binding {
	b.SetHelp(b.Help().Key, what)
	return b
}

// Reserved says whether a key has another meaning than "this pass is laid" while winding.
func (k Map) Reserved(msg tea.KeyMsg) bool {
	return key.Matches(msg, k.Undo, k.Pause, k.Recount, k.Note, k.Far, k.Help, k.Leave, k.Back, k.Stop, k.Other, k.Retry,
		k.Broken, k.Knot, k.Cone, k.WrongTurn, k.Missed, k.WrongPeg, k.Tie, k.Withdraw, k.Settings, k.Suspend)
}
