package form

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"millside/plan/entry"
	"millside/plan/field"
	"millside/tui/look"

	"github.com/charmbracelet/bubbles/key"
)

// wideForm is the width from which the result stands beside the fields and not below them.
const wideForm = 76

// View draws the form at exactly w by h cells.
func (m Model) View(w, h int) string {
	head := []string{m.sectionBar(w)}
	if what := m.whatFor(w); what != "" {
		head = append(head, what)
	}
	foot := m.formFoot(w)
	room := max(h-len(foot)-len(head), 1)
	if m.section() == secStripes {
		most := room / 2
		if te, _ := m.mistake(); te != nil {
			most = room - 4 // there is nothing to show of what the text comes to
		}
		box := m.stripesField(w, max(most, 4))
		if room > 18 {
			box = append(box, "")
		}
		head, room = append(head, box...), max(room-len(box), 1)
	}
	if w >= wideForm {
		left := min(46, w/2+3)
		lines, of := m.fieldLines(left)
		fields := m.Styles.Scrolled(lines, of, m.at, room)
		result := append([]string{""}, m.turned(m.resultLines(w-left-3, room-1), room-1)...)
		return look.WithFoot(append(head, look.Beside(fields, result, left, 2)...), foot, w, h)
	}
	below := min(max((room-2)/2, 4), 8)
	if m.section() == secStripes && m.inBox() {
		below = max(room-3, 1) // what the text comes to, rather than fields that aren't being filled in
	}
	fields, of := m.fieldLines(w - 2)
	lines := append(head, m.Styles.ScrolledOver(fields, of, m.at, w, room-below)...)
	return look.WithFoot(append(lines, look.Indent(m.turned(m.resultLines(w-4, below), below), 2)...), foot, w, h)
}

// turned is the window of the result that has been turned to: its last line says where there is more.
func (m Model) turned(lines []string, room int) []string {
	if len(lines) <= room || room < 3 {
		return lines
	}
	page := room - 1
	pages := (len(lines) + page - 1) / page
	at := m.scroll % pages
	out := append([]string{}, lines[at*page:min((at+1)*page, len(lines))]...)
	for len(out) < page {
		out = append(out, "")
	}
	return append(out, m.Styles.Dim.Render(fmt.Sprintf("part %d of %d: %s turns over", at+1, pages,
		m.Keys.Rest.Help().Key)))
}

// sectionBar names the sections, the one that is shown marked, and with a "!" those in which something
// is wrong.
func (m Model) sectionBar(w int) string {
	s := m.Styles
	wrong := map[section]bool{}
	for _, f := range m.fields {
		if m.problems[f.Name] != "" {
			wrong[f.section] = true
		}
	}
	var parts []string
	for i, part := range field.Parts() {
		name := part.String()
		if wrong[section(i)] {
			name += "!"
		}
		if section(i) == m.section() {
			parts = append(parts, s.OutBand.Render("▸"+name+" "))
			continue
		}
		parts = append(parts, s.Dim.Render(name))
	}
	gap := "  "
	if w < wideForm {
		gap = " "
	}
	return look.Fit(" "+strings.Join(parts, gap), w)
}

func (m Model) formFoot(w int) []string {
	s, k, f := m.Styles, m.Keys, m.fields[m.at]
	var out []string
	if m.failed != "" {
		out = append(out, look.Painted(look.Wrap("! "+m.failed, w-2), s.Alarm)...)
	}
	line := append(k.FormKeys(), k.Back)
	switch {
	case m.section() == secStripes:
		line = m.stripesKeys(w)
	case m.section() == field.Warp: // what isn't known of a warp yet can be found from what is
		line = []key.Binding{k.Begin, k.NextPage, k.Back, k.FormKnown, k.NextField, k.How, k.Rest, k.Choice}
		if len(f.options) > 0 && w >= wideForm {
			line = slices.Insert(line, 3, k.Right)
		}
	case w < wideForm:
		line = []key.Binding{k.Begin, k.NextField, k.NextPage, k.Back, k.How, k.Choice}
	case len(f.options) > 0:
		line = append(k.FormKeys(), k.Right, k.Back)
	}
	return append(out, s.KeyLinesAnd(w, 1, m.ListKey(), line...)...)
}

// fieldLines draws the fields of the section. What is wrong with a field stands below it; what the field
// is for, only below the one being filled in. Of is the field of each line.
func (m Model) fieldLines(w int) (lines []string, of []int) {
	add := func(text string, i int) { lines, of = append(lines, text), append(of, i) }
	for i, f := range m.fields {
		if f.section != m.section() || i == m.boxAt {
			continue
		}
		add(m.fieldLine(i, w), i)
		note, style := "", m.Styles.Dim
		switch problem := m.problems[f.Name]; {
		case problem != "":
			note, style = "! "+problem, m.Styles.Alarm
		case i == m.at && !m.given(i):
			note = "follows from other fields: the cloth or the stripes"
		case i == m.at:
			note = f.Hint()
		}
		for _, l := range look.Wrap(note, w-6) {
			add("      "+style.Render(l), i)
		}
		if said := m.project.Settles(f.Field); said != "" {
			for _, l := range look.Painted(look.Wrap("! "+said, w-6), m.Styles.Warn) {
				add("      "+l, i)
			}
		}
		if only, ok := m.onlyOne(i); ok && i == m.at {
			for _, l := range look.Wrap(only.String(), w-6) {
				add("      "+m.Styles.Good.Render(l), i)
			}
		}
		if at := m.offerLine(); i == m.at && at != "" {
			add("      "+m.Styles.Good.Render(look.Fit(at, w-6)), i)
		}
	}
	return lines, of
}

func (m Model) fieldLine(i, w int) string {
	s, f, in := m.Styles, m.fields[i], m.inputs[i]
	mark := "    "
	if i == m.at {
		mark = "  ▸ "
	}
	value := in.Value()
	_, only := m.onlyOne(i)
	switch {
	case !m.given(i):
		value = s.Dim.Render(m.follows(f))
	case len(f.options) > 0 && i == m.at:
		value = s.Strong.Render("◀ " + value + " ▶")
	case value == "" && entry.AssumedValue(m.spec, f.Field) != "" && i != m.at:
		value = s.Dim.Render(entry.AssumedValue(m.spec, f.Field) + " assumed")
	case value == "" && i != m.at:
		value = s.Dim.Render("-")
	case i != m.at && only:
		value += s.Dim.Render(" assumed")
	case i == m.at:
		value = look.InputView(in, max(w-22, 4))
	}
	return look.Fit(mark+look.Pad(f.Label, 17)+" "+value, w)
}

// follows shows a value that follows from others. A length is shown as on the rest of the page: the shares that it is
// reckoned with are no more exact than that.
func (m Model) follows(f line) string {
	if f.section == secCloth || m.project == nil {
		return "-"
	}
	if s := m.project.Plan.Spec; f.Field == field.Length {
		return s.Length.As(s.Units.Long(), 2).String()
	}
	return cmp.Or(f.Show(m.project.Plan.Spec), "-")
}

// wrongFields names the fields that are wrong, in their order, and what else is. What is wrong with one alone that
// stands on another page is said, since it may follow from a field on this one.
func (m Model) wrongFields() string {
	var names []string
	known := map[string]bool{}
	elsewhere := ""
	for _, f := range m.fields {
		known[f.Name] = true
		if m.problems[f.Name] != "" {
			names = append(names, f.Label)
			if f.section != m.section() {
				elsewhere = f.Label + ", on the page “" + f.section.String() + "”: " + m.problems[f.Name]
			}
		}
	}
	for _, name := range slices.Sorted(maps.Keys(m.problems)) {
		if !known[name] {
			names = append(names, name+": "+m.problems[name])
		}
	}
	if len(names) == 1 && elsewhere != "" {
		return elsewhere
	}
	return strings.Join(names, ", ")
}
