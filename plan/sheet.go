package plan

import (
	"fmt"
	"strconv"
)

// Sheet is the studio sheet: everything that hangs on the wall, from one source, so that text, Markdown,
// JSON and HTML all show the same figures.
type Sheet struct {
	// Title is the name of the warp.
	Title string `json:"title"`
	// Ends, Passes and Chains are the totals that the parts below add up to.
	Ends   int `json:"ends"`
	Passes int `json:"passes"`
	Chains int `json:"chains"`
	// Length is the real length of the warp, Yarn the length of all ends together without extras.
	Length Length `json:"length"`
	Yarn   Length `json:"yarn"`
	// Parts lists the parts in the order in which they are needed.
	Parts []SheetPart `json:"parts"`
}

// PartID names a part of the sheet for good.
type PartID string

// The parts of the sheet.
const (
	PartCloth    PartID = "cloth"
	PartPlan     PartID = "plan"
	PartChains   PartID = "chains"
	PartPasses   PartID = "passes"
	PartTies     PartID = "ties"
	PartYarn     PartID = "yarn"
	PartRaddle   PartID = "raddle"
	PartReed     PartID = "reed"
	PartCautions PartID = "cautions"
)

// SheetPart is one part of the sheet: rows, a table, notes, any of which may be empty.
type SheetPart struct {
	ID    PartID      `json:"id"`
	Title string      `json:"title"`
	Rows  []Row       `json:"rows,omitempty"`
	Table *SheetTable `json:"table,omitempty"`
	Notes []string    `json:"notes,omitempty"`
}

// SheetTable is a table of texts; every line has as many cells as there are columns.
type SheetTable struct {
	Columns []string   `json:"columns"`
	Lines   [][]string `json:"lines"`
}

// SheetAsk is what a sheet is made of. Plan is required; what else is nil or zero is left out.
type SheetAsk struct {
	Plan   *Plan
	Ends   *ClothEnds
	Length *WarpLength
	Room   *MillRoom
	Yarn   *YarnUse
	Weft   *WeftYarn
	Raddle *RaddleList
	Reed   Reed
	Sley   *SleyList
	Pace   Pace
}

// NewSheet makes the sheet. The error is a [*FieldError] where there is no plan, or where the raddle or
// the reed holds another number of ends than the plan winds.
func NewSheet(a SheetAsk) (*Sheet, error) {
	if a.Plan == nil || len(a.Plan.Chains) == 0 {
		return nil, &FieldError{Field: "plan", Value: "", Want: "a plan that has been worked out"}
	}
	if err := a.check(); err != nil {
		return nil, err
	}
	p := a.Plan
	s := &Sheet{Title: p.Spec.Name, Ends: p.EndsWound(), Passes: p.Passes(), Chains: len(p.Chains), Length: p.Path.Length, Yarn: p.WarpYarn()}
	for _, part := range []SheetPart{a.cloth(), a.plan(), a.chains(), a.passes(), a.stripes(), a.stripedPasses(), a.endColours(), a.ties(), a.yarn(), a.raddle(), a.reed(), a.cautions()} {
		if len(part.Rows) > 0 || part.Table != nil || len(part.Notes) > 0 {
			s.Parts = append(s.Parts, part)
		}
	}
	return s, nil
}

// check compares what must agree with the plan.
func (a SheetAsk) check() error {
	want := a.Plan.EndsWound()
	if a.Raddle != nil {
		n := 0
		for _, s := range a.Raddle.Sections {
			n += s.Ends
		}
		if n != want {
			return &FieldError{Field: "raddle", Value: strconv.Itoa(n), Want: fmt.Sprintf("a raddle filled with %d ends", want)}
		}
	}
	if a.Sley != nil && a.Sley.ends != want {
		return &FieldError{Field: "reed", Value: strconv.Itoa(a.Sley.ends), Want: fmt.Sprintf("a reed sleyed with %d ends", want)}
	}
	if a.Yarn != nil && a.Yarn.Ends != want {
		return &FieldError{Field: "yarn", Value: strconv.Itoa(a.Yarn.Ends), Want: fmt.Sprintf("cones for %d ends", want)}
	}
	return nil
}

// Part finds a part; ok is false where the sheet hasn't got it.
func (s *Sheet) Part(id PartID) (part SheetPart, ok bool) {
	for _, p := range s.Parts {
		if p.ID == id {
			return p, true
		}
	}
	return SheetPart{}, false
}

// cloth shows how the ends and the length follow from the cloth.
func (a SheetAsk) cloth() SheetPart {
	part := SheetPart{ID: PartCloth, Title: "Cloth"}
	if a.Ends != nil {
		part.Rows = append(part.Rows, a.Ends.Rows...)
	}
	if a.Length != nil {
		part.Rows = append(part.Rows, a.Length.Rows(a.Plan.Spec.Units)...)
	}
	return part
}

// plan shows the warp in a few lines.
func (a SheetAsk) plan() SheetPart {
	p := a.Plan
	n, last := p.Passes(), p.Chains[len(p.Chains)-1]
	lastEnds := last.Passes[len(last.Passes)-1].Ends()
	ends := Row{Name: "ends", Value: strconv.Itoa(p.EndsWound()), How: How{"full passes x group + last pass",
		fmt.Sprintf("%d x %d + %d = %d", n-1, p.Spec.Group, lastEnds, p.EndsWound())}}
	if spares := p.Spares(); spares > 0 {
		ends.Value += fmt.Sprintf(", of which %s", counted(spares, "is a spare end", "are spare ends"))
	}
	span := a.Pace.For(n)
	part := SheetPart{ID: PartPlan, Title: "Warp", Rows: []Row{
		ends,
		{Name: "group", Value: counted(p.Spec.Group, "end", "ends") + " in the paddle"},
		{Name: "passes", Value: fmt.Sprintf("%d, the last carries %d", n, lastEnds), How: How{"ends / group, rounded up to a whole pass",
			fmt.Sprintf("%d / %d = %s, so %d", p.Spec.Ends, p.Spec.Group, decimal(quo(ratOf(p.Spec.Ends), ratOf(p.Spec.Group)), 2), n)}},
		{Name: "length wanted", Value: p.Spec.Length.In(p.Spec.Units.Long(), 2)},
	}}
	if a.Room != nil {
		part.Rows = append(part.Rows, a.Room.Rows...)
	} else {
		part.Rows = append(part.Rows, Row{Name: "length on the mill", Value: p.Path.Length.In(p.Spec.Units.Long(), 2) + ", " + p.Path.Turns() + " turns"})
	}
	part.Rows = append(part.Rows, Row{Name: "return order in the lease", Value: p.Spec.ReturnOrder.String()}, Row{Name: "time", Value: span.String(), How: span.How})
	for _, f := range p.LeaseFaults {
		part.Notes = append(part.Notes, fmt.Sprintf("Chain %d, pass %d: ends %d and %d lie over the same lease peg, since %s.", f.Chain, f.Pass, f.End-1, f.End, f.Why))
	}
	return part
}

// chains lists the chains.
func (a SheetAsk) chains() SheetPart {
	t := &SheetTable{Columns: []string{"chain", "ends", "from", "to", "passes", "stops"}}
	for _, c := range a.Plan.Chains {
		t.Lines = append(t.Lines, []string{strconv.Itoa(c.Number), strconv.Itoa(c.Ends()), strconv.Itoa(c.First), strconv.Itoa(c.Last), strconv.Itoa(len(c.Passes)), c.Finish().String()})
	}
	return SheetPart{ID: PartChains, Title: "Chains", Table: t}
}
