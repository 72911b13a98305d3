package session

import (
	"slices"
	"strings"
	"testing"

	"millside/counter"
	"millside/plan"
	"millside/plan/wind"
)

func short37(s *plan.Spec) { s.Ends, s.TieEvery = 37, 0 } // three passes of ten and one of seven

// Work at a peg is announced one pass ahead, has a page of its own and another sound, and its press counts no pass.
func TestWorkAtThePeg(t *testing.T) {
	b := newBench(t, short37)
	b.press(2)
	b.does(Answer{Yes})
	b.wants("Next: ", "stop at the far end peg: cut off 3 ends; there the pass key confirms the work")
	b.press(1)
	if b.stage() != AtPeg || b.last.Cue != CueStop || b.laid() != 3 {
		t.Fatalf("stage %d, %+v", b.stage(), b.last)
	}
	b.wants("Stop at the far end peg before pass 4: cut off 3 ends.", "Cut off positions 8 to 10.",
		"Positions 1 to 7 stay as they are.",
		"The pass key confirms that it is done, and counts no pass.")
	stop, ok := b.s.Stop()
	if !ok || stop.Work.Peg != wind.FarPeg || stop.Work.Cut.Count() != 3 {
		t.Errorf("%+v", stop)
	}
	b.reopen()
	b.does(Press{}) // go on
	if b.stage() != AtPeg {
		t.Errorf("forgotten after a crash: stage %d", b.stage())
	}
	b.press(1)
	if b.stage() != Winding || b.last.Cue != CueConfirmed || b.laid() != 3 {
		t.Fatalf("stage %d, %+v", b.stage(), b.last)
	}
	b.wants("leave out positions 8 to 10", "last pass: 7 ends")
	b.reopen()
	b.does(Press{})
	if b.stage() != Winding {
		t.Errorf("asked again after a crash: stage %d", b.stage())
	}
	b.press(1)
	if b.laid() != 4 || b.stage() != Finishing {
		t.Errorf("%d passes, stage %d", b.laid(), b.stage())
	}
}

// Taking back goes the way that winding came: the confirmation first, then the pass before it; and forward again.
func TestWorkIsTakenBack(t *testing.T) {
	b := newBench(t, short37)
	b.press(4)
	if b.laid() != 3 || b.stage() != Winding {
		t.Fatalf("%d passes, stage %d", b.laid(), b.stage())
	}
	b.does(TakeBack{})
	b.wants("The work before pass 4 is taken back.", "Cut off positions 8 to 10.")
	if b.laid() != 3 || b.stage() != AtPeg {
		t.Fatalf("%d passes, stage %d", b.laid(), b.stage())
	}
	b.does(TakeBack{})
	if b.laid() != 2 {
		t.Errorf("%d passes", b.laid())
	}
	b.does(Redo{})
	if b.laid() != 3 || b.stage() != AtPeg {
		t.Errorf("%d passes, stage %d", b.laid(), b.stage())
	}
	b.does(Redo{})
	b.wants("The work before pass 4 is done again.")
	if b.laid() != 3 || b.stage() != Winding {
		t.Errorf("%d passes, stage %d", b.laid(), b.stage())
	}
	b.does(Redo{})
	if b.last.Cue != CueRefused {
		t.Errorf("%+v", b.last)
	}
}

// After a recount what the paddle holds counts, and not what the plan had in it.
func TestWorkAfterARecount(t *testing.T) {
	b := newBench(t, short37)
	b.press(2)
	b.does(Answer{Yes})
	b.press(3)
	if b.laid() != 4 {
		t.Fatalf("%d passes", b.laid())
	}
	b.does(Recount{Passes: 2, Reason: "pressed too often"})
	if b.stage() != AtPeg {
		t.Fatalf("stage %d", b.stage())
	}
	b.wants("Tie on positions 8 to 10.")
	b.press(2)
	if b.laid() != 3 || b.stage() != AtPeg {
		t.Errorf("%d passes, stage %d", b.laid(), b.stage())
	}
	b.wants("Cut off positions 8 to 10.")
}

// A striped warp is threaded before its first pass, and changed at the peg where the paddle stands.
func TestStripedWork(t *testing.T) {
	b := newBench(t, stripedSpec)
	if b.stage() != AtPeg {
		t.Fatalf("stage %d", b.stage())
	}
	b.wants("Thread positions 1, 2, 4 with", "Thread position 3 with")
	b.press(1)
	if b.laid() != 0 || b.stage() != Winding {
		t.Fatalf("%d passes, stage %d", b.laid(), b.stage())
	}
	b.press(3)
	if b.laid() != 3 || b.stage() != AtPeg {
		t.Fatalf("%d passes, stage %d", b.laid(), b.stage())
	}
	stop, _ := b.s.Stop()
	if w := stop.Work; w.Peg != wind.FarPeg || w.Cut.String() != "3, 4" || w.Tie.String() != "3, 4" ||
		len(w.Thread) != 2 || w.Stay.String() != "1, 2" {
		t.Errorf("%+v", stop.Work)
	}
	verbs := []string{}
	for _, l := range stop.Lines {
		verbs = append(verbs, l.Verb)
	}
	if !slices.Equal(verbs, []string{"cut off", "thread", "thread", "tie on"}) {
		t.Errorf("%v", verbs)
	}
}

// On a later chain the group is tied on anew, and what is left out of a short pass is said there too.
func TestLaterChain(t *testing.T) {
	b := newBench(t, func(s *plan.Spec) { s.Ends, s.ChainEnds = 34, 20 })
	chain2 := b.plan.Chains[1]
	toChain2(b)
	b.wants("tie the group on at the near end peg", "Pass 1 of")
	for b.s.State().Laid() < len(chain2.Passes)-1 {
		b.press(1)
	}
	left := b.plan.LeftOut(chain2.Passes[len(chain2.Passes)-1])
	if left == 0 {
		t.Fatal("nothing is left out: another warp is needed for this test")
	}
	b.wants("Cut off positions " + left.String())
	b.press(1)
	b.wants("leave out positions " + left.String())
	in, _ := b.s.Instruction(b.clock)
	if !slices.ContainsFunc(in.Now, func(i Item) bool { return i.Kind == ItemCarry }) || in.LeftOut != left {
		t.Errorf("%+v", in.Now)
	}
}

// toChain2 winds the first chain and ties it off.
func toChain2(b *bench) {
	b.t.Helper()
	for i := 0; b.s.State().Chain == 1; i++ {
		if i > 100 {
			b.t.Fatal("chain 1 never ends")
		}
		b.press(1)
	}
}

// At the beginning of a later chain taking back takes the last step of the chain before back; at the very beginning
// there is nothing.
func TestTakeBackAtPassNought(t *testing.T) {
	b := newBench(t, func(s *plan.Spec) { s.Ends, s.ChainEnds = 40, 20 })
	b.does(TakeBack{})
	b.wants("Nothing to take back: no pass is laid.")
	toChain2(b)
	b.does(TakeBack{})
	b.wants("The step is taken back.", "Pass the last loop over")
	if st := b.s.State(); st.Chain != 1 {
		t.Errorf("chain %d", st.Chain)
	}
	b.does(Redo{})
	if st := b.s.State(); st.Chain != 2 {
		t.Errorf("chain %d", st.Chain)
	}
}

// Between steps there is a guard, and a closed record is opened again by its weaver, with a reason.
func TestFinishingAndReopening(t *testing.T) {
	b := newBench(t, func(s *plan.Spec) { s.Ends, s.TieEvery = 20, 0 })
	b.press(2)
	b.does(Answer{Yes})
	steps := len(b.s.State().Steps())
	b.does(Press{})
	for i := 2; i <= steps; i++ {
		if b.after(stepGap-1, Press{}); b.last.Cue != CueRefused {
			t.Fatalf("step %d was ticked too soon", i)
		}
		b.after(stepGap, Press{})
	}
	if n := len(b.s.State().Chains[0].Ticked); n != steps {
		t.Fatalf("%d of %d steps", n, steps)
	}
	b.does(StepDone{})
	if b.stage() != Done {
		t.Fatalf("stage %d", b.stage())
	}
	for _, in := range []Intent{Press{}, TakeBack{}, Redo{}, Pause{}, Recount{}, Answer{Yes},
		Mark{What: counter.WrongPeg}, Reopen{}} {
		if b.does(in); b.last.Cue != CueRefused || b.last.Short == "" || !b.s.State().Finished {
			t.Errorf("%T: %+v", in, b.last)
		}
	}
	b.does(Reopen{})
	b.wants("Say why the record is opened again")
	b.does(Reopen{"the label was wrong"})
	st := b.s.State()
	if st.Finished || len(st.Reopened) != 1 || b.stage() != Finishing {
		t.Fatalf("stage %d, %+v", b.stage(), st.Reopened)
	}
	b.does(TakeBack{})
	if n := len(b.s.State().Chains[0].Ticked); n != steps-1 {
		t.Errorf("%d steps", n)
	}
	b.press(2)
	if b.stage() != Done {
		t.Errorf("stage %d", b.stage())
	}
	b.reopen()
	if b.stage() != Done {
		t.Errorf("stage %d", b.stage())
	}
}

// What is left out of a short pass is spoken where it is new, and the last pass has a sound of its own.
func TestLastPassIsHeard(t *testing.T) {
	b := newBench(t, short37)
	b.press(4) // the question is passed over; the last press confirms the work
	if want := "Leave out positions 8 to 10."; !strings.Contains(b.last.Short, want) {
		t.Errorf("not spoken: %q, but %q", want, b.last.Short)
	}
	b = newBench(t, func(s *plan.Spec) { s.Ends, s.TieEvery = 40, 0 })
	if b.press(3); b.last.Cue != CueLastPass {
		t.Errorf("cue %v", b.last.Cue)
	}
}
