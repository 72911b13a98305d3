package measure

import (
	"math/big"
	"strings"

	"millside/plan/figure"
	"millside/plan/internal/ratio"
)

// Percent is a share in ten-thousandths of a percent, so that allowances typed to four decimals are
// kept exactly. Its range is 0 to 100 %.
type Percent int64

// OnePercent is one percent.
const OnePercent Percent = 10_000

// ShareWants says what a loss may be.
const ShareWants = "0 % to 90 %"

const percentWants = "0 to 100 % with at most four decimals, such as 8 % or 7.5 %"

// ParsePercent reads a share: "8 %", "7.5%", "7,5", "2 1/2 %". More than four decimals are refused and
// not rounded. The error is a [*FieldError] without a field name.
func ParsePercent(s string) (Percent, error) {
	num, rest, err := LeadingNumber(strings.TrimSpace(s))
	if err != nil {
		return 0, &FieldError{Value: s, Want: NumberWants(err, figure.Signed(percentWants))}
	}
	rest = strings.TrimSpace(rest)
	num.Mul(num, ratio.Of(OnePercent))
	if (rest != "" && rest != "%" && rest != "percent") || !num.IsInt() || num.Cmp(ratio.Of(100*OnePercent)) > 0 {
		return 0, &FieldError{Value: s, Want: figure.Signed(percentWants)}
	}
	return Percent(num.Num().Int64()), nil
}

// String gives the share exactly: "7.5 %".
func (p Percent) String() string { return p.As().String() }

// As is the share as String writes it.
func (p Percent) As() figure.Number {
	return figure.Exact(big.NewRat(int64(p), int64(OnePercent)), 4, "%")
}

// MarshalText writes the share exactly, as String does, but always with a decimal point.
func (p Percent) MarshalText() ([]byte, error) { return []byte(p.As().Plain()), nil }

// UnmarshalText reads what MarshalText wrote, or any other share that ParsePercent takes.
func (p *Percent) UnmarshalText(b []byte) error { return readText(p, b, ParsePercent) }

// Of is the share as a fraction of one.
func (p Percent) Of() *big.Rat { return big.NewRat(int64(p), int64(100*OnePercent)) }

// Left is what remains of one when the share is gone.
func (p Percent) Left() *big.Rat { return ratio.Sub(ratio.Of(1), p.Of()) }

// Check refuses a loss from which nothing, or next to nothing, would be left.
func (p Percent) Check(field string) error {
	if p < 0 || p > 90*OnePercent {
		return &FieldError{Field: field, Value: p.String(), Want: ShareWants}
	}
	return nil
}
