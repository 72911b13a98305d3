package schedule

import (
	"math"
	"math/bits"
	"slices"
	"time"

	"millside/plan/measure"
	"millside/plan/wind"
)

// cost is a time in whole nanoseconds.
type cost = int64

// never is above any cost that can be reached: 100,000 ends, each with a pass, a halt, a cut, a tie and a
// threading of an hour, are 1.8e18.
const never cost = math.MaxInt64 / 4

// problem is a warp with everything that its schedule depends on. Position 1 is bit 0 of a set of positions.
// The search sees position 1 at the foot on outward passes; where it is the last one, the sets are turned
// over when the schedule is built.
type problem struct {
	ends      []uint8 // the colour of each end, from 1
	colours   int
	positions int
	allowed   [measure.MaxPositions + 1]bool // sizes of a pass
	maxSize   int
	packages  []int // of each colour, from 1; at most positions
	scarce    []bool
	anyScarce bool
	mirrored  bool // return passes lie mirrored
	footLast  bool
	atLease   bool // the last pass must end at the lease
	mostHalts int  // -1: any number
	times     Times
	// What the hands do, as the search adds it up. Every end tied on is cut off at some time, so a stint,
	// which is a position carried on successive passes with one yarn, costs both.
	pass, halt, stint, thread, far cost
	first                          cost // what a package costs that is threaded before the first pass; mostly thread
	// rest[i] is the least number of passes that can lay the ends from i (from 0) on.
	rest []int32
}

// newProblem makes a problem of checked input.
func newProblem(ends []int, colours int, l Limits, t Times) *problem {
	p := &problem{
		ends: make([]uint8, len(ends)), colours: colours, positions: l.Positions, packages: make([]int, colours+1),
		scarce: make([]bool, colours+1), mirrored: l.ReturnOrder == wind.MirroredOrder, footLast: l.FootLast,
		atLease: l.FinishAtLease, mostHalts: -1, times: t,
		pass: cost(t.Pass), halt: cost(t.Halt), stint: cost(t.Cut + t.Tie), thread: cost(t.Thread), far: cost(t.Far),
		first: cost(t.Thread),
	}
	if l.MostHalts != nil {
		p.mostHalts = *l.MostHalts
	}
	for i, c := range ends {
		p.ends[i] = uint8(c)
	}
	for size := 1; size <= l.Positions; size++ {
		if p.allowed[size] = len(l.Sizes) == 0 || slices.Contains(l.Sizes, size); p.allowed[size] {
			p.maxSize = size
		}
	}
	for c := 1; c <= colours; c++ {
		p.packages[c] = l.Positions
		if c <= len(l.Packages) && l.Packages[c-1] > 0 {
			p.packages[c] = min(l.Packages[c-1], l.Positions)
		}
		p.scarce[c] = p.packages[c] < l.Positions
		p.anyScarce = p.anyScarce || p.scarce[c]
	}
	p.findRest()
	return p
}

// noPasses stands for ends that can't be laid within the limits.
const noPasses = math.MaxInt32 / 2

// findRest fills in rest, from the last end back.
func (p *problem) findRest() {
	n := len(p.ends)
	p.rest = make([]int32, n+1)
	carried := make([]int, p.colours+1)
	for i := n - 1; i >= 0; i-- {
		p.rest[i] = noPasses
		clear(carried)
		for size := 1; size <= p.maxSize && i+size <= n; size++ {
			c := p.ends[i+size-1]
			if carried[c]++; carried[c] > p.packages[c] {
				break
			}
			if p.allowed[size] {
				p.rest[i] = min(p.rest[i], 1+p.rest[i+size])
			}
		}
	}
}

// parities says with which numbers of passes the limits can be kept: with an even one, with an odd one.
func (p *problem) parities() (even, odd bool) {
	n := len(p.ends)
	can := make([][2]bool, n+1)
	can[n] = [2]bool{true, false}
	carried := make([]int, p.colours+1)
	for i := n - 1; i >= 0; i-- {
		clear(carried)
		for size := 1; size <= p.maxSize && i+size <= n; size++ {
			c := p.ends[i+size-1]
			if carried[c]++; carried[c] > p.packages[c] {
				break
			}
			if p.allowed[size] {
				can[i][0] = can[i][0] || can[i+size][1]
				can[i][1] = can[i][1] || can[i+size][0]
			}
		}
	}
	return can[0][0], can[0][1]
}

// down says whether the positions run downwards as the ends run upwards, on a pass by its direction, 0
// outward or 1 return.
func (p *problem) down(d int) bool { return p.mirrored && d == 1 }

// letter is the colour of the k-th lowest carried position of a pass, from 0.
func (p *problem) letter(first, size, k, d int) uint8 {
	if p.down(d) {
		return p.ends[first+size-1-k]
	}
	return p.ends[first+k]
}

// pass is one pass as the search finds it.
type pass struct {
	first, size int    // the first end, from 0, and the number of ends
	carried     uint64 // positions
}

// evens is the set of every second position from position 1 on.
const evens uint64 = 0x5555555555555555

// turned is a set of positions seen from the other end of the paddle.
func (p *problem) turned(set uint64) uint64 { return bits.Reverse64(set) >> (64 - p.positions) }

// duration is a cost as a time.
func duration(c cost) time.Duration { return time.Duration(c) }
