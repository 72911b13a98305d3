package entry

import (
	"slices"
	"strings"

	"millside/plan"
	"millside/plan/cloth"
	"millside/plan/field"
	"millside/plan/measure"
)

// allowance is a field of the cloth that may be assumed.
type allowance struct {
	field *field.Field
	// take sets it to the usual, show writes what it is.
	take func(*plan.Cloth, cloth.Allowances)
	show func(plan.Cloth) string
}

// usual lists them in the order of the table.
var usual = []allowance{
	shareOf(field.ShrinkageWidth, func(c *plan.Cloth) *measure.Percent { return &c.Width.Shrinkage },
		func(a cloth.Allowances) measure.Percent { return a.Shrinkage }),
	shareOf(field.DrawIn, func(c *plan.Cloth) *measure.Percent { return &c.Width.DrawIn },
		func(a cloth.Allowances) measure.Percent { return a.DrawIn }),
	shareOf(field.ShrinkageLength, func(c *plan.Cloth) *measure.Percent { return &c.Length.Shrinkage },
		func(a cloth.Allowances) measure.Percent { return a.Shrinkage }),
	shareOf(field.TakeUp, func(c *plan.Cloth) *measure.Percent { return &c.Length.TakeUp },
		func(a cloth.Allowances) measure.Percent { return a.TakeUp }),
	{field.LoomWaste, func(c *plan.Cloth, a cloth.Allowances) { c.Length.Waste = a.Waste },
		func(c plan.Cloth) string { return c.Length.Waste.String() }},
	shareOf(field.WeftTakeUp, func(c *plan.Cloth) *measure.Percent { return &c.WeftTakeUp },
		func(a cloth.Allowances) measure.Percent { return a.WeftTakeUp }),
}

func shareOf(f *field.Field, at func(*plan.Cloth) *measure.Percent,
	of func(cloth.Allowances) measure.Percent) allowance {
	return allowance{f, func(c *plan.Cloth, a cloth.Allowances) { *at(c) = of(a) },
		func(c plan.Cloth) string { return at(&c).String() }}
}

// AssumeAll is a spec with every allowance of the cloth assumed, which is how a new plan begins.
func AssumeAll(s plan.Spec) plan.Spec {
	s.Cloth.Assumed = nil
	for _, a := range usual {
		s.Cloth.Assumed = append(s.Cloth.Assumed, a.field.Name)
	}
	return s
}

// assumes says whether the usual value is taken for a field.
func assumes(c plan.Cloth, f *field.Field) bool { return slices.Contains(c.Assumed, f.Name) }

// assume says whether the usual value is to be taken for a field.
func assume(c *plan.Cloth, f *field.Field, yes bool) {
	var list []string
	for _, a := range usual {
		if a.field != f && assumes(*c, a.field) || a.field == f && yes {
			list = append(list, a.field.Name)
		}
	}
	c.Assumed = list
}

// WithAssumed is the spec with the usual values for what is assumed: those of its fibre and its units. What was
// given stays, 0 too.
func WithAssumed(s plan.Spec) plan.Spec {
	values := cloth.Assume(s.Cloth.Width.Fibre, s.Units)
	for _, a := range usual {
		if assumes(s.Cloth, a.field) {
			a.take(&s.Cloth, values)
		}
	}
	return s
}

// AssumedText lists what is assumed with its values: "shrinkage in width 8 %, draw-in 8 %"; "" where nothing is.
// The take-up of the weft counts only where there is a weft to estimate.
func AssumedText(s plan.Spec) string {
	var parts []string
	for _, a := range usual {
		if assumes(s.Cloth, a.field) && (a.field != field.WeftTakeUp || !s.Cloth.Picks.IsZero()) {
			parts = append(parts, a.field.Name+" "+a.show(s.Cloth))
		}
	}
	return strings.Join(parts, ", ")
}

// AssumedValue is what is assumed for a field, "" where it is given or isn't one that may be assumed.
func AssumedValue(s plan.Spec, f *field.Field) string {
	s = WithAssumed(s)
	for _, a := range usual {
		if a.field == f && assumes(s.Cloth, f) {
			return a.show(s.Cloth)
		}
	}
	return ""
}
