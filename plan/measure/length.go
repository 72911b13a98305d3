package measure

import (
	"math/big"

	"millside/plan/figure"
	"millside/plan/internal/ratio"
)

// Length is a length in whole nanometres. Inches, yards and metres are all whole numbers of
// nanometres, so typed input down to a hundred-thousandth of an inch is kept exactly. The zero value
// is no length.
type Length int64

// Units of length. The inch and the yard are those of the international yard and pound agreement of
// 1959: 1 in = 25.4 mm and 1 yd = 0.9144 m, exactly.
const (
	Nanometre  Length = 1
	Millimetre        = 1_000_000 * Nanometre
	Centimetre        = 10 * Millimetre
	Metre             = 100 * Centimetre
	Inch              = 25_400_000 * Nanometre
	Foot              = 12 * Inch
	Yard              = 3 * Foot
)

// MaxLength bounds what ParseLength takes, so that later sums can't overflow: 100 km.
const MaxLength = 100_000 * Metre

var lengthUnits = []namedUnit{
	{[]string{"m", "metre", "metres", "meter", "meters"}, int64(Metre)},
	{[]string{"yd", "yds", "yard", "yards"}, int64(Yard)},
	{[]string{"in", "inch", "inches", `"`, "″"}, int64(Inch)},
	{[]string{"cm", "centimetre", "centimetres", "centimeter", "centimeters"}, int64(Centimetre)},
	{[]string{"ft", "foot", "feet", "'", "′"}, int64(Foot)},
	{[]string{"mm", "millimetre", "millimetres", "millimeter", "millimeters"}, int64(Millimetre)},
}

// lengthWants is what an error tells the weaver to write.
const lengthWants = "a number and a unit, such as 7.5 yd, 7 1/2 yd, 6.4 m or 250 in"

// ParseLength reads a length as a weaver writes it: "7.5 yd", "6.4m", "250 in", "7 1/2 yd",
// "4 yd 18 in", "6,4 m". The unit is required. A comma is a decimal comma, except before exactly
// three digits, where it could also part thousands and is refused. The result is exact where the
// number is a whole number of nanometres, else rounded to the nearest nanometre. Negative lengths and
// lengths over 100 km are refused, and so are texts of more than 100 bytes. The error is a [*FieldError]
// without a field name.
func ParseLength(s string) (Length, error) {
	total, err := parseSum(s, lengthWants, lengthUnits)
	if err != nil {
		return 0, err
	}
	n, ok := ratio.Nearest.Whole(total)
	if !ok || Length(n) > MaxLength {
		return 0, &FieldError{Value: s, Want: "at most 100000 m"}
	}
	return Length(n), nil
}

// LengthUnit is the unit that a length is shown in.
type LengthUnit uint8

// The units that lengths are shown in.
const (
	Yards LengthUnit = iota
	Metres
	Inches
	Centimetres
	Feet
)

func (u LengthUnit) Length() (Length, string) {
	switch u {
	case Metres:
		return Metre, "m"
	case Inches:
		return Inch, "in"
	case Centimetres:
		return Centimetre, "cm"
	case Feet:
		return Foot, "ft"
	default:
		return Yard, "yd"
	}
}

// In gives the length in a unit with at most the given number of decimals (0 to 9), rounded to the
// nearest, halves away from nil, and without trailing noughts: "7.5 yd".
func (l Length) In(u LengthUnit, decimals int) string {
	unit, name := u.Length()
	return figure.Exact(new(big.Rat).SetFrac64(int64(l), int64(unit)), decimals, name).String()
}

// As is the length in a unit to be shown: with at most the given decimals, and no more figures than a reckoned
// number has.
func (l Length) As(u LengthUnit, decimals int) figure.Number {
	unit, name := u.Length()
	return figure.New(new(big.Rat).SetFrac64(int64(l), int64(unit)), decimals, name)
}

// String gives the length exactly, in whichever of metres, yards, inches, centimetres and millimetres
// takes the fewest characters: what ParseLength reads back to the same length.
func (l Length) String() string { return figure.Signed(shortest(int64(l), lengthUnits)) }

// MarshalText writes the length exactly, as String does, but always with a decimal point.
func (l Length) MarshalText() ([]byte, error) { return []byte(shortest(int64(l), lengthUnits)), nil }

// UnmarshalText reads what MarshalText wrote, or any other length that ParseLength takes.
func (l *Length) UnmarshalText(b []byte) error { return readText(l, b, ParseLength) }

// Times is the length laid n times over, for n of 0 or more.
func (l Length) Times(n int) Length { return l * Length(n) }

// LengthUnitSystem is the family of units that a weaver works in.
type LengthUnitSystem uint8

// The two families of units.
const (
	Imperial LengthUnitSystem = iota // yards, inches, pounds
	Metric                           // metres, centimetres, grams
)

// Long is the unit for a warp's length: yards or metres.
func (s LengthUnitSystem) Long() LengthUnit {
	if s == Metric {
		return Metres
	}
	return Yards
}

// Short is the unit for pegs and widths: inches or centimetres.
func (s LengthUnitSystem) Short() LengthUnit {
	if s == Metric {
		return Centimetres
	}
	return Inches
}

// String gives the name that a plan file uses: "imperial" or "metric".
func (s LengthUnitSystem) String() string { return OneOf(int(s), "imperial", "metric") }

// MarshalText writes the name.
func (s LengthUnitSystem) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads "imperial" or "metric".
func (s *LengthUnitSystem) UnmarshalText(b []byte) error {
	i, err := WhichOf(string(b), "imperial", "metric")
	*s = LengthUnitSystem(i)
	return err
}
