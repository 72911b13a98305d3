package plan_test

import (
	"fmt"
	"testing"

	"millside/plan"
	"millside/plan/wind"

	"pgregory.net/rapid"
)

// seamFacts lays groups of one size by brute force with the given first openings: whether neighbours lie on
// different sides everywhere, and whether they do where the first two groups meet.
func seamFacts(s plan.Spec, openings string, g int) (everywhere, atFirstSeam bool) {
	var overA []bool
	for k := range openings {
		outward := k%2 == 0
		for _, pos := range footToTip(s, outward, g) {
			up := (pos%2 == 1) == (openings[k] == 'h')
			overA = append(overA, up == outward) // up at the peg met first: A outward, B on the return
		}
	}
	return alternates(overA), overA[g-1] != overA[g]
}

// For groups of 1 to 12, both return orders and either end of the paddle at the foot: the openings make
// neighbours alternate within groups and between them; they don't depend on the foot; and where the winder
// lays the return pass in the other order than planned, the seam between the first two groups is wrong
// exactly if the group is even. So the question at the seam tells the orders apart there and only there.
func TestOpeningsAndSeamByBruteForce(t *testing.T) {
	const passes = 6
	for g := 1; g <= 12; g++ {
		for _, order := range []wind.ReturnOrder{wind.SameOrder, wind.MirroredOrder} {
			for _, foot := range []wind.FootPosition{wind.FootFirst, wind.FootLast} {
				t.Run(fmt.Sprintf("group %d, %v, %v at the foot", g, order, foot), func(t *testing.T) {
					s := plan.DefaultSpec()
					s.Ends, s.Group, s.ReturnOrder, s.Foot = g*passes, g, order, foot
					p := must(t, s)
					openings := ""
					for _, pass := range p.Chains[0].Passes {
						openings += string("hs"[pass.FirstOpening])
					}
					if everywhere, _ := seamFacts(s, openings, g); !everywhere {
						t.Errorf("with %s neighbours don't alternate", openings)
					}
					if want := plannedOpenings(t, g, order, passes); openings != want {
						t.Errorf("openings %s, with position 1 at the foot %s", openings, want)
					}
					other := s
					other.ReturnOrder = order.Other()
					if _, seam := seamFacts(other, openings, g); seam == (g%2 == 0) {
						t.Errorf("laid in the other order the seam alternates: %v", seam)
					}
					want := plan.Look{Chain: 1, Pass: 2, Kind: plan.CheckLease}
					switch {
					case g == 1:
						want = plan.Look{}
					case g%2 == 1:
						want.Kind = plan.CheckFoot
					}
					if got := p.LeaseLook(); got != want {
						t.Errorf("the look is %+v, want %+v", got, want)
					}
				})
			}
		}
	}
}

// The lease is looked at after the first return pass with an even number of ends, even on a later chain.
func TestLookAtTheFirstEvenReturn(t *testing.T) {
	for _, tt := range []struct {
		name string
		set  func(*plan.Spec)
		want plan.Look
	}{
		{"even groups", func(s *plan.Spec) { s.Ends, s.Group = 400, 10 },
			plan.Look{Chain: 1, Pass: 2, Kind: plan.CheckLease}},
		{"odd groups, the last pass of 4 returns", func(s *plan.Spec) { s.Ends, s.Group = 31, 9 },
			plan.Look{Chain: 1, Pass: 4, Kind: plan.CheckLease}},
		{"odd groups, the last pass of 4 is outward", func(s *plan.Spec) { s.Ends, s.Group = 22, 9 },
			plan.Look{Chain: 1, Pass: 2, Kind: plan.CheckFoot}},
		{"one pass", func(s *plan.Spec) { s.Ends, s.Group = 10, 10 }, plan.Look{}},
		{"single ends", func(s *plan.Spec) { s.Ends, s.Group = 10, 1 }, plan.Look{}},
		{"the one even return pass is on chain 2", func(s *plan.Spec) { s.Ends, s.Group, s.ChainEnds = 35, 9, 18 },
			plan.Look{Chain: 2, Pass: 2, Kind: plan.CheckLease}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s := plan.DefaultSpec()
			tt.set(&s)
			p := must(t, s)
			if got := p.LeaseLook(); got != tt.want {
				t.Fatalf("got %+v, want %+v", got, tt.want)
			}
			for _, c := range p.Chains {
				for k := range c.Passes {
					asked := false
					for _, task := range p.After(c, k+1) {
						asked = asked || task.Kind == plan.CheckLease || task.Kind == plan.CheckFoot
					}
					if want := tt.want.Chain == c.Number && tt.want.Pass == k+1; asked != want {
						t.Errorf("after chain %d pass %d it is asked: %v", c.Number, k+1, asked)
					}
				}
			}
		})
	}
}

// Which end lies at the foot: that with the lowest number of the group; and the two feet number one group
// the other way about.
func TestFootNumbersTheEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpec(t)
		p := must(t, s)
		end := 0
		for _, c := range p.Chains {
			for k, pass := range c.Passes {
				for i, pos := range footToTip(s, k%2 == 0, pass.Ends()) {
					end++
					if i == 0 && pass.FootPosition() != pos {
						t.Fatalf("pass %d has position %d at the foot, not %d", k+1, pass.FootPosition(), pos)
					}
					if pass.EndAt(pos) != end || pass.PositionOf(end) != pos {
						t.Fatalf("pass %d: position %d lays end %d, want %d", k+1, pos, pass.EndAt(pos), end)
					}
				}
			}
		}
	})
}

// Turning the paddle round keeps the stripes, the lease sound, and is undone by turning it back.
func TestFootKeepsTheStripes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawStriped(t)
		p, turned := must(t, s), must(t, s.WithFoot(s.Foot.Other()))
		for end := 1; end <= s.Ends; end++ {
			if a, b := p.EndColour(end), turned.EndColour(end); a != b {
				t.Fatalf("end %d is of colour %d, turned round of %d", end, a, b)
			}
		}
		if len(turned.LeaseFaults) != 0 {
			t.Fatalf("lease faults: %v", turned.LeaseFaults)
		}
		if p.WorkSum() != turned.WorkSum() {
			t.Fatalf("the work is %+v, turned round %+v", p.WorkSum(), turned.WorkSum())
		}
	})
}

// The lease of a striped warp, whose passes carry any positions among which holes and slots take turns, laid by
// a model of its own: every end lies on the other side from its neighbour, over all passes and chains.
func TestLeaseAlternatesOverStripes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := must(t, drawStriped(t))
		var overA []bool
		for _, c := range p.Chains {
			for k, pass := range c.Passes {
				var positions []int
				for pos := range pass.Carried.All() {
					positions = append(positions, pos)
				}
				outward := k%2 == 0
				for _, i := range footToTip(p.Spec, outward, len(positions)) {
					up := (positions[i-1]%2 == 1) == (pass.FirstOpening == wind.HolesUp)
					overA = append(overA, up == outward) // A is met first on the way out, last on the way back
				}
			}
		}
		if !alternates(overA) {
			t.Fatalf("neighbours lie on the same side: %v", overA)
		}
	})
}
