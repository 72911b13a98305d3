package schedule

import (
	"math/bits"

	"millside/plan/measure"
)

// placer finds positions for the ends of a pass on a threaded paddle. The ends take positions of their
// colours, upwards or downwards, so that holes and slots alternate; as many as can be are those that the
// pass before carried, for which nothing has to be done.
//
// Where most ends are gone on from as they were before, it keeps what it found: see remember.
type placer struct {
	positions int
	masks     [MaxColours + 1]uint64 // the positions of each colour
	level     [2][measure.MaxPositions]spot
	dirs      int
	ends      int
	fleeting  paddle   // what isn't kept
	kept      []paddle // of end i and direction d: kept[i*dirs+d]; none where nothing is kept
	from, to  int      // ends whose paddles are being tried and aren't kept, to exclusive
}

// paddle is what a threaded paddle can lay from one end on. Sets are seen from its other end where downwards.
type paddle struct {
	row       []uint8 // what is threaded; empty if nothing is known yet
	longest   int     // the size of the largest pass
	downwards bool
	union     uint64            // positions that any of the ends may take
	ends      []uint64          // the positions that each end may take
	lowest    []uint64          // for each size from 1: the lowest set
	stays     [keptStays]uint64 // what was carried before, as far as it is in union
	most      [keptStays]sizes  // for each of those: the sets that keep most of it
	known     int               // how many of them there are
	next      int               // the one that is given up next
}

// sizes has a set for each size of a pass, from 1.
type sizes []uint64

// keptStays is for how many different passes before it is kept how most of it is carried on.
const keptStays = 6

// spot is a way to place some ends, the last of them in a position.
type spot struct {
	set       uint64
	pos, kept int32
}

// remember makes room to keep what is found for each end.
func (pl *placer) remember() {
	pl.kept = make([]paddle, pl.ends*pl.dirs)
}

// paddle is what can be laid from an end on.
func (pl *placer) paddle(g *programme, i, d int) *paddle {
	row := g.row(i)
	to := &pl.fleeting
	if pl.kept != nil {
		k := &pl.kept[i*pl.dirs+d]
		if string(k.row) == string(row) {
			return k
		}
		if i < pl.from || i >= pl.to {
			to = k
		}
	}
	pl.prepare(to, g, i, d)
	return to
}

// prepare looks at the paddle at an end.
func (pl *placer) prepare(w *paddle, g *programme, i, d int) {
	if w.ends == nil {
		w.ends, w.lowest = make([]uint64, g.maxSize), make([]uint64, g.maxSize)
	}
	row := g.row(i)
	w.row = append(w.row[:0], row...)
	w.downwards, w.known, w.next, w.longest = g.down(d), 0, 0, 0
	for pos, c := range row {
		if w.downwards {
			pos = g.positions - 1 - pos
		}
		pl.masks[c] |= 1 << (pos & 63)
	}
	ends := g.ends[i:min(i+g.maxSize, len(g.ends))]
	pl.findLowest(w, ends)
	union := uint64(0)
	for k, c := range ends[:w.longest] {
		w.ends[k] = pl.masks[c]
		union |= pl.masks[c]
	}
	w.union = union
	for _, c := range row {
		pl.masks[c] = 0
	}
	if w.downwards {
		w.union = pl.turn(union)
		for k, set := range w.lowest[:w.longest] {
			w.lowest[k] = pl.turn(set)
		}
	}
}

// findLowest finds the lowest set for each size.
func (pl *placer) findLowest(w *paddle, ends []uint8) {
	lowest := w.lowest[:len(ends)]
	for half, want := range [2]uint64{evens, ^evens} {
		set, above := uint64(0), ^uint64(0)
		for k, c := range ends {
			free := pl.masks[c] & above & want
			if free == 0 {
				break
			}
			low := free & -free
			set |= low
			above, want = ^(low<<1 - 1), ^want
			if k >= w.longest {
				w.longest, lowest[k] = k+1, set
			} else if half == 0 || set < lowest[k] && bits.Len64(set) < bits.Len64(lowest[k]) {
				lowest[k] = set
			}
		}
	}
}

func (pl *placer) turn(set uint64) uint64 { return bits.Reverse64(set) >> (64 - pl.positions) }

// most gives for each size the set that keeps most of the positions given.
func (pl *placer) most(w *paddle, stay uint64) sizes {
	stay &= w.union
	for k, s := range w.stays[:w.known] {
		if s == stay {
			return w.most[k][:w.longest]
		}
	}
	k := w.next
	if w.known < keptStays {
		w.known++
	}
	if w.next++; w.next == keptStays {
		w.next = 0
	}
	if w.most[k] == nil {
		w.most[k] = make(sizes, len(w.ends))
	}
	w.stays[k] = stay
	out := w.most[k][:w.longest]
	pl.place(w, stay, out)
	return out
}

// place finds for each size the set that keeps most of the positions given.
func (pl *placer) place(w *paddle, stay uint64, out sizes) {
	if w.downwards {
		stay = pl.turn(stay)
	}
	was := pl.level[0][:0]
	for rest := w.ends[0]; rest != 0; rest &= rest - 1 {
		pos := bits.TrailingZeros64(rest)
		was = append(was, spot{1 << (pos & 63), int32(pos), int32(stay >> (pos & 63) & 1)})
	}
	out[0] = mostKept(was)
	for k := 1; k < len(out); k++ {
		was = next(was, w.ends[k], stay, pl.level[k&1][:0])
		out[k] = mostKept(was)
	}
	if w.downwards {
		for k, set := range out {
			out[k] = pl.turn(set)
		}
	}
}

// next places one end more on top of each of the ways there were.
func next(was []spot, free, stay uint64, now []spot) []spot {
	var best [2]spot // of those below, by hole or slot
	best[0].kept, best[1].kept = -1, -1
	for rest := free; rest != 0; rest &= rest - 1 {
		pos := int32(bits.TrailingZeros64(rest))
		for len(was) > 0 && was[0].pos < pos {
			if b := &best[was[0].pos&1]; was[0].kept > b.kept {
				*b = was[0]
			}
			was = was[1:]
		}
		if b := &best[1-pos&1]; b.kept >= 0 {
			now = append(now, spot{b.set | 1<<(pos&63), pos, b.kept + int32(stay>>(pos&63)&1)})
		}
	}
	return now
}

// mostKept is the set of the first of those that keep most.
func mostKept(list []spot) (set uint64) {
	most := int32(-1)
	for k := range list {
		if list[k].kept > most {
			most, set = list[k].kept, list[k].set
		}
	}
	return set
}
