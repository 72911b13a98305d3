package cloth

import (
	"fmt"

	"millside/plan/field"
	"millside/plan/measure"
)

// Fibre is what the warp is spun of, as far as it bears on shrinkage.
type Fibre uint8

// The fibres. OtherFibre and MixedFibre have no usual range.
const (
	OtherFibre Fibre = iota
	CottonFibre
	WoolFibre
	LinenFibre
	SilkFibre
	CottolinFibre
	RayonFibre
	HempFibre
	MixedFibre
)

// String gives the name that a plan file uses.
func (f Fibre) String() string {
	return measure.OneOf(int(f), field.Fibre.Words...)
}

// Words is the name in a sentence: "wool", "a fibre that isn't said".
func (f Fibre) Words() string {
	switch f {
	case OtherFibre:
		return "a fibre that isn't said"
	case MixedFibre:
		return "mixed fibres"
	}
	return f.String()
}

// MarshalText writes the name.
func (f Fibre) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// UnmarshalText reads the name.
func (f *Fibre) UnmarshalText(b []byte) error {
	i, err := measure.WhichOf(string(b), field.Fibre.Words...)
	*f = Fibre(i)
	return err
}

// usualShare is the usual range of an allowance in percent.
type usualShare struct {
	low, high measure.Percent
	more      string // what is said beside the range
}

// The usual ranges of allowances: from memory, common practice. They warn and never refuse.
var (
	usualTakeUp    = usualShare{low: 5 * measure.OnePercent, high: 12 * measure.OnePercent}
	usualDrawIn    = usualShare{low: 5 * measure.OnePercent, high: 10 * measure.OnePercent}
	usualShrinkage = map[Fibre]usualShare{
		CottonFibre: {low: 5 * measure.OnePercent, high: 12 * measure.OnePercent},
		WoolFibre: {low: 10 * measure.OnePercent, high: 20 * measure.OnePercent,
			more: ", and far more when it is fulled"},
		LinenFibre:    {low: 5 * measure.OnePercent, high: 10 * measure.OnePercent},
		SilkFibre:     {low: 2 * measure.OnePercent, high: 5 * measure.OnePercent},
		CottolinFibre: {low: 5 * measure.OnePercent, high: 12 * measure.OnePercent},
		RayonFibre:    {low: 3 * measure.OnePercent, high: 10 * measure.OnePercent},
		HempFibre:     {low: 5 * measure.OnePercent, high: 10 * measure.OnePercent},
	}
)

// text puts the range in words; "" where there is none.
func (u usualShare) text() string {
	if u.high == 0 {
		return ""
	}
	return fmt.Sprintf("%s to %s%s", u.low, u.high, u.more)
}

// warn says that a share lies outside the range; "" where it doesn't.
func (u usualShare) warn(name string, p measure.Percent) string {
	switch {
	case u.high == 0 || p >= u.low && p <= u.high:
		return ""
	case p < u.low:
		return fmt.Sprintf("%s of %s is less than is usual (%s)", name, p, u.text())
	default:
		return fmt.Sprintf("%s of %s is more than is usual (%s)", name, p, u.text())
	}
}

// usualLength is the usual range of an allowance that is a length, in both families of units.
type usualLength struct {
	low, high        measure.Length
	imperial, metric string
}

// The usual ranges of allowances: from memory, common practice.
var (
	usualWaste  = usualLength{18 * measure.Inch, 36 * measure.Inch, "18 to 36 in", "45 to 90 cm"}
	usualSample = usualLength{12 * measure.Inch, 18 * measure.Inch, "12 to 18 in", "30 to 45 cm"}
)

// text puts the range in words.
func (u usualLength) text(units measure.LengthUnitSystem) string {
	if units == measure.Metric {
		return u.metric
	}
	return u.imperial
}

// warn says that a length lies outside the range by more than a centimetre, which is how far the range
// itself differs between the families of units; "" where it doesn't.
func (u usualLength) warn(name string, l measure.Length, units measure.LengthUnitSystem) string {
	switch {
	case l < u.low-measure.Centimetre:
		return fmt.Sprintf("%s of %s is less than is usual (%s)", name, l.As(units.Short(), 1), u.text(units))
	case l > u.high+measure.Centimetre:
		return fmt.Sprintf("%s of %s is more than is usual (%s)", name, l.As(units.Short(), 1), u.text(units))
	default:
		return ""
	}
}
