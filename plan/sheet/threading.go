package sheet

import (
	"millside/plan/figure"
	"millside/plan/loom"
	"millside/plan/measure"
)

// PartThreading is the threading of the heddles, which a draft or the weaver gave.
const PartThreading PartID = "threading"

// threading shows the shaft of each end, what repeats in brackets, and the heddles that each shaft needs.
func (a maker) threading() Part {
	l, ends := a.Plan.Spec.Loom, a.Plan.EndsWound()
	part := Part{ID: PartThreading, Title: "Threading"}
	if len(l.Threading) == 0 {
		return part
	}
	side := "left"
	if l.FirstEnd == loom.RightSide {
		side = "right"
	}
	part.Rows = append(part.Rows, measure.Row{Name: "shafts from end 1 on, from the " + side,
		Value: word(l.Threading.String())})
	if times, over := ends/len(l.Threading), ends%len(l.Threading); times != 1 || over > 0 {
		value := figure.Say("these %s %s",
			figure.Counted(len(l.Threading), "end", "ends"), figure.Counted(times, "time", "times"))
		if over > 0 {
			value = value.And(" and the first %s once more", number(over))
		}
		part.Rows = append(part.Rows, measure.Row{Name: "over the warp", Value: value})
	}
	if n := l.Threading.Unthreaded(ends); n > 0 {
		part.Rows = append(part.Rows, measure.Row{Name: "through no heddle",
			Value: figure.Cell{figure.Counted(n, "end", "ends")}})
	}
	part.Table = heddleTable(l.Threading.Heddles(ends), l.Heddles)
	return part
}

// heddleTable sets the heddles that each shaft needs against those at hand.
func heddleTable(need, have []int) *Table {
	t := &Table{Columns: []string{"shaft", "heddles needed"}}
	if len(have) > 0 {
		t.Columns = append(t.Columns, "on the loom", "to be added before threading")
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
