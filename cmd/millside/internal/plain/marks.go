package plain

import (
	"time"

	"millside/counter"
	"millside/counter/session"
)

// take hands over what was read of a line, or says what is wrong with it.
func (t *Talk) take(in session.Intent, wrong string, at time.Time) (session.Reply, error) {
	if wrong != "" {
		return refused(wrong), nil
	}
	return t.do(in, at)
}

// mark is the word for something that went wrong.
func mark(what counter.What) func(*Talk, string, time.Time) (session.Reply, error) {
	return func(t *Talk, rest string, at time.Time) (session.Reply, error) {
		m, wrong := t.s.ReadMark(what, rest)
		return t.take(m, wrong, at)
	}
}

// newPackage is another package.
func (t *Talk) newPackage(rest string, at time.Time) (session.Reply, error) {
	in, wrong := t.s.ReadPackage(rest)
	return t.take(in, wrong, at)
}
