package measure

import (
	"math/big"

	"millside/plan/figure"
	"millside/plan/internal/ratio"
)

// errNoYarn is the error for the zero yarn.
func errNoYarn() error {
	return &FieldError{Field: "yarn", Value: "", Want: YarnWants}
}

// NumberIn gives the number that the finished yarn has in a count system, as one thread, with at most
// the given decimals (0 to 9), rounded to the nearest: cotton 8 in 2 plies is "3360" in yards a pound.
// It is "" for the zero yarn or an unknown system.
func (y YarnSize) NumberIn(system CountSystem, decimals int) string {
	m := y.metresInGram()
	if m == nil || !system.known() {
		return ""
	}
	return figure.Signed(ratio.Decimal(system.number(m, 1), decimals))
}

// In is the same yarn in another count system, with its plies, or as one thread where the other system
// knows no plies. The number is rounded to the nearest millionth. The error is a [*FieldError]: for the
// zero yarn, an unknown system, or a number that rounds to nothing.
func (y YarnSize) In(system CountSystem) (YarnSize, error) {
	m := y.metresInGram()
	if m == nil {
		return YarnSize{}, errNoYarn()
	}
	if !system.known() {
		return YarnSize{}, &FieldError{Field: "count system", Value: system.String(), Want: "one of the count systems"}
	}
	if system == y.system {
		return y, nil
	}
	plies := y.plies
	if countSystems[system].never {
		plies = 1
	}
	return yarnFromDensity(system, m, plies)
}

// yarnFromDensity names a yarn of so many metres a gram in a system, its number rounded to the nearest
// millionth.
func yarnFromDensity(system CountSystem, metresInGram *big.Rat, plies int) (YarnSize, error) {
	n, ok := ratio.Nearest.Whole(ratio.Mul(system.number(metresInGram, plies), ratio.Of(YarnNumberOne)))
	if !ok {
		n = int64(maxYarnNumber) + 1
	}
	return NewYarnSize(system, YarnNumber(n), plies)
}

// nanometresInNanogram is the finished yarn's length a mass in the units of [Length] and [Mass]: a metre
// a gram is 10^9 nm in 10^9 ng.
func (y YarnSize) nanometresInNanogram() *big.Rat { return y.metresInGram() }

// LengthOf is the length of a mass of the yarn, rounded down: a warp can't count on what may not be
// there. The error is a [*FieldError]: for the zero yarn, a negative mass or a result beyond any warp.
func (y YarnSize) LengthOf(m Mass) (Length, error) {
	if y.metresInGram() == nil {
		return 0, errNoYarn()
	}
	if m < 0 {
		return 0, &FieldError{Field: "mass", Value: m.String(), Want: "nothing or more"}
	}
	l, ok := LengthOf(ratio.Down, ratio.Mul(ratio.Of(m), y.nanometresInNanogram()))
	if !ok {
		return 0, TooLarge("mass", m.String())
	}
	return l, nil
}

// MassOf is the mass of a length of the yarn, rounded up to a nanogram, so that the yarn suffices. The
// error is a [*FieldError]: for the zero yarn, a negative length or a result beyond any warp.
func (y YarnSize) MassOf(l Length) (Mass, error) {
	if y.metresInGram() == nil {
		return 0, errNoYarn()
	}
	if l < 0 {
		return 0, &FieldError{Field: "length", Value: l.String(), Want: "nothing or more"}
	}
	n, ok := ratio.Up.Whole(ratio.Quo(ratio.Of(l), y.nanometresInNanogram()))
	if !ok || n > maxSum {
		return 0, TooLarge("length", l.String())
	}
	return Mass(n), nil
}

// PerMass says how much of the yarn is in a pound or a kilogram, whole units, rounded to the nearest, in four
// figures: "3360 yd/lb". It is "" for the zero yarn.
func (y YarnSize) PerMass(units LengthUnitSystem) string {
	system := YardsPerPound
	if units == Metric {
		system = MetresPerKilogram
	}
	if y.IsZero() {
		return ""
	}
	return figure.New(system.number(y.metresInGram(), 1), 0, system.String()).String()
}
