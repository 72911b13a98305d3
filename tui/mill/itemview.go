package mill

import (
	"slices"
	"strings"

	"millside/counter/session"
	"millside/tui/look"
)

// itemSizes says what must be done or known: short, in full, and in full with a line for each.
func (m Model) itemSizes(items []session.Item, label string, w int) [][]string {
	if len(items) == 0 {
		return [][]string{nil}
	}
	s := m.Styles
	var short, full []string
	loud := false
	for _, item := range items {
		text := item.Short
		if item.Kind == session.ItemTurn {
			text = m.s.State().TwistBrief() // both ways out are needed at any size
		}
		short, full = append(short, text), append(full, item.Text)
		loud = loud || item.Level != session.Quiet
	}
	style := s.Plain
	if loud {
		style = s.Warn
	}
	draw := func(texts ...string) []string {
		var out []string
		for _, t := range texts {
			for _, l := range look.Wrap(t, w-4) {
				out = append(out, style.Render(look.Pad("  "+l, w)))
			}
		}
		return out
	}
	full[0] = label + full[0]
	return [][]string{draw(strings.Join(short, "; ")), draw(strings.Join(full, "; ")), draw(full...)}
}

// nextSizes announces what comes after the pass, in short and in full, with the kind of pass that follows where that
// takes no row more: it stands beside the paddle too.
func (m Model) nextSizes(items []session.Item, w int) [][]string {
	if len(items) == 0 {
		return [][]string{nil}
	}
	style, then := m.Styles.Plain, thenOf(items)
	var short, full []string
	for _, item := range items {
		text := item.Short
		if text == "" {
			text = item.Text
		}
		short, full = append(short, text), append(full, item.Text)
		if item.Level != session.Quiet {
			style = m.Styles.Strong
		}
	}
	draw := func(texts []string) []string {
		label := m.Styles.Dim.Render("next ") + " "
		var out []string
		for _, l := range look.Wrap(strings.Join(texts, "; "), w-10) {
			out = append(out, "  "+label+style.Render(l))
			label = "      "
		}
		return out
	}
	sizes := [][]string{nil, draw(short), draw(full)}
	for i, texts := range [][]string{short, full} {
		if then == "" {
			break
		}
		if with := draw(append(slices.Clone(texts), then)); len(with) == len(sizes[i+1]) {
			sizes[i+1] = with
		}
	}
	return sizes
}

// thenOf is what may be said behind what comes next, the kind of pass that follows; empty where there is none.
func thenOf(items []session.Item) string {
	for _, item := range items {
		if item.Then != "" {
			return item.Then
		}
	}
	return ""
}
