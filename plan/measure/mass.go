package measure

import (
	"math/big"

	"millside/plan/figure"
	"millside/plan/internal/ratio"
)

// Mass is a mass in whole nanograms. Pounds, ounces and grams are all whole numbers of nanograms, so
// that typed input is kept exactly. The zero value is no mass.
type Mass int64

// Units of mass. The pound is that of the international yard and pound agreement of 1959, 0.45359237
// kg exactly; the ounce is a sixteenth of it.
const (
	Nanogram Mass = 1
	Gram          = 1_000_000_000 * Nanogram
	Kilogram      = 1000 * Gram
	Pound         = 453_592_370_000 * Nanogram
	Ounce         = Pound / 16
)

// MaxMass bounds what ParseMass takes, so that later sums can't overflow: 100 tonnes.
const MaxMass = 100_000 * Kilogram

var massUnits = []namedUnit{
	{[]string{"kg", "kgs", "kilogram", "kilograms", "kilo", "kilos"}, int64(Kilogram)},
	{[]string{"lb", "lbs", "pound", "pounds"}, int64(Pound)},
	{[]string{"oz", "ounce", "ounces"}, int64(Ounce)},
	{[]string{"g", "gram", "grams", "gramme", "grammes"}, int64(Gram)},
}

const massWants = "a number and a unit, such as 8 oz, 1 1/2 lb, 2 lb 3 oz or 250 g"

// ParseMass reads a mass as a weaver writes it: "8 oz", "1 1/2 lb", "2 lb 3 oz", "250g", "0,45 kg".
// The unit is required; commas are read as [ParseLength] does. The result is exact where the number is
// a whole number of nanograms, else rounded to the nearest nanogram. Negative masses and masses over
// 100,000 kg are refused. The error is a [*FieldError] without a field name.
func ParseMass(s string) (Mass, error) {
	total, err := parseSum(s, massWants, massUnits)
	if err != nil {
		return 0, err
	}
	n, ok := ratio.Nearest.Whole(total)
	if !ok || Mass(n) > MaxMass {
		return 0, &FieldError{Value: s, Want: "at most 100000 kg"}
	}
	return Mass(n), nil
}

// MassUnit is the unit that a mass is shown in.
type MassUnit uint8

// The units that masses are shown in.
const (
	Pounds MassUnit = iota
	Ounces
	Grams
	Kilograms
)

func (u MassUnit) mass() (Mass, string) {
	switch u {
	case Ounces:
		return Ounce, "oz"
	case Grams:
		return Gram, "g"
	case Kilograms:
		return Kilogram, "kg"
	default:
		return Pound, "lb"
	}
}

// In gives the mass in a unit with at most the given number of decimals (0 to 9), rounded to the
// nearest, halves away from nil, and without trailing noughts: "1.5 lb".
func (m Mass) In(u MassUnit, decimals int) string {
	unit, name := u.mass()
	return figure.Exact(new(big.Rat).SetFrac64(int64(m), int64(unit)), decimals, name).String()
}

// As is the mass in a unit to be shown: with at most the given decimals, and no more figures than a reckoned number
// has.
func (m Mass) As(u MassUnit, decimals int) figure.Number {
	unit, name := u.mass()
	return figure.New(new(big.Rat).SetFrac64(int64(m), int64(unit)), decimals, name)
}

// AtLeast is As rounded up, so that who takes as much as is shown has enough.
func (m Mass) AtLeast(u MassUnit, decimals int) figure.Number {
	unit, name := u.mass()
	return figure.AtLeast(new(big.Rat).SetFrac64(int64(m), int64(unit)), decimals, name)
}

// AtMost is As rounded down, so that who counts on as much as is shown has it.
func (m Mass) AtMost(u MassUnit, decimals int) figure.Number {
	unit, name := u.mass()
	return figure.AtMost(new(big.Rat).SetFrac64(int64(m), int64(unit)), decimals, name)
}

// String gives the mass exactly, in whichever of kilograms, pounds, ounces and grams takes the fewest
// characters: what ParseMass reads back to the same mass.
func (m Mass) String() string { return figure.Signed(shortest(int64(m), massUnits)) }

// MarshalText writes the mass exactly, as String does, but always with a decimal point.
func (m Mass) MarshalText() ([]byte, error) { return []byte(shortest(int64(m), massUnits)), nil }

// UnmarshalText reads what MarshalText wrote, or any other mass that ParseMass takes.
func (m *Mass) UnmarshalText(b []byte) error { return readText(m, b, ParseMass) }

// Heavy is the unit for the yarn of a whole warp: pounds or kilograms.
func (s LengthUnitSystem) Heavy() MassUnit {
	if s == Metric {
		return Kilograms
	}
	return Pounds
}

// Light is the unit for one cone: ounces or grams.
func (s LengthUnitSystem) Light() MassUnit {
	if s == Metric {
		return Grams
	}
	return Ounces
}
