package plan

import (
	"strconv"

	"millside/plan/field"
	"millside/plan/measure"
)

// StripesAsked is what a weaver asks of the way to wind stripes. The zero value asks for nothing.
type StripesAsked struct {
	// FinishAtLease asks for an even number of passes.
	FinishAtLease bool `json:"finish_at_lease,omitzero"`
	// Packages says how many packages of each colour are at hand, "red 2, white 4"; of the others there are enough.
	Packages string `json:"packages,omitzero"`
	// Sizes lists the ends that a pass may carry, each 1 to MaxPositions; none means any.
	Sizes []int `json:"sizes,omitzero"`
	// MostHalts is the most halts that the weaver puts up with; nil means any number.
	MostHalts *int `json:"most_halts,omitzero"`
	// Effort is how long to search, as a multiple of the usual; 0 is the usual.
	Effort int `json:"effort,omitzero"`
	// Way is the name of the way to wind; "" is the one that is found.
	Way string `json:"way,omitzero"`
}

// check reports what is out of its range.
func (a StripesAsked) check() []error {
	var errs []error
	if a.Effort != 0 {
		errs = append(errs, field.Effort.Check(a.Effort))
	}
	if len(a.Packages) > MaxStripes || a.Packages != "" && !measure.Printable(a.Packages) {
		errs = append(errs, field.PackagesOf.Wrong(measure.Shortened(a.Packages), "printable characters on one line"))
	}
	if len(a.Way) > measure.MaxName || a.Way != "" && !measure.Printable(a.Way) {
		errs = append(errs, field.Way.Wrong(measure.Shortened(a.Way), "the name of a way to wind"))
	}
	for _, n := range a.Sizes {
		if n < 1 || n > measure.MaxPositions {
			errs = append(errs, field.GroupSizes.Wrong(strconv.Itoa(n), "1 to "+strconv.Itoa(measure.MaxPositions)))
		}
	}
	if a.MostHalts != nil && *a.MostHalts < 0 {
		errs = append(errs, field.MostHalts.Wrong(strconv.Itoa(*a.MostHalts), "0 or more"))
	}
	return errs
}
