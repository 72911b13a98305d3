package mill

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"millside/counter"
	"millside/plan"
	"millside/plan/measure"
	"millside/tui/look"
)

// asksChange says whether the paddle has to be threaded, or changed, before the next pass, and the weaver
// has not yet said that it is done. What the paddle holds counts, so that a pass which is taken back, or the
// other return order, asks for its own colours too. It is asked again after coming back: a needless look
// costs nothing.
func (m Model) asksChange() bool {
	_, more := m.st.NextPass()
	if !more || !m.st.Plan.Striped() || m.rec.ReadOnly() {
		return false
	}
	return m.threaded == nil || len(m.changes()) > 0
}

// changes lists what makes the set-up of the next pass out of what the paddle holds.
func (m Model) changes() []plan.Change {
	next, _ := m.st.NextPass()
	return m.threaded.ChangesTo(m.st.Plan.SetUpOf(next))
}

// lastSetUp is the set-up of the last pass laid in the whole warp; nil if there is none.
func lastSetUp(st counter.State) plan.SetUp {
	for chain := st.Chain; chain > 0; chain-- {
		if laid := st.Chains[chain-1].Laid; laid > 0 {
			return st.Plan.SetUpOf(st.Plan.Chains[chain-1].Passes[laid-1])
		}
	}
	return nil
}

func (m Model) actChange(msg tea.KeyMsg) (Model, tea.Cmd) {
	k := m.Keys
	switch {
	case m.forward(msg):
		if !m.confirms() {
			return m, nil
		}
		next, _ := m.st.NextPass()
		m.threaded, m.ignore, m.flash = m.st.Plan.SetUpOf(next), "", ""
		m.guard = m.guard.Counted(m.at)
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
func (m Model) viewChange(w, h int) string {
	s, k := m.Styles, m.Keys
	next, _ := m.st.NextPass()
	var changes []plan.Change
	if m.threaded != nil {
		changes = m.changes()
	}
	title := fmt.Sprintf("CHANGE %s BEFORE PASS %d", strings.ToUpper(measure.Counted(len(changes), "position", "positions")), next.Number)
	if len(changes) == 0 {
		title = "THREAD THE PADDLE"
	}
	lines := []string{m.header(w)}
	lines = append(lines, look.Filled([]string{"", "  " + title, ""}, s.Warn, w)...)
	if h >= 22 {
		lines = append(lines, "")
	}
	lines = append(lines, m.paddleLines(m.wholePaddle(next), w, 2)...)
	lines = append(lines, "")
	foot := m.changeFoot(w)
	room := h - len(lines) - len(foot) - 4
	if len(changes) == 0 {
		lines = append(lines, m.threading(next, room)...)
	} else {
		lines = append(lines, m.changeList(changes, w, room)...)
	}
	lines = append(lines, "")
	for _, l := range look.Wrap(m.changeHow(len(changes) == 0), w-4) {
		lines = append(lines, "  "+l)
	}
	return look.WithFoot(lines, append(foot, s.KeyLine(w, k.Done, k.Undo, k.Pause, k.Leave)), w, h)
}

// changeFoot says what just happened, such as that the plan follows the other return order, or why a press
// did not count.
func (m Model) changeFoot(w int) []string {
	if m.ignore != "" {
		return []string{m.Styles.Alarm.Render(look.Fit("  ! "+m.ignore+" ", w))}
	}
	var out []string
	for _, l := range look.Wrap(m.flash, w-4) {
		out = append(out, m.Styles.Warn.Render(look.Pad("  "+l, w)))
	}
	return out
}

// wholePaddle is a pass that carries every threaded position, in paddle order: what is to be threaded.
func (m Model) wholePaddle(next plan.Pass) plan.Pass {
	next.Carried, next.Mirrored = m.st.Plan.SetUpOf(next).Threaded(), false
	return next
}

func (m Model) changeHow(first bool) string {
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
func (m Model) changeList(changes []plan.Change, w, room int) []string {
	p, s := m.st.Plan, m.Styles
	var rows []string
	for _, c := range changes {
		rows = append(rows, fmt.Sprintf("  position %s  ", s.Strong.Render(fmt.Sprintf("%2d", c.Position)))+s.Named(p, c.From)+"  ▶  "+s.Named(p, c.To))
	}
	if len(rows) <= room || room < 1 {
		return rows
	}
	half := (len(rows) + 1) / 2
	out := look.Beside(rows[:half], rows[half:], w/2, 0)
	if len(out) > room {
		out = append(out[:room-1], s.Warn.Render(fmt.Sprintf("  and %d more: compare the paddle with the drawing above", len(rows)-2*(room-1))))
	}
	return out
}

// threading lists the runs of one colour in the first set-up.
func (m Model) threading(next plan.Pass, room int) []string {
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
			rows = append(rows, "  "+look.Pad(span, 20)+m.Styles.Named(p, set[from]))
		}
		from = to + 1
	}
	if len(rows) > room && room > 0 {
		rows = append(rows[:room-1], fmt.Sprintf("  and %d more, as drawn above", len(rows)-room+1))
	}
	return rows
}
