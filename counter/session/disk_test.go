package session

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"millside/counter"
	"millside/counter/journal"
	"millside/plan"
)

// Lines that are missing from the record stay said, on every page, until the count was set right; going on is not
// enough.
func TestMissingLinesStaySaid(t *testing.T) {
	b := newBench(t, nil)
	b.does(Press{}, Press{})
	st, err := fold(b.plan, b.events)
	if err != nil {
		t.Fatal(err)
	}
	b.s = New(Opening{State: st, Events: b.events, Torn: "about 9 lines (512 bytes) at the end can't be read", Lost: 9})
	said := func() bool {
		st := b.s.Standing()
		const want = "About 9 lines that were counted are missing"
		return strings.Contains(strings.Join(b.s.Announce(b.clock), " "), want) && strings.Contains(st.Missing, want)
	}
	if !said() || b.s.Stage(b.clock) != Looking {
		t.Errorf("on opening: %v", b.s.Announce(b.clock))
	}
	// The record puts the loss down before the first event that is added.
	lost := counter.Event{At: b.clock, Kind: counter.Lost, Lines: 9}
	b.events = append(b.events, lost)
	if st, err = st.Apply(lost); err != nil {
		t.Fatal(err)
	}
	b.s.st = st
	for i, in := range []Intent{GoOn{}, Note{Text: "hm"}, Press{}} {
		if b.does(in); !said() {
			t.Errorf("after %d: %v", i, b.s.Announce(b.clock))
		}
	}
	if b.does(Recount{Passes: 4}); said() || b.s.Standing().Missing != "" {
		t.Errorf("after the recount: %v", b.s.Announce(b.clock))
	}
	b.reopen()
	if said() {
		t.Error("said again after the recount")
	}
}

// The screen says that it saves after a quarter of a second, and tells of a slow disk afterwards.
func TestSavingIsSaid(t *testing.T) {
	b := newBench(t, nil)
	s, r := b.s.Take(Press{}, b.clock)
	if !r.Writes() {
		t.Fatal(r)
	}
	for d, want := range map[time.Duration]bool{0: false, 249 * time.Millisecond: false, 250 * time.Millisecond: true,
		time.Minute: true} {
		if m, ok := s.Saving(b.clock, b.clock.Add(d)); ok != want || ok && !strings.Contains(m.Text, "saving pass 1") {
			t.Errorf("after %s: %v, %v", d, m, ok)
		}
	}
	if _, ok := b.s.Saving(b.clock, b.clock.Add(time.Hour)); ok {
		t.Error("saving while nothing is on its way")
	}
	st, err := b.s.State().Apply(r.Event)
	if err != nil {
		t.Fatal(err)
	}
	s, _ = s.Saved(r.Event, st)
	if quick := s.Slow(900 * time.Millisecond).Message(); strings.Contains(quick.Text, "slow") {
		t.Errorf("%v", quick)
	}
	if slow := s.Slow(4 * time.Second).Message(); !strings.Contains(slow.Text, "saving took 4s") {
		t.Errorf("%v", slow)
	}
}

// Presses are judged by the time at which they came, however late the disk is free again: one pass that was pressed
// twice within the guard counts once, honest ones half a minute apart all count.
func TestPressesInAStall(t *testing.T) {
	for _, tt := range []struct {
		name  string
		after []time.Duration // the presses, from the first
		laid  int
	}{
		{"twice a second apart", []time.Duration{0, time.Second}, 1},
		{"four in eleven seconds", []time.Duration{0, 3500 * time.Millisecond, 7 * time.Second, 11 * time.Second}, 4},
	} {
		b := newBench(t, func(s *plan.Spec) { s.Ends = 400 })
		stallEnds := b.clock.Add(time.Minute)
		for _, d := range tt.after {
			next, r := b.s.Take(Press{}, b.clock.Add(d))
			if b.s = next; r.Writes() {
				b.save(next, r.Event) // answered when the stall ends
			}
		}
		b.clock = stallEnds
		laid := 0
		for _, e := range b.events {
			if e.Kind == counter.Laid {
				laid++
			}
		}
		if laid != tt.laid {
			t.Errorf("%s: %d counted, want %d", tt.name, laid, tt.laid)
		}
	}
}

// What can be done where the record can't be written depends on why.
func TestRemedies(t *testing.T) {
	for _, tt := range []struct {
		cause error
		first Remedy
		says  string
	}{
		{errors.New("no space left"), TryAgain, "Make room"},
		{journal.ErrReplaced, SaveBeside, "Another program"},
	} {
		b := newBench(t, nil)
		b.does(Press{})
		b.fail = fmt.Errorf("%w: %w", journal.ErrFailed, tt.cause)
		b.does(Press{})
		if b.s.Stage(b.clock) != Failed || b.s.Remedies()[0] != tt.first ||
			!strings.Contains(strings.Join(b.s.Trouble(), " "), tt.says) {
			t.Errorf("%v: %v, %v", tt.cause, b.s.Remedies(), b.s.Trouble())
		}
		s, r := b.s.StillFailed(b.fail)
		if s.Stage(b.clock) != Failed || r.Cue != CueStop || s.State().Laid() != 1 {
			t.Errorf("%+v", r)
		}
	}
}
