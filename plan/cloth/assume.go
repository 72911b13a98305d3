package cloth

import "millside/plan/measure"

// Allowances are what a finished cloth loses on the way from the warp.
type Allowances struct {
	// Shrinkage is the share that washing takes, in width and in length alike; DrawIn that of the width in the
	// reed, TakeUp that of the warp's length, WeftTakeUp what a pick is longer than the width in the reed.
	Shrinkage, DrawIn, TakeUp, WeftTakeUp measure.Percent
	// Waste is the warp that can't be woven on the loom.
	Waste measure.Length
}

// Assume is the allowances that are taken where a weaver gives none: about the middle of the usual range of the
// fibre, and for a fibre without one that of cotton (from memory, common practice). The waste is a round figure in
// each family of units, within 18 to 36 in.
func Assume(f Fibre, units measure.LengthUnitSystem) Allowances {
	a := Allowances{Shrinkage: 8 * measure.OnePercent, DrawIn: 8 * measure.OnePercent,
		TakeUp: 10 * measure.OnePercent, WeftTakeUp: 5 * measure.OnePercent, Waste: 27 * measure.Inch}
	switch f {
	case WoolFibre:
		a.Shrinkage = 15 * measure.OnePercent
	case LinenFibre, HempFibre:
		a.Shrinkage, a.TakeUp, a.DrawIn = 7*measure.OnePercent, 8*measure.OnePercent, 6*measure.OnePercent
	case SilkFibre:
		a.Shrinkage, a.TakeUp, a.DrawIn = 3*measure.OnePercent, 8*measure.OnePercent, 6*measure.OnePercent
	case RayonFibre:
		a.Shrinkage = 6 * measure.OnePercent
	}
	if units == measure.Metric {
		a.Waste = 70 * measure.Centimetre
	}
	return a
}
