package plan_test

import (
	"fmt"
	"testing"

	"millside/plan"
	"millside/plan/wind"

	"pgregory.net/rapid"
)

// Every end of the warp lies on the other side of the lease from its neighbour, and where the plan says.
func TestLeaseAlternatesOverTheWholeWarp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := must(t, drawSpec(t))
		warp := layModel(p)
		for i, e := range warp {
			if i > 0 && e.overA == warp[i-1].overA {
				t.Fatalf("ends %d and %d lie over the same lease peg", i, i+1)
			}
			if e.overA == e.overB {
				t.Fatalf("end %d is over both lease pegs or none", i+1)
			}
			pass := p.Chains[e.chain-1].Passes[e.pass-1]
			if pass.OverA(e.position) != e.overA {
				t.Fatalf("OverA(%d) of chain %d pass %d differs from the model", e.position, e.chain, e.pass)
			}
		}
		if len(p.LeaseFaults) != 0 {
			t.Fatalf("a group of neighbouring positions has lease faults: %v", p.LeaseFaults)
		}
		if p.Chains[0].Passes[0].FirstOpening != wind.HolesUp {
			t.Fatalf("the first pass doesn't begin with the holes up")
		}
	})
}

// The openings over the two pegs are the two openings, the first over the peg that the group meets first.
func TestOpeningsByPeg(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := must(t, drawSpec(t))
		for _, c := range p.Chains {
			for k, pass := range c.Passes {
				first := wind.PegA
				if k%2 == 1 {
					first = wind.PegB
				}
				if pass.FirstPeg() != first || pass.OpeningAt(first) != pass.FirstOpening ||
					pass.OpeningAt(first.Other()) != pass.FirstOpening.Other() {
					t.Fatalf("pass %d: first peg %v, first opening %v, A %v, B %v", k+1,
						pass.FirstPeg(), pass.FirstOpening, pass.OpeningAt(wind.PegA), pass.OpeningAt(wind.PegB))
				}
			}
		}
	})
}

// Whole groups alternate at the counting cross: half of them over peg 1, the odd one too.
func TestCountingCrossAlternates(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := must(t, drawSpec(t))
		for _, c := range p.Chains {
			over1, over2 := 0, 0
			for i, pass := range c.Passes {
				k := i + 1
				switch {
				case pass.CrossOver() == 1 && pass.CrossUnder() == 2 && k%2 == 1:
					over1++
				case pass.CrossOver() == 2 && pass.CrossUnder() == 1 && k%2 == 0:
					over2++
				default:
					t.Fatalf("pass %d goes over %d and under %d", k, pass.CrossOver(), pass.CrossUnder())
				}
				if over1 != (k+1)/2 || over2 != k/2 {
					t.Fatalf("after %d passes %d lie over peg 1 and %d over peg 2", k, over1, over2)
				}
			}
		}
	})
}

// The group never carries more than half a turn of twist, and none once a bout is done.
func TestTwistCancels(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpec(t)
		for _, c := range must(t, s).Chains {
			twist := wind.HalfTurns(0)
			for i, pass := range c.Passes {
				if pass.TurnAfter == wind.Clockwise {
					twist++
				} else {
					twist--
				}
				far := i%2 == 0
				if twist < -1 || twist > 1 || (!far && twist != 0) || pass.Twist != twist {
					t.Fatalf("pass %d: %d half turns on the model, %d in the plan", i+1, twist, pass.Twist)
				}
				// design.md: counterclockwise at the far peg, a left-handed layout swaps both.
				want := wind.Clockwise
				if far == (s.Hand == wind.RightHanded) {
					want = wind.Counterclockwise
				}
				if pass.TurnAfter != want {
					t.Fatalf("pass %d turns %v with the %v hand", i+1, pass.TurnAfter, s.Hand)
				}
			}
		}
	})
}

// The table "Order and openings" of the project's fact sheet, worked out there by brute force and here
// again: of all sequences of first openings for a small warp only two give a lease that alternates, one
// the other's opposite, and the engine takes the one that begins with the holes up.
func TestOpeningTableByBruteForce(t *testing.T) {
	for g := 1; g <= 7; g++ {
		for _, order := range []wind.ReturnOrder{wind.SameOrder, wind.MirroredOrder} {
			for passes := 1; passes <= 7; passes++ {
				t.Run(fmt.Sprintf("group %d %v, %d passes", g, order, passes), func(t *testing.T) {
					sound := soundOpenings(g, passes, order == wind.MirroredOrder)
					if len(sound) != 2 {
						t.Fatalf("%d sequences alternate, not two", len(sound))
					}
					want := sound[0]
					if want[0] != 'h' {
						want = sound[1]
					}
					if table := openingTable(g, order, passes); want != table {
						t.Errorf("brute force gives %s, the table %s", want, table)
					}
					if got := plannedOpenings(t, g, order, passes); got != want {
						t.Errorf("the engine gives %s, want %s", got, want)
					}
				})
			}
		}
	}
}

// openingTable is the fact sheet's table: even groups in the same order take holes and slots in turn,
// all others the holes every time.
func openingTable(g int, order wind.ReturnOrder, passes int) string {
	var b []byte
	for k := range passes {
		if g%2 == 0 && order == wind.SameOrder && k%2 == 1 {
			b = append(b, 's')
		} else {
			b = append(b, 'h')
		}
	}
	return string(b)
}

func plannedOpenings(t *testing.T, g int, order wind.ReturnOrder, passes int) string {
	s := plan.DefaultSpec()
	s.Ends, s.Group, s.ReturnOrder = g*passes, g, order
	var b []byte
	for _, pass := range must(t, s).Chains[0].Passes {
		b = append(b, "hs"[pass.FirstOpening])
	}
	return string(b)
}

// soundOpenings tries every sequence of first openings and keeps those that give a lease that alternates.
func soundOpenings(g, passes int, mirrored bool) []string {
	var sound []string
	for code := range 1 << passes {
		seq := make([]byte, passes)
		var overA []bool
		for k := range passes {
			seq[k] = "hs"[code>>k&1]
			for i := range g {
				pos := i + 1
				if k%2 == 1 && mirrored {
					pos = g - i
				}
				up := (pos%2 == 1) == (seq[k] == 'h')
				overA = append(overA, up == (k%2 == 0)) // outward A is met first, on the return last
			}
		}
		if alternates(overA) {
			sound = append(sound, string(seq))
		}
	}
	return sound
}

func alternates(sides []bool) bool {
	for i := 1; i < len(sides); i++ {
		if sides[i] == sides[i-1] {
			return false
		}
	}
	return true
}

// Whether the paddle is flicked once more round the near peg, by brute force over the sound sequences:
// the return pass leaves the paddle with the opening opposite to its first.
func TestKeepsOpening(t *testing.T) {
	for g := 1; g <= 7; g++ {
		for _, order := range []wind.ReturnOrder{wind.SameOrder, wind.MirroredOrder} {
			const passes = 6
			sound := soundOpenings(g, passes, order == wind.MirroredOrder)[0]
			s := plan.DefaultSpec()
			s.Ends, s.Group, s.ReturnOrder = g*passes, g, order
			c := must(t, s).Chains[0]
			for k := 0; k <= passes+1; k++ {
				want := k >= 2 && k < passes && k%2 == 0 && sound[k-1] != sound[k]
				if got := c.KeepsOpening(k); got != want {
					t.Errorf("group %d, %v: KeepsOpening(%d) = %v, want %v", g, order, k, got, want)
				}
			}
			// The rule in words: an even group in the same order keeps it, all others flick once more.
			if got, want := c.KeepsOpening(2), g%2 == 0 && order == wind.SameOrder; got != want {
				t.Errorf("group %d, %v: the paddle keeps its opening: %v, want %v", g, order, got, want)
			}
		}
	}
}

// "With an even group and the same order each lease peg always gets the same opening" (design.md, 4).
func TestEvenSameOrderGivesEachPegOneOpening(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpec(t)
		s.Positions, s.Group = 24, 2*rapid.IntRange(1, 12).Draw(t, "half group")
		s.ReturnOrder, s.LastPass, s.ChainEnds = wind.SameOrder, wind.FullLast, 0
		for _, pass := range must(t, s).Chains[0].Passes {
			if pass.OpeningAt(wind.PegA) != wind.HolesUp || pass.OpeningAt(wind.PegB) != wind.SlotsUp {
				t.Fatalf("pass %d: A %v, B %v", pass.Number, pass.OpeningAt(wind.PegA), pass.OpeningAt(wind.PegB))
			}
		}
	})
}
