package schedule

import (
	"fmt"
	"strconv"

	"millside/plan/measure"
	"millside/plan/wind"
)

// MaxColours is the most colours that a warp may have.
const MaxColours = 200

// MaxEffort is the most that [Limits.Effort] may be.
const MaxEffort = 100

// Limits is what a schedule must keep to.
type Limits struct {
	// Positions is the number of positions in the paddle, 1 to measure.MaxPositions.
	Positions int
	// Sizes lists the numbers of ends that a pass may carry, each 1 to Positions; none means any.
	Sizes []int
	// Packages is how many packages of each colour are at hand, that of colour 1 first; 0, or a list that is
	// too short, means as many as are wanted.
	Packages []int
	// ReturnOrder is the order in which return passes lie in the lease.
	ReturnOrder wind.ReturnOrder
	// FootLast says that the last position lies at the foot of the peg on an outward pass, not position 1.
	FootLast bool
	// FinishAtLease asks for an even number of passes.
	FinishAtLease bool
	// MostHalts is the most halts that the weaver puts up with; nil means any number.
	MostHalts *int
	// Effort is how long the search may try, as a multiple of the usual, 1 to MaxEffort; 0 is the usual.
	Effort int
	// Quick asks for a search with a part of the effort.
	Quick bool
	// Figure asks for a quick figure: a schedule within a small part of the effort, whose bound is left at nil.
	Figure bool
}

// check reports the first limit that is out of its range for a warp of these ends, and gives the number of
// colours.
func (l Limits) check(ends []int) (int, error) {
	if len(ends) < 1 || len(ends) > measure.MaxEnds {
		return 0, wrong("ends", len(ends), fmt.Sprintf("1 to %d", measure.MaxEnds))
	}
	if l.Positions < 1 || l.Positions > measure.MaxPositions {
		return 0, wrong("paddle positions", l.Positions, fmt.Sprintf("1 to %d", measure.MaxPositions))
	}
	for _, s := range l.Sizes {
		if s < 1 || s > l.Positions {
			return 0, wrong("group sizes", s, fmt.Sprintf("1 to %d (the positions of the paddle)", l.Positions))
		}
	}
	for _, n := range l.Packages {
		if n < 0 {
			return 0, wrong("packages", n, "0 (enough) or more")
		}
	}
	if l.ReturnOrder > wind.MirroredOrder {
		return 0, wrong("return order", int(l.ReturnOrder), "0 to 1")
	}
	if l.MostHalts != nil && *l.MostHalts < 0 {
		return 0, wrong("most halts", *l.MostHalts, "0 or more")
	}
	if l.Effort < 0 || l.Effort > MaxEffort {
		return 0, wrong("effort", l.Effort, fmt.Sprintf("0 to %d", MaxEffort))
	}
	colours := 0
	for i, c := range ends {
		if c < 1 || c > MaxColours {
			return 0, wrong(fmt.Sprintf("colour of end %d", i+1), c, fmt.Sprintf("1 to %d", MaxColours))
		}
		colours = max(colours, c)
	}
	return colours, nil
}

// wrong is the error for a number that won't do.
func wrong(field string, value int, want string) *measure.FieldError {
	return &measure.FieldError{Field: field, Value: strconv.Itoa(value), Want: want}
}
