package cloth

import (
	"math/big"

	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// WeftColour is a colour of the weft and how many picks of the pattern it has.
type WeftColour struct {
	// Name is what the weaver calls it.
	Name string `json:"name"`
	// Picks is 1 or more.
	Picks int `json:"picks"`
}

// CheckWeftColours reports a name that isn't one, or picks out of their range.
func CheckWeftColours(list []WeftColour) error {
	for _, c := range list {
		if c.Name == "" || !measure.Printable(c.Name) {
			return &measure.FieldError{Field: "weft colour", Value: c.Name, Want: "printable characters"}
		}
		if c.Picks < 1 || c.Picks > measure.MaxEnds {
			return measure.Outside("picks of "+c.Name, c.Picks, 1, measure.MaxEnds, "")
		}
	}
	return nil
}

// ByColour shares the weft out among its colours, as their picks are in the pattern. Each length and mass
// is rounded up, so that together they may come to a little more than the whole.
func (y WeftYarn) ByColour(list []WeftColour, units measure.LengthUnitSystem) []measure.Row {
	all := 0
	for _, c := range list {
		all += c.Picks
	}
	var rows []measure.Row
	for _, c := range list {
		share := big.NewRat(int64(c.Picks), int64(max(all, 1)))
		length, ok := measure.LengthOf(ratio.Up, ratio.Mul(ratio.Of(y.Length), share))
		if !ok {
			continue // a share of a length is no longer than it
		}
		value := figure.Cell{length.As(units.Long(), 1)}
		if mass, ok := ratio.Up.Whole(ratio.Mul(ratio.Of(y.Mass), share)); ok && mass > 0 {
			value = value.And(", %s", measure.Mass(mass).AtLeast(units.Heavy(), 3))
		}
		how := measure.How{Formula: "the weft x its picks / all picks of the pattern",
			WithNumbers: figure.Say("%s x %d / %d = %s",
				y.Length.As(units.Long(), 1), c.Picks, all, length.As(units.Long(), 1))}
		rows = append(rows, measure.Row{Name: "of it, " + c.Name, Value: value, How: how})
	}
	return rows
}
