package project

import (
	"fmt"

	"millside/plan/figure"
	"millside/plan/measure"
)

// PackagesRow holds the packages that a plain warp's paddle carries against those at hand, and says what makes up
// for those that are missing; false where they weren't counted, and in a striped warp, whose packages are counted by
// colour.
func (pr *Project) PackagesRow() (measure.Row, bool) {
	p := pr.Plan
	have, need := p.Spec.Yarn.Packages, p.WorkSum().Threads
	if have == 0 || p.Striped() {
		return measure.Row{}, false
	}
	row := measure.Row{Name: "packages", Value: figure.Say("%d at once, %d at hand", need, have)}
	if need > have {
		extras := p.Spec.Extras()
		each := (p.Path.Length + extras.PerPass).Times(p.Passes()) + extras.PerTie
		row.Warning = fmt.Sprintf("%s too few: wind more from those at hand, each with %s for %s; "+
			"or carry %s on a pass", measure.Counted(need-have, "package", "packages"),
			each.As(p.Spec.Units.Long(), 1), measure.Counted(p.Passes(), "pass", "passes"),
			measure.Counted(have, "end", "ends"))
	}
	return row, true
}
