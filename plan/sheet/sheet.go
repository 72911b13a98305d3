package sheet

import (
	"fmt"
	"slices"
	"strconv"

	"millside/plan/athand"
	"millside/plan/beside"
	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/measure"
	"millside/plan/project"
)

// Sheet is the studio sheet: everything that hangs on the wall, from one source, so that text, Markdown,
// JSON and HTML all show the same figures.
type Sheet struct {
	// Title is the name of the warp.
	Title string `json:"title"`
	// About is the line below the title, in place of the totals; empty for those.
	About figure.Cell `json:"-"`
	// Date is the day on which it was made, such as "25 November 2026"; empty for none.
	Date string `json:"date,omitzero"`
	// Units is the family of units in which the sheet is written.
	Units measure.LengthUnitSystem `json:"units"`
	// Ends, Passes and Chains are the totals that the parts below add up to.
	Ends   int `json:"ends"`
	Passes int `json:"passes"`
	Chains int `json:"chains"`
	// Length is the real length of the warp, Yarn the length of all ends together without extras.
	Length measure.Length `json:"length"`
	Yarn   measure.Length `json:"yarn"`
	// Parts lists the parts in the order in which they are needed.
	Parts []Part `json:"parts"`
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
	PartPainted  PartID = "painted"
	PartYarn     PartID = "yarn"
	PartSelvedge PartID = "selvedges"
	PartRaddle   PartID = "raddle"
	PartSett     PartID = "sett"
	PartBeam     PartID = "beam"
	PartReed     PartID = "reed"
	PartSetts    PartID = "setts"
	PartAssumed  PartID = "assumed"
	PartCautions PartID = "cautions"
	PartWords    PartID = "words"
	PartRecord   PartID = "record" // what happened at the mill: package counter makes it
)

// Part is one part of the sheet: rows, a table, notes, any of which may be empty.
type Part struct {
	ID    PartID        `json:"id"`
	Title string        `json:"title"`
	Rows  []measure.Row `json:"rows,omitempty"`
	Table *Table        `json:"table,omitempty"`
	Notes []string      `json:"notes,omitempty"`
	// Picture draws the part in lines of letters and signs, all as wide as their signs, for where there are no
	// [Drawings]: at most [PictureWidth] of them.
	Picture []string `json:"-"`
}

// PictureWidth is how wide the picture of a part is at most, in signs.
const PictureWidth = 76

// Table is a table; every line has as many cells as there are columns.
type Table struct {
	Columns []string        `json:"columns"`
	Lines   [][]figure.Cell `json:"lines"`
}

// number is the cell of a bare number.
func number(n int) figure.Cell { return figure.Cell{figure.Count{N: n}} }

// word is a cell of words; an empty one is an empty place.
func word(text string) figure.Cell { return figure.Say("%s", text) }

// list is the cell of rising numbers, such as those of passes.
func list(n []int) figure.Cell {
	if len(n) == 1 {
		return number(n[0])
	}
	return figure.Cell{figure.List(n)}
}

// ends is the cell of numbers from first to last.
func ends(first, last int) figure.Cell { return figure.Cell{figure.Range{First: first, Last: last}} }

// sameCells says whether two lines say the same.
func sameCells(a, b []figure.Cell) bool {
	return slices.EqualFunc(a, b, func(x, y figure.Cell) bool { return x.String() == y.String() })
}

// Options says what goes on a sheet beside the project itself.
type Options struct {
	// AllPasses lists every pass and every count tie by itself, in place of a line for those that are
	// alike.
	AllPasses bool
	// Reeds is the reeds at hand, which are compared for the sett.
	Reeds []athand.NamedReed
	// Assumed is what the plan takes because there is only one of it at hand.
	Assumed []athand.Assumed
}

// maker makes the parts of a sheet of what the project knows.
type maker struct {
	*project.Project
	Options
}

// New makes the sheet of a project; what the project doesn't know is left out. The error is a
// [*measure.FieldError] where there is no plan, or where the raddle or the reed holds another number of ends
// than the plan winds.
func New(pr *project.Project, o Options) (*Sheet, error) {
	a := maker{pr, o}
	if pr == nil || a.Plan == nil || len(a.Plan.Chains) == 0 {
		return nil, &measure.FieldError{Field: "plan", Value: "", Want: "a plan that has been worked out"}
	}
	if err := a.check(); err != nil {
		return nil, err
	}
	p := a.Plan
	s := &Sheet{Title: p.Spec.Name, Units: p.Spec.Units, Ends: p.EndsWound(), Passes: p.Passes(), Chains: len(p.Chains),
		Length: p.Path.Length, Yarn: p.WarpYarn()}
	for _, part := range []Part{a.cloth(), a.plan(), a.chains(), a.passes(), a.work(), a.stripes(), a.stripedPasses(),
		a.endColours(), a.ties(),
		{ID: PartPainted, Title: "Painted sections", Rows: beside.Painted(a.Plan)}, a.yarn(), a.selvedges(),
		{ID: PartSett, Title: "Sett of a " + a.Plan.Spec.Loom.Face.String() + " cloth", Rows: a.FacedRows()},
		a.raddle(), a.threading(), a.reed(), a.setts(),
		{ID: PartBeam, Title: "Sectional beam", Rows: a.BeamRows()}, a.assumed(), a.words(), a.cautions()} {
		if part.holdsAnything() {
			s.Parts = append(s.Parts, part)
		}
	}
	s.Drawings = a.drawings()
	return s, nil
}

// check compares what must agree with the plan.
func (a maker) check() error {
	want := a.Plan.EndsWound()
	if a.Raddle != nil {
		n := 0
		for _, s := range a.Raddle.Sections {
			n += s.Ends
		}
		if n != want {
			return &measure.FieldError{Field: "raddle", Value: strconv.Itoa(n),
				Want: fmt.Sprintf("a raddle filled with %d ends", want)}
		}
	}
	if a.Sley != nil && a.Sley.Ends() != want {
		return &measure.FieldError{Field: field.Reed.Name, Value: strconv.Itoa(a.Sley.Ends()),
			Want: fmt.Sprintf("a reed sleyed with %d ends", want)}
	}
	if a.Yarn != nil && a.Yarn.Ends != want {
		return &measure.FieldError{Field: field.YarnOf.Name, Value: strconv.Itoa(a.Yarn.Ends),
			Want: fmt.Sprintf("cones for %d ends", want)}
	}
	return nil
}

func (p Part) holdsAnything() bool {
	return len(p.Rows) > 0 || p.Table != nil || len(p.Notes) > 0
}

// Insert puts a part that was made elsewhere, such as what happened at the mill, before the cautions,
// which come last. A part that holds nothing is left out.
func (s *Sheet) Insert(part Part) {
	if !part.holdsAnything() {
		return
	}
	at := slices.IndexFunc(s.Parts, func(p Part) bool { return p.ID == PartCautions })
	if at < 0 {
		at = len(s.Parts)
	}
	s.Parts = slices.Insert(s.Parts, at, part)
}

// Part finds a part; ok is false where the sheet hasn't got it.
func (s *Sheet) Part(id PartID) (part Part, ok bool) {
	for _, p := range s.Parts {
		if p.ID == id {
			return p, true
		}
	}
	return Part{}, false
}
