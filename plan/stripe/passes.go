package stripe

import "millside/plan"

// PlanPasses gives the passes as package plan knows them: which positions each carries, the ends that
// it lays, and the opening to make first, so that every end lies on the other side of the lease from
// its neighbour. Turns and twist are not set: they depend on the weaver's hand, not on the stripes.
// The passes of a one-direction schedule are all outward.
func (s *Schedule) PlanPasses() []plan.Pass {
	list := make([]plan.Pass, len(s.Passes))
	over := false // so that the first end of the warp goes over peg A
	for i, p := range s.Passes {
		list[i] = plan.Pass{
			Number: p.Number, Direction: p.Direction, Carried: p.Carried, Mirrored: p.Mirrored,
			First: p.First, Last: p.Last,
		}
		q := &list[i]
		if q.OverA(q.PositionOf(p.First)) == over {
			q.FirstOpening = q.FirstOpening.Other()
		}
		over = q.OverA(q.PositionOf(p.Last))
	}
	return list
}
