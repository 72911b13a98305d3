package loom

import (
	"math/big"

	"millside/plan/measure"
)

// spacesFilled lists the sections from left to right, with the warp centred on a tooth or on a space.
func spacesFilled(w Raddling, unit int, space measure.Length, onSpace bool) []RaddleSection {
	var list []RaddleSection
	find := newSpaceFinder(w.Sett.Count(space), w.Ends, onSpace)
	start := 0 // the ends before the unit, in the order in which they lie from the left
	first := 0 // the number of the leftmost space
	for i := range (w.Ends + unit - 1) / unit {
		size := min(unit, w.Ends-start)
		if w.FirstEnd == RightSide && i == 0 && w.Ends%unit != 0 {
			size = w.Ends % unit // the short group is the last, which lies on the left
		}
		at := find.at(2*start + size)
		if i == 0 {
			first = at
		}
		for len(list) <= at-first {
			list = append(list, RaddleSection{Number: len(list) + 1, FromCentre: fromCentre(first+len(list), onSpace)})
		}
		list[at-first].take(start, size, w)
		start += size
	}
	return list
}

// spaceFinder finds the space over which a point lies.
type spaceFinder struct {
	num, den *big.Int // ends in a space
	a, b     int64    // the same, where they are small enough to reckon without big numbers
	ends     int
	onSpace  bool
}

// newSpaceFinder prepares the sums for a warp. Up to MaxEnds times smallPart stays within an int64.
func newSpaceFinder(perSpace *big.Rat, ends int, onSpace bool) spaceFinder {
	const smallPart = 1_000_000_000_000
	f := spaceFinder{num: perSpace.Num(), den: perSpace.Denom(), ends: ends, onSpace: onSpace}
	if limit := big.NewInt(smallPart); f.num.Cmp(limit) < 0 && f.den.Cmp(limit) < 0 {
		f.a, f.b = f.num.Int64(), f.den.Int64()
	}
	return f
}

// at is the space over which a point lies, counted from the middle: 0 is the space right of the middle
// tooth, or the middle space. The point is twice its distance from the left edge, in ends. A point over
// a tooth goes to the right.
func (f spaceFinder) at(twice int) int {
	fromMiddle := int64(twice - f.ends)
	if f.a == 0 {
		x := new(big.Int).Mul(big.NewInt(fromMiddle), f.den)
		if f.onSpace {
			x.Add(x, f.num)
		}
		return int(x.Div(x, new(big.Int).Lsh(f.num, 1)).Int64())
	}
	x := fromMiddle * f.b
	if f.onSpace {
		x += f.a
	}
	space := x / (2 * f.a)
	if x%(2*f.a) < 0 {
		space--
	}
	return int(space)
}

func fromCentre(space int, onSpace bool) int {
	if !onSpace && space >= 0 {
		return space + 1
	}
	return space
}

// take puts ends into the section: size ends, after start others from the left.
func (s *RaddleSection) take(start, size int, w Raddling) {
	low, high := start+1, start+size
	if w.FirstEnd == RightSide {
		low, high = w.Ends-start-size+1, w.Ends-start
	}
	if s.Ends == 0 {
		s.First, s.Last = low, high
	}
	s.First, s.Last = min(s.First, low), max(s.Last, high)
	s.Ends += size
	if w.Group > 0 {
		firstGroup, lastGroup := (s.First-1)/w.Group, (s.Last-1)/w.Group
		s.Groups = lastGroup - firstGroup + 1
		s.Cut = 0
		if s.First != firstGroup*w.Group+1 {
			s.Cut++
		}
		if s.Last != min((lastGroup+1)*w.Group, w.Ends) && (s.Cut == 0 || lastGroup != firstGroup) {
			s.Cut++
		}
	}
}
