package plan

import (
	"errors"
	"fmt"
	"math/big"
)

// Side is a side of the loom, seen by the weaver who sits at it.
type Side uint8

// The two sides.
const (
	LeftSide Side = iota
	RightSide
)

// String gives "left" or "right".
func (s Side) String() string { return oneOf(int(s), "left", "right") }

// Other is the other side.
func (s Side) Other() Side { return 1 - s }

// MarshalText writes the name.
func (s Side) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads "left" or "right".
func (s *Side) UnmarshalText(b []byte) error {
	i, err := whichOf(string(b), "left", "right")
	*s = Side(i)
	return err
}

// Raddle is a raddle with evenly spaced teeth.
type Raddle struct {
	// Space is the width from one tooth to the next, 1 mm to 10 cm. In use are 1/4, 1/2 and 1 in, 1 and
	// 2 cm (common practice, no source).
	Space Length `json:"space"`
	// Spaces is how many spaces the raddle has, 0 where it isn't known.
	Spaces int `json:"spaces,omitempty"`
}

// Raddling is what the raddle is filled with.
type Raddling struct {
	// Ends is the number of ends, 1 to [MaxEnds], at a sett.
	Ends int
	Sett Sett
	// Group is the ends in a whole group; 0 where the groups don't matter.
	Group int
	// WholeGroups keeps the ends of a group in one section.
	WholeGroups bool
	// FirstEnd is the side of the loom on which end 1 lies.
	FirstEnd Side
}

// RaddleSection is what goes into one space of the raddle.
type RaddleSection struct {
	// Number counts the sections from the left, from 1.
	Number int
	// FromCentre counts from the middle of the raddle: -1 and 1 are the sections left and right of the
	// middle tooth, or, where the warp is centred on a space, 0 is that space.
	FromCentre int
	// Ends is how many ends lie in the section; First and Last are their numbers in the warp, or 0 in an
	// empty section.
	Ends, First, Last int
	// Groups is how many groups have ends in the section, where the group is known, and Cut how many of
	// them have ends in another one too.
	Groups, Cut int
}

// RaddleList is how a warp is spread in the raddle.
type RaddleList struct {
	// Sections lists the sections from left to right; their ends add up to the ends of the warp.
	Sections []RaddleSection
	// MiddleSpace says that the warp is centred on a space and not on a tooth.
	MiddleSpace bool
	// Order is the repeating order of ends (or of whole groups) in the sections where the sett goes into
	// the spaces with a repeat of at most 12 sections, and empty otherwise.
	Order []int
	// Width is how much of the raddle is filled, whole spaces.
	Width Length
	// Fits says that the raddle has enough spaces, or that their number isn't known.
	Fits bool
	// Row shows the ends a section, with its formula and any warning.
	Row Row
}

// longestOrder is the longest repeat of an order, in sections or dents, that a weaver can keep in mind.
const longestOrder = 12

// maxSections bounds the spaces that a warp may fill.
const maxSections = 10_000

// check reports every field that is out of its range.
func (r Raddle) check(w Raddling) error {
	var errs []error
	if r.Space < Millimetre || r.Space > 10*Centimetre {
		errs = append(errs, &FieldError{Field: "raddle space", Value: r.Space.String(), Want: "1 mm to 10 cm"})
	}
	if r.Spaces < 0 || r.Spaces > maxSections {
		errs = append(errs, outside("raddle spaces", r.Spaces, 0, maxSections, ""))
	}
	if w.Ends < 1 || w.Ends > MaxEnds {
		errs = append(errs, outside("ends", w.Ends, 1, MaxEnds, ""))
	}
	if w.Sett.IsZero() {
		errs = append(errs, &FieldError{Field: "sett", Value: "", Want: settWants})
	}
	if least := map[bool]int{true: 1}[w.WholeGroups]; w.Group < least || w.Group > MaxPositions {
		errs = append(errs, outside("group", w.Group, least, MaxPositions, ""))
	}
	if w.FirstEnd > RightSide {
		errs = append(errs, outside("side of the first end", int(w.FirstEnd), 0, 1, ""))
	}
	return errors.Join(errs...)
}

// Fill spreads a warp in the raddle. Each end, or each whole group, goes into the space over which its
// middle lies when the warp is centred on the loom at its sett; this spreads what doesn't divide as
// evenly as is possible. The warp is centred on a tooth or on a space, whichever takes fewer spaces; on
// a tooth where both take as many. The error joins one [FieldError] for each field that is out of its
// range.
func (r Raddle) Fill(w Raddling) (*RaddleList, error) {
	if err := r.check(w); err != nil {
		return nil, err
	}
	perSpace := w.Sett.count(r.Space)
	if smallCount(roundUp, quo(ratOf(w.Ends), perSpace)) > maxSections {
		return nil, &FieldError{Field: "raddle space", Value: r.Space.String(), Want: fmt.Sprintf("a space of which at most %d are filled", maxSections)}
	}
	unit := 1
	if w.WholeGroups {
		unit = w.Group
	}
	sections := spacesFilled(w, unit, r.Space, false)
	onSpace := spacesFilled(w, unit, r.Space, true)
	l := &RaddleList{MiddleSpace: len(onSpace) < len(sections)}
	if l.MiddleSpace {
		sections = onSpace
	}
	l.Sections = sections
	l.Width = r.Space.Times(len(sections))
	l.Fits = r.Spaces == 0 || len(sections) <= r.Spaces
	l.Order = repeatingOrder(quo(perSpace, ratOf(unit)))
	l.Row = l.row(r, w, perSpace)
	return l, nil
}

// repeatingOrder is the even order of a fraction with at most longestOrder parts, else nil.
func repeatingOrder(r *big.Rat) []int {
	if !r.Denom().IsInt64() || r.Denom().Int64() > longestOrder {
		return nil
	}
	return spread(smallCount(roundDown, ratOf(r.Num().Int64())), int(r.Denom().Int64()))
}

// spacesFilled lists the sections from left to right, with the warp centred on a tooth or on a space.
func spacesFilled(w Raddling, unit int, space Length, onSpace bool) []RaddleSection {
	var list []RaddleSection
	find := newSpaceFinder(w.Sett.count(space), w.Ends, onSpace)
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

func (l *RaddleList) row(r Raddle, w Raddling, perSpace *big.Rat) Row {
	row := Row{Name: "ends a section", Value: decimal(perSpace, 2), How: How{"sett x space", fmt.Sprintf("%s x %s = %s",
		w.Sett.Shown(2), r.Space, decimal(perSpace, 2))}}
	if len(l.Order) > 1 {
		row.Value += ", in the order " + orderText(l.Order)
		if w.WholeGroups {
			row.Value += " groups"
		}
	}
	if !l.Fits {
		row.Warning = fmt.Sprintf("%d spaces are filled and the raddle has %d", len(l.Sections), r.Spaces)
	}
	return row
}

// CentreOut lists the sections from the middle outwards, the left one of each pair first.
func (l *RaddleList) CentreOut() []RaddleSection {
	right := 0
	for right < len(l.Sections) && l.Sections[right].FromCentre < 0 {
		right++
	}
	left := right - 1
	out := make([]RaddleSection, 0, len(l.Sections))
	if l.MiddleSpace && right < len(l.Sections) {
		out = append(out, l.Sections[right])
		right++
	}
	for left >= 0 || right < len(l.Sections) {
		if left >= 0 {
			out = append(out, l.Sections[left])
			left--
		}
		if right < len(l.Sections) {
			out = append(out, l.Sections[right])
			right++
		}
	}
	return out
}
