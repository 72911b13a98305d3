package stripe

import (
	"fmt"
	"os"
	"slices"
	"sync"
	"testing"
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

// TestExhaustive holds the scheduler against the table on every stripe order, up to the naming of the
// colours, for paddles of up to 4 positions and both return orders: every order of up to 8 ends, and
// every order of 3 colours of up to 10. With MILLSIDE_EXHAUSTIVE set it is every order of up to 10
// ends, 1,139,336 cases, which takes some minutes.
func TestExhaustive(t *testing.T) {
	type span struct{ ends, colours int }
	spans := []span{{8, 8}, {10, 3}}
	switch {
	case os.Getenv("MILLSIDE_EXHAUSTIVE") != "":
		spans = []span{{10, 10}}
	case testing.Short():
		spans = []span{{6, 6}, {8, 2}}
	}
	var wait sync.WaitGroup
	for positions := 1; positions <= 4; positions++ {
		for _, order := range []plan.ReturnOrder{plan.SameOrder, plan.MirroredOrder} {
			wait.Go(func() {
				l, w := Limits{Positions: positions, ReturnOrder: order}, DefaultWeights()
				checked := 0
				for _, s := range spans {
					newTable(l, w).forEach(s.ends, s.colours, func(ends []int, least time.Duration) {
						checked++
						if why := agrees(ends, l, w, least); why != "" {
							t.Errorf("%v, %d positions, %v: %s", ends, positions, order, why)
						}
					})
				}
				t.Logf("%d positions, %v: %d orders", positions, order, checked)
			})
		}
	}
	wait.Wait()
}

// holds lays a schedule on a model mill and says what is wrong with it, "" if nothing is.
func holds(s *Schedule, ends []int, l Limits, w Weights) string {
	laid := make([]int, len(ends))
	paddle := make([]int, l.Positions)
	var cost Cost
	for i, p := range s.Passes {
		if p.Number != i+1 || p.SetUp < 1 || p.SetUp > len(s.SetUps) {
			return fmt.Sprintf("pass %d is %+v", i+1, p)
		}
		if why := cost.add(s, p, paddle, l); why != "" {
			return why
		}
		colours := s.ColoursOn(p.Number)
		end := p.First
		step := 1
		if p.Mirrored {
			end, step = p.Last, -1
		}
		for pos := range p.Carried.All() {
			if end < 1 || end > len(ends) || laid[end-1] != 0 {
				return fmt.Sprintf("pass %d lays end %d", p.Number, end)
			}
			laid[end-1] = colours[pos-1]
			end += step
		}
		if p.Carried.Count() != p.Last-p.First+1 {
			return fmt.Sprintf("pass %d carries %v for ends %d to %d", p.Number, p.Carried, p.First, p.Last)
		}
	}
	for i := range ends {
		if laid[i] != ends[i] {
			return fmt.Sprintf("laid %v, not %v", laid, ends)
		}
	}
	for _, up := range s.SetUps {
		for c := range l.Packages {
			n := 0
			for _, has := range up.Colours {
				if has == c+1 {
					n++
				}
			}
			if l.Packages[c] > 0 && n > l.Packages[c] {
				return fmt.Sprintf("set-up %d has %d of colour %d", up.Number, n, c+1)
			}
		}
	}
	if cost.OneDirection = l.OneDirection; l.OneDirection || len(s.Passes)%2 == 1 {
		cost.Finish = plan.AtCountingCross
	}
	if got := s.Cost.Total(w); got != s.Total || cost != s.Cost {
		return fmt.Sprintf("total %v, but the cost %+v adds up to %v, and the passes to %+v", s.Total, s.Cost, got, cost)
	}
	return ""
}

// add makes the changes before a pass on the model's paddle, and counts what the pass costs.
func (c *Cost) add(s *Schedule, p Pass, paddle []int, l Limits) string {
	for k, change := range s.ChangesBefore(p.Number) {
		switch {
		case paddle[change.Position-1] != change.From || change.From == change.To:
			return fmt.Sprintf("pass %d: change %+v of %v", p.Number, change, paddle)
		case p.Number == 1:
			c.Threaded++
		case change.To != 0:
			c.Changes++
		}
		if k == 0 && p.Number > 1 {
			c.Stops++
		}
		paddle[change.Position-1] = change.To
	}
	if !slices.Equal(paddle, s.ColoursOn(p.Number)) {
		return fmt.Sprintf("pass %d: the paddle has %v, not %v", p.Number, paddle, s.ColoursOn(p.Number))
	}
	largest := l.Positions
	if len(l.Sizes) > 0 {
		largest = slices.Max(l.Sizes)
	}
	if size := p.Carried.Count(); size < largest {
		c.Short++
	}
	if len(l.Sizes) > 0 && !slices.Contains(l.Sizes, p.Carried.Count()) || p.Carried.Last()-p.Carried.First() != p.Carried.Count()-1 {
		return fmt.Sprintf("pass %d carries %v", p.Number, p.Carried)
	}
	c.Passes++
	return ""
}
