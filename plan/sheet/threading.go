package sheet

import (
	"millside/plan/beside"
	"millside/plan/figure"
)

// PartThreading is the threading of the heddles, which a draft or the weaver gave.
const PartThreading PartID = "threading"

// selvedges says where the doubled and the floating selvedges are.
func (a maker) selvedges() Part {
	return Part{ID: PartSelvedge, Title: "Selvedges", Rows: beside.Selvedges(a.Plan)}
}

// threading shows the shaft of each end, what repeats in brackets, and the heddles that each shaft needs.
func (a maker) threading() Part {
	part := Part{ID: PartThreading, Title: "Threading", Rows: a.ThreadingRows()}
	if t, ok := a.Threaded(); ok {
		part.Table = heddleTable(t.Heddles(), a.Plan.Spec.Loom.Heddles)
	}
	return part
}

// heddleTable sets the heddles that each shaft needs against those at hand.
func heddleTable(need, have []int) *Table {
	t := &Table{Columns: []string{"shaft", "heddles needed"}}
	if len(have) > 0 {
		t.Columns = append(t.Columns, "on the loom", "too few")
	}
	for i, n := range need {
		line := []figure.Cell{number(i + 1), number(n)}
		if len(have) > 0 {
			on, missing := 0, figure.Cell(nil)
			if i < len(have) {
				on = have[i]
			}
			if n > on {
				missing = number(n - on)
			}
			line = append(line, number(on), missing)
		}
		t.Lines = append(t.Lines, line)
	}
	return t
}
