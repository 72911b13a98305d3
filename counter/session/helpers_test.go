package session

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"millside/counter"
	"millside/plan"
)

// bench is a mill for tests: a session, a record in memory and a clock that the test moves.
type bench struct {
	t      testing.TB
	s      Session
	plan   *plan.Plan // the plan that winding began with
	events []counter.Event
	clock  time.Time
	last   Reply // the last one that said something
	fail   error // what the disk says to the next event
}

var start = time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)

// newBench is a warp of 36 ends by ten, four passes, with the guard at two seconds.
func newBench(t testing.TB, change func(*plan.Spec)) *bench {
	t.Helper()
	spec := benchSpec()
	if change != nil {
		change(&spec)
	}
	p, err := plan.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	b := &bench{t: t, plan: p, clock: start}
	b.reopen()
	return b
}

func benchSpec() plan.Spec {
	spec := plan.DefaultSpec()
	spec.Name, spec.Ends, spec.TieEvery = "Runner", 36, 20
	return spec
}

// reopen comes back to the record as after a crash: the state is folded anew from the events.
func (b *bench) reopen() Reply {
	b.t.Helper()
	st, err := fold(b.plan, b.events)
	if err != nil {
		b.t.Fatal(err)
	}
	b.s = New(Opening{State: st, Events: b.events})
	b.last = b.s.Begin(b.clock)
	return b.last
}

// fold is the state after a list of events, from the start of a plan.
func fold(p *plan.Plan, events []counter.Event) (counter.State, error) {
	st := counter.NewState(p)
	for i, e := range events {
		next, err := st.Apply(e)
		if err != nil {
			return st, fmt.Errorf("event %d: %w", i, err)
		}
		st = next
	}
	return st, nil
}

// does hands intents over half a minute apart.
func (b *bench) does(intents ...Intent) Reply {
	b.t.Helper()
	for _, in := range intents {
		b.after(30*time.Second, in)
	}
	return b.last
}

// after hands an intent over after a time.
func (b *bench) after(d time.Duration, in Intent) Reply {
	b.t.Helper()
	b.clock = b.clock.Add(d)
	next, r := b.s.Take(in, b.clock)
	if r.Writes() {
		r = b.save(next, r.Event)
	} else {
		b.s = next
	}
	b.last = r
	return r
}

// save writes an event as a record does.
func (b *bench) save(s Session, e counter.Event) Reply {
	var r Reply
	if b.fail != nil {
		b.s, r = s.NotSaved(b.fail)
		return r
	}
	st, err := s.State().Apply(e)
	if err != nil {
		b.s, r = s.NotSaved(err)
		return r
	}
	b.events = append(b.events, e)
	b.s, r = s.Saved(e, st)
	return r
}

// press presses the pass key so many times, half a minute apart.
func (b *bench) press(times int) Reply {
	b.t.Helper()
	for range times {
		b.does(Press{})
	}
	return b.last
}

// wants looks for parts of what was said last.
func (b *bench) wants(parts ...string) {
	b.t.Helper()
	got := strings.Join(b.last.Said, "\n")
	for _, part := range parts {
		if !strings.Contains(got, part) {
			b.t.Errorf("not said: %q, but\n%s", part, got)
		}
	}
}

func (b *bench) stage() Stage { return b.s.Stage(b.clock) }
func (b *bench) laid() int    { return b.s.State().Laid() }
