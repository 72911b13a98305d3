package stripe

import "math/bits"

// free proposes a pass once for each way to free the packages that it needs: where the set-up would
// have more positions with a colour than there are packages, some of the parked ones must give theirs
// up.
func (s *search) free(at int32, i, d int, c candidate, changed uint64) {
	set := s.setOf(at)
	carried := block(int(c.base), int(c.size))
	var over []uint64 // for each colour that is short, the parked positions that have it
	var give []int    // and how many of them must give it up
	for colour := 1; colour <= s.colours; colour++ {
		if s.counts[colour] == 0 {
			continue // the pass takes none of it
		}
		var parked uint64
		for p, has := range set {
			if int(has) == colour && carried>>p&1 == 0 {
				parked |= 1 << p
			}
		}
		if short := s.counts[colour] + bits.OnesCount64(parked) - s.packages[colour]; short > 0 {
			over, give = append(over, parked), append(give, short)
		}
	}
	s.giveUp(at, i, d, c, changed, over, give)
}

// giveUp goes through every choice of the positions that give up their packages.
func (s *search) giveUp(at int32, i, d int, c candidate, changed uint64, over []uint64, give []int) {
	if len(over) == 0 {
		s.wait(at, i, d, c, changed)
		return
	}
	if give[0] == 0 {
		s.giveUp(at, i, d, c, changed, over[1:], give[1:])
		return
	}
	rest := over[0]
	for bits.OnesCount64(rest) >= give[0] {
		lowest := rest & -rest
		rest &^= lowest
		chosen := c
		chosen.emptied |= lowest
		s.giveUp(at, i, d, chosen, changed, append([]uint64{rest}, over[1:]...), append([]int{give[0] - 1}, give[1:]...))
		if !s.whole {
			return // when not all can be looked at anyway, the lowest will do
		}
	}
}
