package session

import (
	"slices"
	"strings"
	"testing"

	"millside/counter"
	"millside/plan"
	"millside/plan/sheet"
	"millside/plan/wind"
)

// The look at the lease is announced one pass ahead, rings, and eats no press: the pass key counts the next
// pass and the question stays open as a reminder until it is answered.
func TestQuestionEatsNoPress(t *testing.T) {
	b := newBench(t, func(s *plan.Spec) { s.Ends, s.TieEvery = 100, 0 })
	b.press(1)
	b.wants("Next: a look at the lease")
	b.press(1)
	if b.last.Cue != CueLook || b.stage() != AtQuestion {
		t.Fatalf("%+v", b.last)
	}
	b.wants("do the neighbours alternate there", "The pass key counts the next pass; the question stays open.")
	b.press(1)
	if b.laid() != 3 || b.stage() != Winding || b.s.State().LeaseSeen {
		t.Fatalf("%d passes, stage %d", b.laid(), b.stage())
	}
	b.wants("The look at the lease is open")
	b.press(3)
	b.wants("The look at the lease is open")
	b.does(Answer{Yes})
	b.wants("The lease is as planned.")
	if in, _ := b.s.Instruction(b.clock); len(in.Reminders) != 0 || !b.s.State().LeaseSeen {
		t.Errorf("%+v", in.Reminders)
	}
	b.does(Answer{Other})
	if b.last.Cue != CueRefused || b.s.State().Plan.Spec.ReturnOrder != wind.SameOrder {
		t.Errorf("a second answer was taken: %+v", b.last)
	}
}

// Put off, the question has no page any more, also after a crash, but for when its pass is wound anew.
func TestQuestionPutOff(t *testing.T) {
	b := newBench(t, nil)
	b.press(2)
	b.does(Answer{Later})
	if b.stage() != Winding {
		t.Fatalf("stage %d", b.stage())
	}
	b.wants("The look at the lease stays open.", "Pass 3 of 4")
	b.reopen()
	b.does(Press{})
	if b.stage() != Winding {
		t.Errorf("asked again after a crash: stage %d", b.stage())
	}
	b.does(TakeBack{}, Press{})
	if b.stage() != AtQuestion {
		t.Errorf("stage %d", b.stage())
	}
}

// Where there is work at the peg, or the chain is wound, the pass key on the question puts it off.
func TestQuestionBeforeAStop(t *testing.T) {
	b := newBench(t, func(s *plan.Spec) { s.Ends = 25 })
	b.press(2)
	if b.stage() != AtQuestion {
		t.Fatalf("stage %d", b.stage())
	}
	b.wants("The pass key puts it off, and the work at the peg comes up.")
	b.press(1)
	if b.stage() != AtPeg || b.laid() != 2 || b.last.Cue != CueStop && b.last.Cue != CueConfirmed {
		t.Errorf("stage %d, %+v", b.stage(), b.last)
	}
	b.wants("Cut off positions 6 to 10.")
	b = newBench(t, func(s *plan.Spec) { s.Ends = 20 })
	b.press(2)
	b.wants("the finishing begins")
	b.press(1)
	if b.stage() != Finishing {
		t.Errorf("stage %d", b.stage())
	}
}

// In the other order a pass that lies had the wrong opening first. It is laid anew, or the fault stays on the record.
func TestOtherOrder(t *testing.T) {
	b := newBench(t, nil)
	b.press(2)
	b.does(Answer{Other})
	b.wants("Return passes lie in the mirrored order from here on",
		"pass 2 had the wrong opening first: take it back and lay it anew")
	in, _ := b.s.Instruction(b.clock)
	if len(in.Now) == 0 || in.Now[0].Kind != ItemOpening {
		t.Errorf("%+v", in.Now)
	}
	b.does(TakeBack{})
	in, _ = b.s.Instruction(b.clock)
	if in.Pass.Number != 2 || len(b.s.State().Chains[0].WrongOpenings) != 0 {
		t.Errorf("pass %d, %v", in.Pass.Number, b.s.State().Chains[0].WrongOpenings)
	}
	b.does(Redo{})
	if got := b.s.State().Chains[0].WrongOpenings; len(got) != 1 || got[0] != 2 {
		t.Errorf("brought back: %v", got)
	}
	b.does(TakeBack{}, Press{})
	if got := b.s.State().Chains[0].WrongOpenings; len(got) != 0 || b.stage() == AtQuestion {
		t.Errorf("laid anew: %v, stage %d", got, b.stage())
	}

	b = newBench(t, func(s *plan.Spec) { s.Ends = 100 })
	b.press(2)
	b.does(Answer{Other}, Press{}, Press{})
	if got := b.s.State().Chains[0].WrongOpenings; len(got) != 1 || got[0] != 2 {
		t.Errorf("wound on: %v", got)
	}
	if part := counter.HandOver(b.s.State(), slices.Values(b.events)); !strings.Contains(rows(part), "pass 2") {
		t.Errorf("not on the hand-over:\n%s", rows(part))
	}

	// Answered late, every return pass that lies is at fault.
	b = newBench(t, func(s *plan.Spec) { s.Ends = 100 })
	b.press(5)
	b.does(Answer{Other})
	b.wants("passes 2, 4 had the wrong opening first")
}

func rows(part sheet.Part) string {
	var all []string
	for _, r := range part.Rows {
		all = append(all, r.Name+": "+r.Value.String())
	}
	return strings.Join(all, "\n")
}

// stripedSpec is four passes of four ends; in the other order the passes are others.
func stripedSpec(s *plan.Spec) {
	s.Ends, s.Group, s.Positions, s.TieEvery = 16, 4, 4, 0
	pass := func(setUp int) plan.ScheduledPass {
		return plan.ScheduledPass{Carried: wind.FirstPositions(4), SetUp: setUp}
	}
	s.Stripes = "16 ends of two colours"
	colours := []plan.StripeColour{{Name: "white"}, {Name: "blue"}}
	s.Schedule = &plan.Schedule{Colours: colours, SetUps: []plan.SetUp{{1, 1, 2, 1}, {1, 1, 1, 2}},
		Passes: []plan.ScheduledPass{pass(1), pass(1), pass(1), pass(2)}}
	s.Other = &plan.Schedule{Colours: colours,
		SetUps: []plan.SetUp{{1, 1, 2, 1}, {1, 2, 1, 1}, {1, 1, 2, 1}, {2, 1, 1, 1}},
		Passes: []plan.ScheduledPass{pass(1), pass(2), pass(3), pass(4)}}
}

// A striped warp in the other order has other passes: the count goes down to what is right in both, and what is said
// names the pass that is to be laid anew, which is the one that the screen shows then. Taking back takes none of them.
func TestOtherOrderOfStripes(t *testing.T) {
	b := newBench(t, stripedSpec)
	b.press(3) // the threading, and two passes
	if b.laid() != 2 {
		t.Fatalf("%d passes", b.laid())
	}
	b.does(Answer{Other})
	b.wants("take off what lies beyond pass 1, and lay pass 2 anew")
	if strings.Contains(strings.Join(b.last.Said, " "), "take it back") {
		t.Errorf("it says to take back what is off the count already: %q", b.last.Said)
	}
	if b.laid() != 1 || b.stage() != AtPeg {
		t.Fatalf("%d passes, stage %d", b.laid(), b.stage())
	}
	b.wants("Thread position 2 with", "in place of")
	b.does(Press{}, Press{})
	if b.laid() != 2 {
		t.Errorf("%d passes", b.laid())
	}
}

// Where many passes of a striped warp would have to come off, the answer is taken when it is given twice.
func TestOtherOrderOfManyStripes(t *testing.T) {
	b := newBench(t, stripedSpec)
	b.press(5) // the threading, three passes, and the work before the fourth
	if b.laid() != 3 {
		t.Fatalf("%d passes", b.laid())
	}
	b.does(Answer{Other})
	if b.laid() != 3 || b.last.Cue != CueRefused || b.s.State().LeaseSeen {
		t.Fatalf("%d passes, %+v", b.laid(), b.last)
	}
	b.wants("2 passes would have to come off; answer once more if it is so")
	b.does(Mark{What: counter.WrongPeg}, Answer{Other})
	if b.laid() != 3 {
		t.Error("something else came between, and the answer was taken")
	}
	b.does(Answer{Other})
	if b.laid() != 1 {
		t.Errorf("%d passes", b.laid())
	}
}

// With odd groups the seam is right either way, so it is asked where position 1 lies.
func TestFootQuestion(t *testing.T) {
	b := newBench(t, func(s *plan.Spec) { s.Ends, s.Group = 45, 9 })
	b.press(2)
	if b.stage() != AtQuestion {
		t.Fatalf("stage %d", b.stage())
	}
	b.wants("does its position 1 lie at the foot of the peg?")
	b.does(Answer{Other})
	st := b.s.State()
	if st.Plan.Spec.ReturnOrder != wind.MirroredOrder || len(st.Chains[0].WrongOpenings) != 0 {
		t.Errorf("%v, %v", st.Plan.Spec.ReturnOrder, st.Chains[0].WrongOpenings)
	}
	b = newBench(t, func(s *plan.Spec) { s.Ends, s.Group, s.ReturnOrder = 45, 9, wind.MirroredOrder })
	b.press(2)
	b.wants("does its position 1 lie at the tip?")
	b = newBench(t, func(s *plan.Spec) { s.Ends, s.Group, s.Foot = 45, 9, wind.FootLast })
	b.press(2)
	b.wants("does its position 1 lie at the tip?")
}

// Pass 1 says which position goes to the foot of the peg, and it can be told that it is the other one.
func TestFoot(t *testing.T) {
	b := newBench(t, nil)
	b.last = b.s.Begin(b.clock)
	b.wants("position 1 goes to the foot of the peg")
	b.does(Foot{wind.FootLast})
	b.wants("position 10 lies at the foot of the peg", "position 10 goes to the foot of the peg")
	b.does(Press{}, Mark{What: counter.Knot, Position: 10, Pass: 1})
	b.wants("position 10, end 1: knot")
	b = newBench(t, stripedSpec)
	b.does(Foot{wind.FootLast})
	if b.last.Cue != CueRefused {
		t.Errorf("%+v", b.last)
	}
}

// The seam shows the last ends of one group and the first of the next: as planned they alternate on peg A, and in the
// other order the two that meet lie on the same side. That is what makes it a question worth asking.
func TestSeam(t *testing.T) {
	for _, group := range []int{2, 4, 6, 10} {
		for _, order := range []wind.ReturnOrder{wind.SameOrder, wind.MirroredOrder} {
			for _, foot := range []wind.FootPosition{wind.FootFirst, wind.FootLast} {
				b := newBench(t, func(s *plan.Spec) {
					s.Ends, s.Group, s.ReturnOrder, s.Foot = 4*group, group, order,
						foot
				})
				b.press(2)
				q, ok := b.s.Question()
				if !ok || q.Foot || q.Pass != 2 {
					t.Fatalf("%+v", q)
				}
				all := append(append([]SeamEnd{}, q.Seam.First...), q.Seam.Second...)
				for i := range all[1:] {
					if all[i].OverA == all[i+1].OverA {
						t.Errorf("group %d, %s, foot %s: as planned %+v", group, order, foot, all)
					}
				}
				if last := q.Seam.First[len(q.Seam.First)-1]; last.OverA != q.Seam.Turned[0].OverA {
					t.Errorf("group %d, %s, foot %s: turned %+v", group, order, foot, q.Seam)
				}
			}
		}
	}
}
