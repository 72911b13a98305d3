package pairpage

import (
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"millside/plan/figure"
	"millside/plan/measure"
	"millside/plan/pair"
	"millside/plan/sheet"
	"millside/tui/keys"
	"millside/tui/look"
)

// wide is the width from which the answer stands beside the lines and not below them.
const wide = 110

// View draws the page at exactly w by h cells.
func (m Model) View(w, h int) string {
	s := m.Styles
	names := m.warps[pair.Ground].Plan.Spec.Name + " and " + m.warps[pair.Second].Plan.Spec.Name
	head := []string{"", "  " + s.Title.Render("MILLSIDE") +
		s.Dim.Render(look.Fit("   together: "+measure.Clean(names), max(w-12, 0)))}
	foot := append([]string{""}, s.KeyLinesAnd(w, 1, m.ListKey(), m.footKeys()...)...)
	if m.problem != "" {
		foot = append(look.Painted(look.Wrap("! "+m.problem, w-2), s.Alarm), foot...)
	}
	room := max(h-len(head)-len(foot), 1)
	if w >= wide {
		const left = 46
		answer := m.lines.Turned(m.answer(w-left-4), m.scroll, room-1)
		beside := look.Beside(m.lines.View(left, room), append([]string{""}, answer...), left, 2)
		return look.WithFoot(append(head, beside...), foot, w, h)
	}
	const around = 2 // the row above the lines and the one below them
	asked := min(max((room-1)/3, 3), 8) + around
	lines := append(head, m.lines.ViewOver(w, asked)...)
	below := max(room-asked, 1)
	return look.WithFoot(append(lines, look.Indent(m.lines.Turned(m.answer(w-4), m.scroll, below), 2)...), foot, w, h)
}

// footKeys are the keys that work.
func (m Model) footKeys() []key.Binding {
	k := m.Keys
	list := []key.Binding{keys.As(k.Begin, "keep"), k.NextField}
	if len(m.lines.At().Words) > 0 {
		list = append(list, k.Right)
	}
	return append(list, keys.As(k.Back, "home"), keys.As(k.Rest, "more"), keys.As(k.PrevPage, "back"))
}

// parts are those of the sheet, what goes into the raddle and the reed first.
func (m Model) parts() []sheet.Part {
	all := m.joint.Sheet().Parts
	later := func(p sheet.Part) bool { return p.ID != sheet.PartRaddle && p.ID != sheet.PartReed }
	return append(slices.DeleteFunc(slices.Clone(all), later), slices.DeleteFunc(all, func(p sheet.Part) bool {
		return !later(p)
	})...)
}

// ListKey is the key that lists all keys.
func (m Model) ListKey() key.Binding { return m.lines.ListKey() }

// AllKeys are the keys of the page in the words of the page that lists them.
func (m Model) AllKeys() []key.Binding {
	list := append([]key.Binding{keys.As(m.Keys.Begin, "keep both")}, m.lines.AllKeys()...)
	return append(list, keys.As(m.Keys.PrevPage, "the answer back"), keys.As(m.Keys.Back, "home"))
}

// answer says where the ends of both lie, or what is wanted.
func (m Model) answer(w int) []string {
	var out []string
	if m.joint == nil {
		for _, fe := range measure.FieldErrors(m.err) {
			text := fe.Error()
			if fe.Value == "" {
				text = fe.Field + ": give " + fe.Want
			}
			out = append(out, look.Wrap("! "+measure.Clean(text), w)...)
		}
		return look.Painted(out, m.Styles.Alarm)
	}
	out = look.Painted(look.Wrap(m.joint.Summary().String(), w), m.Styles.Strong)
	out = append(out, look.Wrap("order, from the left: "+m.joint.OrderRows()[0].Value.String(), w)...)
	for _, part := range m.parts() {
		out = append(out, "", m.Styles.Dim.Render(look.Fit(part.Title, w)))
		for _, r := range part.Rows {
			out = append(out, look.Wrap(measure.Clean(r.Name+": "+r.Value.String()), w)...)
			if r.Warning != "" {
				out = append(out, look.Painted(look.Wrap("! "+measure.Clean(r.Warning), w), m.Styles.Warn)...)
			}
		}
		out = append(out, m.picture(part.ID, w)...)
		if part.Table != nil {
			out = append(out, table(part.Table, w)...)
		}
	}
	return out
}

// picture draws the raddle or the reed as wide as there is room; nothing for another part.
func (m Model) picture(id sheet.PartID, w int) []string {
	var lines []string
	switch id {
	case sheet.PartRaddle:
		lines = m.joint.RaddlePicture(w)
	case sheet.PartReed:
		lines = m.joint.ReedPicture(w)
	}
	if slices.ContainsFunc(lines, func(line string) bool { return look.Wide(line) > w }) {
		return nil // there is no room for a section or a dent: the list says it
	}
	return look.Painted(lines, m.Styles.Strong)
}

// table draws a table; its last columns are left out where they are too many, and a line is written in words where even
// then it is too wide.
func table(t *sheet.Table, w int) []string {
	widths := make([]int, len(t.Columns))
	for i, name := range t.Columns {
		widths[i] = look.Wide(name)
		for _, line := range t.Lines {
			widths[i] = max(widths[i], look.Wide(line[i].String()))
		}
	}
	columns, sum := 0, -2
	for columns < len(widths) && sum+widths[columns]+2 <= w {
		sum += widths[columns] + 2
		columns++
	}
	if columns < len(widths)-1 {
		return inWords(t, w)
	}
	var out []string
	row := func(texts []string) {
		var b strings.Builder
		for i, text := range texts[:columns] {
			b.WriteString(look.Pad(text, widths[i]) + "  ")
		}
		out = append(out, strings.TrimRight(b.String(), " "))
	}
	row(t.Columns)
	for _, line := range t.Lines {
		row(texts(line))
	}
	return out
}

// inWords writes each line of a table with the names of its columns.
func inWords(t *sheet.Table, w int) []string {
	var out []string
	for _, line := range t.Lines {
		var parts []string
		for i, text := range texts(line) {
			if text != "" {
				parts = append(parts, t.Columns[i]+" "+text)
			}
		}
		out = append(out, look.Wrap(measure.Clean(strings.Join(parts, ", ")), w)...)
	}
	return out
}

func texts(line []figure.Cell) []string {
	out := make([]string, len(line))
	for i, c := range line {
		out[i] = measure.Clean(c.String())
	}
	return out
}
