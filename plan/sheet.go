package plan

import (
	"fmt"
	"slices"
	"strconv"
)

// Sheet is the studio sheet: everything that hangs on the wall, from one source, so that text, Markdown,
// JSON and HTML all show the same figures.
type Sheet struct {
	// Title is the name of the warp.
	Title string `json:"title"`
	// Units is the family of units in which the sheet is written.
	Units LengthUnitSystem `json:"units"`
	// Ends, Passes and Chains are the totals that the parts below add up to.
	Ends   int `json:"ends"`
	Passes int `json:"passes"`
	Chains int `json:"chains"`
	// Length is the real length of the warp, Yarn the length of all ends together without extras.
	Length Length `json:"length"`
	Yarn   Length `json:"yarn"`
	// Parts lists the parts in the order in which they are needed.
	Parts []SheetPart `json:"parts"`
	// Drawings is what can be drawn of it.
	Drawings Drawings `json:"drawings"`
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
	PartRecord   PartID = "record" // what happened at the mill: package counter makes it
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
	Board  *BoardPath
	Pegs   *PegRoom
	Yarn   *YarnUse
	Weft   *WeftYarn
	Raddle *RaddleList
	Reed   Reed
	Order  SleyOrder
	Sley   *SleyList
	Pace   Pace
	// AllPasses lists every pass and every count tie by itself.
	AllPasses bool
	// Reeds is the reeds at hand.
	Reeds []NamedReed
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
	s := &Sheet{Title: p.Spec.Name, Units: p.Spec.Units, Ends: p.EndsWound(), Passes: p.Passes(), Chains: len(p.Chains), Length: p.Path.Length, Yarn: p.WarpYarn()}
	for _, part := range []SheetPart{a.cloth(), a.plan(), a.chains(), a.passes(), a.work(), a.stripes(), a.stripedPasses(), a.endColours(), a.ties(), a.yarn(), a.raddle(), a.reed(), a.cautions()} {
		if part.holdsAnything() {
			s.Parts = append(s.Parts, part)
		}
	}
	s.Drawings = a.drawings()
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

func (p SheetPart) holdsAnything() bool {
	return len(p.Rows) > 0 || p.Table != nil || len(p.Notes) > 0
}

// Insert puts a part that was made elsewhere, such as what happened at the mill, before the cautions,
// which come last. A part that holds nothing is left out.
func (s *Sheet) Insert(part SheetPart) {
	if !part.holdsAnything() {
		return
	}
	at := slices.IndexFunc(s.Parts, func(p SheetPart) bool { return p.ID == PartCautions })
	if at < 0 {
		at = len(s.Parts)
	}
	s.Parts = slices.Insert(s.Parts, at, part)
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
