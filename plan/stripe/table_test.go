package stripe

import (
	"slices"
	"time"

	"millside/plan"
)

// table is the independent search that the scheduler is held against. It knows nothing of labels or of
// late changes: it goes backwards through the warp over every set-up that there is, and lets the
// winder halt before any pass and take any other set-up. ahead[i] holds, for the ends from the i-th
// from the last on, the least cost of each set-up by direction.
type table struct {
	positions int
	mirrored  bool
	oneWay    bool
	atLease   bool
	sizes     []bool // allowed
	packages  []int
	w         Weights
	ends      []int // backwards: ends[0] is the last one
	colours   []int // how many there are in ends[:i+1]
	ahead     [][2][]time.Duration
}

const unreachable = time.Duration(1) << 60

// power is how many set-ups there are of so many colours or none.
func (t *table) power(colours int) int {
	n := 1
	for range t.positions {
		n *= colours + 1
	}
	return n
}

// decode gives the colours of a numbered set-up.
func (t *table) decode(set, colours int, out []int) {
	for p := range t.positions {
		out[p] = set % (colours + 1)
		set /= colours + 1
	}
}

// at is the cost of the last n ends from a set-up; colours that none of them has are as good as none.
func (t *table) at(n, d int, set []int) time.Duration {
	if n == 0 {
		switch {
		case t.oneWay || d == 0:
			return 0
		case t.atLease:
			return unreachable
		}
		return t.w.AtCross
	}
	colours := t.colours[n-1]
	index := 0
	for p := t.positions - 1; p >= 0; p-- {
		c := set[p]
		if c > colours {
			c = 0
		}
		index = index*(colours+1) + c
	}
	return t.ahead[n-1][d][index]
}

// lay is the least cost of the last n ends if the next pass is laid with a set-up as it is.
func (t *table) lay(n, d int, set []int) time.Duration {
	for c, has := range t.packages {
		for _, s := range set {
			if s == c+1 {
				has--
			}
		}
		if has < 0 {
			return unreachable
		}
	}
	best := unreachable
	next := 1 - d
	if t.oneWay {
		next = 0
	}
	for base := range set {
	sizes:
		for size := 1; base+size <= len(set) && size <= n; size++ {
			if !t.sizes[size] {
				continue
			}
			for k := range size {
				p := base + k
				if d == 1 && t.mirrored {
					p = base + size - 1 - k
				}
				if set[p] != t.ends[n-1-k] {
					continue sizes
				}
			}
			cost := t.w.Pass + t.at(n-size, next, set)
			for bigger := size + 1; bigger < len(t.sizes); bigger++ {
				if t.sizes[bigger] {
					cost += t.w.Short
					break
				}
			}
			if t.oneWay {
				cost += t.w.Back
			}
			best = min(best, cost)
		}
	}
	return best
}

// push puts an end before the others, and works out what is ahead from there.
func (t *table) push(c int) {
	colours := c
	if n := len(t.colours); n > 0 {
		colours = max(c, t.colours[n-1])
	}
	t.ends = append(t.ends, c)
	t.colours = append(t.colours, colours)
	n := len(t.ends)
	var ahead [2][]time.Duration
	set := make([]int, t.positions)
	for d := range 2 {
		now := make([]time.Duration, t.power(colours))
		for i := range now {
			t.decode(i, colours, set)
			now[i] = t.lay(n, d, set)
		}
		ahead[d] = t.halt(now, colours)
	}
	t.ahead = append(t.ahead, ahead)
}

func (t *table) pop() {
	n := len(t.ends) - 1
	t.ends, t.colours, t.ahead = t.ends[:n], t.colours[:n], t.ahead[:n]
}

// halt lets the winder take any other set-up before the next pass, one position after the other.
func (t *table) halt(now []time.Duration, colours int) []time.Duration {
	after := append([]time.Duration(nil), now...)
	stride := 1
	for range t.positions {
		for i := range after {
			if i/stride%(colours+1) != 0 {
				continue
			}
			empty, filled := after[i], unreachable
			for c := 1; c <= colours; c++ {
				filled = min(filled, after[i+c*stride])
			}
			for c := 0; c <= colours; c++ {
				after[i+c*stride] = min(after[i+c*stride], empty, filled+t.w.Change)
			}
		}
		stride *= colours + 1
	}
	for i := range after {
		after[i] = min(now[i], after[i]+t.w.Stop)
	}
	return after
}

// least is the cost of the whole warp with one more end, c, before those pushed.
func (t *table) least(c int) time.Duration {
	colours := c
	if n := len(t.colours); n > 0 {
		colours = max(c, t.colours[n-1])
	}
	t.ends = append(t.ends, c)
	best := unreachable
	set := make([]int, t.positions)
	for i := range t.power(colours) {
		t.decode(i, colours, set)
		cost := t.lay(len(t.ends), 0, set)
		for _, s := range set {
			if s != 0 {
				cost += t.w.Change
			}
		}
		best = min(best, cost)
	}
	t.ends = t.ends[:len(t.ends)-1]
	return best
}

func newTable(l Limits, w Weights) *table {
	t := &table{
		positions: l.Positions, mirrored: l.ReturnOrder == plan.MirroredOrder, oneWay: l.OneDirection,
		atLease: l.FinishAtLease, w: w, sizes: make([]bool, l.Positions+1),
	}
	for size := 1; size <= l.Positions; size++ {
		t.sizes[size] = len(l.Sizes) == 0
	}
	for _, size := range l.Sizes {
		t.sizes[size] = true
	}
	for _, n := range l.Packages {
		if n == 0 {
			n = l.Positions
		}
		t.packages = append(t.packages, n)
	}
	return t
}

// forEach goes through every stripe order of up to most ends and so many colours, colours renamed as
// they appear from the last end on, and gives each with its least cost.
func (t *table) forEach(most, mostColours int, check func(ends []int, least time.Duration)) {
	colours := 0
	if n := len(t.colours); n > 0 {
		colours = t.colours[n-1]
	}
	for c := 1; c <= min(colours+1, mostColours); c++ {
		ends := append([]int{c}, t.ends...)
		slices.Reverse(ends[1:])
		check(ends, t.least(c))
		if len(ends) < most {
			t.push(c)
			t.forEach(most, mostColours, check)
			t.pop()
		}
	}
}
