package plan

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"
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

// maxLength bounds what ParseLength takes, so that later sums can't overflow: 100 km.
const maxLength = 100_000 * Metre

var lengthUnits = []struct {
	names []string
	unit  Length
}{
	{[]string{"m", "metre", "metres", "meter", "meters"}, Metre},
	{[]string{"yd", "yds", "yard", "yards"}, Yard},
	{[]string{"in", "inch", "inches", `"`, "″"}, Inch},
	{[]string{"cm", "centimetre", "centimetres", "centimeter", "centimeters"}, Centimetre},
	{[]string{"ft", "foot", "feet", "'", "′"}, Foot},
	{[]string{"mm", "millimetre", "millimetres", "millimeter", "millimeters"}, Millimetre},
}

// maxLengthText is the longest text of a length that is read, in bytes. Each fraction in a sum makes the
// sum's denominator longer, so a text without a limit could keep the program busy for minutes.
const maxLengthText = 100

// lengthWants is what an error tells the weaver to write.
const lengthWants = "a number and a unit, such as 7.5 yd, 7 1/2 yd, 6.4 m or 250 in"

// ParseLength reads a length as a weaver writes it: "7.5 yd", "6.4m", "250 in", "7 1/2 yd",
// "4 yd 18 in", "6,4 m". The unit is required. A comma is a decimal comma, except before exactly
// three digits, where it could also part thousands and is refused. The result is exact where the
// number is a whole number of nanometres, else rounded to the nearest nanometre. Negative lengths and
// lengths over 100 km are refused, and so are texts of more than 100 bytes. The error is a [*FieldError]
// without a field name.
func ParseLength(s string) (Length, error) {
	total := new(big.Rat)
	rest := strings.TrimSpace(s)
	if rest == "" {
		return 0, &FieldError{Value: s, Want: lengthWants}
	}
	if len(rest) > maxLengthText {
		return 0, &FieldError{Value: s, Want: fmt.Sprintf("at most %d characters", maxLengthText)}
	}
	for rest != "" {
		num, tail, err := leadingNumber(rest)
		if err != nil {
			return 0, &FieldError{Value: s, Want: err.Error()}
		}
		unit, tail, ok := leadingUnit(tail)
		if !ok {
			return 0, &FieldError{Value: s, Want: lengthWants}
		}
		total.Add(total, num.Mul(num, new(big.Rat).SetInt64(int64(unit))))
		rest = strings.TrimSpace(tail)
	}
	if total.Cmp(new(big.Rat).SetInt64(int64(maxLength))) > 0 {
		return 0, &FieldError{Value: s, Want: "at most 100000 m"}
	}
	return Length(roundRat(total)), nil
}

// leadingUnit cuts a unit's name from the front of s.
func leadingUnit(s string) (Length, string, bool) {
	s = strings.TrimSpace(s)
	n := strings.IndexFunc(s, func(r rune) bool { return r == ' ' || (r >= '0' && r <= '9') })
	if n < 0 {
		n = len(s)
	}
	name := strings.ToLower(strings.TrimSuffix(s[:n], "."))
	for _, u := range lengthUnits {
		for _, known := range u.names {
			if name == known {
				return u.unit, s[n:], true
			}
		}
	}
	return 0, s, false
}

// roundRat rounds a non-negative rational to the nearest whole number, halves up.
func roundRat(r *big.Rat) int64 {
	twice := new(big.Int).Mul(r.Num(), big.NewInt(2))
	twice.Add(twice, r.Denom())
	return twice.Div(twice, new(big.Int).Mul(r.Denom(), big.NewInt(2))).Int64()
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

func (u LengthUnit) length() (Length, string) {
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
	unit, name := u.length()
	return decimal(new(big.Rat).SetFrac64(int64(l), int64(unit)), decimals) + " " + name
}

// decimal writes a rational with at most the given decimals and no trailing noughts.
func decimal(r *big.Rat, decimals int) string {
	s := r.FloatString(min(max(decimals, 0), 9))
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// String gives the length exactly, in whichever of metres, yards, inches, centimetres and millimetres
// takes the fewest characters: what ParseLength reads back to the same length.
func (l Length) String() string {
	best := ""
	for _, u := range lengthUnits {
		if u.unit == Foot {
			continue
		}
		text, exact := exactDecimal(l, u.unit)
		if !exact {
			continue
		}
		if text += " " + u.names[0]; best == "" || len(text) < len(best) {
			best = text
		}
	}
	return best
}

// exactDecimal writes l in a unit, and says whether nine decimals are enough to do so exactly.
func exactDecimal(l, unit Length) (string, bool) {
	r := new(big.Rat).SetFrac64(int64(l), int64(unit))
	text := decimal(r, 9)
	back, ok := new(big.Rat).SetString(text)
	return text, ok && back.Cmp(r) == 0
}

// MarshalText writes the length exactly, as String does.
func (l Length) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// UnmarshalText reads what MarshalText wrote, or any other length that ParseLength takes.
func (l *Length) UnmarshalText(b []byte) error {
	got, err := ParseLength(string(b))
	if err != nil {
		return err
	}
	*l = got
	return nil
}

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
func (s LengthUnitSystem) String() string { return oneOf(int(s), "imperial", "metric") }

// MarshalText writes the name.
func (s LengthUnitSystem) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads "imperial" or "metric".
func (s *LengthUnitSystem) UnmarshalText(b []byte) error {
	i, err := whichOf(string(b), "imperial", "metric")
	*s = LengthUnitSystem(i)
	return err
}

// oneOf names a small enumeration's value; a value outside the list is shown as a number.
func oneOf(i int, names ...string) string {
	if i < 0 || i >= len(names) {
		return strconv.Itoa(i)
	}
	return names[i]
}

// whichOf finds a name in a small enumeration.
func whichOf(s string, names ...string) (int, error) {
	for i, n := range names {
		if strings.EqualFold(strings.TrimSpace(s), n) {
			return i, nil
		}
	}
	return 0, &FieldError{Value: s, Want: fmt.Sprintf("one of %s", strings.Join(names, ", "))}
}
