package loom

import (
	"errors"
	"fmt"
	"math/big"
	"slices"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// Side is a side of the loom, seen by the weaver who sits at it.
type Side uint8

// The two sides.
const (
	LeftSide Side = iota
	RightSide
)

// String gives "left" or "right".
func (s Side) String() string { return measure.OneOf(int(s), "left", "right") }

// Other is the other side.
func (s Side) Other() Side { return 1 - s }

// MarshalText writes the name.
func (s Side) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads "left" or "right".
func (s *Side) UnmarshalText(b []byte) error {
	i, err := measure.WhichOf(string(b), "left", "right")
	*s = Side(i)
	return err
}

// Raddle is a raddle with evenly spaced teeth.
type Raddle struct {
	// Space is the width from one tooth to the next, 1 mm to 10 cm. In use are 1/4, 1/2 and 1 in, 1 and
	// 2 cm (common practice, no source).
	Space measure.Length `json:"space"`
	// Spaces is how many spaces the raddle has, 0 where it isn't known.
	Spaces int `json:"spaces,omitempty"`
}

// Raddling is what the raddle is filled with.
type Raddling struct {
	// Ends is the number of ends, 1 to [measure.MaxEnds], at a sett.
	Ends int
	Sett measure.Sett
	// Groups is the ends of each group, from that of end 1 on; they add up to Ends. It is empty where the groups
	// don't matter.
	Groups []int
	// Split lets a tooth part a group where that spreads the ends more evenly. The ends within a group can't be
	// told apart at the counting cross, so it wants a reason.
	Split bool
	// FirstEnd is the side of the loom on which end 1 lies.
	FirstEnd Side
	// Widths is the width that each end takes in the reed, from end 1 on, where they differ; else it is empty, and the
	// sett holds.
	Widths []measure.Length
}

// uneven says whether the ends take different widths.
func (w Raddling) uneven() bool { return len(w.Widths) > 0 && len(w.Widths) == w.Ends }

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
	// Groups is how many groups have ends in the section, where the groups are known, and Cut how many of
	// them have ends in another one too.
	Groups, Cut int
	// FirstGroup and LastGroup are their numbers, counted from 1, that of end 1. FirstCut and LastCut say that
	// these have ends in another section too.
	FirstGroup, LastGroup int
	FirstCut, LastCut     bool
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
	Width measure.Length
	// Fits says that the raddle has enough spaces, or that their number isn't known.
	Fits bool
	// Row shows the ends a section, with its formula and any warning.
	Row measure.Row
}

// longestOrder is the longest repeat of an order, in sections or dents, that a weaver can keep in mind.
const longestOrder = 12

// MaxSections bounds the spaces that a warp may fill.
const MaxSections = 10_000

// check reports every field that is out of its range.
func (r Raddle) check(w Raddling) error {
	var errs []error
	errs = append(errs, field.Raddle.CheckLength(r.Space), field.RaddleSpaces.Check(r.Spaces), field.Ends.Check(w.Ends))
	if w.Sett.IsZero() {
		errs = append(errs, field.SettOf.Missing())
	}
	errs = append(errs, w.checkGroups())
	if w.FirstEnd > RightSide {
		errs = append(errs, measure.Outside(field.FirstEnd.Name, int(w.FirstEnd), 0, 1, ""))
	}
	return errors.Join(errs...)
}

// checkGroups reports groups that don't add up to the ends.
func (w Raddling) checkGroups() error {
	sum := 0
	for _, n := range w.Groups {
		if n < 1 || n > measure.MaxPositions {
			return measure.Outside(field.Group.Name, n, 1, measure.MaxPositions, "")
		}
		sum += n
	}
	if len(w.Groups) > 0 && sum != w.Ends {
		return &measure.FieldError{Field: field.Group.Name, Value: measure.Counted(sum, "end", "ends"),
			Want: fmt.Sprintf("groups that add up to %d ends", w.Ends)}
	}
	return nil
}

// units is what is laid as one: each whole group, or each end; from the left. It is nil where that is each end.
func (w Raddling) units() []int {
	if w.Split || len(w.Groups) == 0 {
		return nil
	}
	units := slices.Clone(w.Groups)
	if w.FirstEnd == RightSide {
		slices.Reverse(units)
	}
	return units
}

// evenUnit is how many ends each unit has; 0 where they differ. The last one may have fewer.
func (w Raddling) evenUnit() int {
	if w.Split || len(w.Groups) == 0 {
		return 1
	}
	for i, n := range w.Groups {
		if n > w.Groups[0] || n < w.Groups[0] && i < len(w.Groups)-1 {
			return 0
		}
	}
	return w.Groups[0]
}

// Fill spreads a warp in the raddle. Each end, or each whole group, goes into the space over which its
// middle lies when the warp is centred on the loom at its sett; this spreads what doesn't divide as
// evenly as is possible. The warp is centred on a tooth or on a space, whichever takes fewer spaces; on
// a tooth where both take as many. The error joins one [measure.FieldError] for each field that is out of its
// range.
func (r Raddle) Fill(w Raddling) (*RaddleList, error) {
	if err := r.check(w); err != nil {
		return nil, err
	}
	perSpace := w.perSpace(r.Space)
	if measure.SmallCount(ratio.Up, ratio.Quo(ratio.Of(w.Ends), perSpace)) > MaxSections {
		return nil, &measure.FieldError{Field: field.Raddle.Name, Value: r.Space.String(),
			Want: fmt.Sprintf("a space of which at most %d are filled", MaxSections)}
	}
	sections := spacesFilled(w, r.Space, false)
	onSpace := spacesFilled(w, r.Space, true)
	l := &RaddleList{MiddleSpace: len(onSpace) < len(sections)}
	if l.MiddleSpace {
		sections = onSpace
	}
	l.Sections = sections
	l.Width = r.Space.Times(len(sections))
	l.Fits = r.Spaces == 0 || len(sections) <= r.Spaces
	w.nameGroups(sections)
	if unit := w.evenUnit(); unit > 0 && !w.uneven() {
		l.Order = repeatingOrder(ratio.Quo(perSpace, ratio.Of(unit)))
	}
	l.Row = l.row(r, w, perSpace)
	return l, nil
}

// perSpace is how many ends lie over a space: of ends of different widths on average.
func (w Raddling) perSpace(space measure.Length) *big.Rat {
	if !w.uneven() {
		return w.Sett.Count(space)
	}
	return ratio.Quo(ratio.Mul(ratio.Of(w.Ends), ratio.Of(space)), ratio.Of(w.width()))
}

// repeatingOrder is the even order of a fraction with at most longestOrder parts, else nil.
func repeatingOrder(r *big.Rat) []int {
	if !r.Denom().IsInt64() || r.Denom().Int64() > longestOrder {
		return nil
	}
	return spread(measure.SmallCount(ratio.Down, ratio.Of(r.Num().Int64())), int(r.Denom().Int64()))
}

func (l *RaddleList) row(r Raddle, w Raddling, perSpace *big.Rat) measure.Row {
	row := measure.Row{Name: "ends a section", Value: figure.Cell{figure.New(perSpace, 2, "")},
		How: measure.How{Formula: "sett x space", WithNumbers: figure.Say("%s x %s = %s",
			w.Sett.As(2), r.Space, figure.New(perSpace, 2, ""))}}
	if w.uneven() {
		row.Value = figure.Cell{figure.New(perSpace, 2, "")}.And(" on average, as the reed crams and spaces them")
		row.How = measure.How{Formula: "ends x space / width in the reed, each end over its place",
			WithNumbers: figure.Say("%d x %s / %s = %s", w.Ends, r.Space, w.width(), figure.New(perSpace, 2, ""))}
	}
	if len(l.Order) > 1 {
		row.Value = row.Value.And(", in the order %s", orderText(l.Order))
		if w.evenUnit() > 1 {
			row.Value = row.Value.And(" groups")
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

// FromMiddle says where a section is: "middle", "3 left".
func (s RaddleSection) FromMiddle() string {
	switch {
	case s.FromCentre == 0:
		return "middle"
	case s.FromCentre < 0:
		return fmt.Sprintf("%d left", -s.FromCentre)
	default:
		return fmt.Sprintf("%d right", s.FromCentre)
	}
}
