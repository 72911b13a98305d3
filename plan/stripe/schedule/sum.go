package schedule

import (
	"fmt"
	"time"

	"millside/plan/measure"
)

// Times says how long each kind of work takes, 0 to an hour each. They are what a schedule is judged by.
type Times struct {
	// Pass is one pass, its turns and what is handled at its two ends.
	Pass time.Duration
	// Halt is what it takes to stop at a peg and to go on again; Cut and Tie are for each end, Thread for each
	// package.
	Halt, Cut, Tie, Thread time.Duration
	// Far is what it takes more where the winding stops at the counting cross.
	Far time.Duration
}

// longest is the most that any of the times may be.
const longest = time.Hour

// check reports the first time that is out of its range.
func (t Times) check() error {
	for _, f := range []struct {
		field string
		v     time.Duration
	}{
		{"time for a pass", t.Pass}, {"time for a halt", t.Halt}, {"time to cut off", t.Cut}, {"time to tie on", t.Tie},
		{"time to thread", t.Thread}, {"time for a finish at the far end", t.Far},
	} {
		if f.v < 0 || f.v > longest {
			return &measure.FieldError{Field: f.field, Value: f.v.String(), Want: "nil to one hour"}
		}
	}
	return nil
}

// Total is the time that the work of a sum takes.
func (t Times) Total(s Sum) time.Duration {
	d := times(s.Passes, t.Pass) + times(s.Halts, t.Halt) + times(s.Cuts, t.Cut) + times(s.Ties, t.Tie) +
		times(s.Threads, t.Thread)
	if s.Far {
		d += t.Far
	}
	return d
}

func times(n int, d time.Duration) time.Duration { return time.Duration(n) * d }

// Sum counts the work of a schedule wound as one chain, its start and its end included.
type Sum struct {
	// Passes is the number of passes, Halts how often the mill stands between two of them.
	Passes, Halts int
	// Cuts and Ties count ends, Threads packages put through a position.
	Cuts, Ties, Threads int
	// Far says that the last pass ends at the counting cross.
	Far bool
}

// String writes the sum for messages of tests and programs, such as "40 passes, 1 halt, 10 cuts".
func (s Sum) String() string {
	return fmt.Sprintf("%d passes, %d halts, %d cuts, %d ties, %d threads, far %v", s.Passes, s.Halts, s.Cuts, s.Ties,
		s.Threads, s.Far)
}
