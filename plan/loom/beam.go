package loom

import (
	"fmt"
	"math/big"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// Beam is a warp on a sectional beam: wound section by section, each with the ends that lie in its width in the reed.
type Beam struct {
	// Ends is the ends in each section from end 1 on: as many in all as the warp has. The last may hold fewer than the
	// others.
	Ends []int
	// Full is how many of the sections are filled, and Left the ends in one more that isn't, 0 for none.
	Full, Left int
	// Rows shows it with its formulas.
	Rows []measure.Row
}

// FillBeam parts the ends that lie side by side at a sett into sections of a width. Where a section doesn't take a
// whole number of ends, it takes one more or less in turn, so that the sections together are as wide as the warp. 440
// ends at 20 an inch fill 11 sections of 2 in, 40 in each (a weaver's web log, cuponthebus, "Arithmetic", 2018: 22 in
// at 20 ends an inch, 11 sections of 40 spools). The error is a [*measure.FieldError]: for ends that no warp has, no
// sett, or a section that takes no end.
func FillBeam(ends int, sett measure.Sett, section measure.Length, units measure.LengthUnitSystem) (*Beam, error) {
	if err := field.Ends.Check(ends); err != nil {
		return nil, err
	}
	if sett.IsZero() {
		return nil, field.SettOf.Missing()
	}
	share := sett.Count(section)
	if share.Cmp(ratio.Of(1)) < 0 {
		return nil, field.BeamSection.Wrong(section.String(), "a section that takes an end at least: at "+
			sett.As(2).String()+" that is "+sett.WidthOf(1).As(units.Short(), 2).String())
	}
	b := &Beam{}
	for laid := 0; laid < ends; {
		upTo := measure.SmallCount(ratio.Down, ratio.Mul(share, ratio.Of(len(b.Ends)+1)))
		if upTo > ends {
			b.Left = ends - laid
			upTo = ends
		} else {
			b.Full++
		}
		b.Ends = append(b.Ends, upTo-laid)
		laid = upTo
	}
	b.Rows = b.rows(ends, sett, section, share, units)
	return b, nil
}

func (b *Beam) rows(ends int, sett measure.Sett, section measure.Length, share *big.Rat,
	units measure.LengthUnitSystem) []measure.Row {
	per := figure.New(share, 2, "")
	show := func(l measure.Length) figure.Number { return l.As(units.Short(), 2) }
	in := measure.Row{Name: "ends in a section", Value: figure.Cell{figure.Count{N: b.Ends[0]}},
		How: measure.How{Formula: "sett x width of a section",
			WithNumbers: figure.Say("%s x %s = %s", sett.As(2), show(section), per)}}
	if !share.IsInt() {
		low := measure.SmallCount(ratio.Down, share)
		in.Value = figure.Say("%d and %d in turn, %s on average", low, low+1, per)
		in.How.Formula += ", so that whole ends of all sections together give the width"
	}
	filled := measure.Row{Name: "sections filled", Value: figure.Cell{figure.Count{N: b.Full}},
		How: measure.How{Formula: "ends / ends in a section",
			WithNumbers: figure.Say("%d / %s = %s", ends, per,
				figure.New(ratio.Quo(ratio.Of(ends), share), 2, ""))}}
	rows := []measure.Row{in, filled}
	if b.Left > 0 {
		more := measure.SmallCount(ratio.Down, ratio.Mul(share, ratio.Of(b.Full+1))) - ends
		rows = append(rows, measure.Row{Name: "left for one more",
			Value: figure.Say("%s, %s wide", figure.Counted(b.Left, "end", "ends"), show(sett.WidthOf(b.Left))),
			Warning: fmt.Sprintf("that section isn't filled: %s more or %d fewer fill them all",
				measure.Counted(more, "end", "ends"), b.Left)})
	}
	return append(rows, measure.Row{Name: "sections in all", Value: figure.Say("%d, %s wide", len(b.Ends),
		show(measure.Length(len(b.Ends))*section)), How: measure.How{Formula: "sections x width of a section",
		WithNumbers: figure.Say("%d x %s", len(b.Ends), show(section))}})
}
