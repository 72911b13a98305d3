package plain

import (
	"slices"

	"millside/counter"
	"millside/counter/session"
	"millside/tui/keys"

	"github.com/charmbracelet/bubbles/key"
)

// meaning is what a key of the screen does here: it stands for a word, or asks for something.
type meaning struct {
	key  key.Binding
	word string
	ask  session.Ask
}

// meanings are the keys of the screen that have a meaning line by line, but for the pass key, in the order of their
// importance: where two share a key the first that fits the moment has it.
func (t *Talk) meanings() []meaning {
	k := t.keys
	all := []meaning{
		{k.Undo, "undo", nil}, {k.Pause, "pause", nil}, {k.Help, "", nil}, {k.Leave, "leave", nil},
		{k.Recount, "", session.AskRecount{}}, {k.Note, "", session.AskNote{}},
		{k.Broken, "", session.AskMark{What: counter.Broken}}, {k.Knot, "", session.AskMark{What: counter.Knot}},
		{k.Missed, "missed", nil}, {k.WrongPeg, "wrongpeg", nil}, {k.Tie, "tie", nil}, {k.Withdraw, "drop", nil},
		{k.Other, "other", nil}, {k.WrongTurn, "turn", nil}, {k.Righted, "righted", nil}, {k.NoTie, "notie", nil},
		{k.Package, "", session.AskPackage{}},
	}
	if _, open := t.s.Question(); open {
		all = append([]meaning{{k.Yes, "yes", nil}, {k.Later, "later", nil}}, all...)
	}
	if t.s.Err() != nil {
		all = append([]meaning{{k.Retry, "again", nil}, {k.Beside, "beside", nil}}, all...)
	}
	st := t.s.State()
	if st.Finished {
		all = append([]meaning{{k.Reopen, "", session.AskReopen{}}}, all...)
	}
	other := "foot " + st.Plan.Spec.Foot.Other().String()
	return append(all, meaning{k.Redo, "redo", nil}, meaning{k.Foot, other, nil},
		meaning{keys.Bind("i", "where", "i"), "where", nil})
}

// isPass says whether a key is the pass key.
func (t *Talk) isPass(name string) bool { return slices.Contains(t.keys.Laid.Keys(), name) }
