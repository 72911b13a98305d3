package schedule

import (
	"time"

	"millside/plan/wind"
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
	// Kinds is how many kinds of pass there are: a kind is certain positions that carry certain colours.
	Kinds int
	// Proof says how it stands to the best that there can be.
	Proof Proof
}

// Pass is one pass of a schedule.
type Pass struct {
	// Carried is the set of positions that carry an end.
	Carried wind.Positions
	// First and Last are the lowest and the highest end that the pass lays, from 1.
	First, Last int
	// SetUp is the number of the set-up, from 1.
	SetUp int
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
		out.Carried = wind.Positions(carried)
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
	s.Kinds = p.kindsOf(passes)
	return s
}
