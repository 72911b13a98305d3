package stripe

import (
	"math"

	"millside/plan"
	"millside/plan/measure"
)

// cost is a time in whole nanoseconds.
type cost = int64

// never is above any cost that can be reached: 100,000 ends, each with a pass, a way back, a change, a
// stop and a short pass of an hour each, are 1.8e18.
const never cost = math.MaxInt64 / 4

// problem is a stripe order with everything that its schedule depends on.
type problem struct {
	ends      []uint8 // the colour of each end, from 1
	colours   int
	positions int
	allowed   [measure.MaxPositions + 1]bool // sizes of a pass
	maxSize   int
	packages  []int // of each colour, from 1; at most positions
	scarce    bool  // some colour has fewer packages than the paddle has positions
	mirrored  bool  // return passes lie mirrored
	oneWay    bool
	atLease   bool // the last pass must end at the lease
	w         Weights
	// rest[i][d] is the least cost of passes, short passes and finish for the ends from i (from 0) on,
	// the next pass being outward (0) or a return (1), whatever the set-ups.
	rest [][2]cost
	// toCome[i] is the set of the colours of the ends from i on, of those up to 64.
	toCome []uint64
	// looked counts what the searches looked at.
	looked int
}

// newProblem makes a problem of checked input.
func newProblem(ends []int, colours int, l Limits, w Weights) *problem {
	p := &problem{
		ends: make([]uint8, len(ends)), colours: colours, positions: l.Positions,
		packages: make([]int, colours+1), mirrored: l.ReturnOrder == plan.MirroredOrder,
		oneWay: l.OneDirection, atLease: l.FinishAtLease && !l.OneDirection, w: w,
	}
	for i, c := range ends {
		p.ends[i] = uint8(c)
	}
	for size := 1; size <= l.Positions; size++ {
		p.allowed[size] = len(l.Sizes) == 0
	}
	for _, size := range l.Sizes {
		p.allowed[size] = true
	}
	for size, ok := range p.allowed {
		if ok {
			p.maxSize = size
		}
	}
	for c := 1; c <= colours; c++ {
		p.packages[c] = l.Positions
		if c <= len(l.Packages) && l.Packages[c-1] > 0 {
			p.packages[c] = min(l.Packages[c-1], l.Positions)
		}
		p.scarce = p.scarce || p.packages[c] < l.Positions
	}
	p.findRest()
	return p
}

// after is the direction of the pass that follows one of direction d, 0 outward or 1 return.
func (p *problem) after(d int) int {
	if p.oneWay {
		return 0
	}
	return 1 - d
}

// passCost is what a pass costs by its size alone.
func (p *problem) passCost(size int) cost {
	c := cost(p.w.Pass)
	if p.oneWay {
		c += cost(p.w.Back)
	}
	if size < p.maxSize {
		c += cost(p.w.Short)
	}
	return c
}

// bit is a colour as a set, the empty set for none and for colours above 64.
func bit(c uint8) uint64 { return 1 << (c - 1) }

// findRest fills in rest and toCome, from the last end back.
func (p *problem) findRest() {
	n := len(p.ends)
	p.rest = make([][2]cost, n+1)
	switch {
	case p.oneWay:
	case p.atLease:
		p.rest[n] = [2]cost{0, never}
	default:
		p.rest[n] = [2]cost{0, cost(p.w.AtCross)}
	}
	p.toCome = make([]uint64, n+1)
	carried := make([]int, p.colours+1)
	for i := n - 1; i >= 0; i-- {
		p.rest[i] = [2]cost{never, never}
		p.toCome[i] = p.toCome[i+1] | bit(p.ends[i])
		clear(carried)
		for size := 1; size <= p.maxSize && i+size <= n; size++ {
			c := p.ends[i+size-1]
			if carried[c]++; carried[c] > p.packages[c] {
				break
			}
			if !p.allowed[size] {
				continue
			}
			for d := range 2 {
				p.rest[i][d] = min(p.rest[i][d], p.passCost(size)+p.rest[i+size][p.after(d)])
			}
		}
	}
}
