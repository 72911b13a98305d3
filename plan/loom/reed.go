package loom

import (
	"fmt"
	"math/big"
	"regexp"
	"slices"
	"strings"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// ReedSystem is a way to number reeds.
type ReedSystem uint8

// The systems. Stockport, Scotch and Bradford: J. T. Taylor, "Cotton Weaving and Designing", 6th ed.
// 1909, pp. 243 and 244, where 40s Radcliffe is 80s Stockport. Bolton: the formula of C. P. Brooks, "Cotton
// Manufacturing", 3rd ed. 1892, p. 96, by which 36s x 39 in are 2,315.9 ends, two a dent.
const (
	DentsPerInch  ReedSystem = iota
	DentsPerTenCm            // the metric number
	DentsPerCm
	Stockport // dents in two inches
	Radcliffe // dents in an inch
	Scotch    // dents in 37 inches
	Bradford  // beers of 20 dents in 36 inches
	Bolton    // beers of 20 dents in 24 1/4 inches
)

// reedSystems holds for each system its names, and the dents that number 1 has over a width.
var reedSystems = [...]struct {
	names []string
	dents int64
	over  measure.Length
}{
	DentsPerInch:  {[]string{"dents an inch", "an inch", "dent", "dents"}, 1, measure.Inch},
	DentsPerTenCm: {[]string{"dents in 10 cm", "in 10 cm", "metric"}, 1, 10 * measure.Centimetre},
	DentsPerCm:    {[]string{"dents a cm", "a cm"}, 1, measure.Centimetre},
	Stockport:     {[]string{"Stockport"}, 1, 2 * measure.Inch},
	Radcliffe:     {[]string{"Radcliffe"}, 1, measure.Inch},
	Scotch:        {[]string{"Scotch"}, 1, 37 * measure.Inch},
	Bradford:      {[]string{"Bradford"}, 20, 36 * measure.Inch},
	Bolton:        {[]string{"Bolton"}, 20, 97 * measure.Inch / 4},
}

func (s ReedSystem) known() bool { return int(s) < len(reedSystems) }

// String gives the name, such as "dents an inch" or "Stockport".
func (s ReedSystem) String() string {
	if !s.known() {
		return fmt.Sprintf("reed system %d", s)
	}
	return reedSystems[s].names[0]
}

// Reed is a reed by its number in a system, an exact fraction. Its dents lie between one in ten inches
// and 1,000 an inch; the zero value means that no reed was named. Values of one system can be compared
// with ==.
type Reed struct {
	num, den int64
	system   ReedSystem
	width    measure.Length
}

const reedWants = "a number and how it is counted, such as 10 dents an inch, 40 in 10 cm, 5 a cm or 60 Stockport"

// reedOf makes a reed of a number in a system, with its usable width, or 0 where that isn't known, at most 20 m. The
// error is a [*measure.FieldError].
func reedOf(r *big.Rat, system ReedSystem, width measure.Length) (Reed, error) {
	if !system.known() {
		return Reed{}, &measure.FieldError{Field: field.Reed.Name, Value: system.String(), Want: reedWants}
	}
	if width < 0 || width > measure.MaxWidth {
		return Reed{}, &measure.FieldError{Field: field.ReedWidth.Name, Value: width.String(), Want: "0 to " +
			measure.MaxWidth.String()}
	}
	s := reedSystems[system]
	dents := ratio.Quo(ratio.Mul(r, ratio.Of(s.dents*int64(measure.Inch))), ratio.Of(s.over))
	if dents.Cmp(measure.OpenestSett) < 0 || dents.Cmp(measure.ClosestSett) > 0 ||
		r.Denom().Cmp(ratio.Of(maxReedPart).Num()) > 0 {
		return Reed{}, &measure.FieldError{Field: field.Reed.Name, Value: figure.New(r, 3, system.String()).String(),
			Want: "a reed of one dent in ten inches to 1000 an inch"}
	}
	return Reed{r.Num().Int64(), r.Denom().Int64(), system, width}, nil
}

// maxReedPart bounds the denominator of a reed's number, so that sums with it can't overflow.
const maxReedPart = 1_000_000

// reedParts parts the number from the system.
var reedParts = regexp.MustCompile(`^(.*?)s? ?(?:/ ?|\b)` +
	`((?:dents? )?(?:an inch|per inch|in|inch|in 10 ?cm|per 10 ?cm|10 ?cm|a cm|per cm|cm)` +
	`|dents?|metric|stockport|radcliffe|scotch|bradford|bolton)$`)

// ParseReed reads a reed: "10 dents an inch", "10 dent", "40 in 10 cm", "40/10 cm", "5 a cm",
// "60s Stockport", "1100 Scotch". The width isn't part of it. The number is kept exactly. The error is
// a [*measure.FieldError] without a field name.
func ParseReed(s string) (Reed, error) {
	text := reedWords(strings.ToLower(strings.Join(strings.Fields(s), " ")))
	if num, rest, err := measure.LeadingNumber(text); err == nil && rest == "" && len(text) <= measure.MaxQuantity {
		return bareReed(s, num)
	}
	m := reedParts.FindStringSubmatch(text)
	if m == nil || len(text) > measure.MaxQuantity {
		return Reed{}, &measure.FieldError{Value: s, Want: reedWants}
	}
	num, rest, err := measure.LeadingNumber(m[1])
	if err != nil || rest != "" {
		return Reed{}, &measure.FieldError{Value: s, Want: measure.NumberWants(err, reedWants)}
	}
	r, err := reedOf(num, reedSystemCalled(m[2]), 0)
	if err != nil {
		return Reed{}, &measure.FieldError{Value: s, Want: "a reed of one dent in ten inches to 1000 an inch"}
	}
	return r, nil
}

var (
	reedName   = regexp.MustCompile(`^(stockport|radcliffe|scotch|bradford|bolton) (.*)$`)
	reedShort  = regexp.MustCompile(`^(.*?[0-9½¼¾]) ?(?:dpi|d\.p\.i\.?)$`)
	reedMetric = regexp.MustCompile(`^([0-9.,]+) ?/ ?10$`)
)

// reedWords puts what the trade says of a reed into the words that reedParts knows: "bradford 72", "10 dpi",
// "10-dent", "40/10".
func reedWords(text string) string {
	text = strings.NewReplacer("-dent", " dent", "dents/", "/", "in the inch", "an inch").Replace(text)
	if m := reedName.FindStringSubmatch(text); m != nil {
		return m[2] + " " + m[1]
	}
	if m := reedShort.FindStringSubmatch(text); m != nil {
		return m[1] + " dents an inch"
	}
	if m := reedMetric.FindStringSubmatch(text); m != nil {
		return m[1] + " in 10 cm"
	}
	return text
}

// bareReed reads a number alone: reeds in use have 5 to 24 dents an inch, or 20 to 120 in 10 cm (common
// practice, no source), so only some numbers can be both.
func bareReed(s string, num *big.Rat) (Reed, error) {
	inch, metric := num.Cmp(ratio.Of(24)) <= 0, num.Cmp(ratio.Of(20)) >= 0
	switch {
	case inch && metric:
		n := figure.Signed(ratio.Decimal(num, 3))
		return Reed{}, &measure.FieldError{Value: s, Want: "how it is counted: " + n + " dents an inch or " + n +
			" in 10 cm"}
	case inch && num.Cmp(ratio.Of(5)) >= 0:
		return reedOf(num, DentsPerInch, 0)
	case metric && num.Cmp(ratio.Of(120)) <= 0:
		return reedOf(num, DentsPerTenCm, 0)
	}
	return Reed{}, &measure.FieldError{Value: s, Want: reedWants}
}

// reedSystemCalled finds a system by what reedParts lets through.
func reedSystemCalled(name string) ReedSystem {
	for i, s := range reedSystems {
		if slices.ContainsFunc(s.names, func(n string) bool { return strings.EqualFold(n, name) }) {
			return ReedSystem(i)
		}
	}
	switch {
	case strings.Contains(name, "10"):
		return DentsPerTenCm
	case strings.HasSuffix(name, "cm"):
		return DentsPerCm
	default:
		return DentsPerInch
	}
}

// IsZero says that no reed was named.
func (r Reed) IsZero() bool { return r.den == 0 }

// Width is the usable width, nothing where it isn't known.
func (r Reed) Width() measure.Length { return r.width }

// WithWidth is the same reed with another usable width; a width that is no reed's is taken as unknown.
func (r Reed) WithWidth(width measure.Length) Reed {
	if width < 0 || width > measure.MaxWidth {
		width = 0
	}
	r.width = width
	return r
}

// Dents is the reed's dents as a sett: exactly how many lie in a unit of width.
func (r Reed) Dents(unit measure.SettUnit) measure.Sett {
	if r.IsZero() {
		return measure.Sett{}
	}
	d := ratio.Mul(r.perNanometre(), ratio.Of(unit.Width()))
	return measure.RawSett(d, min(unit, measure.PerCentimetre))
}

// perNanometre is the dents in a nanometre of width.
func (r Reed) perNanometre() *big.Rat {
	s := reedSystems[r.system]
	return ratio.Quo(ratio.Mul(big.NewRat(r.num, r.den), ratio.Of(s.dents)), ratio.Of(s.over))
}

// widthOf is the width of so many dents, rounded to the nearest nanometre.
func (r Reed) widthOf(dents int) measure.Length {
	l, _ := measure.LengthOf(ratio.Nearest, ratio.Quo(ratio.Of(dents), r.perNanometre()))
	return l
}

// String gives the number and the system, as ParseReed reads it back: "10 dents an inch". The zero
// value gives "".
func (r Reed) String() string { return figure.Signed(r.plain()) }

func (r Reed) plain() string {
	if r.IsZero() {
		return ""
	}
	n := big.NewRat(r.num, r.den)
	if ratio.Mul(n, ratio.Of(1_000_000)).IsInt() {
		return ratio.Decimal(n, 6) + " " + r.system.String()
	}
	return n.String() + " " + r.system.String()
}

// MarshalText writes the reed as String does, and its width behind a semicolon where it is known, always with decimal
// points.
func (r Reed) MarshalText() ([]byte, error) {
	if r.width == 0 {
		return []byte(r.plain()), nil
	}
	width, err := r.width.MarshalText()
	return append([]byte(r.plain()+"; "), width...), err
}

// UnmarshalText reads what MarshalText wrote, or anything else that ParseReed takes; nothing at all is
// the zero value.
func (r *Reed) UnmarshalText(b []byte) error {
	if len(b) == 0 {
		*r = Reed{}
		return nil
	}
	text, wide, has := strings.Cut(string(b), ";")
	got, err := ParseReed(text)
	if err != nil {
		return err
	}
	if has {
		width, err := measure.ParseLength(wide)
		if err != nil {
			return err
		}
		if width > measure.MaxWidth {
			return &measure.FieldError{Field: field.ReedWidth.Name, Value: width.String(), Want: "0 to " +
				measure.MaxWidth.String()}
		}
		got.width = width
	}
	*r = got
	return nil
}
