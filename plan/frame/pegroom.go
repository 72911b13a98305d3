package frame

import (
	"errors"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// PegRoom is how many ends a peg takes.
type PegRoom struct {
	// Ends is rounded down, since what lies half off the peg slips off, and held to MaxEnds.
	Ends int
	How  measure.How
}

// RoomOnPeg reckons how many ends lie on a peg before they pop off: those side by side along it, in so
// many layers. The peg is 1 cm to 1 m long, a thread up to 5 cm thick ([measure.YarnDiameter] gives a guess),
// the layers 1 to 100. It is a guess to be checked at the mill: the weaver may give a limit instead.
// The error joins one [measure.FieldError] for each value that is out of its range, or that leaves no room.
func RoomOnPeg(peg, thread measure.Length, layers int, units measure.LengthUnitSystem) (PegRoom, error) {
	var errs []error
	if peg < measure.Centimetre || peg > measure.Metre {
		errs = append(errs, &measure.FieldError{Field: field.PegLength.Name, Value: peg.String(), Want: "1 cm to 1 m"})
	}
	if thread <= 0 || thread > 5*measure.Centimetre {
		errs = append(errs, &measure.FieldError{Field: "thread", Value: thread.String(), Want: "above 0, at most 5 cm"})
	}
	if layers < 1 || layers > 100 {
		errs = append(errs, field.Layers.CheckFrom(layers, 1, 100, ""))
	}
	if err := errors.Join(errs...); err != nil {
		return PegRoom{}, err
	}
	across := measure.SmallCount(ratio.Down, ratio.Quo(ratio.Of(peg), ratio.Of(thread)))
	if across == 0 {
		return PegRoom{}, &measure.FieldError{Field: "thread", Value: thread.String(),
			Want: "a thread that is thinner than the peg is long"}
	}
	ends := min(across, measure.MaxEnds/layers) * layers
	return PegRoom{Ends: ends, How: measure.How{Formula: "peg length / thickness of the thread, rounded down, x layers",
		WithNumbers: figure.Say("%s / %s x %d = %d",
			peg.As(units.Short(), 2), thread.As(units.Short(), 4), layers, ends)}}, nil
}
