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
// where B has a colour that A hasn't got, and a stop, unless those positions (and, where packages are
// scarce, those where B has none) are free in A and A's carried positions are among B's.
//
// Changes are made as late as can be: a position that was not carried since the last stop is changed
// at that stop, without another. So a set-up need never be chosen ahead, and no schedule is missed: of
// a schedule's set-ups only the colours that are used later count, and a stop can always wait until
// a position that was carried since the last one must change.
type label struct {
	cost    cost
	carried uint64 // positions carried since the last stop
	set     int32  // where its set-up begins in search.sets
	from    int32  // the label that it goes on from, -1 for none
	base    uint8
	size    uint8
	filled  uint8 // positions with a colour
	stop    bool
	emptied uint64
}

// candidate is a label whose set-up hasn't been written down yet.
type candidate struct {
	label
	rank cost // what the search keeps by when it can't keep all: the cost but for threading
}

// search is one run through the warp.
type search struct {
	*problem
	width  int  // the most labels kept for one end and direction
	whole  bool // give up rather than drop a label that isn't superfluous
	limit  int  // where whole, the looks after which to give up
	best   cost // only what costs less than this is wanted
	labels []label
	sets   []uint8
	// waiting[(i % len)*2+d] holds the candidates for end i and direction d.
	waiting [][]candidate
	// dropped says that not every label could be kept.
	dropped bool
	scratch []uint8
	counts  []int
}

// run searches and gives the steps of the best schedule below best, or nil. Seeds are set-ups that
// the paddle may be threaded with before the first pass.
func (s *search) run(seeds [][]uint8) []step {
	n := len(s.ends)
	s.waiting = make([][]candidate, 2*(s.maxSize+1))
	s.scratch = make([]uint8, s.positions)
	s.counts = make([]int, s.colours+1)
	first := []int32{s.write(candidate{label: label{from: -1}}, s.scratch)}
	for _, seed := range seeds {
		l := label{from: -1}
		for _, c := range seed {
			if c != 0 {
				l.filled++
			}
		}
		l.cost = cost(l.filled) * cost(s.w.Change)
		first = append(first, s.write(candidate{label: l}, seed))
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
					if s.dropped || s.whole && s.looked > s.limit {
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

// write keeps a candidate as a label.
func (s *search) write(c candidate, set []uint8) int32 {
	c.set = int32(len(s.sets))
	s.sets = append(s.sets, set...)
	s.labels = append(s.labels, c.label)
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
				s.propose(at, i, d, candidate{label: label{
					from: at, base: uint8(min(edge, pos)), size: uint8(size), filled: s.labels[at].filled + uint8(filled),
				}}, changed)
			}
		}
	}
}

// propose works out what a pass costs, and lets it wait for its end. Where packages are scarce there
// may be several ways to free them.
func (s *search) propose(at int32, i, d int, c candidate, changed uint64) {
	s.looked++
	if changed != 0 && s.scarce {
		s.free(at, i, d, c, changed)
		return
	}
	s.wait(at, i, d, c, changed)
}

// wait puts a candidate with its final set of emptied positions among those of its last end.
func (s *search) wait(at int32, i, d int, c candidate, changed uint64) {
	from := &s.labels[at]
	c.cost = from.cost + s.passCost(int(c.size)) + cost(bits.OnesCount64(changed))*cost(s.w.Change)
	c.carried = from.carried | block(int(c.base), int(c.size))
	if (changed|c.emptied)&from.carried != 0 {
		c.stop = true
		c.cost += cost(s.w.Stop)
		c.carried = block(int(c.base), int(c.size))
	}
	c.filled -= uint8(bits.OnesCount64(c.emptied))
	c.rank = c.cost - cost(c.filled)*cost(s.w.Change)
	i += int(c.size)
	d = s.after(d)
	if c.cost+s.rest[i][d] >= s.best {
		return
	}
	slot := &s.waiting[i%(s.maxSize+1)*2+d]
	*slot = append(*slot, c)
	switch {
	case len(*slot) < 8*s.width:
	case s.whole:
		s.dropped = true
	default:
		*slot = nearest(*slot, 4*s.width)
	}
}

// nearest keeps the n candidates of the lowest rank.
func nearest(list []candidate, n int) []candidate {
	low, high := 0, len(list)-1
	for low < high {
		pivot, i, j := list[(low+high)/2].rank, low, high
		for i <= j {
			for list[i].rank < pivot {
				i++
			}
			for list[j].rank > pivot {
				j--
			}
			if i <= j {
				list[i], list[j] = list[j], list[i]
				i++
				j--
			}
		}
		if n <= j {
			high = j
		} else if n >= i {
			low = i
		} else {
			break
		}
	}
	return list[:n]
}
