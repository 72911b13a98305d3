package draftpage

import (
	"fmt"
	"path/filepath"
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"millside/plan"
	"millside/plan/draft"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/stripe"
	"millside/tui/keys"
	"millside/tui/look"
)

// wide is the width from which the result stands beside the lines and not below them.
const wide = 76

// View draws the page at exactly w by h cells.
func (m Model) View(w, h int) string {
	s := m.Styles
	head := []string{"", "  " + s.Title.Render("MILLSIDE") +
		s.Dim.Render(look.Fit("   a warp from a draft", max(w-12, 0)))}
	foot := append([]string{""}, s.KeyLinesAnd(w, 1, m.ListKey(), m.footKeys(w)...)...)
	if m.problem != "" {
		foot = append(look.Painted(look.Wrap("! "+m.problem, w-2), s.Alarm), foot...)
	}
	room := max(h-len(head)-len(foot), 1)
	if m.said == nil {
		return look.WithFoot(append(append(head, ""), m.chooseLines(w, room-1)...), foot, w, h)
	}
	if w >= wide {
		left := min(46, w/2)
		lines, of := m.sayLines(left)
		result := append([]string{""}, m.turned(m.resultLines(w-left-4), room-1)...)
		beside := look.Beside(s.Scrolled(lines, of, m.said.at, room), result, left, 2)
		return look.WithFoot(append(head, beside...), foot, w, h)
	}
	below := max((room-1)/2, 4)
	said, of := m.sayLines(w - 2)
	lines := append(head, s.ScrolledOver(said, of, m.said.at, w, room-below)...)
	return look.WithFoot(append(lines, look.Indent(m.turned(m.resultLines(w-4), below), 2)...), foot, w, h)
}

// footKeys are the keys that work.
func (m Model) footKeys(w int) []key.Binding {
	k := m.Keys
	if m.said == nil {
		return []key.Binding{keys.As(k.Keep, "open"), k.NextFile, k.Complete, k.Back}
	}
	line := []key.Binding{keys.As(k.Begin, "plan it"), k.NextField}
	if len(m.said.lines[m.said.at].words) > 0 {
		line = append(line, k.Right)
	}
	if w >= wide {
		line = append(line, k.PrevField)
	}
	return append(line, k.Rest, keys.As(k.Back, "files"))
}

// ListKey is the key that lists all keys: where any text is typed, a question mark belongs to it.
func (m Model) ListKey() key.Binding {
	if m.said == nil || m.said.lines[m.said.at].of == field.NameColour {
		return m.Keys.AllKeysTyping
	}
	return m.Keys.AllKeys
}

// AllKeys are the keys of the page in the words of the page that lists them.
func (m Model) AllKeys() []key.Binding {
	k := m.Keys
	if m.said == nil {
		return []key.Binding{keys.As(k.Keep, "open the draft"), k.NextFile, keys.As(k.Complete, "complete the path"),
			keys.As(k.Back, "home")}
	}
	list := []key.Binding{keys.As(k.Begin, "plan it"), keys.As(k.NextField, "next field"),
		keys.As(k.PrevField, "field before")}
	if len(m.said.lines[m.said.at].words) > 0 {
		list = append(list, keys.As(k.Right, "next word"), keys.As(k.Left, "word before"))
	}
	return append(list, keys.As(k.Rest, "more of the result"), keys.As(k.Back, "other files"))
}

// chooseLines are the path as typed and the list of its folder.
func (m Model) chooseLines(w, room int) []string {
	s := m.Styles
	out := []string{look.Fit("  draft file: "+look.InputView(m.path, max(w-16, 4)), w), ""}
	rows := m.rows()
	folder, name := m.typed()
	switch {
	case m.waits:
		return append(out, "  it is being read")
	case m.listed.err != nil && m.listed.folder == folder:
		return append(out, look.Indent(look.Wrap(measure.Clean(m.listed.err.Error()), w-4), 2)...)
	case len(rows) == 0 && m.known():
		return append(out, look.Indent(look.Wrap("no name of a draft (*.wif); "+m.Keys.Keep.Help().Key+" opens it all "+
			"the same", w-4), 2)...)
	case len(rows) == 0 && name != "":
		return append(out, look.Indent(look.Wrap("no draft and no folder here begins so; "+m.Keys.Keep.Help().Key+
			" opens the file as typed", w-4), 2)...)
	case len(rows) == 0:
		return append(out, look.Indent(look.Wrap("no drafts (*.wif) and no folders here; type the path of another "+
			"folder, such as ../ or ~/", w-4), 2)...)
	}
	room -= len(out)
	from := max(min(m.chosen-room/2, len(rows)-room), 0)
	if len(rows) > room {
		shown := fmt.Sprintf("%d to %d of %d", from+1, from+room, len(rows))
		out[len(out)-1] = "  " + s.Dim.Render(look.Fit(shown, w-2))
	}
	for i := from; i < min(from+room, len(rows)); i++ {
		e := rows[i]
		text, mark := measure.Clean(e.Name), "    "
		if e.Folder {
			text += string(filepath.Separator)
		}
		if i == m.chosen {
			mark, text = "  ▸ ", s.Strong.Render(text)
		}
		out = append(out, look.Fit(mark+text, w))
	}
	return out
}

// sayLines draws what the weaver says of the draft. Of is which of its lines each belongs to.
func (m Model) sayLines(w int) (lines []string, of []int) {
	s, said := m.Styles, m.said
	add := func(text string, i int) { lines, of = append(lines, text), append(of, i) }
	for i, l := range said.lines {
		mark, value := "    ", l.text.Value()
		switch {
		case len(l.words) > 0 && i == said.at:
			value = s.Strong.Render("◀ " + l.words[l.word] + " ▶")
		case l.word == 0 && l.of == field.Thread1 && !said.sided:
			value = s.Dim.Render(l.words[1])
		case l.word == 0 && len(l.words) > 0 && !l.begins:
			value = s.Dim.Render(l.words[0])
		case len(l.words) > 0:
			value = l.words[l.word]
		case i == said.at:
			value = look.InputView(l.text, max(w-22, 4))
		}
		if i == said.at {
			mark = "  ▸ "
		}
		label := look.Pad(look.Fit(l.label, 16), 16)
		if l.of == field.NameColour {
			label = m.patch(l.colour) + look.Pad(look.Fit(l.label, 13), 13)
		}
		add(look.Fit(mark+label+" "+value, w), i)
		note, style := "", s.Dim
		switch {
		case i == said.wrong:
			note, style = "! give "+said.problem, s.Alarm
		case i == said.at:
			note = l.hint
		}
		for _, text := range look.Wrap(note, w-7) {
			add("      "+style.Render(text), i)
		}
	}
	return lines, of
}

// patch shows a colour of the draft, by its index.
func (m Model) patch(index int) string {
	shade, known := m.said.draft.Palette[index]
	if !known {
		return "   "
	}
	return m.Styles.Yarn(plan.StripeColour{Shade: shade.String()}).Render("  ") + " "
}

// turned is the window of the result that has been turned to.
func (m Model) turned(lines []string, room int) []string {
	if len(lines) <= room || room < 3 {
		return lines
	}
	page := room - 1
	pages := (len(lines) + page - 1) / page
	at := m.said.scroll % pages
	out := append([]string{}, lines[at*page:min((at+1)*page, len(lines))]...)
	for len(out) < page {
		out = append(out, "")
	}
	return append(out, m.Styles.Dim.Render(fmt.Sprintf("part %d of %d: %s turns over", at+1, pages,
		m.Keys.Rest.Help().Key)))
}

// resultLines say what the draft comes to.
func (m Model) resultLines(w int) []string {
	s, said := m.Styles, m.said
	title := said.draft.Title
	if title == "" {
		title = "a draft without a title"
	}
	out := look.Painted(look.Wrap(title, w), s.Strong)
	add := func(text string) { out = append(out, look.Wrap(text, w)...) }
	add(measure.Counted(said.draft.Threads, "thread", "threads") + " in the warp" + shaftsText(said.draft))
	if said.warp == nil {
		if said.wrong < 0 {
			out = append(out, look.Painted(look.Wrap("! "+said.problem, w), s.Alarm)...)
		}
		return append(out, m.warnings(w)...)
	}
	if said.wanted != "" {
		add("wanted: " + said.wanted)
	}
	for _, text := range said.warp.Said {
		add(text)
	}
	out = append(out, m.orderLines(w)...)
	for _, row := range []struct{ name, text string }{
		{"sett", said.draft.SettText()}, {"spacing", said.warp.SpacingText()}, {"heddles", said.warp.HeddlesText()},
		{"weft", said.draft.WeftText(said.names)},
	} {
		if row.text != "" {
			add(row.name + ": " + row.text)
		}
	}
	return append(out, m.warnings(w)...)
}

func shaftsText(d *draft.Draft) string {
	if d.Shafts == 0 {
		return ""
	}
	return ", " + measure.Counted(d.Shafts, "shaft", "shafts")
}

// orderLines draw the stripes and list their colours.
func (m Model) orderLines(w int) []string {
	warp, ends := m.said.warp, ""
	switch ends = measure.Counted(m.said.warp.Ends, "end", "ends"); {
	case warp.Plain() && m.said.draft.Coloured:
		return look.Wrap(ends+" of one colour: a plain warp", w)
	case warp.Plain():
		return look.Wrap(ends+"; the draft gives no thread a colour: a plain warp", w)
	}
	lent := &plan.Plan{Spec: plan.Spec{Schedule: &plan.Schedule{Colours: stripe.PlanColours(warp.Order.Colours)}}}
	drawn, folded := warp.Order.Drawn(w)
	bar := look.StripeCells(m.Styles, lent, len(drawn.Cells), func(x int) int { return drawn.Cells[x].Colour })
	from := "from left to right"
	if open := m.said.open(); open >= 0 && m.said.lines[open].of == field.Thread1 {
		from += ", if thread 1 is on the right"
	}
	out := []string{bar, bar}
	if folded != "" {
		out = append(out, look.Wrap(folded, w)...)
	}
	out = append(out, look.Painted(look.Wrap(from, w), m.Styles.Dim)...)
	list, err := warp.Order.Ends()
	if err != nil {
		return out // they are then not worth counting
	}
	count := make([]int, len(warp.Order.Colours)+1)
	for _, c := range list {
		count[c]++
	}
	var parts []string
	for i, c := range warp.Order.Colours {
		parts = append(parts, fmt.Sprintf("%c %d %s", plan.Letter(i+1), count[i+1], c.Name))
	}
	out = append(out, look.Wrap(ends+": "+strings.Join(parts, ", "), w)...)
	return append(out, look.Wrap("stripes: "+warp.Order.String(), w)...)
}

// warnings lists what is not as the standard has it.
func (m Model) warnings(w int) []string {
	list := m.said.draft.Warnings
	if len(list) == 0 {
		return nil
	}
	out := []string{"", m.Styles.Dim.Render("not as the standard has it:")}
	for _, warning := range list {
		out = append(out, look.Indent(look.Wrap(measure.Clean(warning.String()), w-2), 2)...)
	}
	return out
}
