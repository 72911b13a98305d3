package cloth

import (
	"fmt"
	"math/big"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// Join is how the layers of a cloth hang together.
type Join uint8

// The ways in which layers hang together.
const (
	Separate    Join = iota // cloths of their own, one over the other
	DoubleWidth             // folded: joined at an edge, opened when it is off the loom
	Tube                    // joined at both edges
)

// String gives the name that a plan file uses.
func (j Join) String() string { return measure.OneOf(int(j), field.LayersAre.Words...) }

// MarshalText writes the name.
func (j Join) MarshalText() ([]byte, error) { return []byte(j.String()), nil }

// UnmarshalText reads the name.
func (j *Join) UnmarshalText(b []byte) error {
	i, err := measure.WhichOf(string(b), field.LayersAre.Words...)
	*j = Join(i)
	return err
}

// layers is how many layers the cloth has on the loom, 1 or more.
func (c Width) layers() int { return max(c.Layers, 1) }

// Side is how many of the layers lie side by side once the cloth is off the loom and opened: all of a double width,
// else one.
func (c Width) side() int {
	if c.Join == DoubleWidth {
		return c.layers()
	}
	return 1
}

// InReed is the sett of all layers together, from the sett of one.
func (c Width) InReed(sett measure.Sett) measure.Sett {
	if c.layers() == 1 || sett.IsZero() {
		return sett
	}
	return measure.RawSett(ratio.Mul(sett.Rat(), ratio.Of(c.layers())), sett.Unit())
}

// checkLayers reports layers that can't be joined so, or whose sett is out of its range.
func (c Width) checkLayers() []error {
	errs := []error{field.ClothLayers.Check(c.Layers), field.LayersAre.CheckWord(int(c.Join))}
	if c.Join == Tube && c.layers() != 2 {
		errs = append(errs, field.ClothLayers.Wrong(fmt.Sprint(c.Layers), "2 layers for a tube"))
	}
	if c.Join == DoubleWidth && c.layers() == 1 {
		errs = append(errs, field.ClothLayers.Wrong(fmt.Sprint(c.Layers), "2 to 4 layers for a double width"))
	}
	if field.ClothLayers.Check(c.Layers) == nil && !c.Sett.IsZero() {
		if _, err := measure.SettOf(ratio.Mul(c.Sett.Rat(), ratio.Of(c.layers())), c.Sett.Unit()); err != nil {
			errs = append(errs, err)
		}
	}
	return errs
}

// layerRows says what the layers come to.
func (c Width) layerRows(e *Ends, folded *big.Rat) []measure.Row {
	if c.layers() == 1 {
		return nil
	}
	how := "woven as cloths of their own, one over the other"
	switch c.Join {
	case DoubleWidth:
		how = fmt.Sprintf("joined at %s, and opened off the loom",
			measure.Counted(c.layers()-1, "fold", "folds in turn"))
	case Tube:
		how = "joined at both edges; plain weave goes on round it if one end is left out at an edge"
	}
	rows := []measure.Row{{Name: "layers", Value: figure.Say("%d, %s", c.layers(), how)}}
	if c.side() > 1 {
		l, _ := measure.LengthOf(ratio.Up, folded)
		show := func(l measure.Length) figure.Number { return l.As(c.Units.Short(), 2) }
		rows = append(rows, measure.Row{Name: "width folded", Value: figure.Cell{show(l)},
			How: measure.How{Formula: "width off the loom / layers",
				WithNumbers: figure.Say("%s / %d = %s", show(e.OffLoom), c.layers(), show(l))}})
	}
	in := c.InReed(c.Sett)
	return append(rows, measure.Row{Name: "sett of all layers", Value: figure.Cell{in.As(2)},
		How: measure.How{Formula: "sett of a layer x layers",
			WithNumbers: figure.Say("%s x %d = %s", c.Sett.As(2), c.layers(), in.As(2))}})
}

// wholeLayers rounds ends up to as many in each layer.
func (c Width) wholeLayers(ends int) int { return (ends + c.layers() - 1) / c.layers() * c.layers() }

// finished is the width of the finished cloth from its width in the reed.
func (c Width) finished(inReed *big.Rat) measure.Length {
	width := ratio.Mul(ratio.Mul(ratio.Mul(inReed, c.DrawIn.Left()), c.Shrinkage.Left()), ratio.Of(c.side()))
	l, _ := measure.LengthOf(ratio.Nearest, width)
	return l
}

// FinishedFormula says how the finished width follows from one in the reed.
func (c Width) FinishedFormula() string {
	if c.side() > 1 {
		return "x (1 - draw-in) x (1 - shrinkage) x layers"
	}
	return "x (1 - draw-in) x (1 - shrinkage)"
}

// FinishedNumbers is that with the numbers put in, behind the width in the reed.
func (c Width) FinishedNumbers() figure.Cell {
	text := figure.Say("x (1 - %s) x (1 - %s)", c.DrawIn.As(), c.Shrinkage.As())
	if c.side() > 1 {
		text = text.And(" x %d", c.layers())
	}
	return text
}
