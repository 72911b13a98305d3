package start

import (
	"math/big"

	"millside/plan"
	"millside/plan/figure"
	"millside/plan/measure"
)

// Result is what was found, and how.
type Result struct {
	// Find is what was found; Answer is it, with its unit.
	Find   Find
	Answer figure.Cell
	// Lines is every step with its formula, in the order in which a weaver would reckon.
	Lines []measure.Row
	// Packages is what each package gives, those on hand in their order; or what each has to hold where none are on
	// hand and the yarn was asked for, those that have to hold most first.
	Packages []Use
	// Short says that the yarn on hand doesn't suffice.
	Short bool
	// Notes is what has to be said beside the steps: what was settled by a rule, what isn't known yet.
	Notes []string
	// Spec is the warp, as a plan goes on from it; see [millside/plan/project.New]. HasEnds and HasLength say
	// which of the two are known; the other is as a new plan begins.
	Spec               plan.Spec
	HasEnds, HasLength bool
}

// OnHand says whether Packages are those that there are.
func (r *Result) OnHand() bool { return len(r.Packages) > 0 && r.Packages[0].Holds != 0 }

// step adds a line.
func (r *Result) step(name string, value figure.Cell, formula string, numbers figure.Cell) {
	r.Lines = append(r.Lines, measure.Row{Name: name, Value: value,
		How: measure.How{Formula: formula, WithNumbers: numbers}})
}

// atMost shows a length rounded down, for what a weaver may count on; atLeast rounds it up.
func atMost(l measure.Length, u measure.LengthUnit) figure.Number {
	unit, name := u.Length()
	return figure.AtMost(big.NewRat(int64(l), int64(unit)), 2, name)
}

func atLeast(l measure.Length, u measure.LengthUnit) figure.Number {
	unit, name := u.Length()
	return figure.AtLeast(big.NewRat(int64(l), int64(unit)), 1, name)
}

func cell(f figure.Figure) figure.Cell { return figure.Cell{f} }
