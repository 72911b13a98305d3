package mill

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"millside/plan"
	"millside/tui/keys"
	"millside/tui/look"
)

// viewFar is for a winder who stands far off: the count, the direction and the next warning, as large
// as the terminal allows, and nothing else.
func (m Model) viewFar(w, h int) string {
	pass, _ := m.st.NextPass()
	band := max(h/5, 3)
	lines := m.band(pass, w, band)
	lines = append(lines, m.farFigures(w, h-band-2)...)
	warn, k := m.farWarning(), m.Keys
	foot := []string{warn.style(m.Styles).Render(look.Pad(look.Center(warn.text, w), w)),
		m.Styles.KeyLine(w, k.Laid, keys.As(k.Far, "near"), k.Undo, k.Pause, k.Leave)}
	return look.WithFoot(lines, foot, w, h)
}

// farFigures sets the number of the pass to the left and the ends to the right, each with its name
// below, in the middle of the rows that there are.
func (m Model) farFigures(w, rows int) []string {
	c := m.st.Current()
	number, standing := fmt.Sprint(m.st.Laid()+1), fmt.Sprint(m.st.EndsStanding())
	left, right := []string{number}, []string{standing}
	if scale := look.FiguresScale(number+"   "+standing, w-4, rows-2); scale > 0 {
		left, right = look.Figures(number, scale), look.Figures(standing, scale)
	}
	gap := max(w-4-lipgloss.Width(left[0])-lipgloss.Width(right[0]), 2)
	names := look.Spread(fmt.Sprintf("PASS of %d", len(c.Passes)), fmt.Sprintf("ENDS of %d", c.Ends()), w-4)
	out := append(look.Painted(look.Beside(left, right, lipgloss.Width(left[0]), gap), m.Styles.Figure), "", m.Styles.Strong.Render(names))
	return append(look.Blanks(max((rows-len(out))/2, 0)), look.Indent(out, 2)...)
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

func (n warning) style(s look.Styles) lipgloss.Style {
	switch n.level {
	case levelAlarm:
		return s.Alarm
	case levelDue:
		return s.Warn
	default:
		return s.Plain
	}
}

// farWarning is the most pressing thing: a press not counted, something due, something coming.
func (m Model) farWarning() warning {
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
