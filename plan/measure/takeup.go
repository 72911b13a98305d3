package measure

import (
	"math/big"

	"millside/plan/figure"
	"millside/plan/internal/ratio"
)

// GuessTakeUp guesses the take-up of a cotton warp: intersections in an inch x 4 / cotton number of the
// weft, in percent (J. T. Taylor, "Cotton Weaving and Designing", 6th ed. 1909, p. 427). Intersections
// is how often an end passes between the faces in a unit of length: the picks for a plain weave, two
// fifths of them for a 5-end satin. The share is rounded to the nearest ten-thousandth of a percent. The
// error is a [*FieldError]: for the zero sett or yarn, or a guess above 90 %, which is beyond the rule.
func GuessTakeUp(intersections Sett, weft YarnSize) (Percent, How, error) {
	if intersections.IsZero() {
		return 0, How{}, &FieldError{Field: "intersections", Value: "", Want: SettWants}
	}
	if weft.IsZero() {
		return 0, How{}, &FieldError{Field: "weft", Value: "", Want: YarnWants}
	}
	inAnInch := intersections.In(PerInch)
	number := Cotton.number(weft.metresInGram(), 1)
	percent := ratio.Quo(ratio.Mul(inAnInch.Rat(), big.NewRat(4, 1)), number)
	n, ok := ratio.Nearest.Whole(ratio.Mul(percent, ratio.Of(OnePercent)))
	if !ok || Percent(n).Check("") != nil {
		return 0, How{}, &FieldError{Field: "weft", Value: weft.String(),
			Want: "a finer weft or fewer picks: the rule gives over 90 %"}
	}
	return Percent(n), How{"intersections in an inch x 4 / cotton number of the weft, in percent",
		figure.Say("%s x 4 / %s = %s %%",
			figure.New(inAnInch.Rat(), 2, ""), figure.New(number, 2, ""), figure.New(percent, 2, ""))}, nil
}
