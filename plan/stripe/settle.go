package stripe

import (
	"cmp"
	"math/bits"
	"slices"
)

// compared is how many of the cheapest labels every other is compared with; labels with the same
// set-up are always found.
const compared = 32

// settle chooses which of the moves that wait for an end and a direction become labels.
func (s *search) settle(i, d int) []int32 {
	q := &s.waiting[i%(s.maxSize+1)*2+d]
	if !s.whole && len(q.moves) > 3*s.width {
		s.cut(q, 3*s.width)
	}
	list := q.moves
	q.moves, q.worst = list[:0], never
	slices.SortFunc(list, func(a, b move) int { return cmp.Compare(a.cost, b.cost) })
	first := len(s.labels)
	var seen map[string][]int32
	for _, m := range list {
		if len(s.labels) > first && m.cost > s.labels[first].cost+s.reach() {
			break // the first label makes this one and all after it superfluous
		}
		set := s.setAfter(m, i, d)
		if s.superfluous(m, set, first) || s.known(seen, m, set) {
			continue
		}
		at := s.write(m, set)
		if len(s.labels)-first > compared {
			if seen == nil {
				seen = map[string][]int32{}
			}
			seen[string(set)] = append(seen[string(set)], at)
		}
	}
	switch {
	case len(s.labels)-first <= s.width:
	case s.whole:
		s.dropped = true
	default:
		s.narrow(first)
	}
	keep := make([]int32, 0, len(s.labels)-first)
	for at := first; at < len(s.labels); at++ {
		keep = append(keep, int32(at))
	}
	return keep
}

// narrow drops all labels from first on but those of the lowest rank, and their set-ups with them:
// nothing goes on from them, and a wide warp would fill the memory.
func (s *search) narrow(first int) {
	list := slices.Clone(s.labels[first:])
	sets := slices.Clone(s.sets[list[0].set:])
	begin := list[0].set
	slices.SortStableFunc(list, func(a, b label) int { return cmp.Compare(s.rank(a.move), s.rank(b.move)) })
	s.labels, s.sets = s.labels[:first], s.sets[:begin]
	for _, l := range list[:s.width] {
		s.write(l.move, sets[l.set-begin:][:s.positions])
	}
}

// reach is the most that it can cost to bring one set-up to another.
func (s *search) reach() cost { return cost(s.w.Stop) + cost(s.positions)*cost(s.w.Change) }

// setAfter is the set-up that a move for end i leaves behind, a pass of direction d being next.
// It is good until the next call.
func (s *search) setAfter(m move, i, d int) []uint8 {
	copy(s.scratch, s.setOf(m.from))
	for rest := m.emptied; rest != 0; rest &= rest - 1 {
		s.scratch[bits.TrailingZeros64(rest)] = 0
	}
	mirrored := s.mirrored && !s.oneWay && d == 0
	start := i - int(m.size)
	for k := range int(m.size) {
		s.scratch[int(m.base)+s.offset(k, int(m.size), mirrored)] = s.ends[start+k]
	}
	return s.scratch
}

// superfluous says whether one of the cheapest labels from first on makes a move superfluous.
func (s *search) superfluous(m move, set []uint8, first int) bool {
	for at := first; at < min(len(s.labels), first+compared); at++ {
		if s.covers(int32(at), m, set) {
			return true
		}
	}
	return false
}

// covers says whether a label makes a move superfluous. When not all labels can be kept, one
// that only has yet to thread what the move has threaded doesn't: the move knows more.
func (s *search) covers(at int32, m move, set []uint8) bool {
	a := &s.labels[at]
	spare := m.cost - a.cost
	mine := s.setOf(at)
	var differ uint64
	changes := 0
	for p, want := range set {
		if mine[p] == want || want == 0 {
			continue
		}
		differ |= 1 << p
		if changes++; cost(changes)*cost(s.w.Change) > spare {
			return false
		}
	}
	need := cost(changes) * cost(s.w.Change)
	if differ&a.carried != 0 || a.carried&^m.carried != 0 {
		need += cost(s.w.Stop)
	}
	return need < spare || need == spare && (changes == 0 || s.whole)
}

// known says whether a label with the same set-up and no more positions carried is there.
func (s *search) known(seen map[string][]int32, m move, set []uint8) bool {
	for _, at := range seen[string(set)] {
		if s.covers(at, m, set) {
			return true
		}
	}
	return false
}
