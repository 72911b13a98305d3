package cloth

import (
	"errors"
	"math/big"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// TakeUpOf says of which length the take-up is a share.
type TakeUpOf uint8

// The two bases. A share of the warp divides and gives the longer warp, so it is the safe one; books
// that say "40 yd and 5 % make 42 yd" mean a share of the cloth.
const (
	TakeUpOfWarp  TakeUpOf = iota // warp = cloth / (1 - take-up)
	TakeUpOfCloth                 // warp = cloth x (1 + take-up)
)

// String gives the name that a plan file uses: "of the warp" or "of the cloth".
func (t TakeUpOf) String() string { return measure.OneOf(int(t), field.TakeUpOf.Words...) }

// MarshalText writes the name.
func (t TakeUpOf) MarshalText() ([]byte, error) { return []byte(t.String()), nil }

// UnmarshalText reads the name.
func (t *TakeUpOf) UnmarshalText(b []byte) error {
	i, err := measure.WhichOf(string(b), field.TakeUpOf.Words...)
	*t = TakeUpOf(i)
	return err
}

// Length is what the weaver wants of a warp's length. Lengths are 0 to 1,000 m.
type Length struct {
	// Piece is the finished length of one piece, without its hems and fringes: above nothing.
	Piece measure.Length `json:"piece"`
	// Pieces is how many are woven, 1 to 1,000.
	Pieces int `json:"pieces"`
	// Hem is the finished length that is turned in at each end of each piece.
	Hem measure.Length `json:"hem,omitempty"`
	// Fringe is the unwoven warp at each end of each piece, as it is cut off the loom.
	Fringe measure.Length `json:"fringe,omitempty"`
	// Shrinkage is the share of the length off the loom that washing takes, 0 to 90 %.
	Shrinkage measure.Percent `json:"shrinkage"`
	// Fibre is what the warp is of; it bears on the usual range of the shrinkage only.
	Fibre Fibre `json:"fibre"`
	// TakeUp is what the warp loses by bending round the weft, 0 to 90 %, and TakeUpOf of what.
	TakeUp   measure.Percent `json:"take_up"`
	TakeUpOf TakeUpOf        `json:"take_up_of"`
	// Sample is the warp for a sample, Waste what can't be woven on the loom, Knotting what is used to
	// knot the warp on to an old one.
	Sample   measure.Length `json:"sample,omitempty"`
	Waste    measure.Length `json:"waste"`
	Knotting measure.Length `json:"knotting,omitempty"`
	// Units is the family of units in which the result is put.
	Units measure.LengthUnitSystem `json:"units"`
}

// LengthLine is one part of a warp's length.
type LengthLine struct {
	// Name is what the length is for.
	Name string
	// Amount is the length, rounded up to a nanometre.
	Amount measure.Length
	// How says how it was reached.
	How measure.How
	// Usual is the usual range in words; it may be empty.
	Usual string
	// Warning says that the part lies outside its usual range; it is empty otherwise.
	Warning string
}

// WarpLength is how long a warp has to be. Total is the sum of the lines, to the nanometre, and Woven
// the length of cloth under no tension before washing, hems with it, without the sample.
type WarpLength struct {
	Lines []LengthLine
	Total measure.Length
	Woven measure.Length
}

// check reports every field that is out of its range.
func (c Length) check() error {
	return errors.Join(field.ShrinkageLength.CheckShare(c.Shrinkage), field.TakeUp.CheckShare(c.TakeUp),
		field.FinishedLength.CheckLength(c.Piece), field.Pieces.Check(c.Pieces),
		field.TakeUpOf.CheckWord(int(c.TakeUpOf)),
		field.Hem.CheckLength(c.Hem), field.Fringe.CheckLength(c.Fringe), field.Sample.CheckLength(c.Sample),
		field.LoomWaste.CheckLength(c.Waste), field.Knotting.CheckLength(c.Knotting))
}

// Warp works out the length, each allowance as a line of its own, in the order in which the cloth is
// undone: washing, then weaving, then what is never woven. Shrinkage divides; it doesn't add (cnch.org,
// p=13821). A line that is outside its usual range has a warning and is taken as it is. The error joins
// one [measure.FieldError] for each field that is out of its range.
func (c Length) Warp() (*WarpLength, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	w := &WarpLength{}
	show := func(l measure.Length) figure.Number { return l.As(c.Units.Short(), 2) }
	pieces := c.Piece.Times(c.Pieces)
	w.add(LengthLine{Name: "finished cloth", Amount: pieces,
		How: measure.How{Formula: "finished length x pieces",
			WithNumbers: figure.Say("%s x %d = %s", show(c.Piece), c.Pieces, show(pieces))}})
	hems := c.Hem.Times(2 * c.Pieces)
	w.add(LengthLine{Name: "hems", Amount: hems,
		How: measure.How{Formula: "hem x 2 ends x pieces",
			WithNumbers: figure.Say("%s x 2 x %d = %s", show(c.Hem), c.Pieces, show(hems))}})

	finished := pieces + hems
	shrunk := ratio.Quo(ratio.Of(finished), c.Shrinkage.Left())
	w.Woven, _ = measure.LengthOf(ratio.Up, shrunk)
	usual := usualShrinkage[c.Fibre]
	w.add(LengthLine{Name: "shrinkage", Amount: w.Woven - finished,
		How: measure.How{Formula: "(cloth + hems) / (1 - shrinkage), less (cloth + hems)",
			WithNumbers: figure.Say("%s / (1 - %s) - %s = %s", show(finished), c.Shrinkage.As(), show(finished),
				show(w.Woven-finished))},
		Usual: usual.text(), Warning: usual.warn("shrinkage", c.Shrinkage)})
	w.add(c.takeUp(shrunk, w.Woven))

	fringes := c.Fringe.Times(2 * c.Pieces)
	w.add(LengthLine{Name: "fringes", Amount: fringes,
		How: measure.How{Formula: "fringe x 2 ends x pieces",
			WithNumbers: figure.Say("%s x 2 x %d = %s", show(c.Fringe), c.Pieces, show(fringes))}})
	sample := LengthLine{Name: "sample", Amount: c.Sample, Usual: usualSample.text(c.Units)}
	if c.Sample > 0 { // no sample at all is a choice, not a slip
		sample.Warning = usualSample.warn("a sample", c.Sample, c.Units)
	}
	w.add(sample)
	w.add(LengthLine{Name: "loom waste", Amount: c.Waste, Usual: usualWaste.text(c.Units),
		Warning: usualWaste.warn("loom waste", c.Waste, c.Units)})
	w.add(LengthLine{Name: "knotting on", Amount: c.Knotting})
	return w, nil
}

// takeUp is the line of the take-up. It is reckoned on the exact length and rounded once.
func (c Length) takeUp(exact *big.Rat, woven measure.Length) LengthLine {
	warp := ratio.Quo(exact, c.TakeUp.Left())
	if c.TakeUpOf == TakeUpOfCloth {
		warp = ratio.Mul(exact, ratio.Add(ratio.Of(1), c.TakeUp.Of()))
	}
	total, _ := measure.LengthOf(ratio.Up, warp)
	show := func(l measure.Length) figure.Number { return l.As(c.Units.Short(), 2) }
	cloth, takenUp := show(woven), show(total-woven)
	how := measure.How{Formula: "cloth off the loom / (1 - take-up), less the cloth",
		WithNumbers: figure.Say("%s / (1 - %s) - %s = %s", cloth, c.TakeUp.As(), cloth, takenUp)}
	if c.TakeUpOf == TakeUpOfCloth {
		how = measure.How{Formula: "cloth off the loom x take-up",
			WithNumbers: figure.Say("%s x %s = %s", cloth, c.TakeUp.As(), takenUp)}
	}
	return LengthLine{Name: "take-up", Amount: total - woven, How: how,
		Usual: usualTakeUp.text(), Warning: usualTakeUp.warn("take-up", c.TakeUp)}
}

// add appends a line and adds its length.
func (w *WarpLength) add(l LengthLine) {
	w.Lines = append(w.Lines, l)
	w.Total += l.Amount
}

// Rows shows the lines that have a length or a warning, and the total, in a family of units.
func (w *WarpLength) Rows(units measure.LengthUnitSystem) []measure.Row {
	var rows []measure.Row
	var parts []figure.Cell
	for _, l := range w.Lines {
		if l.Amount == 0 && l.Warning == "" {
			continue
		}
		amount := figure.Cell{l.Amount.As(units.Short(), 2)}
		rows = append(rows, measure.Row{Name: l.Name, Value: amount, How: l.How, Usual: l.Usual, Warning: l.Warning})
		parts = append(parts, amount)
	}
	return append(rows, measure.Row{Name: "warp", Value: figure.Cell{w.Total.As(units.Long(), 2)},
		How: measure.How{Formula: "the sum of the lines",
			WithNumbers: figure.Say("%s = %s", figure.Join(parts, " + "), w.Total.As(units.Short(), 2))}})
}
