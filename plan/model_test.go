package plan_test

import (
	"slices"

	"millside/plan"
	"millside/plan/wind"

	"pgregory.net/rapid"
)

// drawSpec draws a warp that can be wound. It is kept small, so that a check may lay every end.
func drawSpec(t *rapid.T) plan.Spec {
	s := plan.DefaultSpec()
	s.Positions = rapid.IntRange(1, 24).Draw(t, "positions")
	s.Group = rapid.IntRange(1, s.Positions).Draw(t, "group")
	s.Ends = rapid.IntRange(1, 300).Draw(t, "ends")
	s.Hand = rapid.SampledFrom([]wind.Hand{wind.RightHanded, wind.LeftHanded}).Draw(t, "hand")
	s.ReturnOrder = rapid.SampledFrom([]wind.ReturnOrder{wind.SameOrder, wind.MirroredOrder}).Draw(t, "return order")
	s.Foot = rapid.SampledFrom([]wind.FootPosition{wind.FootFirst, wind.FootLast}).Draw(t, "foot")
	s.LastPass = rapid.SampledFrom([]wind.LastPass{wind.ShortLast, wind.FullLast}).Draw(t, "last pass")
	if rapid.Bool().Draw(t, "several chains") {
		s.ChainEnds = rapid.IntRange(s.Group, 150).Draw(t, "chain ends")
	}
	s.TieEvery = rapid.IntRange(0, 120).Draw(t, "tie every")
	return s
}

// laidEnd is one end as it lies on the model mill.
type laidEnd struct {
	chain, pass, position int
	overA, overB          bool
	over1                 bool // at the counting cross, with its whole group
}

// layModel lays a warp on a mill of the test's own, end by end, from nothing but the order of the
// passes, how many ends each carries, the return order, which position lies at the foot, and the opening
// made first. The ends are listed as they lie on the peg, from its foot to its tip. Whatever else the plan
// says is checked against this.
//
// The physics: an opening lifts the odd positions (holes) or the even ones (slots). What is up goes over
// the peg, what is down goes under it. Outward the group comes to peg A and then to B, on the return to B
// and then to A, with the other opening at the second. Outward it climbs over peg 1 of the counting cross
// and dives under peg 2, on the return the other way about.
func layModel(p *plan.Plan) []laidEnd {
	var warp []laidEnd
	for c, chain := range p.Chains {
		for k, pass := range chain.Passes {
			outward := k%2 == 0
			group := make([]laidEnd, pass.Ends())
			for i := range group {
				pos := footToTip(p.Spec, outward, len(group))[i]
				up := pos%2 == 1 // with the holes up
				if pass.FirstOpening == wind.SlotsUp {
					up = !up
				}
				e := laidEnd{chain: c + 1, pass: k + 1, position: pos, over1: outward}
				if outward {
					e.overA, e.overB = up, !up
				} else {
					e.overA, e.overB = !up, up
				}
				group[i] = e
			}
			warp = append(warp, group...)
		}
	}
	return warp
}

// footToTip lists the positions of a group of 1 to n as its ends lie on the peg.
func footToTip(s plan.Spec, outward bool, n int) []int {
	var out []int
	for i := range n {
		out = append(out, i+1)
	}
	if s.Foot == wind.FootLast {
		slices.Reverse(out)
	}
	if !outward && s.ReturnOrder == wind.MirroredOrder {
		slices.Reverse(out) // the other way about than on the way out
	}
	return out
}

// must works out a plan that the test knows to be sound.
func must(t interface {
	Helper()
	Fatalf(string, ...any)
}, s plan.Spec) *plan.Plan {
	t.Helper()
	p, err := plan.New(s)
	if err != nil {
		t.Fatalf("New(%+v): %v", s, err)
	}
	return p
}
