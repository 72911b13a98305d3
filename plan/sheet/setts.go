package sheet

import (
	"millside/plan/athand"
	"millside/plan/figure"
	"millside/plan/loom"
	"millside/plan/measure"
)

// setts lists what the reeds at hand give near the sett of the plan, and its own reed; a sheet that knows of no reed at
// hand has the setts nearby in a line of the reed.
func (a maker) setts() Part {
	part := Part{ID: PartSetts, Title: "Setts that the reeds give"}
	if len(a.Reeds) == 0 {
		return part
	}
	wanted := a.SettInReed()
	list := athand.SettsOf(a.Reeds, a.Plan.Spec.Loom.Reed, wanted, a.SideBySide())
	if len(list) == 0 {
		return part
	}
	part.Rows = []measure.Row{{Name: "sett asked for", Value: figure.Cell{wanted.As(2)}}}
	part.Table = SettsTable(list, a.Plan.Spec.Units)
	part.Notes = []string{SettsNote}
	return part
}

// SettsNote says how the table of setts is to be read.
const SettsNote = "Against it: " + loom.GivenNote + ". The one that comes nearest is what a plan takes."

// SettsTable is what reeds give near a sett, reed by reed.
func SettsTable(list []athand.ReedSetts, units measure.LengthUnitSystem) *Table {
	t := &Table{Columns: append([]string{"reed"}, loom.GivenColumns()...)}
	for _, r := range list {
		name := word(r.Title())
		for _, g := range r.Setts {
			cells := g.Cells(units)
			if g.Nearest {
				cells[len(cells)-1] = cells[len(cells)-1].And(", the nearest")
			}
			t.Lines = append(t.Lines, append([]figure.Cell{name}, cells...))
			name = nil
		}
		if len(r.Setts) == 0 {
			t.Lines = append(t.Lines, []figure.Cell{name, word("none near"), nil, nil, nil})
		}
	}
	return t
}
