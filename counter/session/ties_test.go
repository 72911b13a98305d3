package session

import (
	"strings"
	"testing"

	"millside/counter"
	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/measure"
)

// hundred is a warp of 300 ends by ten with a tie every hundred: due after passes 11 and 21.
func hundred(s *plan.Spec) { s.Ends, s.TieEvery = 300, 100 }

func (b *bench) windTo(pass int) {
	b.t.Helper()
	for i := 0; b.laid() < pass; i++ {
		if i > 2*pass+5 {
			b.t.Fatalf("stuck at %d passes: %q", b.laid(), b.last.Said)
		}
		if b.s.asks() {
			b.does(Answer{Yes})
		}
		b.press(1)
	}
}

// A count tie is announced one pass ahead, rings when the hands are there, and stays until it is confirmed.
func TestCountTie(t *testing.T) {
	b := newBench(t, hundred)
	b.windTo(10)
	b.wants("Next: count tie at the counting cross")
	if b.last.Cue != CueReturn {
		t.Errorf("cue %v", b.last.Cue)
	}
	b.press(1)
	if b.last.Cue != CueLook {
		t.Errorf("no bell for the tie: %v", b.last.Cue)
	}
	b.wants("Count tie at the counting cross", "100 ends")
	if !strings.HasPrefix(b.last.Short, "Count tie, 100 ends.") {
		t.Errorf("spoken: %q", b.last.Short)
	}
	b.press(3)
	b.wants("Count tie at the counting cross", "100 ends")
	if b.last.Cue == CueLook || strings.Contains(b.last.Short, "Count tie") {
		t.Errorf("it is heard at every pass: %v, %q", b.last.Cue, b.last.Short)
	}
	b.does(TieMade{})
	b.wants("Count tie noted: 100 ends in 10 groups.")
	if _, ok := b.s.DueTie(); ok {
		t.Error("still due")
	}
	ties := b.s.State().Ties
	if len(ties) != 1 || ties[0].Pass != 10 || ties[0].Ends != 100 {
		t.Errorf("%+v", ties)
	}
	b.does(TieMade{})
	if b.last.Cue == CueRefused || b.s.State().Ties[1].Pass != 12 {
		t.Errorf("a tie of one's own: %+v", b.s.State().Ties)
	}
	b.does(TieMade{})
	if b.last.Cue != CueRefused {
		t.Errorf("the same groups are tied twice: %+v", b.s.State().Ties)
	}
}

// A tie can be waved off and taken back; taken back it is due again.
func TestTieOffAndBack(t *testing.T) {
	b := newBench(t, hundred)
	b.does(TieOff{})
	if b.last.Cue != CueRefused {
		t.Errorf("%+v", b.last)
	}
	b.windTo(11)
	b.does(TieMade{}, TieBack{})
	b.wants("The count tie of 100 ends is taken back.")
	if _, ok := b.s.DueTie(); !ok || len(b.s.State().Ties) != 0 {
		t.Error("it isn't due any more")
	}
	b.does(TieOff{})
	b.wants("The count tie of 100 ends is waved off.")
	if _, ok := b.s.DueTie(); ok {
		t.Error("it is still due")
	}
	b.does(TieBack{})
	if b.last.Cue != CueRefused {
		t.Errorf("%+v", b.last)
	}
	b.windTo(21)
	if tie, ok := b.s.DueTie(); !ok || tie.Total != 200 {
		t.Errorf("%+v", tie)
	}
}

// A recount says from which tie it counts.
func TestRecountNamesTheTie(t *testing.T) {
	b := newBench(t, hundred)
	b.windTo(14)
	b.does(TieMade{}, Recount{Passes: 13})
	b.wants("The count was 14, now it is 13; the last count tie holds 100 ends, so 3 groups loose.")
	if r := b.s.State().Recounts[0]; r.Reason != CountedOnPegs || r.From != 14 || r.To != 13 {
		t.Errorf("%+v", r)
	}
	seen := counter.NothingSeen()
	seen.OverPeg1 = 6
	b.does(Recount{Passes: 12, Reason: "pressed twice", Seen: seen})
	if r := b.s.State().Recounts[1]; r.Reason != "pressed twice (6 over peg 1, - over peg 2)" {
		t.Errorf("%+v", r)
	}
	b.does(Recount{Passes: 31})
	if b.last.Cue != CueRefused {
		t.Errorf("%+v", b.last)
	}
}

// Two ties that were never confirmed are both due, the first one first.
func TestTiesLeftBehind(t *testing.T) {
	b := newBench(t, hundred)
	b.windTo(22)
	b.does(TieMade{})
	b.wants("100 ends in 10 groups")
	b.does(TieMade{})
	b.wants("200 ends in 20 groups")
}

// The choke ties of a short warp stand a third of its length from the cross, so that half of it is not between them.
func TestChokeTies(t *testing.T) {
	b := newBench(t, func(s *plan.Spec) { s.Ends, s.Length, s.Mill.PegStep = 20, 60*measure.Inch, measure.Inch })
	b.windTo(2)
	for range 20 {
		if step, _ := b.s.State().NextStep(); step.ID == finishing.StepNearChoke {
			if !strings.Contains(step.Detail, "20 in") {
				t.Errorf("%q", step.Detail)
			}
			return
		}
		b.press(1)
	}
	t.Fatal("no choke tie")
}
