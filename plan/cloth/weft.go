package cloth

import (
	"errors"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// Weft is what a weft estimate goes by.
type Weft struct {
	// Width is the width in the reed, which a pick crosses: above nothing, at most 20 m.
	Width measure.Length `json:"width"`
	// Layers is how many layers are woven over each other, each with its own picks; 0 for one.
	Layers int `json:"layers,omitzero"`
	// Woven is the length of the weaving on the loom: above nothing, at most 1,000 km.
	Woven measure.Length `json:"woven"`
	// Picks is the picks in a unit of length on the loom, in each layer.
	Picks measure.Sett `json:"picks"`
	// TakeUp is what a pick is longer than the width, for its bends and its turn at the edge, 0 to 90 %
	// of the width.
	TakeUp measure.Percent `json:"take_up"`
	// Yarn is the weft's size; the zero value gives no mass.
	Yarn measure.YarnSize `json:"yarn"`
	// Units is the family of units in which the result is put.
	Units measure.LengthUnitSystem `json:"units"`
}

// WeftYarn is an estimate of the weft.
type WeftYarn struct {
	// Picks is rounded up to a whole pick.
	Picks int
	// Length is rounded up to a nanometre, on the exact number of picks.
	Length measure.Length
	// Mass is rounded up to a nanogram; nothing without a yarn.
	Mass measure.Mass
	// How says how Length was reached.
	How measure.How
}

// Estimate works out the weft: width x picks x length, and its take-up. The error joins one
// [measure.FieldError] for each field that is out of its range.
func (w Weft) Estimate() (*WeftYarn, error) {
	errs := []error{field.WeftTakeUp.CheckShare(w.TakeUp)}
	if w.Width <= 0 || w.Width > measure.MaxWidth {
		errs = append(errs, &measure.FieldError{Field: "width in the reed", Value: w.Width.String(),
			Want: "above 0, at most " + measure.MaxWidth.String()})
	}
	if w.Woven <= 0 || w.Woven > 1_000_000*measure.Metre {
		errs = append(errs, &measure.FieldError{Field: "woven length", Value: w.Woven.String(),
			Want: "above 0, at most 1000000 m"})
	}
	if w.Picks.IsZero() {
		errs = append(errs, field.Picks.Missing())
	}
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	picks := ratio.Mul(w.Picks.Count(w.Woven), ratio.Of(max(w.Layers, 1)))
	y := &WeftYarn{Picks: measure.SmallCount(ratio.Up, picks)}
	var ok bool
	if y.Length, ok = measure.LengthOf(ratio.Up,
		ratio.Mul(ratio.Mul(picks, ratio.Of(w.Width)), ratio.Add(ratio.Of(1), w.TakeUp.Of()))); !ok {
		return nil, measure.TooLarge("woven length", w.Woven.String())
	}
	y.How = measure.How{Formula: "picks x width in the reed x (1 + take-up)",
		WithNumbers: figure.Say("%d x %s x (1 + %s) = %s",
			y.Picks, w.Width.As(w.Units.Short(), 2), w.TakeUp.As(), y.Length.As(w.Units.Long(), 1))}
	if w.Yarn.IsZero() {
		return y, nil
	}
	var err error
	y.Mass, err = w.Yarn.MassOf(y.Length)
	return y, err
}
