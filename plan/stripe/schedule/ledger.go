package schedule

import (
	"math"
	"math/bits"
)

// ledger is the work of some passes, with the set-ups that they need.
type ledger struct {
	sum     Sum
	setUps  [][]uint8
	setUpOf []int32 // of each pass, from 0
}

// ledger works out what the hands do for passes that lay the whole warp. A position is threaded when it is
// first carried with a colour, and keeps it until it is wanted for another. Where packages of a colour are
// short, parked positions that hold one give it up: of these the one that is next carried latest, which
// takes the fewest threadings in all (the rule for a cache whose requests are known).
// Positions that are first carried later are threaded at the start, where the packages are enough: that
// costs the same and leaves fewer set-ups.
func (p *problem) ledger(passes []pass, withSetUps bool) ledger {
	var l ledger
	h := hands{problem: p, set: make([]uint8, p.positions)}
	if p.anyScarce {
		h.findUses(passes)
	}
	var fills []uint8 // what goes into positions that are first carried later
	if withSetUps {
		fills = make([]uint8, p.positions)
	}
	before := uint64(0)
	for i, ps := range passes {
		changed := h.take(ps, i)
		stay := ps.carried & before &^ changed
		if work := before != ps.carried || changed != 0; work && i > 0 {
			l.sum.Halts++
		}
		l.sum.Ties += bits.OnesCount64(ps.carried &^ stay)
		l.sum.Threads += bits.OnesCount64(changed)
		before = ps.carried
		if !withSetUps {
			continue
		}
		if changed != 0 || i == 0 {
			l.setUps = append(l.setUps, append([]uint8(nil), h.set...))
		}
		l.setUpOf = append(l.setUpOf, int32(len(l.setUps)-1))
	}
	l.sum.Passes = len(passes)
	l.sum.Cuts = l.sum.Ties
	l.sum.Far = len(passes)%2 == 1
	if withSetUps {
		l.fill(p, fills)
	}
	return l
}

// fill threads positions that are empty at the start with the colour that they get first, as far as the
// packages go, and drops set-ups that are then as those before.
func (l *ledger) fill(p *problem, fills []uint8) {
	until := make([]int, p.positions) // the first set-up in which a position has a colour
	most := make([]int, p.colours+1)  // how many positions a colour would take at any time
	for pos := range until {
		for until[pos] < len(l.setUps) && l.setUps[until[pos]][pos] == 0 {
			until[pos]++
		}
		if until[pos] < len(l.setUps) {
			fills[pos] = l.setUps[until[pos]][pos]
		}
	}
	count := make([]int, p.colours+1)
	for k, set := range l.setUps {
		clear(count)
		for pos, c := range set {
			if k < until[pos] {
				c = fills[pos]
			}
			if c > 0 {
				count[c]++
				most[c] = max(most[c], count[c])
			}
		}
	}
	for pos, c := range fills {
		if c == 0 || most[c] > p.packages[c] {
			continue
		}
		for k := range until[pos] {
			l.setUps[k][pos] = c
		}
	}
	l.merge()
}

// merge drops set-ups that are as those before them.
func (l *ledger) merge() {
	number := make([]int32, len(l.setUps))
	kept := l.setUps[:0]
	for k, set := range l.setUps {
		if len(kept) == 0 || string(kept[len(kept)-1]) != string(set) {
			kept = append(kept, set)
		}
		number[k] = int32(len(kept) - 1)
	}
	l.setUps = kept
	for i, k := range l.setUpOf {
		l.setUpOf[i] = number[k]
	}
}

// hands are the hands at the pegs as they go through the passes.
type hands struct {
	*problem
	set  []uint8
	uses [][]use // of each position, those to come first
	held []int   // packages in use, scratch
}

// use is a colour that a position is carried with on a pass.
type use struct {
	pass   int32
	colour uint8
}

// findUses lists what each position is carried with.
func (h *hands) findUses(passes []pass) {
	h.uses = make([][]use, h.positions)
	h.held = make([]int, h.colours+1)
	for i, ps := range passes {
		k := 0
		for rest := ps.carried; rest != 0; rest &= rest - 1 {
			pos := bits.TrailingZeros64(rest)
			h.uses[pos] = append(h.uses[pos], use{int32(i), h.letter(ps.first, ps.size, k, i%2)})
			k++
		}
	}
}

// take threads what a pass needs and gives the positions that got another colour.
func (h *hands) take(ps pass, number int) (changed uint64) {
	k := 0
	for rest := ps.carried; rest != 0; rest &= rest - 1 {
		pos := bits.TrailingZeros64(rest)
		c := h.letter(ps.first, ps.size, k, number%2)
		k++
		if h.set[pos] != c {
			h.set[pos] = c
			changed |= 1 << pos
		}
		if h.uses != nil {
			h.uses[pos] = h.uses[pos][1:]
		}
	}
	if h.uses != nil && changed != 0 {
		h.giveUp(ps.carried)
	}
	return changed
}

// giveUp empties parked positions until the packages are enough.
func (h *hands) giveUp(carried uint64) {
	clear(h.held)
	for _, c := range h.set {
		h.held[c]++
	}
	for c := 1; c <= h.colours; c++ {
		for ; h.held[c] > h.packages[c]; h.held[c]-- {
			latest, at := int32(-1), -1
			for pos, has := range h.set {
				if int(has) != c || carried>>pos&1 == 1 {
					continue
				}
				next := int32(math.MaxInt32)
				if len(h.uses[pos]) > 0 && h.uses[pos][0].colour == has {
					next = h.uses[pos][0].pass
				}
				if next > latest {
					latest, at = next, pos
				}
			}
			if at < 0 {
				return // the pass itself carries more than there are: refused before it comes here
			}
			h.set[at] = 0
		}
	}
}
