package frame

import (
	"errors"
	"fmt"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/measure"
)

// Board is a warping board or a set of warping pegs: the distances from peg to peg, in the order in
// which the warp goes round them, from the near end peg to the far end peg. It has 1 to 200 distances
// of 1 cm to 10 m.
type Board []measure.Length

// maxDistances is the most distances of a board.
const maxDistances = 200

// BoardPath is the way of the warp on a board.
type BoardPath struct {
	// Distances is how many of the board's distances the warp takes, so it goes round one peg more.
	Distances int
	// Length is the real length of the path.
	Length measure.Length
	// Fits says that the board is long enough; if not, Short is what is missing, and the path is the
	// whole board.
	Fits  bool
	Short measure.Length
	// How says how Length was reached.
	How measure.How
}

// Path finds at which peg to turn for a wanted length, above nothing, at most 1,000 m. The length is
// rounded up, never down, to what the pegs give. A board that is too short is no error: Fits says so.
// The error joins one [measure.FieldError] for each distance or length that is out of its range.
func (b Board) Path(wanted measure.Length, units measure.LengthUnitSystem) (BoardPath, error) {
	if err := b.check(wanted); err != nil {
		return BoardPath{}, err
	}
	var p BoardPath
	var parts []figure.Cell
	for _, d := range b {
		p.Distances++
		p.Length += d
		parts = append(parts, figure.Cell{d.As(units.Short(), 1)})
		if p.Length >= wanted {
			p.Fits = true
			break
		}
	}
	p.Short = max(wanted-p.Length, 0)
	const most = 12
	if n := len(parts) - most; n > 0 {
		parts = append(parts[:most], figure.Say("%s more", figure.Counted(n, "distance", "distances")))
	}
	p.How = measure.How{Formula: "the distances from peg to peg, added until they reach the wanted length",
		WithNumbers: figure.Say("%s = %s", figure.Join(parts, " + "), p.Length.As(units.Long(), 2))}
	return p, nil
}

// checkDistances reports every distance that is out of its range.
func (b Board) checkDistances() error {
	if len(b) < 1 || len(b) > maxDistances {
		return measure.Outside("distances on the board", len(b), 1, maxDistances, "")
	}
	var errs []error
	for i, d := range b {
		if d < measure.Centimetre || d > 10*measure.Metre {
			errs = append(errs, &measure.FieldError{Field: fmt.Sprintf("distance %d on the board", i+1),
				Value: d.String(), Want: "1 cm to 10 m"})
		}
	}
	return errors.Join(errs...)
}

func (b Board) check(wanted measure.Length) error {
	errs := []error{b.checkDistances()}
	if wanted <= 0 || wanted > 1000*measure.Metre {
		errs = append(errs, &measure.FieldError{Field: field.Length.Name, Value: wanted.String(),
			Want: "above 0, at most 1000 m"})
	}
	return errors.Join(errs...)
}
