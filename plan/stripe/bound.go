package stripe

import (
	"slices"
	"time"
)

// The bound by counting.
//
// Take a run of neighbouring ends, a window, and suppose that no pass that begins in it needs a stop
// before it. Then one set-up lays all of it. Let colour c have a block of at most L(c) neighbouring
// positions there. A stripe of k ends of c takes at least k / L(c) passes, rounded up. The passes of
// neighbouring stripes may be one and the same, but only where the set-up has the two colours next to
// each other: with K colours and P positions there are at most K + P - (sum of L) blocks, so at most
// one less kinds of border between stripes can be crossed (on mirrored return passes, in both ways).
// The fewest passes that touch the window are the sum over the stripes, less all the borders of the
// commonest kinds, at the best choice of L.
//
// Put windows side by side. A pass that touches two of them is counted twice, so the passes are at
// least the sum less one for each place where windows meet. A window with a stop takes at least the
// ends divided by the largest group. With s stops the bound is the sum over the windows, the s windows
// that lose most by it counted as stopped; s stops cost s stops, and every stop at least one change.
// The bound is the least over s, and of the windows' lengths tried the one that gives the most counts.

// bound is a cost that no schedule can be below.
func (p *problem) bound() time.Duration {
	least := p.rest[0][0] + cost(p.used())*cost(p.w.Change)
	for length := 2 * p.maxSize; ; length *= 2 {
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

// windowBound is the bound with windows of one length; the last one may be longer.
func (p *problem) windowBound(length int) cost {
	windows := max(len(p.ends)/length, 1)
	var lost []int
	touched := 1 - windows
	for w := range windows {
		from, to := w*length, (w+1)*length
		if w == windows-1 {
			to = len(p.ends)
		}
		fewest := (to - from + p.maxSize - 1) / p.maxSize
		// a window that no one set-up can lay counts as if every end took a pass
		passes := max(fewest, min(slices.Min(p.count(p.ends[from:to])), to-from))
		touched += passes
		lost = append(lost, passes-fewest)
	}
	slices.SortFunc(lost, func(a, b int) int { return b - a })
	least := p.unstopped()
	for s := 1; s <= windows; s++ {
		touched -= lost[s-1]
		least = min(least, cost(s)*cost(p.w.Stop)+cost(max(p.used(), s+1))*cost(p.w.Change)+p.passesCost(touched))
	}
	return least
}

// unstopped is the least cost of the whole warp without a stop.
func (p *problem) unstopped() cost {
	least := never
	for threaded, passes := range p.count(p.ends) {
		if passes == manyPasses {
			continue
		}
		least = min(least, cost(threaded)*cost(p.w.Change)+p.passesCost(passes))
	}
	return least
}

// passesCost is the least that the whole warp costs in passes, short passes and finish if it takes so
// many passes or more.
func (p *problem) passesCost(passes int) cost {
	n := len(p.ends)
	passes = max(passes, (n+p.maxSize-1)/p.maxSize)
	one := p.passCost(p.maxSize)
	full := n // with groups of one all are full
	if p.maxSize > 1 {
		full = max(n-passes, 0) / (p.maxSize - 1)
	}
	c := cost(passes)*one + cost(max(passes-full, 0))*cost(p.w.Short)
	if passes%2 == 1 && !p.oneWay {
		// either the last pass ends at the counting cross, or there is one pass more
		c += min(cost(p.w.AtCross), one)
	}
	return max(c, p.rest[0][0])
}

// manyPasses stands for a window that no set-up can lay.
const manyPasses = 1 << 30

// count gives for each number of positions threaded, from 0 to all, the fewest passes that touch a
// window which is laid without a stop.
func (p *problem) count(window []uint8) []int {
	stripes, borders := p.stripesOf(window)
	pieces, colours := p.pieces(stripes)
	fewest := make([]int, p.positions+1)
	for threaded := range fewest {
		fewest[threaded] = manyPasses
		for blocks, n := range pieces[:threaded+1] {
			if n < manyPasses {
				fewest[threaded] = min(fewest[threaded], max(n-crossed(borders, colours-1+threaded-blocks), 1))
			}
		}
	}
	return fewest
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

// crossed is how many borders lie in the n commonest kinds.
func crossed(borders []int, n int) int {
	if n = min(n, len(borders)); n < 1 {
		return 0
	}
	return borders[n-1]
}

// pieces gives for each total of the longest blocks of the colours the fewest passes that lay the
// stripes one by one, and the number of colours.
func (p *problem) pieces(stripes map[uint8][]int) (fewest []int, colours int) {
	fewest = make([]int, p.positions+1)
	for t := range fewest {
		fewest[t] = manyPasses
	}
	fewest[0] = 0
	for c := range uint8(min(p.colours, MaxColours)) {
		own := stripes[c+1]
		if own == nil {
			continue
		}
		colours++
		with := make([]int, p.positions+1)
		for t := range with {
			with[t] = manyPasses
		}
		for long := 1; long <= min(p.maxSize, p.packages[c+1]); long++ {
			n := 0
			for _, k := range own {
				n += (k + long - 1) / long
			}
			for t := long; t <= p.positions; t++ {
				with[t] = min(with[t], fewest[t-long]+n)
			}
		}
		fewest = with
	}
	return fewest, colours
}
