package mill

import (
	"fmt"
	"strings"

	"millside/plan/measure"

	tea "github.com/charmbracelet/bubbletea"
)

// speak is the command that tells the next step to whoever listens.
func (m Model) speak() tea.Cmd {
	if m.Say == nil {
		return nil
	}
	text := m.spoken()
	return func() tea.Msg { m.Say(text); return nil }
}

// spoken is the page in one or two plain sentences, as a screen reader or a speech program reads them.
func (m Model) spoken() string {
	switch m.mode {
	case modeLease:
		return "Look at the lease: does the second group lie as drawn?"
	case modeChange:
		next, _ := m.st.NextPass()
		changes := m.st.Plan.ChangesBefore(m.st.Current(), next.Number)
		parts := []string{fmt.Sprintf("Change the paddle before pass %d.", next.Number)}
		for _, c := range changes {
			parts = append(parts, fmt.Sprintf("Position %d: %s.", c.Position, m.st.Plan.ColourText(c.To)))
		}
		return strings.Join(parts, " ")
	case modeFinish:
		if step, more := m.st.NextStep(); more {
			return step.Title + ". " + step.Detail
		}
		return "All steps are done."
	case modePaused:
		return fmt.Sprintf("Paused after pass %d. %d ends stand.", m.st.Laid(), m.st.EndsStanding())
	case modeDone:
		return "The warp is finished."
	case modeBroken:
		return "Not saved. The count did not move."
	}
	return m.spokenPass()
}

func (m Model) spokenPass() string {
	p, more := m.st.NextPass()
	if !more {
		return ""
	}
	due := append(m.troubleDue(), taskTexts(m.dueNow())...)
	text := fmt.Sprintf("Pass %d of %d, %s. %d ends stand.", p.Number, len(m.st.Current().Passes), p.Direction, m.st.EndsStanding())
	if len(due) > 0 {
		text = measure.Capital(strings.Join(due, "; ")) + ". " + text
	}
	if m.ignore != "" {
		text = measure.Capital(m.ignore) + ". " + text
	}
	return text + fmt.Sprintf(" Peg %s first, %s. Over %d, under %d. Turn %s.", p.FirstPeg(), p.FirstOpening, p.CrossOver(), p.CrossUnder(), p.TurnAfter)
}
