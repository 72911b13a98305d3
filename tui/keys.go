package tui

import (
	"github.com/charmbracelet/bubbles/help"
	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/lipgloss"
)

// keyMap holds every key of the program. A screen shows the help of those that work on it, taken from
// here, so that the line at the foot can't go out of step with the keys.
type keyMap struct {
	Laid, Undo, Pause, Recount, Note, Far, Help, Leave, Back, Stop                   key.Binding
	Up, Down, Left, Right, NextField, PrevField, Open, New, Practice                 key.Binding
	GoOn, Other, Done, Untick, Retry, Begin, Choice, Refresh, Home                   key.Binding
	How, Rest, NextPage, PrevPage, Copy                                              key.Binding
	Broken, Knot, Cone, WrongTurn, Missed, WrongPeg, Tie, Withdraw, Settings, AtHand key.Binding
}

func bind(label, what string, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(label, what))
}

// forward are the keys that all mean "this is done, go on": a presenter's clicker or a foot pedal
// sends one of them as it comes out of the box.
var forward = []string{" ", "enter", "right", "down", "pgdown"}

func defaultKeys() keyMap {
	return keyMap{
		Laid:      bind("space", "pass laid", forward...),
		Undo:      bind("u", "undo", "u", "backspace", "pgup"),
		Pause:     bind("p", "pause", "p"),
		Recount:   bind("c", "recount", "c"),
		Note:      bind("n", "note", "n"),
		Far:       bind("f", "far", "f"),
		Help:      bind("?", "keys", "?"),
		Leave:     bind("q", "leave", "q"),
		Back:      bind("esc", "back", "esc"),
		Stop:      bind("ctrl+c", "leave at once", "ctrl+c"),
		Up:        bind("up/down", "move", "up", "k"),
		Down:      bind("up/down", "move", "down", "j"),
		Left:      bind("left", "other way", "left"),
		Right:     bind("right", "change", "right", " "),
		NextField: bind("tab", "next", "tab", "down", "enter"),
		PrevField: bind("shift+tab", "before", "shift+tab", "up"),
		Open:      bind("enter", "open", "enter", " "),
		New:       bind("n", "new", "n"),
		Practice:  bind("p", "practice", "p"),
		GoOn:      bind("space", "matches: go on", forward...),
		Other:     bind("o", "the other way", "o"),
		Done:      bind("space", "done", forward...),
		Untick:    bind("u", "take back", "u", "backspace", "pgup"),
		Retry:     bind("r", "try again", "r"),
		Begin:     bind("ctrl+s", "wind", "ctrl+s"),
		Choice:    bind("ctrl+g", "group", "ctrl+g"),
		Refresh:   bind("r", "look again", "r"),
		Home:      bind("enter", "home", "enter", " ", "esc"),
		How:       bind("ctrl+o", "how", "ctrl+o"),
		Rest:      bind("ctrl+r", "rest", "ctrl+r"),
		NextPage:  bind("pgdn", "page", "pgdown"),
		PrevPage:  bind("pgup", "page before", "pgup"),
		Copy:      bind("c", "copy", "c"),
		Broken:    bind("b", "broken end", "b"),
		Knot:      bind("k", "knot", "k"),
		Cone:      bind("y", "new cone", "y"),
		WrongTurn: bind("w", "wrong turn", "w"),
		Missed:    bind("m", "missed opening", "m"),
		WrongPeg:  bind("g", "wrong peg", "g"),
		Tie:       bind("t", "tie made", "t"),
		Withdraw:  bind("d", "drop the last mark", "d"),
		Settings:  bind("s", "settings", "s"),
		AtHand:    bind("ctrl+n", "at hand", "ctrl+n"),
	}
}

// formKeys are the keys of the form in the order of their use.
func (k keyMap) formKeys() []key.Binding {
	return []key.Binding{k.Begin, k.NextField, k.NextPage, k.How, k.Rest, k.Choice}
}

// as gives a binding another word in the help line.
func as(b key.Binding, what string) key.Binding {
	b.SetHelp(b.Help().Key, what)
	return b
}

// keyLine is the one line of keys at the foot of a screen. Keys that find no room are left out from
// the right, with a mark.
func (s styles) keyLine(w int, bindings ...key.Binding) string {
	h := help.New()
	h.ShortSeparator = "  "
	h.Styles = help.Styles{Ellipsis: s.dim, ShortKey: s.strong, ShortDesc: s.dim, ShortSeparator: s.dim}
	if lipgloss.Width(h.ShortHelpView(bindings)) >= w {
		h.ShortSeparator, h.Width = " ", max(w-1, 1)
	}
	return " " + h.ShortHelpView(bindings)
}
