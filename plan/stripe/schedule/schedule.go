package schedule

import (
	"time"

	"millside/plan"
)

// Schedule is a stripe order cut into passes and set-ups.
type Schedule struct {
	// Passes lists the passes in order.
	Passes []Pass
	// SetUps lists the set-ups in order, the colour in each position, that of position 1 first, 0 for none;
	// there is at least one.
	SetUps [][]int
	// Sum is the work that it takes, Total the same in time by the times given to [Make].
	Sum   Sum
	Total time.Duration
	// Kinds lists the kinds of pass in the order in which they first come.
	Kinds []Kind
	// Proof says how it stands to the best that there can be.
	Proof Proof
}

// Pass is one pass of a schedule.
type Pass struct {
	// Carried is the set of positions that carry an end.
	Carried plan.Positions
	// First and Last are the lowest and the highest end that the pass lays, from 1.
	First, Last int
	// SetUp is the number of the set-up, Kind that of the kind of pass, both from 1.
	SetUp, Kind int
}

// Kind is a kind of pass: certain positions that carry certain colours. The weaver learns each kind once.
type Kind struct {
	// Carried is the set of positions, Colours their colours, that of the lowest position first.
	Carried plan.Positions
	Colours []int
	// Passes is how many passes are of this kind.
	Passes int
}

// build makes a schedule of passes. It works out the set-ups and the sum anew from what the passes need.
func (p *problem) build(passes []pass) *Schedule {
	l := p.ledger(passes, true)
	s := &Schedule{Sum: l.sum, Total: p.times.Total(l.sum)}
	for i, ps := range passes {
		out := Pass{First: ps.first + 1, Last: ps.first + ps.size, SetUp: int(l.setUpOf[i]) + 1}
		carried := ps.carried
		if p.footLast {
			carried = p.turned(carried)
		}
		out.Carried = plan.Positions(carried)
		s.Passes = append(s.Passes, out)
	}
	for _, set := range l.setUps {
		colours := make([]int, p.positions)
		for pos, c := range set {
			if p.footLast {
				pos = p.positions - 1 - pos
			}
			colours[pos] = int(c)
		}
		s.SetUps = append(s.SetUps, colours)
	}
	s.findKinds()
	return s
}

// findKinds fills in the kinds.
func (s *Schedule) findKinds() {
	number := map[string]int{}
	for i := range s.Passes {
		ps := &s.Passes[i]
		key := make([]byte, plan.MaxPositions)
		var colours []int
		for pos := range ps.Carried.All() {
			c := s.SetUps[ps.SetUp-1][pos-1]
			key[pos-1] = byte(c)
			colours = append(colours, c)
		}
		n, known := number[string(key)]
		if !known {
			s.Kinds = append(s.Kinds, Kind{Carried: ps.Carried, Colours: colours})
			n = len(s.Kinds)
			number[string(key)] = n
		}
		ps.Kind = n
		s.Kinds[n-1].Passes++
	}
}
