package stripe

import "math/bits"

// free lets a move wait once for each way to free the packages that it needs: where the set-up would
// have more positions with a colour than there are packages, some of the parked ones must give theirs
// up. A search that can't look at everything lets the lowest ones do so.
func (s *search) free(i, d int, m move, changed, has uint64) {
	set := s.setOf(m.from)
	carried := block(int(m.base), int(m.size))
	var short []shortage
	for colour := 1; colour <= s.colours; colour++ {
		if s.counts[colour] == 0 {
			continue // the pass takes none of it
		}
		var parked uint64
		for p, c := range set {
			if int(c) == colour && carried>>p&1 == 0 {
				parked |= 1 << p
			}
		}
		if n := s.counts[colour] + bits.OnesCount64(parked) - s.packages[colour]; n > 0 {
			short = append(short, shortage{parked, n})
		}
	}
	s.giveUp(i, d, m, changed, has, short)
}

// shortage says how many of some parked positions must give up their packages.
type shortage struct {
	parked uint64
	n      int
}

// giveUp goes through every choice of the positions that give up their packages.
func (s *search) giveUp(i, d int, m move, changed, has uint64, short []shortage) {
	if len(short) == 0 {
		s.looked++
		s.wait(i, d, m, changed, has)
		return
	}
	first, others := short[0], short[1:]
	if first.n == 0 {
		s.giveUp(i, d, m, changed, has, others)
		return
	}
	for bits.OnesCount64(first.parked) >= first.n {
		lowest := first.parked & -first.parked
		first.parked &^= lowest
		with := m
		with.emptied |= lowest
		s.giveUp(i, d, with, changed, has, append([]shortage{{first.parked, first.n - 1}}, others...))
		if !s.whole {
			return
		}
	}
}
