package schedule

import (
	"math/bits"
)

// sideBySide threads all colours side by side, so many positions for each, and lays stripe by stripe: each
// pass carries ends of one colour. It is nil where that isn't within the limits.
func (p *problem) sideBySide(share []int) []pass {
	first := make([]int, p.colours+1)
	at := 0
	for c := 1; c <= p.colours; c++ {
		first[c] = at
		at += share[c]
	}
	if at > p.positions {
		return nil
	}
	return p.byStripes(func(c uint8, size int) uint64 {
		if size > share[c] {
			return 0
		}
		return block(first[c], size)
	})
}

// swapped threads one colour at a time on positions 1 to size, and lays stripe by stripe.
func (p *problem) swapped(most int) []pass {
	return p.byStripes(func(c uint8, size int) uint64 {
		if size > min(most, p.packages[c]) {
			return 0
		}
		return block(0, size)
	})
}

// count is how many positions are in a set.
func count(set uint64) int { return bits.OnesCount64(set) }

// block is the set of size neighbouring positions from first, counted from 0.
func block(first, size int) uint64 { return (1<<size - 1) << first }

// byStripes lays stripe by stripe with passes as large and as even as place allows, which gives the positions
// for so many ends of a colour, 0 if it can't be.
func (p *problem) byStripes(place func(c uint8, size int) uint64) []pass {
	var list []pass
	for i := 0; i < len(p.ends); {
		c, j := p.ends[i], i
		for j < len(p.ends) && p.ends[j] == c {
			j++
		}
		sizes := p.evenly(j-i, func(size int) bool { return place(c, size) != 0 })
		if sizes == nil {
			return nil
		}
		for _, size := range sizes {
			list = append(list, pass{i, size, place(c, size)})
			i += size
		}
	}
	if p.atLease && len(list)%2 == 1 {
		return p.oneMore(list, place)
	}
	return list
}

// oneMore parts one pass in two, so that the winding ends at the lease; nil if none can be.
func (p *problem) oneMore(list []pass, place func(c uint8, size int) uint64) []pass {
	for k := len(list) - 1; k >= 0; k-- {
		for size := list[k].size - 1; size >= 1; size-- {
			rest, c := list[k].size-size, p.ends[list[k].first]
			if !p.allowed[size] || !p.allowed[rest] {
				continue
			}
			parted := append([]pass(nil), list[:k]...)
			parted = append(parted, pass{list[k].first, size, place(c, size)},
				pass{list[k].first + size, rest, place(c, rest)})
			return append(parted, list[k+1:]...)
		}
	}
	return nil
}

// evenly cuts so many ends into the fewest passes of allowed sizes, and of those into the fewest different
// sizes as a greedy hand does it: the same size as long as it goes. It is nil if that can't be.
func (p *problem) evenly(ends int, can func(size int) bool) []int {
	fewest := make([]int, ends+1)
	for n := 1; n <= ends; n++ {
		fewest[n] = noPasses
		for size := 1; size <= min(n, p.maxSize); size++ {
			if p.allowed[size] && can(size) {
				fewest[n] = min(fewest[n], 1+fewest[n-size])
			}
		}
	}
	if fewest[ends] >= noPasses {
		return nil
	}
	var sizes []int
	for n := ends; n > 0; {
		for size := min(n, p.maxSize); size >= 1; size-- {
			if p.allowed[size] && can(size) && fewest[n-size] == fewest[n]-1 {
				sizes = append(sizes, size)
				n -= size
				break
			}
		}
	}
	return sizes
}

// rough lays the fewest passes that the limits allow, each on the lowest positions, threaded anew wherever
// the colours are others: dear, but there is nothing in the way of it.
func (p *problem) rough() []pass {
	var list []pass
	for i := 0; i < len(p.ends); {
		took := false
		for size := min(p.maxSize, len(p.ends)-i); size >= 1; size-- {
			if p.allowed[size] && p.fits(i, size) && p.rest[i+size] < noPasses && p.rest[i+size]+1 == p.rest[i] {
				list = append(list, pass{i, size, block(0, size)})
				i += size
				took = true
				break
			}
		}
		if !took {
			return nil
		}
	}
	return list
}

// fits says whether the packages are enough for a pass by itself.
func (p *problem) fits(first, size int) bool {
	counts := make([]int, p.colours+1)
	for _, c := range p.ends[first : first+size] {
		if counts[c]++; counts[c] > p.packages[c] {
			return false
		}
	}
	return true
}

// bestSideBySide tries all colours side by side with ever other numbers of positions for each, and gives the
// passes that cost the least; nil if the paddle has fewer positions than there are colours.
func (p *problem) bestSideBySide() []pass {
	share := make([]int, p.colours+1)
	used := 0
	for _, c := range p.ends {
		if share[c] == 0 {
			share[c] = 1
			used++
		}
	}
	if used > p.positions {
		return nil
	}
	best := p.sideBySide(share)
	least := p.cost(best)
	for free := p.positions - used; free > 0; free-- {
		grow := 0
		for c := 1; c <= p.colours; c++ {
			if share[c] == 0 || share[c] >= p.packages[c] {
				continue
			}
			for by := 1; by <= free && share[c]+by <= p.packages[c]; by++ {
				share[c] += by
				list := p.sideBySide(share)
				share[c] -= by
				if t := p.cost(list); t < least {
					best, least, grow = list, t, c<<8|by
				}
			}
		}
		if grow == 0 {
			break
		}
		share[grow>>8] += grow & 255
		free -= grow&255 - 1
	}
	return best
}

// cost is what some passes cost as the search adds it up; never if there are none.
func (p *problem) cost(list []pass) cost {
	if list == nil {
		return never
	}
	return p.costOf(p.ledger(list, false).sum)
}

// value is what some passes cost as a programme counts it, which threads before the first pass what it can.
func (p *problem) value(list []pass) cost {
	used := uint64(0)
	for _, ps := range list {
		used |= ps.carried
	}
	return p.cost(list) - (p.thread-p.first)*cost(count(used))
}

// costOf is what the work of a sum costs as the search adds it up.
func (p *problem) costOf(s Sum) cost {
	c := p.pass*cost(s.Passes) + p.halt*cost(s.Halts) + p.stint*cost(s.Ties) + p.thread*cost(s.Threads)
	if s.Far {
		c += p.far
	}
	return c
}

// windows are set-ups to wind the whole warp with: what a full paddle takes of the warp, from some ends on,
// as it is and with the stripes made narrower so that more of them go in. Each comes once; at most most.
func (p *problem) windows(most int) [][]uint8 {
	var list [][]uint8
	seen := map[string]bool{}
	add := func(set []uint8) {
		if len(set) == p.positions && !seen[string(set)] && len(list) < most {
			seen[string(set)] = true
			list = append(list, set)
		}
	}
	n := len(p.ends)
	for by := 1; by <= 6; by++ {
		step := max(1, n/(2*most))
		if by > 1 {
			step = max(step, p.positions/2)
		}
		for i := 0; i < n; i += step {
			add(p.narrowed(i, by))
		}
		if by == 1 && len(list) >= most/2 {
			list = list[:most/2]
		}
	}
	return list
}

// narrowed takes every stripe from end i on, each made by times narrower, until the paddle is full. Positions
// beyond the packages stay empty.
func (p *problem) narrowed(i, by int) []uint8 {
	var set []uint8
	held := make([]int, p.colours+1)
	for i < len(p.ends) && len(set) < p.positions {
		j := i
		for j < len(p.ends) && p.ends[j] == p.ends[i] {
			j++
		}
		for range min((j-i+by-1)/by, p.positions-len(set)) {
			c := p.ends[i]
			if held[c]++; held[c] > p.packages[c] {
				c = 0
			}
			set = append(set, c)
		}
		i = j
	}
	return set
}

// threadThroughout threads one set-up from the first end to the last.
func (g *programme) threadThroughout(set []uint8) {
	for i := range g.ends {
		copy(g.row(i), set)
	}
	g.rework()
}
