package form

import (
	"fmt"
	"slices"
	"strings"

	"millside/plan/measure"
	"millside/plan/project"
	"millside/tui/look"
)

func (m Model) paddleResult(w, room int) []string {
	if !plain(m.spec) {
		return look.Wrap("The stripes choose the group for each pass: see the page “stripes”.", w)
	}
	return m.choiceLines(w, room)
}

// choiceLines lists the ranked choices of group with their reasons, those around the one that is taken; where not all
// find room, the last line says how many there are besides.
func (m Model) choiceLines(w, room int) []string {
	list := m.choices()
	at := m.current(list)
	out := look.Painted(look.Wrap("groups: "+project.ChoiceRule, w), m.Styles.Dim)
	room -= len(out)
	for _, all := range []bool{true, false} { // the reasons of each, where there is room for that
		if lines, _ := m.choiceBlocks(list, at, all, w); len(lines) <= room {
			return append(out, lines...)
		}
	}
	lines, of := m.choiceBlocks(list, at, false, w)
	seen := look.Around(of, at, room-1)
	if seen.Above > 0 { // the first one stays all the same
		first := slices.Index(of, 1)
		out, lines, of, room = append(out, lines[:first]...), lines[first:], of[first:], room-first
		seen = look.Around(of, at, room-1)
	}
	sign := fmt.Sprintf("  … %d between, %d below: %s", seen.Above, seen.Below, m.Keys.Choice.Help().Key)
	if seen.Above == 0 {
		sign = fmt.Sprintf("  … %d more below: %s next", seen.Below, m.Keys.Choice.Help().Key)
	}
	return append(append(out, lines[seen.From:seen.To]...), m.Styles.Dim.Render(look.Fit(sign, w)))
}

// choiceBlocks are the lines of all choices, and which of them each line belongs to.
func (m Model) choiceBlocks(list []project.Choice, at int, all bool, w int) (lines []string, of []int) {
	for i, c := range list {
		for _, l := range m.choiceBlock(c, i == at, all, w) {
			lines, of = append(lines, l), append(of, i)
		}
	}
	return lines, of
}

func (m Model) choiceBlock(c project.Choice, chosen, all bool, w int) []string {
	s, label := m.Styles, c.Label()
	mark, style := "  ", s.Plain
	if chosen {
		mark, style = "▸ ", s.Strong
	}
	if !chosen && !all {
		rest := fmt.Sprintf("%s, %s", measure.Counted(c.Passes, "pass", "passes"), c.Time)
		if look.Wide(label+": "+rest) <= w-2 {
			return []string{mark + style.Render(label) + s.Dim.Render(": "+rest)}
		}
		return []string{mark + style.Render(look.Fit(label, w-2)), "    " + s.Dim.Render(look.Fit(rest, w-4))}
	}
	block := []string{mark + style.Render(look.Fit(label, w-2))}
	for _, l := range look.Wrap(strings.Join(c.Reasons, "; "), w-4) {
		block = append(block, "    "+s.Dim.Render(l))
	}
	return block
}
