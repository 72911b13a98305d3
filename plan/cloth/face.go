package cloth

import (
	"math/big"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// Face is which of the yarns shows in a cloth.
type Face uint8

// The structures by what shows.
const (
	Balanced  Face = iota // warp and weft alike
	WarpFaced             // the ends lie so close that they cover the weft
	WeftFaced             // the ends lie so far apart that the weft is beaten down over them
)

// String gives the name.
func (f Face) String() string { return measure.OneOf(int(f), field.Face.Words...) }

// MarshalText writes the name.
func (f Face) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// UnmarshalText reads the name.
func (f *Face) UnmarshalText(b []byte) error {
	i, err := measure.WhichOf(string(b), field.Face.Words...)
	*f = Face(i)
	return err
}

// facedSource is said beside what no book is named for.
const facedSource = "common practice, no source"

// Sett works out a starting point from the yarns and from what shows, by the thickness of the threads as
// [measure.HelpSett] has it; a balanced cloth is that of plain weave. In a warp-faced cloth the ends lie side by side;
// in a weft-faced one two threads of the weft find room between two ends, so that it can be beaten down over them (both
// common practice, no source). A weft that is the zero value is like the warp. The error is that of [measure.HelpSett].
func (f Face) Sett(yarn, weft measure.YarnSize, factor measure.DiameterFactor,
	units measure.LengthUnitSystem) (*measure.SettHelp, error) {
	closest := measure.Row{Name: "closest sett, " + f.String(), Usual: facedSource}
	switch f {
	case WarpFaced:
		closest.How = measure.How{Formula: "the threads that lie side by side",
			WithNumbers: figure.Say("so that the weft doesn't show")}
		return measure.HelpClosest(yarn, factor, units, func(across *big.Rat) (*big.Rat, measure.Row) {
			return across, closest
		})
	case WeftFaced:
		if weft.IsZero() {
			weft = yarn
		}
		over, err := measure.YarnDiameter(weft, factor)
		if err != nil {
			return nil, err
		}
		return measure.HelpClosest(yarn, factor, units, func(across *big.Rat) (*big.Rat, measure.Row) {
			thick := ratio.Quo(ratio.Of(measure.Inch), across) // an end, in nanometres
			takes := ratio.Add(thick, ratio.Of(2*over))
			end, _ := measure.LengthOf(ratio.Nearest, thick)
			all, _ := measure.LengthOf(ratio.Nearest, takes)
			show := func(l measure.Length) figure.Number { return l.As(units.Short(), 3) }
			closest.How = measure.How{Formula: "1 / (thickness of an end + 2 x thickness of the weft)",
				WithNumbers: figure.Say("1 / (%s + 2 x %s) = 1 / %s", show(end), show(over), show(all))}
			return ratio.Quo(ratio.Of(measure.Inch), takes), closest
		})
	default:
		return measure.HelpSett(yarn, measure.Weaves()[0], factor, units)
	}
}

// Suits says what is wrong with a sett for what shows in the cloth, beside the one to begin with; nothing where it will
// do. Beyond the closest weft-faced sett the weft can't cover the ends, and a warp-faced one that is no closer than the
// closest balanced plain weave shows the weft. (The project's own judgement: nearer bounds only a sample gives.)
func (f Face) Suits(sett measure.Sett, h *measure.SettHelp) figure.Cell {
	at := sett.PerNanometre()
	switch {
	case f == WeftFaced && at.Cmp(h.Greatest.PerNanometre()) > 0:
		return figure.Say("%s is too close for a weft-faced cloth: the weft can't cover the ends beyond %s",
			sett.As(2), h.Greatest.As(1))
	case f == WarpFaced && at.Cmp(ratio.Mul(h.Greatest.PerNanometre(), big.NewRat(1, 2))) <= 0:
		return figure.Say("%s is too open for a warp-faced cloth: the weft shows; start at %s", sett.As(2),
			h.Start.As(1))
	}
	return nil
}
