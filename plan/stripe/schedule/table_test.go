package schedule

import (
	"math/rand/v2"
	"slices"
	"time"

	"millside/plan/wind"
)

// table is the independent search that schedules are held against. It knows nothing of labels, programmes or
// threading at the last moment: it goes backwards through the warp over every state of the paddle that there
// is, and before any pass the hands may make any other state of it, by the ledger. A state has a digit for
// each position: 0 is empty, c a parked colour, colours+c a colour that is carried.
type table struct {
	l       Limits
	t       Times
	colours int
	base    int // digits
	states  int
	digits  [][]int // of each state
	ends    []int   // backwards: ends[0] is the last one
	// ahead[n][halts][d][state] is the least that the last n ends cost, the next pass being of direction d, with
	// so many halts left; one entry where halts aren't limited.
	ahead [][][2][]time.Duration
}

const unreachable = time.Duration(1) << 60

func newTable(l Limits, t Times, colours int) *table {
	b := &table{l: l, t: t, colours: colours, base: 2*colours + 1, states: 1}
	for range l.Positions {
		b.states *= b.base
	}
	for s := range b.states {
		digits := make([]int, l.Positions)
		for p := range digits {
			digits[p] = s % b.base
			s /= b.base
		}
		b.digits = append(b.digits, digits)
	}
	var end [][2][]time.Duration
	for range b.allowances() {
		var at [2][]time.Duration
		for d := range 2 {
			at[d] = make([]time.Duration, b.states)
			for s, digits := range b.digits {
				for _, x := range digits {
					if x > colours {
						at[d][s] += t.Cut
					}
				}
				if d == 1 {
					if at[d][s] += t.Far; l.FinishAtLease {
						at[d][s] = unreachable
					}
				}
			}
		}
		end = append(end, at)
	}
	b.ahead = append(b.ahead, end)
	return b
}

// allowances is how many numbers of halts there may be left.
func (b *table) allowances() int {
	if b.l.MostHalts == nil {
		return 1
	}
	return *b.l.MostHalts + 1
}

// split takes a digit apart.
func (b *table) split(x int) (colour int, carried bool) {
	if x > b.colours {
		return x - b.colours, true
	}
	return x, false
}

// work is what the hands do at one position to make one digit of another.
func (b *table) work(from, to int) time.Duration {
	had, carried := b.split(from)
	has, carries := b.split(to)
	var d time.Duration
	if carried && !(carries && had == has) {
		d += b.t.Cut
	}
	if has != had && has != 0 {
		d += b.t.Thread
	}
	if carries && !(carried && had == has) {
		d += b.t.Tie
	}
	return d
}

// lay is what the last n ends cost if the next pass is laid with the paddle as it is.
func (b *table) lay(n, halts, d, state int) time.Duration {
	digits := b.digits[state]
	held := make([]int, b.colours+1)
	var word []int
	last := -1
	for p, x := range digits {
		colour, carried := b.split(x)
		held[colour]++
		if !carried {
			continue
		}
		if last >= 0 && (p-last)%2 == 0 {
			return unreachable
		}
		last = p
		word = append(word, colour)
	}
	for c, most := range b.l.Packages {
		if c < b.colours && most > 0 && held[c+1] > most {
			return unreachable
		}
	}
	size := len(word)
	if size == 0 || size > n || len(b.l.Sizes) > 0 && !slices.Contains(b.l.Sizes, size) {
		return unreachable
	}
	if (d == 1 && b.l.ReturnOrder == wind.MirroredOrder) != b.l.FootLast {
		slices.Reverse(word)
	}
	for k, colour := range word {
		if b.ends[n-1-k] != colour {
			return unreachable
		}
	}
	return b.t.Pass + b.ahead[n-size][halts][1-d][state]
}

// push puts an end before the others, and works out what is ahead from there.
func (b *table) push(c int) {
	b.ends = append(b.ends, c)
	n := len(b.ends)
	var now [][2][]time.Duration
	for halts := range b.allowances() {
		var at [2][]time.Duration
		for d := range 2 {
			at[d] = make([]time.Duration, b.states)
			for s := range b.states {
				at[d][s] = b.lay(n, halts, d, s)
			}
			// Halts are used up from the last allowance down: with none left there is no halt.
			var after []time.Duration
			switch {
			case b.l.MostHalts == nil:
				after = b.anyOther(at[d])
			case halts > 0:
				laid := make([]time.Duration, b.states)
				for s := range laid {
					laid[s] = b.lay(n, halts-1, d, s)
				}
				after = b.anyOther(laid)
			default:
				continue
			}
			for s := range at[d] {
				at[d][s] = min(at[d][s], b.t.Halt+after[s])
			}
		}
		now = append(now, at)
	}
	b.ahead = append(b.ahead, now)
}

func (b *table) pop() {
	b.ends, b.ahead = b.ends[:len(b.ends)-1], b.ahead[:len(b.ahead)-1]
}

// anyOther lets the hands make any state of each, one position after the other.
func (b *table) anyOther(laid []time.Duration) []time.Duration {
	was := slices.Clone(laid)
	now := make([]time.Duration, len(laid))
	stride := 1
	for range b.l.Positions {
		for s := range now {
			x := s / stride % b.base
			now[s] = unreachable
			for y := range b.base {
				now[s] = min(now[s], b.work(x, y)+was[s+(y-x)*stride])
			}
		}
		was, now = now, was
		stride *= b.base
	}
	return was
}

// least is the cost of the whole warp with one more end, c, before those pushed.
func (b *table) least(c int) time.Duration {
	b.ends = append(b.ends, c)
	n := len(b.ends)
	best := unreachable
	for s, digits := range b.digits {
		cost := b.lay(n, b.allowances()-1, 0, s)
		for _, x := range digits {
			cost += b.work(0, x)
		}
		best = min(best, cost)
	}
	b.ends = b.ends[:n-1]
	return best
}

// forEach goes through every order of up to most ends and so many colours, colours renamed as they appear
// from the last end on, and gives each with its least cost.
func (b *table) forEach(most, colours int, check func(ends []int, least time.Duration)) {
	used := 0
	for _, c := range b.ends {
		used = max(used, c)
	}
	for c := 1; c <= min(used+1, colours); c++ {
		ends := append([]int{c}, b.ends...)
		slices.Reverse(ends[1:])
		check(ends, b.least(c))
		if len(ends) < most {
			b.push(c)
			b.forEach(most, colours, check)
			b.pop()
		}
	}
}

// lot draws numbers evenly; rapid draws small ones mostly, and few of them press on the limits.
type lot struct{ *rand.Rand }

// from gives a number from low to high.
func (r lot) from(low, high int) int { return low + r.IntN(high-low+1) }

// ends draws the colours of fewest to most ends.
func (r lot) ends(fewest, most, colours int) []int {
	ends := make([]int, r.from(fewest, most))
	for i := range ends {
		ends[i] = r.from(1, colours)
		if i > 0 && r.from(0, 2) == 0 {
			ends[i] = ends[i-1]
		}
	}
	return ends
}

// limits draws limits for a small paddle.
func (r lot) limits(colours int) Limits {
	l := Limits{
		Positions:     4 - r.from(0, 1)*r.from(0, 3),
		ReturnOrder:   wind.ReturnOrder(r.from(0, 1)),
		FootLast:      r.from(0, 2) == 0,
		FinishAtLease: r.from(0, 3) == 0,
	}
	for size := 1; size <= l.Positions && r.from(0, 2) == 0; size++ {
		if r.from(0, 2) > 0 {
			l.Sizes = append(l.Sizes, size)
		}
	}
	for range r.from(0, colours) {
		l.Packages = append(l.Packages, r.from(0, 2))
	}
	if r.from(0, 3) == 0 {
		halts := r.from(0, 3)
		l.MostHalts = &halts
	}
	return l
}

func (r lot) times() Times {
	any := func() time.Duration { return time.Duration(r.from(0, 5)) * time.Minute }
	return Times{Pass: any(), Halt: any(), Cut: any(), Tie: any(), Thread: any(), Far: any()}
}

// stripes draws stripes of 1 to 7 ends, fewest to most ends in all.
func (r lot) stripes(fewest, most, colours int) []int {
	n := r.from(fewest, most)
	var ends []int
	for len(ends) < n {
		ends = append(ends, slices.Repeat([]int{r.from(1, colours)}, r.from(1, 7))...)
	}
	return ends[:n]
}
