package measure

import (
	"math"
	"math/big"
	"regexp"
	"strings"

	"millside/plan/figure"
	"millside/plan/internal/ratio"
)

// SettUnit is the width over which ends, picks or dents are counted.
type SettUnit uint8

// The units of a sett.
const (
	PerInch SettUnit = iota
	PerTenCentimetres
	PerCentimetre
)

// Width is the unit's width.
func (u SettUnit) Width() Length {
	switch u {
	case PerTenCentimetres:
		return 10 * Centimetre
	case PerCentimetre:
		return Centimetre
	default:
		return Inch
	}
}

// String gives "an inch", "in 10 cm" or "a cm".
func (u SettUnit) String() string { return OneOf(int(u), "an inch", "in 10 cm", "a cm") }

// SettUnit is the unit for setts and reeds: the inch or 10 cm.
func (s LengthUnitSystem) SettUnit() SettUnit {
	if s == Metric {
		return PerTenCentimetres
	}
	return PerInch
}

// Sett is how many ends (or picks) lie in a unit of width, as an exact fraction. It lies between one in
// ten inches and 1,000 an inch, or is the zero value, which means that nothing was said. Values of one
// unit can be compared with ==.
type Sett struct {
	num, den int64
	unit     SettUnit
}

// settLimit bounds the parts of a sett's fraction, so that a change of unit can't overflow.
const settLimit = 1_000_000_000_000_000

var (
	OpenestSett  = big.NewRat(1, 10)   // an inch
	ClosestSett  = big.NewRat(1000, 1) // an inch
	SettWants    = "a count and a width, such as 20 an inch, 7 1/2 an inch, 80 in 10 cm or 8 a cm"
	settUnitText = map[string]SettUnit{
		"inch": PerInch, "in": PerInch, `"`: PerInch, "″": PerInch,
		"10 cm": PerTenCentimetres, "10cm": PerTenCentimetres, "10 centimetres": PerTenCentimetres,
		"10 centimeters": PerTenCentimetres,
		"cm":             PerCentimetre, "centimetre": PerCentimetre, "centimeter": PerCentimetre,
		"epi": PerInch, "ppi": PerInch, "e.p.i": PerInch, "p.p.i": PerInch,
		"epc": PerCentimetre, "ppc": PerCentimetre, "epcm": PerCentimetre, "ppcm": PerCentimetre,
	}
)

// SettOf makes a sett of a fraction. The error is a [*FieldError]: for a sett under one in ten inches or above 1,000
// an inch.
func SettOf(r *big.Rat, unit SettUnit) (Sett, error) {
	if unit > PerCentimetre {
		return Sett{}, &FieldError{Field: "sett", Value: unit.String(), Want: SettWants}
	}
	inches := ratio.Quo(ratio.Mul(r, ratio.Of(Inch)), ratio.Of(unit.Width()))
	if inches.Cmp(OpenestSett) < 0 || inches.Cmp(ClosestSett) > 0 || !r.Denom().IsInt64() ||
		r.Denom().Int64() > settLimit || r.Num().Int64() > settLimit {
		return Sett{}, &FieldError{Field: "sett", Value: figure.New(r, 3, unit.String()).String(),
			Want: "one in ten inches to 1000 an inch"}
	}
	return Sett{r.Num().Int64(), r.Denom().Int64(), unit}, nil
}

// RawSett makes a sett of a fraction without a look at its range, for what was checked in another form, such
// as the dents of a reed. Its parts must fit an int64.
func RawSett(r *big.Rat, unit SettUnit) Sett { return Sett{r.Num().Int64(), r.Denom().Int64(), unit} }

// ParseSett reads a sett: "20 an inch", "20 ends an inch", "20/in", "7 1/2 per inch", "80 in 10 cm",
// "80/10 cm", "8 a cm". Words between the number and the width, such as ends, picks or dents, are let
// pass. The number is kept exactly. The error is a [*FieldError] without a field name.
func ParseSett(s string) (Sett, error) {
	text := strings.ToLower(strings.Join(strings.Fields(s), " "))
	m := settParts.FindStringSubmatch(text)
	if short := settShort.FindStringSubmatch(text); short != nil {
		m = short
	}
	if num, rest, err := LeadingNumber(text); err == nil && rest == "" && len(text) <= MaxQuantity {
		return bareSett(s, num)
	}
	if m == nil || len(text) > MaxQuantity {
		return Sett{}, &FieldError{Value: s, Want: SettWants}
	}
	num, rest, err := LeadingNumber(m[1])
	if err != nil || rest != "" {
		return Sett{}, &FieldError{Value: s, Want: NumberWants(err, SettWants)}
	}
	got, err := SettOf(num, settUnitText[m[2]])
	if err != nil {
		return Sett{}, &FieldError{Value: s, Want: "one in ten inches to 1000 an inch"}
	}
	return got, nil
}

// settParts parts the number from the unit, settShort one that is written with the trade's letters: "20 epi".
var (
	settParts = regexp.MustCompile(`^(.*?) ?(?:ends|picks|dents|threads)? ?(?:/ ?|\b(?:an|a|per|in|to the) )` +
		`(inch|in|"|″|10 ?cm|10 centimetres|10 centimeters|cm|centimetre|centimeter)\.?$`)
	settShort = regexp.MustCompile(`^(.*?[0-9½¼¾⅓⅔]) ?(epi|ppi|e\.p\.i|p\.p\.i|epc|ppc|epcm|ppcm)\.?$`)
)

// handSetts is what is woven by hand, in ends an inch: 2 to 100 (from memory).
var handSetts = [2]*big.Rat{big.NewRat(2, 1), big.NewRat(100, 1)}

// bareSett reads a number without a unit in the one unit in which it is a sett that is woven by hand; where
// there are several, or none, the error names them.
func bareSett(s string, num *big.Rat) (Sett, error) {
	var fit []Sett
	var names []string
	for _, unit := range []SettUnit{PerInch, PerTenCentimetres, PerCentimetre} {
		got, err := SettOf(num, unit)
		if err != nil {
			continue
		}
		if inch := got.In(PerInch).Rat(); inch.Cmp(handSetts[0]) >= 0 && inch.Cmp(handSetts[1]) <= 0 {
			fit, names = append(fit, got), append(names, got.String())
		}
	}
	switch len(fit) {
	case 0:
		return Sett{}, &FieldError{Value: s, Want: SettWants}
	case 1:
		return fit[0], nil
	}
	return Sett{}, &FieldError{Value: s, Want: "the width over which the ends are counted: " +
		strings.Join(names, " or ")}
}

// IsZero says that no sett was named.
func (s Sett) IsZero() bool { return s == Sett{} }

// Unit is the width over which the ends are counted.
func (s Sett) Unit() SettUnit { return s.unit }

// Rat is the count in the unit, nought for the zero value.
func (s Sett) Rat() *big.Rat {
	if s.den == 0 {
		return new(big.Rat)
	}
	return big.NewRat(s.num, s.den)
}

// PerNanometre is the count in a nanometre of width.
func (s Sett) PerNanometre() *big.Rat { return ratio.Quo(s.Rat(), ratio.Of(s.unit.Width())) }

// In is the same sett counted over another unit, exactly. The zero value stays as it is.
func (s Sett) In(unit SettUnit) Sett {
	if s.IsZero() || unit > PerCentimetre {
		return s
	}
	r := ratio.Quo(ratio.Mul(s.Rat(), ratio.Of(unit.Width())), ratio.Of(s.unit.Width()))
	return Sett{r.Num().Int64(), r.Denom().Int64(), unit}
}

// Count is the exact number of ends in a width.
func (s Sett) Count(width Length) *big.Rat { return ratio.Mul(s.PerNanometre(), ratio.Of(width)) }

// EndsUp is the number of ends in a width, rounded up: a cloth that is an end too wide does no harm. A
// negative width has none; a count beyond any warp is cut off at the largest int32.
func (s Sett) EndsUp(width Length) int { return SmallCount(ratio.Up, s.Count(max(width, 0))) }

// SmallCount rounds a count that isn't negative, and cuts it off at the largest int32.
func SmallCount(how ratio.Rounding, r *big.Rat) int {
	n, ok := how.Whole(r)
	if !ok || n > math.MaxInt32 {
		return math.MaxInt32
	}
	return int(n)
}

// WidthOf is the width that so many ends take, rounded to the nearest nanometre; nothing for the zero
// value or a count that is not above 0.
func (s Sett) WidthOf(ends int) Length {
	if s.IsZero() || ends <= 0 {
		return 0
	}
	l, ok := LengthOf(ratio.Nearest, ratio.Quo(ratio.Of(min(ends, math.MaxInt32)), s.PerNanometre()))
	if !ok {
		return 0
	}
	return l
}

// Shown gives the sett with at most the given decimals (0 to 9), rounded to the nearest: "20 an inch".
func (s Sett) Shown(decimals int) string {
	if s.IsZero() {
		return ""
	}
	return figure.Exact(s.Rat(), decimals, s.unit.String()).String()
}

// As is the sett to be shown, with no more figures than a reckoned number has; the zero value is 0.
func (s Sett) As(decimals int) figure.Number { return figure.New(s.Rat(), decimals, s.unit.String()) }

// String gives the sett exactly, as a fraction where six decimals don't do, so that ParseSett reads it
// back: "20 an inch", "40/3 an inch". The zero value gives "".
func (s Sett) String() string { return figure.Signed(s.plain()) }

func (s Sett) plain() string {
	if s.IsZero() {
		return ""
	}
	if ratio.Mul(s.Rat(), ratio.Of(1_000_000)).IsInt() {
		return figure.Exact(s.Rat(), 6, s.unit.String()).Plain()
	}
	return s.Rat().String() + " " + s.unit.String()
}

// MarshalText writes the sett exactly, as String does, but always with a decimal point.
func (s Sett) MarshalText() ([]byte, error) { return []byte(s.plain()), nil }

// UnmarshalText reads what MarshalText wrote, or anything else that ParseSett takes; nothing at all is
// the zero value.
func (s *Sett) UnmarshalText(b []byte) error { return readTextOrNone(s, b, ParseSett) }
