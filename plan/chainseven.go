package plan

import (
	"fmt"
	"sort"

	"millside/plan/field"
	"millside/plan/measure"
)

// What an even split adds up, the least being best: one for each thousandth that a chain differs from an equal
// share, and these. They are the project's own judgement.
const (
	evenOffBoundary = 300 // a chain ends within a section of the raddle, a repeat or a stripe
	evenOddPasses   = 30  // a chain stops at the counting cross, where its last group is harder to fasten
)

// evenSplit parts units of winding into chains of near equal ends: passes, or bouts where each chain must end at
// the lease.
type evenSplit struct {
	// ends is the ends of each unit, word what one unit is called, words several.
	ends        []int
	word, words string
	// most is the most ends in a chain, 0 for any; count the chains asked for, 0 for as few as most allows.
	most, count int
	// place is the cost of a chain that ends after so many units.
	place func(units int) int
	// odd says that an odd number of units stops at the counting cross.
	odd bool

	after []int // the ends after so many units, from 0 on
}

// cuts is where the chains end, in units, from 0 to all of them, and why there are so many chains. The error is a
// [*measure.FieldError] where so many chains can't hold the ends.
func (e *evenSplit) cuts() ([]int, string, error) {
	e.after = make([]int, len(e.ends)+1)
	for i, n := range e.ends {
		e.after[i+1] = e.after[i] + n
	}
	fewest := e.fewest()
	chains := e.count
	switch {
	case chains == 0:
		chains = fewest
	case chains > len(e.ends):
		return nil, "", field.ChainCount.Wrong(fmt.Sprint(chains),
			fmt.Sprintf("at most %d, since a chain takes a whole %s", len(e.ends), e.word))
	case chains < fewest:
		return nil, "", field.ChainCount.Wrong(fmt.Sprint(chains), fmt.Sprintf("%d or more: in whole %s, %d "+
			"take up to %s each, and at most %d are asked for", fewest, e.words,
			chains, measure.Counted(e.largest(chains), "end", "ends"), e.most))
	}
	return e.cheapest(chains), e.why(chains), nil
}

// fewest is the fewest chains that hold the ends, one where any number may be in a chain.
func (e *evenSplit) fewest() int {
	if e.most == 0 {
		return 1
	}
	return e.chainsOfAtMost(e.most)
}

// chainsOfAtMost is how many chains there are if each takes as many units as it may; a unit that is larger by
// itself is a chain.
func (e *evenSplit) chainsOfAtMost(most int) int {
	n, in := 1, 0
	for _, ends := range e.ends {
		if in > 0 && in+ends > most {
			n, in = n+1, 0
		}
		in += ends
	}
	return n
}

// largest is the ends of the largest chain, if so many chains are as even as they can be.
func (e *evenSplit) largest(chains int) int {
	widest := 0
	for _, n := range e.ends {
		widest = max(widest, n)
	}
	all := e.after[len(e.ends)]
	return widest + sort.Search(all-widest, func(more int) bool { return e.chainsOfAtMost(widest+more) <= chains })
}

// near lists the places, in units, where a cut may fall: its equal share of the ends, and a tenth of a chain or a
// unit to both sides, at most fifty units.
func (e *evenSplit) near(cut, chains int) (low, high int) {
	units, all := len(e.ends), e.after[len(e.ends)]
	if cut == 0 || cut == chains {
		return cut / chains * units, cut / chains * units
	}
	at := sort.SearchInts(e.after, cut*all/chains)
	reach := min(max(units/(10*chains), 1), 50)
	return max(at-reach, cut), min(at+reach, units-(chains-cut))
}

// cheapest finds the cheapest cuts: for each place of each cut it keeps the cheapest way to get there. Where none
// keeps to the most ends near the equal shares, chains are filled one after another up to the fewest ends that the
// largest must have.
func (e *evenSplit) cheapest(chains int) []int {
	type way struct {
		cost, from int
		found      bool
	}
	limit := max(e.most, e.largest(chains))
	if e.most == 0 {
		limit = measure.MaxEnds + measure.MaxPositions
	}
	ways := [][]way{{{found: true}}} // of each cut, by its place less the first one that it may have
	for cut := 1; cut <= chains; cut++ {
		low, high := e.near(cut, chains)
		lowBefore, highBefore := e.near(cut-1, chains)
		reached := make([]way, max(high-low+1, 0))
		for at := low; at <= high; at++ {
			here, best := e.placeCost(at), &reached[at-low]
			for from := lowBefore; from <= min(highBefore, at-1); from++ {
				before := ways[cut-1][from-lowBefore]
				if !before.found || e.after[at]-e.after[from] > limit {
					continue
				}
				if cost := before.cost + e.lengthCost(from, at, chains) + here; !best.found || cost < best.cost {
					*best = way{cost: cost, from: from, found: true}
				}
			}
		}
		ways = append(ways, reached)
	}
	if last := ways[chains]; len(last) == 0 || !last[len(last)-1].found {
		return e.filled(chains, e.largest(chains))
	}
	cuts := make([]int, chains+1)
	cuts[chains] = len(e.ends)
	for cut := chains; cut > 0; cut-- {
		low, _ := e.near(cut, chains)
		cuts[cut-1] = ways[cut][cuts[cut]-low].from
	}
	return cuts
}

// filled fills chain after chain with at most so many ends, and leaves at least a unit for each that follows.
func (e *evenSplit) filled(chains, most int) []int {
	cuts := []int{0}
	for cut := 1; cut < chains; cut++ {
		from := cuts[cut-1]
		to := from + 1
		for to < len(e.ends)-(chains-cut) && e.after[to+1]-e.after[from] <= most {
			to++
		}
		cuts = append(cuts, to)
	}
	return append(cuts, len(e.ends))
}

func (e *evenSplit) lengthCost(from, to, chains int) int {
	all := e.after[len(e.ends)]
	cost := measure.Distance((e.after[to]-e.after[from])*chains, all) * 1000 / all
	if e.odd && (to-from)%2 == 1 {
		cost += evenOddPasses
	}
	return cost
}

func (e *evenSplit) placeCost(units int) int {
	if units == len(e.ends) || e.place == nil {
		return 0
	}
	return e.place(units)
}

// why says why there are so many chains, and what one fewer would take.
func (e *evenSplit) why(chains int) string {
	say := fmt.Sprintf("%s, evenly in whole %s: ", measure.Counted(chains, "chain", "chains"), e.words)
	switch {
	case e.count > 0:
		return say + "so many were asked for"
	case e.most == 0 || chains == 1:
		return ""
	}
	if most := e.largest(chains); most > e.most {
		return say + fmt.Sprintf("a %s has up to %d ends, more than the %d asked for", e.word, most, e.most)
	}
	if chains == 2 {
		return say + fmt.Sprintf("one would have all %d ends, and at most %d are asked for",
			e.after[len(e.ends)], e.most)
	}
	return say + fmt.Sprintf("%d would take up to %d ends in one, and at most %d are asked for", chains-1,
		e.largest(chains-1), e.most)
}
