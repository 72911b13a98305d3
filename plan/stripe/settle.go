package stripe

import (
	"cmp"
	"math/bits"
	"slices"
)

// compared is how many of the cheapest labels every other is compared with; labels with the same
// set-up are always found.
const compared = 32

// settle chooses which of the candidates that wait for an end and a direction become labels.
func (s *search) settle(i, d int) []int32 {
	slot := &s.waiting[i%(s.maxSize+1)*2+d]
	list := *slot
	*slot = list[:0]
	if !s.whole && len(list) > 3*s.width {
		list = nearest(list, 3*s.width)
	}
	slices.SortFunc(list, func(a, b candidate) int {
		return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(bits.OnesCount64(a.carried), bits.OnesCount64(b.carried)))
	})
	first := len(s.labels)
	var seen map[string][]int32
	for _, c := range list {
		if len(s.labels) > first && c.cost > s.labels[first].cost+s.reach() {
			break // the first label makes this one and all after it superfluous
		}
		set := s.setAfter(c, i, d)
		if s.superfluous(c, set, first) || s.known(seen, c, set) {
			continue
		}
		at := s.write(c, set)
		if len(s.labels)-first > compared {
			if seen == nil {
				seen = map[string][]int32{}
			}
			seen[string(set)] = append(seen[string(set)], at)
		}
	}
	keep := make([]int32, 0, len(s.labels)-first)
	for at := first; at < len(s.labels); at++ {
		keep = append(keep, int32(at))
	}
	switch {
	case len(keep) <= s.width:
	case s.whole:
		s.dropped = true
	default:
		slices.SortStableFunc(keep, func(a, b int32) int { return cmp.Compare(s.rankOf(a), s.rankOf(b)) })
		keep = keep[:s.width]
	}
	return keep
}

func (s *search) rankOf(at int32) cost {
	return s.labels[at].cost - cost(s.labels[at].filled)*cost(s.w.Change)
}

// reach is the most that it can cost to bring one set-up to another.
func (s *search) reach() cost { return cost(s.w.Stop) + cost(s.positions)*cost(s.w.Change) }

// setAfter is the set-up that a candidate for end i leaves behind, a pass of direction d being next.
// It is good until the next call.
func (s *search) setAfter(c candidate, i, d int) []uint8 {
	copy(s.scratch, s.setOf(c.from))
	for rest := c.emptied; rest != 0; rest &= rest - 1 {
		s.scratch[bits.TrailingZeros64(rest)] = 0
	}
	mirrored := s.mirrored && !s.oneWay && d == 0
	start := i - int(c.size)
	for k := range int(c.size) {
		s.scratch[int(c.base)+s.offset(k, int(c.size), mirrored)] = s.ends[start+k]
	}
	return s.scratch
}

// superfluous says whether one of the cheapest labels from first on makes a candidate superfluous.
func (s *search) superfluous(c candidate, set []uint8, first int) bool {
	for at := first; at < min(len(s.labels), first+compared); at++ {
		if s.covers(int32(at), c, set) {
			return true
		}
	}
	return false
}

// covers says whether a label makes a candidate superfluous. When not all labels can be kept, one
// that only has yet to thread what the candidate has threaded doesn't: the candidate knows more.
func (s *search) covers(at int32, c candidate, set []uint8) bool {
	a := &s.labels[at]
	spare := c.cost - a.cost
	mine := s.setOf(at)
	var differ uint64
	changes := 0
	for p, want := range set {
		if mine[p] == want || want == 0 && !s.scarce {
			continue
		}
		differ |= 1 << p
		if want != 0 {
			if changes++; cost(changes)*cost(s.w.Change) > spare {
				return false
			}
		}
	}
	need := cost(changes) * cost(s.w.Change)
	if differ&a.carried != 0 || a.carried&^c.carried != 0 {
		need += cost(s.w.Stop)
	}
	return need < spare || need == spare && (changes == 0 || s.whole)
}

// known says whether a label with the same set-up and no more positions carried is there.
func (s *search) known(seen map[string][]int32, c candidate, set []uint8) bool {
	for _, at := range seen[string(set)] {
		if s.covers(at, c, set) {
			return true
		}
	}
	return false
}
