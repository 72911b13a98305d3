package plan_test

import (
	"slices"
	"testing"

	"millside/plan"
	"millside/plan/wind"

	"pgregory.net/rapid"
)

// drawScheduled draws a warp of one colour whose passes carry any positions in which holes and slots take turns, so
// that the lowest one is as often a slot as a hole.
func drawScheduled(t *rapid.T) plan.Spec {
	s := plan.DefaultSpec()
	s.Stripes, s.Ends, s.Group, s.Positions = "by hand", 0, 1, rapid.IntRange(2, 14).Draw(t, "positions")
	s.ReturnOrder = rapid.SampledFrom([]wind.ReturnOrder{wind.SameOrder, wind.MirroredOrder}).Draw(t, "return order")
	s.Foot = rapid.SampledFrom([]wind.FootPosition{wind.FootFirst, wind.FootLast}).Draw(t, "foot")
	set := make(plan.SetUp, s.Positions)
	for i := range set {
		set[i] = 1
	}
	s.Schedule = &plan.Schedule{Colours: []plan.StripeColour{{Name: "blue"}}, SetUps: []plan.SetUp{set}}
	for range rapid.IntRange(1, 12).Draw(t, "passes") {
		carried, last := wind.Positions(0), 0
		for pos := rapid.IntRange(1, s.Positions).Draw(t, "lowest"); pos <= s.Positions; pos++ {
			if last == 0 || (pos-last)%2 == 1 && rapid.Bool().Draw(t, "carried") {
				carried, last = carried|wind.Span(pos, pos), pos
			}
		}
		s.Schedule.Passes = append(s.Schedule.Passes, plan.ScheduledPass{Carried: carried, SetUp: 1})
		s.Ends += carried.Count()
		s.Group = max(s.Group, carried.Count())
	}
	return s
}

// Where the lowest position that is carried is a slot, the opening that the plan names still lays every end on the
// other side of the lease from its neighbour, laid end by end on the model mill of this test: an opening lifts the odd
// positions or the even ones, what is up goes over the first peg and under the second. And the first pass begins
// with its lowest position up: the holes if that is odd, else the slots.
func TestOpeningsOfEvenLowestPositions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawScheduled(t)
		p := must(t, s)
		var sides []bool
		for k, pass := range p.Chains[0].Passes {
			outward := k%2 == 0
			order := slices.Collect(s.Schedule.Passes[k].Carried.All())
			if s.Foot == wind.FootLast {
				slices.Reverse(order)
			}
			if !outward && s.ReturnOrder == wind.MirroredOrder {
				slices.Reverse(order)
			}
			for _, pos := range order {
				up := (pos%2 == 1) == (pass.FirstOpening == wind.HolesUp)
				overA := up == outward // a return pass meets B first
				if pass.OverA(pos) != overA {
					t.Fatalf("pass %d, position %d: the plan says over A is %v", k+1, pos, pass.OverA(pos))
				}
				sides = append(sides, overA)
			}
		}
		for i := 1; i < len(sides); i++ {
			if sides[i] == sides[i-1] {
				t.Fatalf("ends %d and %d lie on the same side of the lease", i, i+1)
			}
		}
		first := p.Chains[0].Passes[0]
		if lowest := first.Carried.First(); (lowest%2 == 1) != (first.FirstOpening == wind.HolesUp) {
			t.Fatalf("pass 1 carries %s and begins with %s", first.Carried, first.FirstOpening)
		}
	})
}
