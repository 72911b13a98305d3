package plain

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"millside/counter"
	"millside/counter/session"
	"millside/plan/measure"
	"millside/tui/keys"
)

// Record is what a talk needs of a winding record.
type Record interface {
	// Append writes an event and gives the state after it.
	Append(counter.Event) (counter.State, error)
}

// Talk is a conversation over a record: lines and keys in, sentences out. It knows nothing of where they come from.
// Every change goes through the record first.
type Talk struct {
	rec  Record
	s    session.Session
	keys keys.Map
	// Mend tries a way on where the record can't be written: it gives the record to go on with, opened anew. Without it
	// such a record ends the conversation. It is set before [Talk.Begin].
	Mend func(session.Remedy) (Record, session.Opening, error)
	// typed says that keys come one by one, so that what needs an answer asks for it.
	typed bool
	// line is what has been typed of a word or an answer; nil if none is being typed.
	line *strings.Builder
	// asking is what is being asked for, key by key; nil if nothing is.
	asking *asking
}

// New begins a conversation over an opened record. The keys are those of the screen.
func New(rec Record, o session.Opening, k keys.Map) *Talk {
	return &Talk{rec: rec, s: session.New(o), keys: k}
}

// Session is the conversation as it stands.
func (t *Talk) Session() session.Session { return t.s }

// Begin is what is said first. KeyByKey says that keys come one by one from now on, and not whole lines.
func (t *Talk) Begin(now time.Time, keyByKey bool) session.Reply {
	t.typed = keyByKey
	r := t.s.Begin(now)
	if !t.s.State().Begun() {
		how := "An empty line is the pass key: it says that the pass is laid. Type help for the other words."
		if keyByKey {
			how = "Space, Enter or Page Down is the pass key: it says that the pass is laid. A question mark lists " +
				"the keys; a colon begins a word."
		}
		r.Said = append(r.Said[:1:1], append([]string{how}, r.Said[1:]...)...)
	}
	return r
}

// Wake asks for a look at the mill, as after the program was put aside.
func (t *Talk) Wake(now time.Time) session.Reply {
	r, _ := t.do(session.LookAgain{}, now) // it writes nothing, so it can't fail
	return r
}

// Leave pauses the warp, unless it stands still already.
func (t *Talk) Leave(now time.Time) (session.Reply, error) {
	r, err := t.do(session.Leave{}, now)
	r.Over = true
	return r, errors.Join(err, t.leftBroken(err))
}

// leftBroken is the error of who leaves while the record can't be written, unless it is told already.
func (t *Talk) leftBroken(told error) error {
	if told != nil {
		return nil
	}
	return t.s.Failure()
}

// Line acts on a line, with the time at which it came. An error means that nothing more can be counted.
func (t *Talk) Line(line string, at time.Time) (session.Reply, error) {
	// The colon that begins a word where keys are pressed may stand before it here too; alone it is no pass key.
	word, colon := strings.CutPrefix(strings.TrimSpace(line), ":")
	name, rest, _ := strings.Cut(strings.TrimSpace(word), " ")
	name, rest = strings.ToLower(name), strings.TrimSpace(rest)
	if name == "" && colon {
		return refused("No word was typed; nothing was done."), nil
	}
	if name == "" {
		return t.do(session.Press{}, at)
	}
	w, ok := wordOf(name)
	if !ok {
		return refused(fmt.Sprintf("%q means nothing here. An empty line goes on; the words are %s.", shorten(name),
			strings.Join(names(), ", "))), nil
	}
	if rest != "" && w.bare {
		return refused(fmt.Sprintf("Nothing was done: %s takes nothing after it, and %q stood there.", w.name,
			shorten(rest))), nil
	}
	return w.act(t, rest, at)
}

// do hands an intent over and writes what comes of it.
func (t *Talk) do(in session.Intent, at time.Time) (session.Reply, error) {
	next, r := t.s.Take(in, at)
	if !r.Writes() {
		t.s = next
		return r, nil
	}
	st, err := t.rec.Append(r.Event)
	if err != nil {
		if t.s, r = next.NotSaved(err); t.s.Err() != nil && !t.canMend() {
			return r, t.s.Failure()
		}
		return t.withRemedies(r), nil
	}
	t.s, r = next.Saved(r.Event, st)
	if t.typed && t.s.Stage(at) == session.AtQuestion {
		r.Said = append(r.Said, "The key y says yes, o other, l later.")
	}
	return r, nil
}

// canMend says whether the winder is there to choose a way on where the record can't be written.
func (t *Talk) canMend() bool { return t.Mend != nil && t.typed }

// withRemedies adds to a reply what can be done where the record can't be written.
func (t *Talk) withRemedies(r session.Reply) session.Reply {
	if t.s.Err() == nil {
		return r
	}
	r.Said = append(append(r.Said, t.s.Trouble()...), fmt.Sprintf("The key %s: %s; %s: %s; %s: leave.",
		t.keys.Retry.Help().Key, session.TryAgain, t.keys.Beside.Help().Key, session.SaveBeside,
		t.keys.Leave.Help().Key))
	return r
}

// mend tries a way on.
func mend(remedy session.Remedy) func(*Talk, string, time.Time) (session.Reply, error) {
	return func(t *Talk, _ string, at time.Time) (session.Reply, error) {
		if t.s.Err() == nil || t.Mend == nil {
			return refused("Nothing was done: the record can be written."), nil
		}
		rec, opening, err := t.Mend(remedy)
		if err != nil {
			next, r := t.s.StillFailed(err)
			t.s = next
			return t.withRemedies(r), nil
		}
		t.rec, t.s = rec, session.New(opening)
		return t.s.Begin(at), nil
	}
}

// refused is a reply to something that can't be read.
func refused(text string) session.Reply {
	return session.Reply{Said: []string{text}, Short: text, Cue: session.CueRefused}
}

// told is a reply that changes nothing.
func told(said ...string) session.Reply {
	return session.Reply{Said: said, Short: strings.Join(said, " "), Cue: session.CueLook}
}

// shorten cuts what was typed for an answer.
func shorten(s string) string {
	const most = 40
	s = measure.Clean(s)
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "…"
	}
	return s
}
