package loom

import (
	"math/big"
	"slices"

	"millside/plan/measure"
)

// spacesFilled lists the sections from left to right, with the warp centred on a tooth or on a space.
func spacesFilled(w Raddling, space measure.Length, onSpace bool) []RaddleSection {
	var list []RaddleSection
	find := newSpaceFinder(w.Sett.Count(space), w.Ends, onSpace)
	places := w.places()
	start := 0 // the ends before the unit, in the order in which they lie from the left
	first := 0 // the number of the leftmost space
	units := w.units()
	for i := 0; start < w.Ends; i++ {
		size := 1
		if units != nil {
			size = units[i]
		}
		at := find.at(2*start + size)
		if places != nil {
			at = over(places[start]+places[start+size], places[w.Ends], space, onSpace)
		}
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

// width is that of ends of different widths together.
func (w Raddling) width() (sum measure.Length) {
	for _, l := range w.Widths {
		sum += l
	}
	return sum
}

// places is where ends of different widths begin, from the left edge on, and where the last one ends; nil where all are
// alike.
func (w Raddling) places() []measure.Length {
	if !w.uneven() {
		return nil
	}
	widths := slices.Clone(w.Widths)
	if w.FirstEnd == RightSide {
		slices.Reverse(widths)
	}
	places := make([]measure.Length, 1, len(widths)+1)
	for i, l := range widths {
		places = append(places, places[i]+l)
	}
	return places
}

// over is the space over which a point lies that is given twice, as [spaceFinder.at] does for even ends.
func over(twice, width, space measure.Length, onSpace bool) int {
	x := twice - width
	if onSpace {
		x += space
	}
	at := x / (2 * space)
	if x%(2*space) < 0 {
		at--
	}
	return int(at)
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
}

// nameGroups says of each section which groups have ends there.
func (w Raddling) nameGroups(sections []RaddleSection) {
	if len(w.Groups) == 0 {
		return
	}
	last := make([]int, len(w.Groups)) // the last end of each group
	sum := 0
	for i, n := range w.Groups {
		sum += n
		last[i] = sum
	}
	for i := range sections {
		s := &sections[i]
		if s.Ends == 0 {
			continue
		}
		first, _ := slices.BinarySearch(last, s.First)
		final, _ := slices.BinarySearch(last, s.Last)
		s.FirstGroup, s.LastGroup, s.Groups = first+1, final+1, final-first+1
		s.FirstCut = s.First != last[first]-w.Groups[first]+1
		s.LastCut = s.Last != last[final]
		if first == final && (s.FirstCut || s.LastCut) {
			s.FirstCut, s.LastCut = true, true
		}
		if s.Cut = 0; s.FirstCut {
			s.Cut++
		}
		if s.LastCut && first != final {
			s.Cut++
		}
	}
}
