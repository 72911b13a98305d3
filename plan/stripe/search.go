package stripe

import (
	"math/bits"
	"slices"
)

// The search goes through the warp end by end. A label is one way to have laid the first ends: what it
// costs, the set-up that it leaves behind, and the positions that were carried since the last stop,
// whose colours can't be changed without another. Of labels at the same end and with the same
// direction to come, those are kept that no other makes superfluous:
//
// Label A makes B superfluous if A could be brought to B's set-up, with no position carried since the
// stop that B hasn't, for no more than B costs above A. What it takes is a change for each position
// where B has a colour that A hasn't got, and a stop, unless those positions were not carried in A and
// A's carried positions are among B's. Where B has no colour A may have one: it was not carried in B,
// so not in A either, and can give its package up at any time.
//
// Changes are made as late as can be: a position that was not carried since the last stop is changed
// at that stop, without another. So a set-up need never be chosen ahead, and no schedule is missed: of
// a schedule's set-ups only the colours that are used later count, and a stop can always wait until
// a position that was carried since the last one must change.
type label struct {
	move
	has uint64 // the colours in its set-up, as in problem.toCome
	set int32  // where its set-up begins in search.sets
}

// move is a pass that follows a label, and what it leads to.
type move struct {
	cost    cost
	carried uint64 // positions carried since the last stop
	emptied uint64 // positions that give their package up
	from    int32  // the label that it goes on from, -1 for none
	base    uint8  // the lowest position, from 0
	size    uint8  // the ends carried
	filled  uint8  // positions with a colour
	stop    bool   // halts first
}

// search is one run through the warp.
type search struct {
	*problem
	width  int  // the most labels kept for one end and direction
	whole  bool // give up rather than drop a label that isn't superfluous
	start  int  // where whole, the looks at the beginning
	limit  int  // where whole, the looks after which to give up
	best   cost // only what costs less than this is wanted
	labels []label
	sets   []uint8
	// waiting[i%(maxSize+1)*2+d] holds the moves to end i, the next pass being of direction d.
	waiting []queue
	// dropped says that not every label could be kept.
	dropped bool
	scratch []uint8
	counts  []int
}

// run searches and gives the steps of the best schedule below best, or nil. Seeds are set-ups that
// the paddle may be threaded with before the first pass.
func (s *search) run(seeds [][]uint8) []step {
	n := len(s.ends)
	s.waiting = make([]queue, 2*(s.maxSize+1))
	for i := range s.waiting {
		s.waiting[i].worst = never
	}
	s.scratch = make([]uint8, s.positions)
	s.counts = make([]int, s.colours+1)
	first := []int32{s.write(move{from: -1}, s.scratch)}
	for _, seed := range seeds {
		m := move{from: -1}
		for _, c := range seed {
			if c != 0 {
				m.filled++
			}
		}
		m.cost = cost(m.filled) * cost(s.w.Change)
		first = append(first, s.write(m, seed))
	}
	end := int32(-1)
	for i := 0; i <= n; i++ {
		for d := range 2 {
			keep := first
			if i > 0 || d > 0 {
				keep = s.settle(i, d)
			}
			if i < n {
				for _, at := range keep {
					s.extend(at, i, d)
					if s.dropped || s.whole && (s.looked > s.limitAt(i) || len(s.labels) > manyLabels) {
						s.dropped = true
						return nil
					}
				}
				continue
			}
			for _, at := range keep {
				if total := s.labels[at].cost + s.rest[n][d]; total < s.best {
					s.best, end = total, at
				}
			}
		}
	}
	return s.trace(end)
}

// limitAt is how many looks a whole search may have taken by an end. One that takes many at the first
// ends would take too many for all.
func (s *search) limitAt(i int) int {
	return min(s.limit, s.start+manyLooks+4*(s.limit-s.start)*(i+1)/len(s.ends))
}

// trace lists the steps that led to a label.
func (s *search) trace(end int32) []step {
	var steps []step
	for at := end; at >= 0 && s.labels[at].from >= 0; at = s.labels[at].from {
		l := s.labels[at]
		steps = append(steps, step{base: int(l.base), size: int(l.size), emptied: l.emptied, stop: l.stop})
	}
	slices.Reverse(steps)
	start := 0
	for i := range steps {
		steps[i].start = start
		start += steps[i].size
	}
	return steps
}

// write keeps a move as a label.
func (s *search) write(m move, set []uint8) int32 {
	l := label{move: m, set: int32(len(s.sets))}
	for _, colour := range set {
		l.has |= bit(colour)
	}
	s.sets = append(s.sets, set...)
	s.labels = append(s.labels, l)
	return int32(len(s.labels) - 1)
}

// setOf is the set-up that a label leaves behind.
func (s *search) setOf(at int32) []uint8 {
	from := s.labels[at].set
	return s.sets[from : int(from)+s.positions]
}

// extend looks at every pass that can follow a label: any lowest position (or highest, if the pass is
// mirrored) and any size.
func (s *search) extend(at int32, i, d int) {
	set := s.setOf(at)
	mirrored := d == 1 && s.mirrored
	for edge := range s.positions {
		var changed uint64
		has := s.labels[at].has
		clear(s.counts)
		filled := 0
		for size := 1; size <= s.maxSize && i+size <= len(s.ends); size++ {
			pos := edge + size - 1
			if mirrored {
				pos = edge - size + 1
			}
			if pos < 0 || pos >= s.positions {
				break
			}
			c := s.ends[i+size-1]
			has |= bit(c)
			if set[pos] != c {
				changed |= 1 << pos
				if set[pos] == 0 {
					filled++
				}
			}
			if s.scarce {
				if s.counts[c]++; s.counts[c] > s.packages[c] {
					break
				}
			}
			if s.allowed[size] {
				s.looked++
				m := move{
					from: at, base: uint8(min(edge, pos)), size: uint8(size), filled: s.labels[at].filled + uint8(filled),
				}
				if changed != 0 && s.scarce {
					s.free(i, d, m, changed, has)
				} else {
					s.wait(i, d, m, changed, has)
				}
			}
		}
	}
}

// wait works out what a move costs that begins at end i with direction d, changes the given positions
// and leaves colours behind of which has is a set at least as large, and lets it wait for its last end.
func (s *search) wait(i, d int, m move, changed, has uint64) {
	from := &s.labels[m.from]
	m.cost = from.cost + s.passCost(int(m.size)) + cost(bits.OnesCount64(changed))*cost(s.w.Change)
	m.carried = from.carried | block(int(m.base), int(m.size))
	if (changed|m.emptied)&from.carried != 0 {
		m.stop = true
		m.cost += cost(s.w.Stop)
		m.carried = block(int(m.base), int(m.size))
	}
	m.filled -= uint8(bits.OnesCount64(m.emptied))
	i += int(m.size)
	d = s.after(d)
	to := &s.waiting[i%(s.maxSize+1)*2+d]
	if s.rank(m) > to.worst || m.cost+s.rest[i][d]+s.lacking(m, i, has) >= s.best {
		return
	}
	to.moves = append(to.moves, m)
	switch {
	case len(to.moves) < 8*s.width:
	case s.whole:
		s.dropped = true
	default:
		s.cut(to, 3*s.width)
	}
}

// rank is what the search keeps by when it can't keep all: the cost but for threading.
func (s *search) rank(m move) cost { return m.cost - cost(m.filled)*cost(s.w.Change) }

// lacking is the least that it takes to thread the colours of the ends from i on that the set-up
// lacks: a change for each, and stops if the positions not carried since the last one are too few.
func (s *search) lacking(m move, i int, has uint64) cost {
	n := bits.OnesCount64(s.toCome[i] &^ has)
	if n == 0 {
		return 0
	}
	least := cost(n) * cost(s.w.Change)
	if n -= s.positions - bits.OnesCount64(m.carried); n > 0 {
		least += cost((n+s.positions-1)/s.positions) * cost(s.w.Stop)
	}
	return least
}
