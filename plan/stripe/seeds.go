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
	var best []uint8
	for try := 0; p.looked < stop; try++ {
		set := p.firstSeed(t, lots, try)
		if try%4 != 0 { // go on from the best, shaken a little
			copy(set, best)
			for range 2 + try%4 {
				t.vary(set, lots)
			}
			t.spread(set)
		}
		c := t.improve(set, lots, stop)
		if found[string(set)] = c; best == nil || c < found[string(best)] {
			best = set
		}
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
	full, short := t.passCost(t.maxSize), t.passCost(0)
	m := t.match(set)
	for i := range n {
		longest := m.longest(t.from+i, t.to)
		for d := range 2 {
			from, next := costs[i][d], t.after(d)
			costs[i+1][next] = min(costs[i+1][next], from+odd)
			for size := 1; size <= longest[d].size; size++ {
				c := from + short
				if size == t.maxSize {
					c = from + full
				}
				if t.allowed[size] && c < costs[i+size][next] {
					costs[i+size][next] = c
				}
			}
		}
	}
	t.looked += n
	return min(costs[n][0], costs[n][1])
}

// matcher finds what a set-up can lay without a change.
type matcher struct {
	*problem
	set   []uint8
	first []int8 // the lowest position from 0 with each colour, -1 for none
	next  []int8 // the next position with the same colour, -1 for none
}

func (p *problem) match(set []uint8) matcher {
	m := matcher{p, set, make([]int8, p.colours+1), make([]int8, len(set))}
	for c := range m.first {
		m.first[c] = -1
	}
	for pos := len(set) - 1; pos >= 0; pos-- {
		m.next[pos] = m.first[set[pos]]
		m.first[set[pos]] = int8(pos)
	}
	return m
}

// longestPass is the most ends that a pass can lay, 0 for none, and the position that lays the first of
// them. What lays so many lays fewer as well.
type longestPass struct{ size, edge int }

// longest is the longest pass from an end on, up to the end before to, by direction.
func (m matcher) longest(i, to int) [2]longestPass {
	most := min(m.maxSize, to-i)
	out := m.along(i, most, 1)
	back := out
	if m.mirrored {
		back = m.along(i, most, -1)
	}
	return [2]longestPass{out, back}
}

// along is the longest pass that lays end i and those after it with one position after the other, up
// or down the paddle.
func (m matcher) along(i, most, way int) longestPass {
	var l longestPass
	for edge := int(m.first[m.ends[i]]); edge >= 0 && l.size < most; edge = int(m.next[edge]) {
		size := 1
		for pos := edge + way; size < most && pos >= 0 && pos < len(m.set) && m.set[pos] == m.ends[i+size]; pos += way {
			size++
		}
		if size > l.size {
			l = longestPass{size, edge}
		}
	}
	return l
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
	m := p.match(set)
	for i := range n {
		for d, l := range m.longest(i, n) {
			from := all[i][d].cost
			for size := 1; size <= l.size && from < never; size++ {
				to := &all[i+size][p.after(d)]
				if c := from + p.passCost(size); p.allowed[size] && c < to.cost {
					*to = reached{c, uint8(size), uint8(l.edge)}
					if d == 1 && p.mirrored {
						to.base -= uint8(size - 1)
					}
				}
			}
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
