package beside

import (
	"fmt"
	"strings"

	"millside/plan"
	"millside/plan/figure"
	"millside/plan/frame"
	"millside/plan/measure"
)

// Border is a border between two sections of a painted warp, and where it is.
type Border struct {
	frame.Border
	// Where says where it is on the mill or on the board, from the near end peg: "0.5 turns, peg 2".
	Where string
}

// Borders lists the borders of a painted warp, from the lease on; it is empty for another warp.
func Borders(p *plan.Plan) []Border {
	var list []Border
	for _, b := range p.Spec.Painted.Borders(p.Path.Length) {
		where := p.Spec.Board.Where(b.At, p.Spec.Units)
		if p.Path.OnMill() {
			where = p.Spec.Mill.Where(p.Path, b.At, p.Spec.Units)
		}
		list = append(list, Border{b, where})
	}
	return list
}

// length shows a place on the warp: a section may be measured in inches, so that a tenth of an inch is seen.
func length(p *plan.Plan, l measure.Length) figure.Number {
	if l < 2*measure.Yard {
		return l.As(p.Spec.Units.Short(), 1)
	}
	return l.As(p.Spec.Units.Long(), 2)
}

// BorderTies says where the ties at the borders go: "36 in (0.5 turns, peg 2), 54 in (0.75 turns, peg 3)".
func BorderTies(p *plan.Plan) string {
	var list []string
	for _, b := range Borders(p) {
		list = append(list, fmt.Sprintf("%s (%s)", length(p, b.At), b.Where))
	}
	return strings.Join(list, ", ")
}

// Painted lists the sections of a painted warp: its name, length, and the border where it ends.
func Painted(p *plan.Plan) []measure.Row {
	var rows []measure.Row
	borders, from := Borders(p), measure.Length(0)
	for i, s := range p.Spec.Painted {
		name := fmt.Sprintf("section %d", i+1)
		if s.Name != "" {
			name += ", " + s.Name
		}
		row := measure.Row{Name: name, Value: figure.Say("%s, from %s to %s", length(p, s.Length), length(p, from),
			length(p, from+s.Length))}
		if i < len(borders) {
			row.Value = row.Value.And("; a tie there: %s", borders[i].Where)
		} else {
			row.Value = row.Value.And("; the end of the warp")
		}
		rows = append(rows, row)
		from += s.Length
	}
	if len(rows) > 0 && from < p.Path.Length {
		rows = append(rows, measure.Row{Name: "the rest", Value: figure.Say("%s, up to the far end peg",
			length(p, p.Path.Length-from))})
	}
	return rows
}
