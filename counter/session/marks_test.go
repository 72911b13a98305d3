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
	"millside/plan/wind"
)

// A mark without a number means the pass in hand, and says so; after the last pass it means that one.
func TestMarksMeanThePassInHand(t *testing.T) {
	b := newBench(t, nil)
	b.press(1)
	b.does(Mark{What: counter.MissedOpening})
	b.wants("Marked as number 3: pass 2: missed opening.")
	b.does(Mark{What: counter.WrongPeg, Pass: 1, Text: "over both"})
	b.wants("Marked as number 4: pass 1: wrong peg (over both).")
	b.does(Mark{What: counter.Broken, Position: 4})
	b.wants("Marked as number 5: pass 2, position 4, end 14: broken end.")
	b.does(Mark{What: counter.Knot, Position: 11})
	if b.last.Cue != CueRefused {
		t.Errorf("%+v", b.last)
	}
	b.windTo(4)
	b.does(Mark{What: counter.WrongPeg})
	b.wants("pass 4: wrong peg")
	b = newBench(t, stripedSpec)
	b.press(3)
	b.does(Mark{What: counter.Broken, Position: 3, Pass: 2})
	b.wants("blue")
}

// The last mark of whatever kind is dropped, and no other one.
func TestDropMark(t *testing.T) {
	b := newBench(t, hundred)
	b.does(DropMark{})
	b.wants("There is no mark to take back.")
	b.windTo(11)
	b.does(Mark{What: counter.Broken, Position: 4}, Mark{What: counter.Knot, Position: 5}, Note{"a note is no mark"},
		DropMark{})
	b.wants("position 5, end 115: knot")
	st := b.s.State()
	if st.Incidents[0].Withdrawn || !st.Incidents[1].Withdrawn {
		t.Fatalf("%+v", st.Incidents)
	}
	b.does(WrongTurn{}, DropMark{})
	b.wants("The wrong turn after pass 11 is taken back.")
	if st := b.s.State(); st.Incidents[0].Withdrawn || st.TwistAdvice() != "" || len(st.Chains[0].WrongTurns) != 0 {
		t.Fatalf("%+v", st.Incidents)
	}
	b.does(TieMade{}, DropMark{})
	b.wants("The count tie of 100 ends is taken back.")
	b.does(NewPackage{Position: 3}, DropMark{})
	b.wants("The new package in position 3 is taken back.")
	b.does(WrongTurn{}, Righted{}, DropMark{})
	b.wants("position 4, end 114: broken end") // a turn that was righted was made
	b.does(DropMark{})
	b.wants("There is no mark to take back.")
	b.does(Mark{What: counter.Broken, Position: 1}, Mark{What: counter.Broken, Position: 2})
	first := b.s.State().Incidents[2].Number
	b.does(DropMark{first})
	if st := b.s.State(); !st.Incidents[2].Withdrawn || st.Incidents[3].Withdrawn {
		t.Errorf("%+v", st.Incidents)
	}
	b.does(DropMark{999})
	if b.last.Cue != CueRefused {
		t.Errorf("%+v", b.last)
	}
}

// A wrong turn stays in sight with both remedies until the twist is out, and the last turn is told as it was made.
func TestWrongTurn(t *testing.T) {
	b := newBench(t, func(s *plan.Spec) { s.Ends, s.TieEvery = 100, 0 })
	b.does(WrongTurn{})
	b.wants("No pass is laid yet, so no turn was made.")
	b.press(1)
	b.does(WrongTurn{})
	if got := b.s.Standing(); got.Turn != wind.Clockwise || !got.Wrong {
		t.Errorf("%+v", got)
	}
	if said := strings.Join(b.s.Where(b.clock), "\n"); !strings.Contains(said,
		"the last turn was clockwise, the wrong way") {
		t.Errorf("%s", said)
	}
	for range 3 {
		b.press(1)
		b.wants("Wrong turn: Turn the paddle 2 half turns", "Or at the")
		if b.s.asks() {
			b.does(Answer{Yes})
		}
	}
	b.does(Righted{})
	b.wants("The twist is as planned again.")
	b.does(Righted{})
	b.wants("There is no twist to take out")
	b.windTo(5)
	b.does(WrongTurn{})
	b.press(1)
	b.does(WrongTurn{})
	b.wants("the twist is as planned again")
}

// The reminder to rest comes once in a stretch of winding.
func TestRest(t *testing.T) {
	b := newBench(t, func(s *plan.Spec) { s.Ends, s.RestMinutes, s.TieEvery = 360, 2, 0 })
	count := func(times int) int {
		n := 0
		for range times {
			b.press(1)
			n += strings.Count(strings.Join(b.last.Said, "\n"), "2 minutes without a break: rest your hands")
		}
		return n
	}
	if n := count(9); n != 1 {
		t.Errorf("said %d times", n)
	}
	if in, _ := b.s.Instruction(b.clock); in.Reminders[len(in.Reminders)-1].Kind != ItemRest {
		t.Errorf("%+v", in.Reminders)
	}
	b.does(Pause{})
	b.after(3*time.Minute, Press{})
	if n := count(6); n != 1 {
		t.Errorf("said %d times after a rest", n)
	}
}

// Coming back shows what must stand on the mill, and the press that goes on counts nothing.
func TestComingBack(t *testing.T) {
	b := newBench(t, nil)
	b.windTo(3)
	b.reopen()
	if b.stage() != Looking {
		t.Fatalf("stage %d", b.stage())
	}
	b.wants("Stopped at ", "3 of 4 passes laid, 30 ends stand.",
		"2 groups over peg 1 of the counting cross and 1 over peg 2")
	if b.does(TakeBack{}); b.last.Cue != CueRefused || b.laid() != 3 {
		t.Errorf("%+v", b.last)
	}
	b.does(Press{})
	if b.laid() != 3 || b.last.Cue != CueConfirmed {
		t.Errorf("%d passes, %v", b.laid(), b.last.Cue)
	}
	b.does(LookAgain{})
	b.wants("2 groups over peg 1")
	b.does(Press{}, Pause{})
	b.wants("Paused at ")
	b.does(Pause{})
	b.wants("Paused already")
	b.does(GoOn{}, GoOn{})
	b.wants("Nothing is paused.")
}

// Leaving pauses once, and never a warp that stands still already or that was only looked at.
func TestLeaving(t *testing.T) {
	for _, tt := range []struct {
		name    string
		intents []Intent
		events  int
	}{{"nothing wound", nil, 0}, {"winding", []Intent{Press{}}, 2}, {"paused", []Intent{Press{}, Pause{}}, 2},
		{"at the lease", []Intent{Press{}, Press{}}, 3},
		{"paused and gone on", []Intent{Press{}, Pause{}, GoOn{}}, 4}} {
		b := newBench(t, nil)
		b.does(tt.intents...)
		r := b.does(Leave{})
		if st := b.s.State(); !r.Over || st.Events != tt.events || st.Paused != (tt.events > 0) {
			t.Errorf("%s: over %v, %d events, paused %v", tt.name, r.Over, st.Events, st.Paused)
		}
		b.wants("All of it is on the disk.")
	}
	b := newBench(t, nil)
	b.press(1)
	b.reopen()
	if r := b.does(Leave{}); !r.Over || b.s.State().Events != 1 {
		t.Errorf("%+v, %d events", r, b.s.State().Events)
	}
	b.does(Press{}, LookAgain{}, Leave{})
	if !b.s.State().Paused {
		t.Error("put aside and left, it is not paused")
	}
}

// What can't be written counts nothing, loudly, and nothing more is taken. What doesn't follow is explained.
func TestNotSaved(t *testing.T) {
	b := newBench(t, nil)
	b.press(1)
	b.fail = errors.New("does not follow")
	b.press(1)
	b.wants("Not counted: does not follow.")
	b.fail = fmt.Errorf("%w: no space left", journal.ErrFailed)
	b.press(1)
	if b.last.Cue != CueStop || b.stage() != Failed || b.laid() != 1 || b.s.Err() == nil {
		t.Errorf("%+v", b.last)
	}
	b.wants("Not saved: the count did not move, 1 pass on the disk.", "no space left")
	b.fail = nil
	if b.press(1); b.last.Cue != CueRefused || b.laid() != 1 {
		t.Errorf("%+v", b.last)
	}
	if r := b.does(Leave{}); !r.Over {
		t.Errorf("%+v", r)
	}
	b = newBench(t, nil)
	b.press(1)
	b.fail = journal.ErrFailed
	if r := b.does(Leave{}); !r.Over {
		t.Errorf("it can't be left: %+v", r)
	}
}

// A record that is only looked at takes nothing.
func TestOnlyLooking(t *testing.T) {
	b := newBench(t, nil)
	b.press(1)
	s := New(Opening{State: b.s.State(), Events: b.events, OnlyLooking: true})
	if s.Stage(b.clock) != OnlyLooking {
		t.Errorf("stage %d", s.Stage(b.clock))
	}
	for _, in := range []Intent{Press{}, TakeBack{}, Note{"x"}, Answer{Yes}} {
		if _, r := s.Take(in, b.clock.Add(time.Minute)); r.Writes() || r.Cue != CueRefused {
			t.Errorf("%T: %+v", in, r)
		}
	}
	if _, r := s.Take(Leave{}, b.clock); !r.Over || r.Writes() {
		t.Errorf("%+v", r)
	}
}

// What was left out at the end of a torn file is told.
func TestTorn(t *testing.T) {
	b := newBench(t, nil)
	s := New(Opening{State: b.s.State(), Torn: "a line was left out"})
	if said := s.Begin(start).Said; !strings.Contains(strings.Join(said, " "),
		"Take care: a line was left out; count the groups at the pegs.") {
		t.Errorf("%q", said)
	}
}
