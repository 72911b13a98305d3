package form

import (
	"millside/plan/athand"
	"millside/plan/beside"
	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/tui/look"
)

// loomResult is the raddle, the reed and the threading. While the field of the reed is being filled in, what reeds give
// takes the place of what isn't about the reed.
func (m Model) loomResult(w int) []string {
	pr := m.project
	out := m.reedSetts(w)
	choosing := len(out) > 0
	if pr.Plan.Spec.Loom.Sett.IsZero() {
		out = look.Wrap("Give the sett on the page “cloth”, and the raddle and the reed stand here.", w)
	}
	if pr.Raddle != nil && !choosing {
		out = append(out, m.raddleDrawing(w)...)
		out = append(out, m.rows([]measure.Row{pr.Raddle.Row}, w)...)
	}
	if pr.Sley != nil {
		out = append(out, "")
		out = append(out, m.dentDrawing(w)...)
		out = append(out, m.rows(append(unwarned(pr.SettRows()), pr.Sley.Rows...), w)...)
	}
	if choosing {
		return out
	}
	for _, rows := range [][]measure.Row{pr.BeamRows(), beside.Selvedges(pr.Plan), pr.ThreadingRows()} {
		if len(rows) > 0 {
			out = append(append(out, ""), m.rows(rows, w)...)
		}
	}
	return out
}

// unwarned is rows without what has to be said of them: that stands below their field.
func unwarned(rows []measure.Row) []measure.Row {
	for i := range rows {
		rows[i].Warning = ""
	}
	return rows
}

// reedSetts is what the reed of the plan and those at hand give near the sett, while the field of the reed is being
// filled in: there it helps to choose, whether the rest of the plan will do or not.
func (m Model) reedSetts(w int) []string {
	if m.fields[m.at].Field != field.Reed {
		return nil
	}
	spec := m.wanted()
	sett, ends := project.SettOf(spec), 0
	if m.project != nil {
		ends = m.project.SideBySide()
	}
	list := athand.SettsOf(m.AtHand.Reeds, spec.Loom.Reed, sett, ends)
	if len(list) == 0 {
		return nil
	}
	s := m.Styles
	out := look.Painted(look.Wrap("setts near "+sett.As(2).String()+": "+loom.GivenNote, w), s.Dim)
	for _, r := range list {
		out = append(out, s.Strong.Render(look.Fit(r.Title(), w)))
		for _, g := range r.Setts {
			mark, style := "  ", s.Plain
			if g.Nearest && r.Planned {
				mark, style = "▸ ", s.Good
			}
			for _, l := range givenLines(g, m.spec.Units, w-2) {
				out = append(out, mark+style.Render(l))
				mark = "  "
			}
		}
		if len(r.Setts) == 0 {
			out = append(out, "  none near")
		}
	}
	return out
}

// givenLines is a sett in columns; an order that finds no room beside the rest stands below it.
func givenLines(g loom.GivenSett, units measure.LengthUnitSystem, w int) []string {
	cells := g.Cells(units)
	rest := look.Pad(figure.New(g.Gives.Rat(), 2, "").String(), 7) + look.Pad(cells[1].String(), 9)
	if len(cells[2]) > 0 {
		rest += look.Pad(cells[2].String(), 9)
	}
	order := cells[3].String()
	if look.Wide(rest+order) <= w {
		return []string{rest + order}
	}
	return append([]string{look.Fit(rest, w)}, look.Indent(look.Wrap(order, w-2), 2)...)
}
