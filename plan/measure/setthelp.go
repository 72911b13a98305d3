package measure

import (
	"errors"
	"math/big"

	"millside/plan/figure"
	"millside/plan/internal/ratio"
)

// DiameterFactor turns a yarn's length in a pound into the threads that lie side by side in an inch:
// factor x square root of the yards in a pound.
type DiameterFactor struct {
	// Hundredths is the factor in hundredths, 1 to 200.
	Hundredths int
	// For says what it is meant for, Source where it is printed.
	For, Source string
}

// DiameterFactors lists the published factors, which differ. T. R. Ashenhurst gave the rule; the
// sources are those of the figures.
func DiameterFactors() []DiameterFactor {
	return []DiameterFactor{
		{90, "most yarns", "Ashenhurst's rule as given at faena.medievaltextiles.org, 1999"},
		{95, "cotton", "J. T. Taylor, Cotton Weaving and Designing, 6th ed. 1909"},
		{84, "soft woollen", "Ashenhurst's rule as given at faena.medievaltextiles.org, 1999"},
	}
}

// Weave is a weave as far as it bears on the sett.
type Weave struct {
	Name string
	// Ends is the ends in the repeat, Intersections how often one pick passes between the faces over
	// them. Both are 1 to 1,000.
	Ends, Intersections int
}

// Weaves lists common weaves.
func Weaves() []Weave {
	return []Weave{{"plain", 2, 2}, {"2/1 twill", 3, 2}, {"2/2 twill", 4, 2}, {"3/1 twill", 4, 2},
		{"5-end satin", 5, 2}, {"8-end satin", 8, 2}}
}

// SettHelp is a starting point for a sample. It is never an answer: only a sample shows how a yarn and a
// weave behave.
type SettHelp struct {
	// Diameters is the threads that lie side by side in an inch.
	Diameters Sett
	// Greatest is the closest sett that the weave allows, Start about three quarters of it.
	Greatest, Start Sett
	// Rows shows each step.
	Rows []Row
	// Note is what must be said beside the figures.
	Note string
}

// HelpSett works out a starting point from the yarn, the weave and a factor by Ashenhurst's rule. The
// diameters are cut off, not rounded, to hundredths; the setts follow from them exactly. A working sett
// of three quarters is from the web page that [DiameterFactors] names. The error joins one
// [FieldError] for each field that is out of its range.
func HelpSett(yarn YarnSize, weave Weave, factor DiameterFactor, units LengthUnitSystem) (*SettHelp, error) {
	var errs []error
	if weave.Ends < 1 || weave.Ends > 1000 {
		errs = append(errs, Outside("ends in the weave", weave.Ends, 1, 1000, ""))
	}
	if weave.Intersections < 1 || weave.Intersections > 1000 {
		errs = append(errs, Outside("intersections in the weave", weave.Intersections, 1, 1000, ""))
	}
	if len(errs) > 0 {
		return nil, errors.Join(append([]error{checkHelp(yarn, factor)}, errs...)...)
	}
	return HelpClosest(yarn, factor, units, func(across *big.Rat) (*big.Rat, Row) {
		n, m := int64(weave.Ends), int64(weave.Intersections)
		greatest := ratio.Mul(across, big.NewRat(n, n+m))
		show := func(r *big.Rat) figure.Number { return RawSett(r, PerInch).In(units.SettUnit()).As(2) }
		return greatest, Row{Name: "closest sett, " + weave.Name,
			How: How{"threads side by side x ends / (ends + intersections)",
				figure.Say("%s x %d / (%d + %d) = %s", show(across), n, n, m, show(greatest))}}
	})
}

// HelpClosest is [HelpSett] where something else than a weave says how close ends may lie: closest gives the closest
// sett in ends an inch, from the threads that lie side by side in an inch, and how it follows; its value is filled in.
func HelpClosest(yarn YarnSize, factor DiameterFactor, units LengthUnitSystem,
	closest func(sideBySide *big.Rat) (*big.Rat, Row)) (*SettHelp, error) {
	if err := checkHelp(yarn, factor); err != nil {
		return nil, err
	}
	across := diameters(yarn, factor)
	if across.Sign() == 0 {
		return nil, errTooThick(yarn)
	}
	greatest, row := closest(across)
	h := &SettHelp{Note: "a starting point for a sample, not an answer"}
	var err error
	for _, s := range []struct {
		to   *Sett
		ends *big.Rat
	}{{&h.Diameters, across}, {&h.Greatest, greatest}, {&h.Start, ratio.Mul(greatest, big.NewRat(3, 4))}} {
		if *s.to, err = SettOf(s.ends, PerInch); err != nil {
			return nil, errTooThick(yarn)
		}
		*s.to = s.to.In(units.SettUnit())
	}
	row.Value = figure.Cell{h.Greatest.As(1)}
	h.Rows = h.rows(yarn, row, factor)
	return h, nil
}

// checkHelp reports a yarn or a factor that won't do.
func checkHelp(yarn YarnSize, factor DiameterFactor) error {
	var errs []error
	if yarn.IsZero() {
		errs = append(errs, errNoYarn())
	}
	if factor.Hundredths < 1 || factor.Hundredths > 200 {
		errs = append(errs, Outside("factor in hundredths", factor.Hundredths, 1, 200, ""))
	}
	return errors.Join(errs...)
}

// errTooThick says that the threads are too thick or too thin to count them in an inch.
func errTooThick(yarn YarnSize) error {
	return &FieldError{Field: "yarn", Value: yarn.String(),
		Want: "a yarn that gives a sett of one in ten inches to 1000 an inch"}
}

// diameters is the threads side by side in an inch, cut off to hundredths.
func diameters(yarn YarnSize, factor DiameterFactor) *big.Rat {
	yards := YardsPerPound.number(yarn.metresInGram(), 1)
	// The hundredths are factor x root(yards) x 100 = root(hundredths^2 x yards).
	square := ratio.Mul(ratio.Of(factor.Hundredths*factor.Hundredths), yards)
	root := new(big.Int).Sqrt(new(big.Int).Div(square.Num(), square.Denom()))
	return new(big.Rat).SetFrac(root, big.NewInt(100))
}

// rows is the steps: the threads side by side, the closest sett, the start.
func (h *SettHelp) rows(yarn YarnSize, closest Row, factor DiameterFactor) []Row {
	f := figure.New(big.NewRat(int64(factor.Hundredths), 100), 2, "")
	return []Row{
		{Name: "threads side by side", Value: figure.Cell{h.Diameters.As(1)}, Usual: factor.For + ": " + factor.Source,
			How: How{"factor x square root of the yards in a pound",
				figure.Say("%s x root of %s = %s", f, yarn.NumberIn(YardsPerPound, 0),
					h.Diameters.In(PerInch).As(2))}},
		closest,
		{Name: "start a sample at", Value: figure.Cell{h.Start.As(1)}, Usual: h.Note,
			How: How{"closest sett x 3 / 4", figure.Say("%s x 3 / 4 = %s", h.Greatest.As(2), h.Start.As(2))}},
	}
}

// YarnDiameter is the space that a thread takes by the same rule, rounded up to a nanometre. The error
// is a [*FieldError]: for the zero yarn or a factor outside 1 to 200 hundredths.
func YarnDiameter(yarn YarnSize, factor DiameterFactor) (Length, error) {
	if yarn.IsZero() {
		return 0, errNoYarn()
	}
	if factor.Hundredths < 1 || factor.Hundredths > 200 {
		return 0, Outside("factor in hundredths", factor.Hundredths, 1, 200, "")
	}
	across := diameters(yarn, factor)
	if across.Sign() == 0 {
		return 0, &FieldError{Field: "yarn", Value: yarn.String(), Want: "a yarn under an inch thick"}
	}
	l, _ := LengthOf(ratio.Up, ratio.Quo(ratio.Of(Inch), across))
	return l, nil
}
