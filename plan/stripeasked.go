package plan

import (
	"strconv"

	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/wind"
)

// checkAsked reports what is out of its range in what is asked of the way to wind stripes.
func checkAsked(a wind.Asked) []error {
	var errs []error
	errs = append(errs, field.StripesLaid.CheckWord(int(a.Laid.How)))
	for _, n := range []int{a.Laid.Written, a.Laid.Wanted} {
		errs = append(errs, field.Ends.CheckFrom(n, 0, measure.MaxEnds, ""))
	}
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
