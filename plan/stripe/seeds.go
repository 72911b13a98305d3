package stripe

import (
	"math/rand/v2"
	"slices"
)

// sample is how many ends set-ups are tried on when good ones are looked for.
const sample = 400

// keptSeeds is how many good set-ups are given to the search.
const keptSeeds = 6

// seeds looks for set-ups with which much of the warp can be wound without a change: it begins with
// the colours in the order and, roughly, the amount in which they come, and changes, moves or swaps
// one position after the other as long as that helps. It draws by lot, always the same lots.
func (p *problem) seeds(looks int) [][]uint8 {
	lots := rand.New(rand.NewPCG(1, 2))
	t := &trial{problem: p, from: 0, to: len(p.ends)}
	if t.to > sample {
		t.from = (len(p.ends) - sample) / 2
		t.to = t.from + sample
	}
	stop := p.looked + looks
	found := map[string]cost{}
	for try := 0; p.looked < stop; try++ {
		set := p.firstSeed(t, lots, try)
		found[string(set)] = t.improve(set, lots, stop)
	}
	var list [][]uint8
	for set := range found {
		list = append(list, []uint8(set))
	}
	slices.SortFunc(list, func(a, b []uint8) int {
		if c := found[string(a)] - found[string(b)]; c != 0 {
			return int(max(min(c, 1), -1))
		}
		return slices.Compare(a, b)
	})
	return list[:min(keptSeeds, len(list))]
}

// firstSeed takes the colours of some ends of the sample, spread over all positions.
func (p *problem) firstSeed(t *trial, lots *rand.Rand, try int) []uint8 {
	set := make([]uint8, p.positions)
	span := min(t.to-t.from, p.positions<<(try%4))
	from := t.from + lots.IntN(t.to-t.from-span+1)
	for i := range set {
		set[i] = p.ends[from+i*span/p.positions]
	}
	t.spread(set)
	return set
}

// trial judges set-ups on the ends from one to another.
type trial struct {
	*problem
	from, to int
	costs    [][2]cost
}

// spread takes away from the set-up what is beyond the packages of a colour.
func (t *trial) spread(set []uint8) {
	counts := make([]int, t.colours+1)
	for i, c := range set {
		if counts[c]++; c != 0 && counts[c] > t.packages[c] {
			set[i] = 0
		}
	}
}

// improve changes a set-up, in place, as long as that helps, and gives its cost.
func (t *trial) improve(set []uint8, lots *rand.Rand, stop int) cost {
	best := t.judge(set)
	before := slices.Clone(set)
	fails := 0
	for fails < 6*t.positions && t.looked < stop {
		copy(before, set)
		t.vary(set, lots)
		t.spread(set)
		if c := t.judge(set); c < best {
			best, fails = c, 0
			continue
		}
		copy(set, before)
		fails++
	}
	return best
}

// vary changes a set-up a little.
func (t *trial) vary(set []uint8, lots *rand.Rand) {
	a, b := lots.IntN(len(set)), lots.IntN(len(set))
	switch lots.IntN(3) {
	case 0:
		set[a] = t.ends[t.from+lots.IntN(t.to-t.from)]
	case 1:
		set[a], set[b] = set[b], set[a]
	default: // one position goes elsewhere, and takes a neighbour's colour or the colour of any end
		c := set[b]
		if lots.IntN(2) == 0 {
			c = t.ends[t.from+lots.IntN(t.to-t.from)]
		}
		copy(set[a:], set[a+1:])
		b = lots.IntN(len(set))
		copy(set[b+1:], set[b:])
		set[b] = c
	}
}

// judge is the least cost of the trial's ends from one set-up that is kept, where an end that it can't
// lay costs two changes and a stop.
func (t *trial) judge(set []uint8) cost {
	n := t.to - t.from
	if len(t.costs) < n+1 {
		t.costs = make([][2]cost, n+1)
	}
	costs := t.costs[:n+1]
	for i := range costs {
		costs[i] = [2]cost{never, never}
	}
	costs[0] = [2]cost{0, 0}
	odd := t.passCost(1) + 2*cost(t.w.Change) + cost(t.w.Stop)
	for i := range n {
		for d := range 2 {
			from := costs[i][d]
			if from >= never {
				continue
			}
			next := t.after(d)
			costs[i+1][next] = min(costs[i+1][next], from+odd)
			t.matches(set, t.from+i, t.to, d, func(size, _ int) {
				costs[i+size][next] = min(costs[i+size][next], from+t.passCost(size))
			})
		}
	}
	return min(costs[n][0], costs[n][1])
}

// matches goes through the passes of direction d that a set-up can lay from an end on, up to the
// end before to, and gives their sizes and lowest positions.
func (p *problem) matches(set []uint8, i, to, d int, each func(size, base int)) {
	way := 1
	if d == 1 && p.mirrored {
		way = -1
	}
	for edge := range set {
		p.looked++
		pos := edge
		for size := 1; size <= p.maxSize && i+size <= to && pos >= 0 && pos < len(set) && set[pos] == p.ends[i+size-1]; size++ {
			if p.allowed[size] {
				each(size, min(edge, pos))
			}
			pos += way
		}
	}
}

// windWith winds the whole warp from one set-up without a stop, at the least cost, or gives nil if it
// can't.
func (p *problem) windWith(set []uint8) []step {
	type reached struct {
		cost       cost
		size, base uint8
	}
	n := len(p.ends)
	all := make([][2]reached, n+1)
	for i := range all {
		all[i] = [2]reached{{cost: never}, {cost: never}}
	}
	all[0][0].cost = 0
	for i := range n {
		for d := range 2 {
			from := all[i][d].cost
			if from >= never {
				continue
			}
			p.matches(set, i, n, d, func(size, base int) {
				to := &all[i+size][p.after(d)]
				if c := from + p.passCost(size); c < to.cost {
					*to = reached{c, uint8(size), uint8(base)}
				}
			})
		}
	}
	d := 0
	if all[n][1].cost+p.rest[n][1] < all[n][0].cost+p.rest[n][0] {
		d = 1
	}
	if all[n][d].cost+p.rest[n][d] >= never {
		return nil
	}
	var steps []step
	for i := n; i > 0; d = p.after(d) {
		at := all[i][d]
		i -= int(at.size)
		steps = append(steps, step{start: i, base: int(at.base), size: int(at.size)})
	}
	slices.Reverse(steps)
	return steps
}
