package project

import (
	"fmt"
	"strings"

	"millside/plan/figure"
	"millside/plan/loom"
	"millside/plan/measure"
)

// longestFolded is the longest threading, written with its repeats in brackets, that stands on a sheet as a whole.
const longestFolded = 400

// ThreadingRows is the shaft of each end, what repeats in brackets, and what is to be done with the heddles at hand
// before threading. It is empty where the threading isn't known.
func (pr *Project) ThreadingRows() []measure.Row {
	l := pr.Plan.Spec.Loom
	t, ok := pr.Threaded()
	if !ok {
		return nil
	}
	var rows []measure.Row
	side := "left"
	if l.FirstEnd == loom.RightSide {
		side = "right"
	}
	if len(l.Threading) > 0 {
		name := "shafts from end 1 on, from the " + side
		if len(t.Begin)+len(t.End) > 0 {
			name = "repeat"
		}
		rows = append(rows, measure.Row{Name: name, Value: figure.Say("%s", l.Threading.String())})
	}
	rows = append(rows, overWarp(t)...)
	if text := t.All().String(); text != l.Threading.String() && len(text) <= longestFolded {
		rows = append(rows, measure.Row{Name: "in all, from the " + side, Value: figure.Say("%s", text)})
	}
	if n := t.NoHeddle(); n > 0 {
		row := measure.Row{Name: "through no heddle", Value: figure.Cell{figure.Counted(n, "end", "ends")}}
		switch {
		case t.Floating == n && !t.EndByEnd():
			row.Value = figure.Say("the %s", figure.Counted(n, "floating selvedge", "floating selvedges"))
		case t.Floating > 0 && !t.EndByEnd():
			row.Value = row.Value.And(", %s among them",
				figure.Counted(t.Floating, "floating selvedge", "floating selvedges"))
		}
		rows = append(rows, row)
	}
	if t.Doubled > 0 {
		rows = append(rows, measure.Row{Name: "two in a heddle",
			Value: figure.Say("the outer %s at each edge: two that are worked as one are counted once",
				figure.Counted(2*t.Doubled, "end", "ends"))})
	}
	return append(rows, HeddleRows(t.Heddles(), l.Heddles)...)
}

// overWarp says how often the repeat stands in the warp, and what is broken off or left over.
func overWarp(t loom.Threaded) []measure.Row {
	times, over := t.Repeats()
	if len(t.Begin)+len(t.End) == 0 && times == 1 && over == 0 {
		return nil
	}
	row := measure.Row{Name: "over the warp"}
	if len(t.Begin) > 0 {
		row.Value = figure.Say("%s, then ", t.Begin.String())
	}
	if len(t.Repeat) > 0 {
		row.Value = row.Value.And("these %s %s", figure.Counted(len(t.Repeat), "end", "ends"),
			figure.Counted(times, "time", "times"))
	}
	if over > 0 {
		row.Value = row.Value.And(" and the first %s once more", figure.Count{N: over})
		if len(t.End) > 0 {
			row.Warning = fmt.Sprintf("the repeat is broken off before the end: %s more or %d fewer make it whole",
				measure.Counted(len(t.Repeat)-over, "end", "ends"), over)
		}
	}
	if len(t.End) > 0 {
		row.Value = row.Value.And(", then %s", t.End.String())
	}
	switch n := t.Lacking(); {
	case n > 0:
		row.Warning = fmt.Sprintf("the beginning and the end are %s longer than the warp",
			measure.Counted(n, "end", "ends"))
	case n < 0:
		row.Warning = fmt.Sprintf("%s between the beginning and the end are in no repeat",
			measure.Counted(-n, "end", "ends"))
	}
	return []measure.Row{row}
}

// HeddleRows says what is to be moved and added before threading, where a loom has so many heddles on each shaft; it is
// empty where that isn't known.
func HeddleRows(need, have []int) []measure.Row {
	if len(have) == 0 {
		return nil
	}
	w, rows := loom.WorkOnHeddles(need, have), []measure.Row(nil)
	if w.Beyond > 0 {
		rows = append(rows, measure.Row{Name: "shafts", Value: figure.Cell{figure.Count{N: len(need)}},
			Warning: fmt.Sprintf("the loom has %d", len(have))})
	}
	if len(w.Moves) > 0 {
		var moves []string
		for _, m := range w.Moves {
			moves = append(moves, m.String())
		}
		rows = append(rows, measure.Row{Name: "heddles to move", Value: figure.Say("%s", strings.Join(moves, ", "))})
	}
	var add []string
	total := 0
	for i, n := range w.Add {
		if n > 0 {
			total += n
			add = append(add, fmt.Sprintf("%d on shaft %d", n, i+1))
		}
	}
	if total > 0 {
		rows = append(rows, measure.Row{Name: "heddles to add", Value: figure.Say("%s: %s", figure.Count{N: total},
			strings.Join(add, ", "))})
	}
	if len(rows) == 0 {
		rows = append(rows, measure.Row{Name: "heddles", Value: figure.Say("there are enough on each shaft")})
	}
	return rows
}
