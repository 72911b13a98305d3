package stripe

import (
	"slices"
	"time"
)

// The bound by counting.
//
// Take some neighbouring ends, a window, and the stops before passes that begin in it. At these stops
// g positions in all get another colour. Let L(c) be the longest block of neighbouring positions with
// colour c that there is at any time in the window. A stripe of k ends of c takes at least k / L(c)
// passes, rounded up. A pass may do for the end of one stripe and the beginning of the next, but only
// if the two colours lie next to each other in the set-up at some time.
//
// How many kinds of such neighbours can there be? Let F positions be filled when the window begins,
// in m blocks: m - 1 kinds at most, and each of the g positions adds two at most. The block that L(c)
// counts is made of at most g(c) positions that got c in the window and of at most g(c) + 1 blocks
// that were there before. All other blocks have one position or more. So with K colours
// m <= K + g + F - (sum of L - g), and the kinds are at most K - 1 + F + 4g - (sum of L); and the sum
// of L is at most F + g. The fewest passes that touch the window are the pieces of all stripes less all
// borders of the commonest kinds (on mirrored return passes a kind serves both ways), at the best
// choice of L; they cost, with the g changes and a stop if there are any, so much at the least.
//
// Put windows side by side. A pass that touches two of them is counted twice, so from the sum is taken
// one pass for each place where windows meet. Before the first window nothing is threaded, and what is
// threaded at the start costs as well. A pass is short unless it carries m ends, and n passes of N ends
// can't have more than (N - n) / (m - 1) full ones: so with pass p and short pass q, n passes cost at
// least n (p + q + q / (m - 1)) - q N / (m - 1).

// bound is a cost that no schedule can be below.
func (p *problem) bound() time.Duration {
	least := p.rest[0][0] + cost(p.used())*cost(p.w.Change)
	for length := p.maxSize; ; length *= 2 {
		least = max(least, p.windowBound(min(length, len(p.ends))))
		if length >= len(p.ends) {
			return time.Duration(least)
		}
	}
}

// used is the number of colours that some end has.
func (p *problem) used() int {
	seen := make([]bool, p.colours+1)
	n := 0
	for _, c := range p.ends {
		if !seen[c] {
			seen[c] = true
			n++
		}
	}
	return n
}

// slope is the least that a pass more costs, and flat what is taken off all of them: see above.
func (p *problem) slope() (slope, flat cost) {
	slope = p.passCost(p.maxSize)
	if p.maxSize > 1 {
		others := cost(p.maxSize - 1)
		slope += cost(p.w.Short) + cost(p.w.Short)/others
		flat = (cost(p.w.Short)*cost(len(p.ends)) + others - 1) / others
	}
	return slope, flat
}

// windowBound is the bound with windows of one length; the last one may be longer.
func (p *problem) windowBound(length int) cost {
	windows := max(len(p.ends)/length, 1)
	slope, flat := p.slope()
	sum := -flat - slope*cost(windows-1)
	for w := range windows {
		from, to := w*length, (w+1)*length
		if w == windows-1 {
			to = len(p.ends)
		}
		sum += p.windowCost(p.ends[from:to], w == 0, slope)
	}
	return sum
}

// windowCost is the least that a window costs, its passes at slope each.
func (p *problem) windowCost(window []uint8, first bool, slope cost) cost {
	v := p.view(window)
	least := never
	filled := p.positions
	if first {
		filled = 1
	}
	for ; filled <= p.positions; filled++ {
		for got := 0; ; got++ {
			c := cost(got) * cost(p.w.Change)
			if first {
				c += cost(filled) * cost(p.w.Change)
			}
			if got > 0 {
				c += cost(p.w.Stop)
			}
			if c+slope*cost(v.fewest) >= least || got > p.positions*v.colours {
				break // more changes can't do better
			}
			least = min(least, c+slope*cost(v.passes(filled, got)))
		}
	}
	return least
}

// view is what counting needs to know of a window.
type view struct {
	fewest  int   // passes, by the ends alone
	ends    int   // in the window
	colours int   // in the window
	pieces  []int // the fewest passes stripe by stripe, for each sum of the longest blocks
	borders []int // how many borders lie in the commonest kinds: 1, 2, 3 ... of them
}

func (p *problem) view(window []uint8) view {
	v := view{ends: len(window), fewest: (len(window) + p.maxSize - 1) / p.maxSize}
	var stripes map[uint8][]int
	stripes, v.borders = p.stripesOf(window)
	v.colours = len(stripes)
	v.pieces = p.piecesOf(stripes)
	return v
}

// passes is the fewest passes that touch the window if so many positions are filled before it and so
// many get another colour in it. It never claims more than one for each end.
func (v view) passes(filled, got int) int {
	least := v.ends
	for sum, n := range v.pieces[:min(filled+got+1, len(v.pieces))] {
		least = min(least, n-v.crossed(v.colours-1+filled+4*got-sum))
	}
	return max(least, v.fewest)
}

// crossed is how many borders lie in the n commonest kinds.
func (v view) crossed(n int) int {
	if n = min(n, len(v.borders)); n < 1 {
		return 0
	}
	return v.borders[n-1]
}

// stripesOf cuts a window into stripes, by colour, and gives how often each kind of border between
// two colours occurs, the commonest first, summed up: the n-th number is that of the n commonest.
func (p *problem) stripesOf(window []uint8) (stripes map[uint8][]int, borders []int) {
	stripes = map[uint8][]int{}
	kinds := map[[2]uint8]int{}
	start := 0
	for i := 1; i <= len(window); i++ {
		if i < len(window) && window[i] == window[start] {
			continue
		}
		stripes[window[start]] = append(stripes[window[start]], i-start)
		if i < len(window) {
			kind := [2]uint8{window[start], window[i]}
			if p.mirrored && !p.oneWay {
				kind = [2]uint8{min(kind[0], kind[1]), max(kind[0], kind[1])}
			}
			kinds[kind]++
		}
		start = i
	}
	for _, n := range kinds {
		borders = append(borders, n)
	}
	slices.SortFunc(borders, func(a, b int) int { return b - a })
	for i := 1; i < len(borders); i++ {
		borders[i] += borders[i-1]
	}
	return stripes, borders
}

// manyPasses stands for stripes that no set-up with so few positions can lay.
const manyPasses = 1 << 30

// piecesOf gives for each sum of the longest blocks the fewest passes that lay the stripes one by one.
func (p *problem) piecesOf(stripes map[uint8][]int) []int {
	fewest := []int{0}
	for c, own := range stripes {
		longest := min(slices.Max(own), p.maxSize, p.packages[c])
		with := slices.Repeat([]int{manyPasses}, len(fewest)+longest)
		for long := 1; long <= longest; long++ {
			n := 0
			for _, k := range own {
				n += (k + long - 1) / long
			}
			for sum, before := range fewest {
				with[sum+long] = min(with[sum+long], before+n)
			}
		}
		fewest = with
	}
	return fewest
}
