package tui

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"millside/plan"
)

// viewFar is for a winder who stands far off: the count, the direction and the next warning, as large
// as the terminal allows, and nothing else.
func (m winding) viewFar(w, h int) string {
	pass, _ := m.st.NextPass()
	band := max(h/5, 3)
	lines := m.band(pass, w, band)
	lines = append(lines, m.farFigures(w, h-band-2)...)
	warn, k := m.farWarning(), m.keys
	foot := []string{warn.style(m.styles).Render(pad(center(warn.text, w), w)),
		m.styles.keyLine(w, k.Laid, as(k.Far, "near"), k.Undo, k.Pause, k.Leave)}
	return withFoot(lines, foot, w, h)
}

// farFigures sets the number of the pass to the left and the ends to the right, each with its name
// below, in the middle of the rows that there are.
func (m winding) farFigures(w, rows int) []string {
	c := m.st.Current()
	number, standing := fmt.Sprint(m.st.Laid()+1), fmt.Sprint(m.st.EndsStanding())
	left, right := []string{number}, []string{standing}
	if scale := figuresScale(number+"   "+standing, w-4, rows-2); scale > 0 {
		left, right = figures(number, scale), figures(standing, scale)
	}
	gap := max(w-4-lipgloss.Width(left[0])-lipgloss.Width(right[0]), 2)
	names := spread(fmt.Sprintf("PASS of %d", len(c.Passes)), fmt.Sprintf("ENDS of %d", c.Ends()), w-4)
	out := append(painted(beside(left, right, lipgloss.Width(left[0]), gap), m.styles.figure), "", m.styles.strong.Render(names))
	return append(blanks(max((rows-len(out))/2, 0)), indent(out, 2)...)
}

// warning is the one line of the far view.
type warning struct {
	text  string
	level uint8
}

const (
	levelQuiet uint8 = iota
	levelDue
	levelAlarm
)

func (n warning) style(s styles) lipgloss.Style {
	switch n.level {
	case levelAlarm:
		return s.alarm
	case levelDue:
		return s.warn
	default:
		return s.plain
	}
}

// farWarning is the most pressing thing: a press not counted, something due, something coming.
func (m winding) farWarning() warning {
	switch {
	case m.ignore != "":
		return warning{m.ignore, levelAlarm}
	case m.flash != "":
		return warning{m.flash, levelDue}
	}
	if due := append(m.troubleDue(), taskTexts(m.dueNow())...); len(due) > 0 {
		return warning{strings.ToUpper(due[0]), levelDue}
	}
	coming := m.coming()
	for _, t := range coming {
		if t.Kind != plan.CheckLease {
			return warning{"after this pass: " + t.Text, levelQuiet}
		}
	}
	return warning{}
}
