package tui

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"millside/counter"
	"millside/plan"
)

// asksChange says whether the paddle has to be threaded, or changed, before the next pass, and the weaver
// has not yet said that it is done. It is asked again after coming back: a needless look costs nothing.
func (m winding) asksChange() bool {
	next, more := m.st.NextPass()
	if !more || !m.st.Plan.Striped() || m.rec.ReadOnly() || m.changed == m.changeMark() {
		return false
	}
	first := next.Number == 1 && m.st.Chain == 1
	return first || len(m.st.Plan.ChangesBefore(m.st.Current(), next.Number)) > 0
}

// changeMark names the pass that a change comes before.
func (m winding) changeMark() [2]int { return [2]int{m.st.Chain, m.st.Laid() + 1} }

func (m winding) actChange(msg tea.KeyMsg) (screen, tea.Cmd) {
	k := m.keys
	switch {
	case m.forward(msg):
		if !m.confirms() {
			return m, nil
		}
		m.changed, m.ignore = m.changeMark(), ""
		m.guard = m.guard.Counted(m.now())
		m.mode = m.restingMode()
		return m, nil
	case key.Matches(msg, k.Undo):
		return m.undo()
	case key.Matches(msg, k.Pause):
		return m.save(counter.Event{Kind: counter.Paused})
	case key.Matches(msg, k.Leave):
		return m.leaveNow()
	}
	return m, nil
}

// viewChange shows the change of set-up and nothing else.
func (m winding) viewChange(w, h int) string {
	s, k, p := m.styles, m.keys, m.st.Plan
	next, _ := m.st.NextPass()
	changes := p.ChangesBefore(m.st.Current(), next.Number)
	title := fmt.Sprintf("CHANGE %s BEFORE PASS %d", strings.ToUpper(plural(len(changes), "position", "positions")), next.Number)
	if len(changes) == 0 {
		title = "THREAD THE PADDLE"
	}
	lines := []string{m.header(w)}
	lines = append(lines, filled([]string{"", "  " + title, ""}, s.warn, w)...)
	if h >= 22 {
		lines = append(lines, "")
	}
	lines = append(lines, m.paddleLines(m.wholePaddle(next), w, 2)...)
	lines = append(lines, "")
	room := h - len(lines) - 5
	if len(changes) == 0 {
		lines = append(lines, m.threading(next, room)...)
	} else {
		lines = append(lines, m.changeList(changes, w, room)...)
	}
	lines = append(lines, "")
	for _, l := range wrap(m.changeHow(len(changes) == 0), w-4) {
		lines = append(lines, "  "+l)
	}
	var foot []string
	if m.ignore != "" {
		foot = append(foot, s.alarm.Render(fit("  ! "+m.ignore+" ", w)))
	}
	return withFoot(lines, append(foot, s.keyLine(w, k.Done, k.Undo, k.Pause, k.Leave)), w, h)
}

// wholePaddle is a pass that carries every threaded position, in paddle order: what is to be threaded.
func (m winding) wholePaddle(next plan.Pass) plan.Pass {
	next.Carried, next.Mirrored = m.st.Plan.SetUpOf(next).Threaded(), false
	return next
}

func (m winding) changeHow(first bool) string {
	if first {
		return "One end in each position, from cones in the order drawn; position 1 is nearest the thumb."
	}
	peg := "near"
	if m.st.Laid()%2 == 1 {
		peg = "far"
	}
	return fmt.Sprintf("Cut these ends at the %s end peg, where the paddle is, tie them there, tie in the new colour and thread it. The other positions stay as they are.", peg)
}

// changeList is one line for each position, in two columns where there are many.
func (m winding) changeList(changes []plan.Change, w, room int) []string {
	p, s := m.st.Plan, m.styles
	var rows []string
	for _, c := range changes {
		rows = append(rows, fmt.Sprintf("  position %s  ", s.strong.Render(fmt.Sprintf("%2d", c.Position)))+s.named(p, c.From)+"  ▶  "+s.named(p, c.To))
	}
	if len(rows) <= room || room < 1 {
		return rows
	}
	half := (len(rows) + 1) / 2
	out := beside(rows[:half], rows[half:], w/2, 0)
	if len(out) > room {
		out = append(out[:room-1], s.warn.Render(fmt.Sprintf("  and %d more: compare the paddle with the drawing above", len(rows)-2*(room-1))))
	}
	return out
}

// threading lists the runs of one colour in the first set-up.
func (m winding) threading(next plan.Pass, room int) []string {
	p, set := m.st.Plan, m.st.Plan.SetUpOf(next)
	var rows []string
	for from := 0; from < len(set); {
		to := from
		for to+1 < len(set) && set[to+1] == set[from] {
			to++
		}
		span := fmt.Sprintf("position %d", from+1)
		if to > from {
			span = fmt.Sprintf("positions %d to %d", from+1, to+1)
		}
		if set[from] != 0 {
			rows = append(rows, "  "+pad(span, 20)+m.styles.named(p, set[from]))
		}
		from = to + 1
	}
	if len(rows) > room && room > 0 {
		rows = append(rows[:room-1], fmt.Sprintf("  and %d more, as drawn above", len(rows)-room+1))
	}
	return rows
}
