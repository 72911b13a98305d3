package stripe

import (
	"slices"
)

// The exact search.
//
// Where a colour sits on the paddle matters only by its neighbours, so the search holds a paddle as
// loose groups: a group is a row of neighbouring positions, and where the groups lie, and in which
// order, stays open until a pass needs two of them side by side. What was threaded never moves away
// from its group, and the groups together have no more positions than the paddle; so at the end they
// can be laid side by side, in any order, and every pass finds its positions where it needs them.
// All paddles that differ only in the order of their groups and in positions not threaded yet are one.
//
// Let least(i, d, k) be the least cost of the ends from i on with an empty paddle, the next pass being
// of direction d, if the first k positions are threaded for nothing. It is found for the last end
// first, then for the last two, and so on to the whole warp with k = 0. For a paddle that has k positions
// with colours yet to come, what is ahead costs at least least(i, d, k): from an empty paddle one could
// thread these k for nothing and go on the same way. (Positions with colours that come no more need not
// be threaded, and at most as many positions of a colour are of use as there are ends of it to come.)
// This is nearly always close, since a schedule that is good for the whole warp is good for what is left
// of it. So each search looks at the most promising paddle first, and the first that reaches the last
// end is the best there can be. A search begins with a cost that is known to be possible (that of a
// set-up that was found for fewer ends and needs no stop for these either, or of one pass and then a
// stop), and looks only for less: mostly there is nothing, and that is soon seen.
//
// Stops are made as late as can be, as in the other search (see search.go).

const (
	inUse  = 0x80 // the position was carried since the last stop
	wasted = 0x7f // a colour that comes no more
	apart  = 0    // between two groups
	// exactColours is the most colours that the exact search can tell apart.
	exactColours = wasted - 1
	unthreaded   = -1 // in a walk, a position that has not been threaded yet
)

// exact is the search for least, and the paddle that it looks at.
type exact struct {
	*problem
	least    [][]cost  // least[n-i][k*2+d]
	tail     [][]int32 // tail[c][k] is the k-th from the last end of colour c, -1 for none
	stopAt   int       // the looks after which a search gives up
	rough    bool      // least is a bound only
	allow    int       // then, the looks of one search
	standing []*standing

	open  openList
	nodes []node
	keys  []byte
	table []int32 // nodes by place and paddle
	best  cost    // nothing above this is wanted
	free  int     // positions that are threaded for nothing

	// The paddle that is looked at: its positions, group by group.
	from     int32
	now      node
	cells    []byte
	groups   [][2]int // the first position of each group and the one after its last
	groupOf  []int
	counts   [wasted + 1]int // positions of each colour, the walk included
	toLay    [wasted + 1]int // ends of each colour to come, as far as they count
	onward   []cost          // by the size of the pass so far and the useful positions, the least from there
	walk     []int           // the positions that the pass carries, in the order of the ends
	visited  []bool
	reversed bool // the pass lays the paddle backwards
	emit     func(spent cost, stop bool)
	key      []byte // the paddle after the pass
	origin   []int  // for each byte of key, the position that it was, or unthreaded
	unsorted unsorted
}

func newExact(p *problem) *exact {
	x := &exact{problem: p, table: make([]int32, firstTable)}
	x.least = [][]cost{slices.Repeat(p.rest[len(p.ends)][:], p.positions+1)}
	x.tail = make([][]int32, p.colours+1)
	for c := range x.tail {
		x.tail[c] = make([]int32, 1, p.positions+2)
	}
	for i := len(p.ends) - 1; i >= 0; i-- {
		if t := &x.tail[p.ends[i]]; len(*t) < p.positions+1 {
			*t = append(*t, int32(i))
		}
	}
	x.onward = make([]cost, (p.maxSize+2)*(p.positions+1))
	return x
}

// leastAt is least for the ends from i on.
func (x *exact) leastAt(i, d, k int) cost { return x.least[len(x.ends)-i][k*2+d] }

// exactLimits says how many looks a search may take: base, and perEnd for each end that it has come
// past, as long as it is exact; then rough, if it goes on roughly.
type exactLimits struct{ base, perEnd, rough int }

// part is one in so many of the looks.
func (l exactLimits) part(n int) exactLimits {
	return exactLimits{base: l.base / n, perEnd: l.perEnd / n, rough: l.rough / n}
}

// What bounds the memory: a cost takes 8 bytes, a node some 70 and one or two for each position.
const (
	manyCosts = 6_000_000
	manyNodes = 800_000
)

// run finds the steps of the best schedule below best, nil if there is none, and says that it came to an
// end. If that would take more than the limits allow it gives only a bound, which may be nil, and no steps.
func (x *exact) run(best cost, l exactLimits) (steps []step, bound cost, done bool) {
	n := len(x.ends)
	start := x.looked
	for i := n - 1; i > 0; i-- {
		x.stopAt = start + l.base + l.perEnd*(n-i)
		if (n-i)*2*(x.positions+1) < manyCosts && x.addRow(i) {
			continue
		}
		if x.least = x.least[:n-i]; n > roughEnds {
			return nil, 0, false
		}
		return nil, x.runRough(i, best, l.rough), false
	}
	for _, w := range x.standing {
		w.goBack(0)
		if c := w.costAt(0, 0) + cost(w.size)*cost(x.w.Change); c < best {
			best, steps = c, x.windWith(w.set)
		}
	}
	x.least = append(x.least, slices.Repeat(x.rest[0][:], x.positions+1))
	x.free, x.best = 0, best-1
	x.stopAt = start + l.base + l.perEnd*n
	end, done := x.search(0, 0)
	switch {
	case !done:
		return nil, x.atLeast(), false
	case end >= 0:
		return x.trace(end), x.nodes[end].guess, true
	}
	return steps, best, true
}

// addRow finds least for the ends from i on, and says whether it came to an end.
func (x *exact) addRow(i int) bool {
	for _, w := range x.standing {
		w.goBack(i)
	}
	x.least = append(x.least, slices.Repeat([]cost{never}, 2*(x.positions+1)))
	for d := range 2 {
		if d == 1 && x.oneWay || x.rest[i][d] >= never {
			continue
		}
		if !x.settleLeast(i, d, 0, x.positions) {
			return false
		}
	}
	return true
}

// settleLeast fills in least for the ends from i on and from low to high positions for nothing. Those
// between two lie between their costs, and one position more saves a change at most.
func (x *exact) settleLeast(i, d, low, high int) bool {
	row := x.least[len(x.least)-1]
	if low == 0 && high == x.positions {
		if !x.findLeast(i, d, high, 0, never) || !x.findLeast(i, d, 0, row[high*2+d], row[high*2+d]+cost(high)*cost(x.w.Change)) {
			return false
		}
	}
	change := cost(x.w.Change)
	for k := low + 1; k < high; k++ {
		under := max(row[low*2+d]-cost(k-low)*change, row[high*2+d])
		over := min(row[low*2+d], row[high*2+d]+cost(high-k)*change)
		if under < over && !x.rough {
			k = (low + high) / 2
			under = max(row[low*2+d]-cost(k-low)*change, row[high*2+d])
			over = min(row[low*2+d], row[high*2+d]+cost(high-k)*change)
			return x.findLeast(i, d, k, under, over) && x.settleLeast(i, d, low, k) && x.settleLeast(i, d, k, high)
		}
		row[k*2+d] = under
	}
	return true
}

// findLeast finds least for the ends from i on and k positions for nothing; it lies between under and
// over, if all is exact. It says whether it came to an end.
func (x *exact) findLeast(i, d, k int, under, over cost) bool {
	row := x.least[len(x.least)-1]
	if x.rough {
		over = never
		x.stopAt = x.looked + x.allow
	} else {
		over = min(over, x.roughly(i, d, k))
	}
	for _, w := range x.standing {
		laid := w.costAt(i, d)
		if x.rough && !x.mirrored {
			laid = min(laid, w.costAt(i, 1-d))
		}
		over = min(over, laid+cost(max(0, w.size-k))*cost(x.w.Change))
	}
	under = max(under, x.rest[i][d])
	row[k*2+d] = over
	if under >= over {
		return true
	}
	x.free, x.best = k, over-1
	end, ok := x.search(i, d)
	switch {
	case !ok:
		row[k*2+d] = max(under, x.atLeast())
	case end >= 0:
		row[k*2+d] = x.nodes[end].guess
		if !x.rough {
			x.learn(x.trace(end), i)
		}
	}
	return ok || x.rough
}

// roughly is a cost that least isn't above: one pass with positions of its own, then a stop.
func (x *exact) roughly(i, d, k int) cost {
	rough := never
	for size := 1; size <= x.maxSize && i+size <= len(x.ends); size++ {
		if x.allowed[size] {
			rough = min(rough, x.leastAt(i+size, x.after(d), max(0, k-size))+x.passCost(size)+
				cost(max(0, size-k))*cost(x.w.Change)+cost(x.w.Stop))
		}
	}
	return rough
}
