package stripe

import (
	"fmt"
	"math/bits"
	"time"
)

// Way is a way to wind the same warp, to compare a schedule with.
type Way struct {
	// Name says in words what is done.
	Name string
	// Possible says whether the limits allow it; if not, Cost and Total are nil.
	Possible bool
	// Cost and Total are as in a [Schedule].
	Cost  Cost
	Total time.Duration
	// Saved is how much less the schedule takes; it is below 0 if the schedule takes more.
	Saved time.Duration
}

// Compare sets a schedule of these ends beside other ways to wind them. Two are what a weaver would do
// by hand: the largest group on every pass, with changes when they are needed; and single ends, one
// colour after the other, which needs no paddle, so that group sizes don't matter and no pass counts
// as short. The third is a schedule found as by [Make], but with a quarter of the looks, for the other
// kind of winding: every pass outward, or out and back where l asks for one direction. The error is
// that of [Make].
func Compare(s *Schedule, ends []int, l Limits, w Weights) ([]Way, error) {
	p, err := prepare(ends, l, w)
	if err != nil {
		return nil, err
	}
	single := *p
	single.maxSize = 1
	ways := []Way{
		wayOf(fmt.Sprintf("%d ends on every pass, changed when needed", p.maxSize), p.windFixed(p.maxSize)),
		wayOf("single ends, one colour after the other", single.windFixed(1)),
	}
	name := "every pass outward, the way back empty"
	if l.OneDirection {
		name = "out and back"
	}
	l.OneDirection = !l.OneDirection
	other, err := makeWithin(ends, l, w, comparedPart)
	if err != nil {
		other = nil // the limits leave no way to do it
	}
	ways = append(ways, wayOf(name, other))
	for i := range ways {
		if ways[i].Possible {
			ways[i].Saved = ways[i].Total - s.Total
		}
	}
	return ways, nil
}

func wayOf(name string, s *Schedule) Way {
	if s == nil {
		return Way{Name: name}
	}
	return Way{Name: name, Possible: true, Cost: s.Cost, Total: s.Total}
}

// comparedPart is which part of the usual looks a schedule is worth that is only compared with.
const comparedPart = 4

// bestByHand is a schedule to begin with: one that keeps the limits, and costs the least of the
// simple ones.
func (p *problem) bestByHand() *Schedule {
	var best *Schedule
	for size := 1; size <= p.maxSize; size++ {
		if p.allowed[size] {
			best = cheaper(best, p.windFixed(size))
		}
	}
	if best == nil {
		best = p.build(p.windRest())
	}
	return best
}

// windFixed winds the whole warp with the same size on positions 1 to size, and what is left on a last
// pass. It is nil if that isn't within the limits.
func (p *problem) windFixed(size int) *Schedule {
	var steps []step
	n := len(p.ends)
	for start := 0; start < n; start += size {
		steps = append(steps, step{start: start, size: min(size, n-start)})
	}
	if !p.allowed[steps[len(steps)-1].size] && size > 1 || p.atLease && len(steps)%2 == 1 {
		return nil
	}
	if !p.findStops(steps) {
		return nil
	}
	return p.build(steps)
}

// windRest lays the fewest passes that the limits allow, all from position 1.
func (p *problem) windRest() []step {
	var steps []step
	d := 0
	for i := 0; i < len(p.ends); {
		for size := 1; size <= p.maxSize && i+size <= len(p.ends); size++ {
			last := steps
			if !p.allowed[size] || p.passCost(size)+p.rest[i+size][p.after(d)] != p.rest[i][d] || p.rest[i+size][p.after(d)] >= never {
				continue
			}
			if steps = append(steps, step{start: i, size: size}); p.fits(i, size) {
				i += size
				break
			}
			steps = last
		}
		d = p.after(d)
	}
	p.findStops(steps)
	return steps
}

// fits says whether the packages are enough for a pass by itself.
func (p *problem) fits(start, size int) bool {
	counts := make([]int, p.colours+1)
	for _, c := range p.ends[start : start+size] {
		if counts[c]++; counts[c] > p.packages[c] {
			return false
		}
	}
	return true
}

// findStops finds where passes need a stop, and which parked positions give up scarce packages: the
// highest. It says whether the packages are enough.
func (p *problem) findStops(steps []step) bool {
	set := make([]uint8, p.positions)
	var carried uint64 // since the last stop
	for i := range steps {
		st := &steps[i]
		if !p.fits(st.start, st.size) {
			return false
		}
		mirrored := p.mirrored && !p.oneWay && i%2 == 1
		now := block(st.base, st.size)
		var changed uint64
		for k := range st.size {
			pos := st.base + p.offset(k, st.size, mirrored)
			if c := p.ends[st.start+k]; set[pos] != c {
				set[pos] = c
				changed |= 1 << pos
			}
		}
		st.emptied = p.takeHighest(set, now)
		if st.stop = (changed|st.emptied)&carried != 0; st.stop {
			carried = 0
		}
		carried |= now
	}
	return true
}

// takeHighest empties parked positions of a set-up until the packages are enough, the highest first,
// and gives them.
func (p *problem) takeHighest(set []uint8, now uint64) uint64 {
	counts := make([]int, p.colours+1)
	for _, c := range set {
		counts[c]++
	}
	var emptied uint64
	for parked := block(0, p.positions) &^ now; parked != 0; {
		pos := 63 - bits.LeadingZeros64(parked)
		parked &^= 1 << pos
		if c := set[pos]; c != 0 && counts[c] > p.packages[c] {
			counts[c]--
			set[pos] = 0
			emptied |= 1 << pos
		}
	}
	return emptied
}
