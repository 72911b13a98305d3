package schedule

import (
	"math/bits"

	"millside/plan/measure"
)

// placer finds positions for the ends of a pass on a threaded paddle. The ends take positions of their
// colours, upwards or downwards, so that holes and slots alternate; as many as can be are those that the
// pass before carried, for which nothing has to be done.
type placer struct {
	downwards bool
	positions int
	ends      [measure.MaxPositions]uint64        // the positions that each end may take
	masks     [MaxColours + 1]uint64              // the positions of each colour
	best      [measure.MaxPositions + 1][2]uint64 // for each size: the set with most kept, and the lowest set
	level     [2][measure.MaxPositions]spot
}

// spot is a way to place some ends, the last of them in a position.
type spot struct {
	pos, kept int
	set       uint64
}

// prepare looks at the paddle at an end and gives the size of the largest pass that it allows.
func (pl *placer) prepare(g *programme, i, d int) int {
	pl.downwards, pl.positions = g.down(d), g.positions
	row := g.row(i)
	for pos, c := range row {
		if pl.downwards {
			pos = g.positions - 1 - pos
		}
		pl.masks[c] |= 1 << pos
	}
	most := min(g.maxSize, len(g.ends)-i)
	for k := range most {
		pl.ends[k] = pl.masks[g.ends[i+k]]
	}
	for _, c := range row {
		pl.masks[c] = 0
	}
	clear(pl.best[:most+1])
	longest := 0
	for _, half := range [2]uint64{evens, ^evens} {
		set, above, want := uint64(0), ^uint64(0), half
		for k := range most {
			free := pl.ends[k] & above & want
			if free == 0 {
				break
			}
			low := free & -free
			set |= low
			above, want = ^(low<<1 - 1), ^want
			if longest = max(longest, k+1); pl.best[k+1][1] == 0 || bits.Len64(set) < bits.Len64(pl.best[k+1][1]) {
				pl.best[k+1][1] = set
			}
		}
	}
	if pl.downwards {
		for k := 1; k <= longest; k++ {
			pl.best[k][1] = pl.turn(pl.best[k][1])
		}
	}
	return longest
}

func (pl *placer) turn(set uint64) uint64 { return bits.Reverse64(set) >> (64 - pl.positions) }

// place fills in best, for each size, with the set that keeps most of the positions given.
func (pl *placer) place(stay uint64, longest int) {
	if pl.downwards {
		stay = pl.turn(stay)
	}
	was := pl.level[0][:0]
	for k := range longest {
		now := pl.level[(k+1)%2][:0]
		var best [2]spot // of those below, by hole or slot
		best[0].kept, best[1].kept = -1, -1
		at := 0
		top := spot{kept: -1}
		for rest := pl.ends[k]; rest != 0; rest &= rest - 1 {
			pos := bits.TrailingZeros64(rest)
			s := spot{pos: pos, kept: int(stay >> pos & 1), set: 1 << pos}
			if k > 0 {
				for ; at < len(was) && was[at].pos < pos; at++ {
					if b := &best[was[at].pos&1]; was[at].kept > b.kept {
						*b = was[at]
					}
				}
				b := &best[1-pos&1]
				if b.kept < 0 {
					continue
				}
				s.kept += b.kept
				s.set |= b.set
			}
			now = append(now, s)
			if s.kept > top.kept {
				top = s
			}
		}
		if pl.best[k+1][0] = top.set; pl.downwards {
			pl.best[k+1][0] = pl.turn(top.set)
		}
		was = now
	}
}
