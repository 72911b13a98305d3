package cloth

import (
	"errors"
	"fmt"
	"math/big"
	"slices"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// Width is what the weaver wants of a cloth's width.
type Width struct {
	// Finished is the width of the finished cloth: above nothing, at most 20 m.
	Finished measure.Length `json:"finished"`
	// Shrinkage is the share of the width that washing and finishing take, 0 to 90 %.
	Shrinkage measure.Percent `json:"shrinkage"`
	// DrawIn is the share of the width in the reed that the weft draws in, 0 to 90 %.
	DrawIn measure.Percent `json:"draw_in"`
	// Fibre is what the warp is of; it bears on the usual range of the shrinkage only.
	Fibre Fibre `json:"fibre"`
	// Sett is the ends in a unit of width in the reed.
	Sett measure.Sett `json:"sett"`
	// RealSett is what the reed really gives in place of Sett, of all layers together; zero where no reed is known, or
	// where it gives just that. The ends are counted at it. No plan keeps it: it follows from the reed.
	RealSett measure.Sett `json:"-"`
	// Doubled is how many working ends at each edge are drawn double, for a firm selvedge: 0 to half the
	// ends.
	Doubled int `json:"doubled,omitempty"`
	// Floating is how many floating selvedges are wound with the warp, over both edges: 0 to 4.
	Floating int `json:"floating,omitempty"`
	// FloatingApart says that they are wound apart instead, and are none of the warp's ends.
	FloatingApart bool `json:"floating_apart,omitzero"`
	// Layers is how many layers are woven over each other, 1 to 4, 0 for one; Join is how they hang together. Sett is
	// that of one layer. The finished width is that of the cloth as it is used: a double width opened, a tube lying
	// flat.
	Layers int  `json:"layers,omitzero"`
	Join   Join `json:"layers_are,omitzero"`
	// Repeat is the ends in a pattern repeat, 0 for no pattern, and Balance the ends that follow the last
	// repeat so that the pattern ends as it began, 0 to Repeat - 1.
	Repeat  int `json:"repeat,omitempty"`
	Balance int `json:"balance,omitempty"`
	// Group is the ends on a pass, 0 while it isn't chosen.
	Group int `json:"group,omitempty"`
	// Units is the family of units in which the result is put.
	Units measure.LengthUnitSystem `json:"units"`
}

// Ends is how many ends a cloth takes.
type Ends struct {
	// OffLoom is the width between draw-in and washing, InReed that in the reed; both rounded up to a
	// nanometre. The ends are counted on the exact width.
	OffLoom, InReed measure.Length
	// Body is the ends that the width takes, rounded up, before doubling; Doubling and Floating are the
	// ends that the selvedges add. Wanted is the sum.
	Body, Doubling, Floating, Wanted int
	// Real is the width in the reed that was chosen, 0 while there is none, and RealFinished the width of the
	// finished cloth that follows from it, rounded to the nearest nanometre.
	Real, RealFinished measure.Length
	// Rows holds each step with its formula.
	Rows []measure.Row
	// Fits lists Wanted and the counts nearest to it that suit the repeat and the group, the nearest
	// first.
	Fits []EndsFit
}

// FloatingIn is how many of the warp's ends are floating selvedges: none where they are wound apart.
func (c Width) FloatingIn() int {
	if c.FloatingApart {
		return 0
	}
	return c.Floating
}

// check reports every field that is out of its range.
func (c Width) check() error {
	errs := []error{field.ShrinkageWidth.CheckShare(c.Shrinkage), field.DrawIn.CheckShare(c.DrawIn),
		field.FinishedWidth.CheckLength(c.Finished)}
	if c.Sett.IsZero() {
		errs = append(errs, field.SettOf.Missing())
	}
	errs = append(errs, c.checkLayers()...)
	return errors.Join(append(errs, field.Doubled.Check(c.Doubled), field.Floating.Check(c.Floating),
		field.Repeat.Check(c.Repeat), field.Balance.CheckFrom(c.Balance, 0, max(c.Repeat-1, 0), ""),
		field.Group.CheckFrom(c.Group, 0, measure.MaxPositions, ""))...)
}

// Ends works out the ends. Washing takes its share of the width off the loom, and drawing in takes its
// share of the width in the reed; so both divide: 20 % and 10 in wanted need 12.5 in (cnch.org,
// p=13821). The error joins one [measure.FieldError] for each field that is out of its range, or says that the
// cloth takes more than [measure.MaxEnds].
func (c Width) Ends() (*Ends, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	offLoom := ratio.Quo(ratio.Of(c.Finished), c.Shrinkage.Left())
	folded := ratio.Quo(offLoom, ratio.Of(c.side()))
	inReed := ratio.Quo(folded, c.DrawIn.Left())
	e := &Ends{Doubling: 2 * c.Doubled, Floating: c.FloatingIn()}
	e.OffLoom, _ = measure.LengthOf(ratio.Up, offLoom)
	e.InReed, _ = measure.LengthOf(ratio.Up, inReed)
	exact := ratio.Mul(inReed, c.counted().PerNanometre())
	e.Body = c.wholeLayers(measure.SmallCount(ratio.Up, exact))
	if e.Body > measure.MaxEnds-e.Doubling-e.Floating {
		return nil, &measure.FieldError{Field: field.FinishedWidth.Name, Value: c.Finished.String(),
			Want: fmt.Sprintf("a width or a sett that takes at most %d ends", measure.MaxEnds)}
	}
	if e.Doubling > e.Body {
		return nil, field.Doubled.CheckFrom(c.Doubled, 0, e.Body/2, " (half of the ends)")
	}
	e.Wanted = e.Body + e.Doubling + e.Floating
	e.Rows = c.rows(e, folded, exact)
	e.Fits = c.fits(e)
	return e, nil
}

// rows shows each step.
func (c Width) rows(e *Ends, folded, exact *big.Rat) []measure.Row {
	w := func(l measure.Length) figure.Number { return l.As(c.Units.Short(), 2) }
	foldedTo, _ := measure.LengthOf(ratio.Up, folded)
	foldedName, settName := "width off the loom", "sett"
	if c.side() > 1 {
		foldedName = "width folded"
	}
	if c.layers() > 1 {
		settName = "sett of all layers"
	}
	shrink := usualShrinkage[c.Fibre]
	rows := []measure.Row{
		{Name: "width off the loom", Value: figure.Cell{w(e.OffLoom)},
			How: measure.How{Formula: "finished width / (1 - shrinkage)",
				WithNumbers: figure.Say("%s / (1 - %s) = %s", w(c.Finished), c.Shrinkage.As(), w(e.OffLoom))},
			Usual: shrink.text(), Warning: shrink.warn("shrinkage in width", c.Shrinkage)}}
	if !c.RealSett.IsZero() {
		settName = "sett that the reed gives"
	}
	rows = append(append(rows, c.layerRows(e, folded)...), []measure.Row{
		{Name: inReed, Value: figure.Cell{w(e.InReed)},
			How: measure.How{Formula: foldedName + " / (1 - draw-in)",
				WithNumbers: figure.Say("%s / (1 - %s) = %s", w(foldedTo), c.DrawIn.As(), w(e.InReed))},
			Usual: usualDrawIn.text(), Warning: usualDrawIn.warn("draw-in", c.DrawIn)},
		{Name: "ends for the width", Value: figure.Cell{figure.Count{N: e.Body}},
			How: measure.How{Formula: "width in the reed x " + settName + ", rounded up to a whole end",
				WithNumbers: figure.Say("%s x %s = %s, so %d", w(e.InReed), c.counted().As(2),
					figure.New(exact, 2, ""),
					e.Body)}},
	}...)
	if !c.RealSett.IsZero() {
		rows = slices.Insert(rows, len(rows)-1, c.RealRow(c.RealSett))
	}
	if e.Doubling > 0 {
		rows = append(rows, measure.Row{Name: "selvedge doubling", Value: figure.Cell{figure.Count{N: e.Doubling}},
			How: measure.How{Formula: "doubled ends x 2 edges",
				WithNumbers: figure.Say("%d x 2 = %d", c.Doubled, e.Doubling)}})
	}
	if e.Floating > 0 {
		rows = append(rows, measure.Row{Name: "floating selvedges", Value: figure.Cell{figure.Count{N: e.Floating}}})
	}
	return append(rows, measure.Row{Name: "ends wanted", Value: figure.Cell{figure.Count{N: e.Wanted}},
		How: measure.How{Formula: "ends for the width + doubling + floating",
			WithNumbers: figure.Say("%d + %d + %d = %d", e.Body, e.Doubling, e.Floating, e.Wanted)}})
}

// RealRow says that the reed gives another sett than the one that is asked for.
func (c Width) RealRow(gives measure.Sett) measure.Row {
	return measure.Row{Name: "sett that the reed gives", Value: figure.Say("%s, where %s is asked for: ends and width "+
		"are counted at it", gives.As(2), c.InReed(c.Sett).As(2))}
}

// counted is the sett at which the ends are counted, that of all layers together: what the reed gives where it is
// known.
func (c Width) counted() measure.Sett {
	if !c.RealSett.IsZero() {
		return c.RealSett
	}
	return c.InReed(c.Sett)
}

// inReed is the name of the row of the width that the warp takes in the reed.
const inReed = "width in the reed"

// Sleyed is the ends once the reed is chosen. The warp is as wide in it as its dents make it; what the cloth
// asked for is then named so, since a reed gives a width by whole dents and its own sett. The finished width of the
// count that is taken follows from what the reed gives.
func (e *Ends) Sleyed(c Width, real measure.Length) *Ends {
	sleyed := *e
	sleyed.Rows = slices.Clone(e.Rows)
	for i, r := range sleyed.Rows {
		if r.Name == inReed {
			sleyed.Rows[i].Name = "width wanted in the reed"
		}
	}
	sleyed.Real = real
	sleyed.RealFinished = c.finished(ratio.Of(real))
	return &sleyed
}
