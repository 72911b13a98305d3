package mill

import (
	"fmt"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"millside/counter"
	"millside/plan/measure"
)

// actTrouble takes the keys for what goes wrong at the mill. None of them blocks the winding.
func (m Model) actTrouble(msg tea.KeyMsg) (Model, tea.Cmd) {
	k := m.Keys
	switch {
	case key.Matches(msg, k.Broken):
		return m.askEnd(counter.Broken), nil
	case key.Matches(msg, k.Knot):
		return m.askEnd(counter.Knot), nil
	case key.Matches(msg, k.Cone):
		return m.ask(newPrompt(m.Deps, coneQuestion{})), nil
	case key.Matches(msg, k.WrongTurn):
		return m.wrongTurn()
	case key.Matches(msg, k.Missed):
		return m.markPass(counter.MissedOpening)
	case key.Matches(msg, k.WrongPeg):
		return m.markPass(counter.WrongPeg)
	case key.Matches(msg, k.Tie):
		return m.tieMade()
	case key.Matches(msg, k.Withdraw):
		return m.withdraw()
	}
	return m, nil
}

func (m Model) askEnd(what counter.What) Model {
	return m.ask(newPrompt(m.Deps, endQuestion{what}, "", fmt.Sprint(nowPass(m.st))))
}

// wrongTurn notes that the group went the wrong way round the last peg, or, where twist stands behind the
// paddle already, that it was taken out.
func (m Model) wrongTurn() (Model, tea.Cmd) {
	switch {
	case m.st.TwistAdvice() != "":
		return m.save(counter.Event{Kind: counter.Righted})
	case m.st.Laid() == 0:
		m.flash = "no pass is laid yet, so no turn was made"
		return m, nil
	}
	return m.save(counter.Event{Kind: counter.WrongTurn, Pass: m.st.Laid()})
}

// markPass marks the last pass for a look at the loom.
func (m Model) markPass(what counter.What) (Model, tea.Cmd) {
	if m.st.Laid() == 0 {
		m.flash = "no pass is laid yet"
		return m, nil
	}
	return m.save(counter.Event{Kind: counter.Incident, What: what, Pass: m.st.Laid()})
}

func (m Model) tieMade() (Model, tea.Cmd) {
	if m.st.Laid() == 0 {
		m.flash = "no pass is laid yet"
		return m, nil
	}
	return m.save(counter.Event{Kind: counter.TieMade, Pass: m.st.Laid()})
}

// withdraw takes back the mark that was made last.
func (m Model) withdraw() (Model, tea.Cmd) {
	for i := len(m.st.Incidents) - 1; i >= 0; i-- {
		if !m.st.Incidents[i].Withdrawn {
			return m.save(counter.Event{Kind: counter.Withdrawn, Line: m.st.Incidents[i].Number})
		}
	}
	m.flash = "nothing is marked"
	return m, nil
}

// saidTrouble puts an event about trouble into words.
func saidTrouble(e counter.Event, st counter.State) string {
	switch e.Kind {
	case counter.Incident:
		return "marked: " + measure.Clean(st.Incidents[len(st.Incidents)-1].Words(st.Plan.Spec.Units))
	case counter.Withdrawn:
		return "the last mark is taken back"
	case counter.WrongTurn, counter.Righted:
		return "" // the twist has a line of its own
	case counter.TieMade:
		return fmt.Sprintf("tie noted: %d ends in %s", st.Ties[len(st.Ties)-1].Ends, measure.Counted(e.Pass, "pass", "passes"))
	case counter.NewCone:
		return fmt.Sprintf("new cone in position %d", e.Position)
	default:
		return ""
	}
}
