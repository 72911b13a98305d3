package session

import (
	"fmt"
	"testing"
	"time"

	"millside/counter"
	"millside/plan"
	"millside/plan/times"
	"millside/plan/wind"
)

func unguarded(s *plan.Spec) { s.Guard = 0 }

// Presses faster than a hand can wind count once, are refused with a sound and a word, and never vanish.
func TestFastPressesCountOnce(t *testing.T) {
	b := newBench(t, nil)
	b.press(1)
	for n := range 5 {
		r := b.after(100*time.Millisecond, Press{})
		if r.Cue != CueRefused || r.Short == "" || b.s.Message().Level != Alarm {
			t.Fatalf("%+v", r)
		}
		want := "One press ignored: sooner than 2s after the last."
		if n > 0 {
			want = fmt.Sprintf("%d presses ignored in a row: sooner than 2s after the last.", n+1)
		}
		b.wants(want)
	}
	if b.laid() != 1 {
		t.Errorf("%d passes", b.laid())
	}
	b.after(2*time.Second, Press{})
	b.after(100*time.Millisecond, Press{})
	b.wants("One press ignored: sooner") // a pass that counts begins the row anew
	b.clock = b.clock.Add(-100 * time.Millisecond)
	if b.laid() != 2 {
		t.Errorf("%d passes", b.laid())
	}
}

// Thirty presses in a second take one pass back, and a key that is held down takes no more.
func TestTakeBackIsGuarded(t *testing.T) {
	for _, change := range []func(*plan.Spec){nil, unguarded} {
		b := newBench(t, func(s *plan.Spec) {
			s.Ends = 400
			if change != nil {
				change(s)
			}
		})
		for range 20 {
			b.press(1)
		}
		b.after(time.Second, TakeBack{})
		for range 90 {
			if r := b.after(time.Second/30, TakeBack{}); r.Cue != CueRefused || r.Short == "" {
				t.Fatalf("%+v", r)
			}
		}
		if b.laid() != 19 {
			t.Errorf("%d passes", b.laid())
		}
		b.does(TakeBack{})
		if b.laid() != 18 {
			t.Errorf("%d passes", b.laid())
		}
	}
}

// A pass key held down with the guard off winds on to the end of the chain and no further: no step is ticked and
// nothing is closed.
func TestHeldKeyClosesNothing(t *testing.T) {
	b := newBench(t, unguarded)
	for range 500 {
		b.after(33*time.Millisecond, Press{})
	}
	st := b.s.State()
	if len(st.Chains[0].Ticked) != 0 || st.Finished {
		t.Fatalf("%d steps ticked, finished %v", len(st.Chains[0].Ticked), st.Finished)
	}
	if b.last.Cue != CueRefused {
		t.Errorf("%+v", b.last)
	}
	// Nor does it run through the steps once one is ticked.
	for b.stage() != Finishing {
		b.does(Press{})
	}
	b.does(Press{})
	for range 300 {
		b.after(33*time.Millisecond, Press{})
	}
	if n := len(b.s.State().Chains[0].Ticked); n != 1 {
		t.Errorf("%d steps ticked", n)
	}
	b.after(stepGap, Press{})
	if n := len(b.s.State().Chains[0].Ticked); n != 2 {
		t.Errorf("%d steps ticked", n)
	}
}

// A key held down stops at the work at a peg, and confirms it no sooner than a hand would.
func TestHeldKeyStopsAtThePeg(t *testing.T) {
	b := newBench(t, func(s *plan.Spec) { s.Ends, s.Guard, s.TieEvery = 37, 0, 0 })
	for range 300 {
		b.after(33*time.Millisecond, Press{})
	}
	if b.laid() != 3 || b.stage() != AtPeg {
		t.Errorf("%d passes, stage %d", b.laid(), b.stage())
	}
}

// Right after a mark, an answer or anything else that is no pass, the pass key counts none.
func TestNothingElseLooksLikeAPass(t *testing.T) {
	for _, in := range []Intent{
		Mark{What: counter.MissedOpening}, Mark{What: counter.Knot, Position: 3}, Note{"a few words"}, WrongTurn{},
		TieMade{},
		NewPackage{Position: 2}, Recount{Passes: 3}, TakeBack{}, Answer{Yes}, Foot{wind.FootLast},
	} {
		b := newBench(t, nil)
		b.press(3)
		b.does(in)
		before := b.laid()
		if b.after(time.Second, Press{}); b.laid() != before || b.last.Cue != CueRefused {
			t.Errorf("%T: %d passes, %v", in, b.laid(), b.last.Cue)
		}
		b.does(Pause{}, GoOn{})
		before = b.laid()
		if b.after(time.Second, Press{}); b.laid() != before {
			t.Errorf("%T: a press right after going on counted a pass", in)
		}
	}
}

// One key for a mark pressed twice marks once; two keys mark twice.
func TestMarksAreNotDoubled(t *testing.T) {
	b := newBench(t, nil)
	b.press(1)
	b.does(Mark{What: counter.WrongPeg})
	if r := b.after(300*time.Millisecond, Mark{What: counter.WrongPeg}); r.Cue != CueRefused {
		t.Errorf("%+v", r)
	}
	b.after(300*time.Millisecond, Mark{What: counter.MissedOpening})
	if n := len(b.s.State().Incidents); n != 2 {
		t.Errorf("%d marks", n)
	}
	b.does(WrongTurn{})
	b.after(100*time.Millisecond, WrongTurn{})
	if n := b.s.State().Twist(); n != 1 {
		t.Errorf("twist %d", n)
	}
}

// A press that comes after a long time brings up what must stand on the mill, and the next one goes on without
// counting.
func TestLongBreak(t *testing.T) {
	b := newBench(t, nil)
	b.press(1)
	b.after(LookAfter, Press{})
	if b.laid() != 2 {
		t.Errorf("%d passes after a long pass", b.laid())
	}
	b.does(Answer{Yes})
	b.after(LookAfter+time.Millisecond, Press{})
	b.wants("Not counted: nothing has happened for 11 min; look at the mill first.", "1 group over peg 1")
	if b.laid() != 2 || b.stage() != Looking || b.last.Cue != CueRefused {
		t.Errorf("%d passes, %+v", b.laid(), b.last)
	}
	if b.after(500*time.Millisecond, Press{}); b.last.Cue != CueRefused {
		t.Error("a double press went on without a look")
	}
	b.does(Press{})
	if b.laid() != 2 || b.stage() != Winding {
		t.Errorf("%d passes, stage %d", b.laid(), b.stage())
	}
	b.does(Press{})
	if b.laid() != 3 {
		t.Errorf("%d passes", b.laid())
	}
}

// Work at a peg and finishing steps may take long.
func TestLongWorkIsNoBreak(t *testing.T) {
	b := newBench(t, func(s *plan.Spec) { s.Ends = 37 })
	b.press(3)
	if b.after(time.Hour, Press{}); b.last.Cue != CueConfirmed {
		t.Errorf("%+v", b.last)
	}
	b.press(1)
	if b.after(time.Hour, Press{}); len(b.s.State().Chains[0].Ticked) != 1 {
		t.Errorf("%+v", b.last)
	}
	// Before the first pass nothing stands on the mill that could be looked at.
	b = newBench(t, stripedSpec)
	b.press(1)
	if b.after(time.Hour, Press{}); b.laid() != 1 {
		t.Errorf("%+v", b.last)
	}
}

// What a program sends repeats nothing by itself: there the weaver's guard is all that counts, and off it is off.
func TestPiped(t *testing.T) {
	b := newBench(t, unguarded)
	b.s = New(Opening{State: b.s.State(), Piped: true})
	for range 3 {
		b.after(0, Press{})
	}
	b.after(0, Answer{Yes})
	for b.stage() != Done {
		if b.after(0, Press{}); b.last.Cue == CueRefused {
			t.Fatalf("%+v", b.last)
		}
	}
	b = newBench(t, nil)
	b.s = New(Opening{State: b.s.State(), Piped: true})
	b.after(0, Press{})
	if b.after(time.Second, Press{}); b.laid() != 1 {
		t.Errorf("%d passes", b.laid())
	}
}

// Presses are judged by the time at which the key came, whenever the disk was free.
func TestPressesAreJudgedByTheirTime(t *testing.T) {
	b := newBench(t, nil)
	first, r := b.s.Take(Press{}, start)
	if !r.Writes() || !first.Waiting() {
		t.Fatalf("%+v", r)
	}
	if _, r := first.Take(Press{}, start.Add(3*time.Second)); !r.Waits || r.Writes() {
		t.Errorf("%+v", r)
	}
	b.s = first
	b.save(first, r.Event)
	if _, r := b.s.Take(Press{}, start.Add(1999*time.Millisecond)); r.Cue != CueRefused {
		t.Errorf("%+v", r)
	}
	if _, r := b.s.Take(Press{}, start.Add(2*time.Second)); !r.Writes() {
		t.Errorf("%+v", r)
	}
}

// Coming back is no way round the guard.
func TestGuardOutlivesACrash(t *testing.T) {
	b := newBench(t, func(s *plan.Spec) { s.Guard = times.Guard(5 * time.Second) })
	b.press(1)
	b.reopen()
	b.after(time.Second, GoOn{})
	if b.after(3*time.Second, Press{}); b.laid() != 1 || b.last.Cue != CueRefused {
		t.Errorf("%d passes, %v", b.laid(), b.last.Cue)
	}
	if b.after(time.Second, Press{}); b.laid() != 2 {
		t.Errorf("%d passes, %v", b.laid(), b.last.Cue)
	}
}
