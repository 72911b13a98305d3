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
	warn := m.farWarning()
	rows := max(h-band-4, 3)
	number := fmt.Sprint(pass.Number)
	standing := fmt.Sprint(m.st.EndsStanding())
	pair := number + "   " + standing
	scale := max(figuresScale(pair, w-4, rows), 0)
	lines := m.band(pass, w, band)
	lines = append(lines, blanks(max((rows-scale*glyphHeight/2)/2, 0))...)
	lines = append(lines, m.farFigures(number, standing, scale, w)...)
	foot := []string{warn.style(m.styles).Render(pad(center(warn.text, w), w)), m.styles.keyLine(w, m.keys.Laid, as(m.keys.Far, "near view"), m.keys.Undo, m.keys.Leave)}
	if m.isLast() {
		return m.framed(w, h, func(w, h int) string { return withFoot(lines, foot, w, h) })
	}
	return withFoot(lines, foot, w, h)
}

// farFigures sets the number of the pass to the left and the ends to the right, each with its name.
func (m winding) farFigures(number, standing string, scale, w int) []string {
	left, right := []string{number}, []string{standing}
	if scale > 0 {
		left, right = figures(number, scale), figures(standing, scale)
	}
	gap := max(w-4-lipgloss.Width(left[0])-lipgloss.Width(right[0]), 2)
	names := spread("PASS of "+fmt.Sprint(len(m.st.Current().Passes)), "ENDS of "+fmt.Sprint(m.st.Current().Ends()), w-4)
	out := append(painted(beside(left, right, lipgloss.Width(left[0]), gap), m.styles.figure), "", m.styles.strong.Render(names))
	return indent(out, 2)
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
	if due := taskTexts(m.due()); len(due) > 0 {
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
