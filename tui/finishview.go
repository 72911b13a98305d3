package tui

import (
	"fmt"
	"strings"
	"time"

	"millside/plan"
)

// viewFinish leads through the finishing steps, the current one large.
func (m winding) viewFinish(w, h int) string {
	s, steps := m.styles, m.st.Steps()
	done := m.st.Chains[m.st.Chain-1]
	next, more := m.st.NextStep()
	lines := []string{m.header(w)}
	head := fmt.Sprintf("  WOUND  ·  %d ends in %d passes  ·  step %d of %d", m.st.EndsStanding(), m.st.Laid(), len(done.Ticked)+1, len(steps))
	if !more {
		head = fmt.Sprintf("  ALL %d STEPS DONE", len(steps))
	}
	lines = append(lines, filled([]string{"", head, ""}, s.outBand, w)...)
	if h >= 22 {
		lines = append(lines, "")
	}
	lines = append(lines, m.stepDetail(next, more, w)...)
	foot := m.finishFoot(w, more)
	room := h - len(flatLines(lines)) - len(foot) - 1
	if room >= 3 {
		lines = append(lines, "")
		lines = append(lines, m.stepList(steps, w, room)...)
	}
	return withFoot(lines, foot, w, h)
}

func (m winding) finishFoot(w int, more bool) []string {
	s, k := m.styles, m.keys
	if m.rec.ReadOnly() {
		return []string{m.keyLineWind(w)}
	}
	word := "this step is done"
	if !more {
		word = "close the record: the warp is finished"
	}
	var out []string
	if marks := m.marksText(); marks != "" {
		out = append(out, s.warn.Render(fit("  "+marks+" ", w)))
	}
	if m.ignore != "" {
		out = append(out, s.alarm.Render(fit("  ! "+m.ignore+" ", w)))
	}
	return append(out, s.keyLine(w, as(k.Done, word), k.Untick, k.Note, k.Leave))
}

func flatLines(lines []string) []string { return strings.Split(strings.Join(lines, "\n"), "\n") }

// stepDetail is the step to do now, with its caution.
func (m winding) stepDetail(step plan.Step, more bool, w int) []string {
	s := m.styles
	if !more {
		text := "This chain is tied, labelled and off the mill."
		if m.st.Chain < len(m.st.Chains) {
			text += " The next chain follows."
		}
		return indent(wrap(text, w-4), 2)
	}
	out := painted(wrap(strings.ToUpper(step.Title), w-4), s.title)
	out = append(out, wrap(step.Detail, w-4)...)
	if step.Caution != "" {
		out = append(out, "")
		out = append(out, painted(wrap("Take care: "+step.Caution, w-4), s.warn)...)
	}
	return indent(out, 2)
}

// stepList shows the steps done and to come, as many as find room around the current one.
func (m winding) stepList(steps []plan.Step, w, room int) []string {
	s, done := m.styles, m.st.Chains[m.st.Chain-1]
	current := len(steps)
	for i, st := range steps {
		if !done.Has(st.ID) {
			current = i
			break
		}
	}
	from := min(max(current-room/3, 0), max(len(steps)-room, 0))
	var out []string
	for i := from; i < min(from+room, len(steps)); i++ {
		mark, style := "[ ]", s.plain
		switch {
		case done.Has(steps[i].ID):
			mark, style = "[x]", s.dim
		case i == current:
			mark, style = "[ ]", s.strong
		}
		pointer := "  "
		if i == current {
			pointer = "▸ "
		}
		out = append(out, fit("  "+pointer+style.Render(mark+" "+steps[i].Title), w))
	}
	return out
}

// viewDone is the end of a warp: what was wound, and what to know about it.
func (m winding) viewDone(w, h int) string {
	s, p := m.styles, m.st.Plan
	lines := []string{m.header(w)}
	lines = append(lines, filled([]string{"", "  FINISHED  ·  the warp is off the mill", ""}, s.outBand, w)...)
	if h >= 18 {
		lines = append(lines, "")
	}
	row := func(name, value string) string {
		return fit("  "+s.dim.Render(pad(name, 18))+s.strong.Render(value), w)
	}
	lines = append(lines,
		row("ends", endsText(p)),
		row("length", p.Path.Length.In(p.Spec.Units.Long(), 2)),
		row("yarn", p.WarpYarn().In(p.Spec.Units.Long(), 0)+" in the ends"),
		row("passes", fmt.Sprintf("%d by %d, return order %s", p.Passes(), p.Spec.Group, p.Spec.ReturnOrder)),
		row("begun", when(m.st.Started, m.now())), row("finished", when(m.st.Last, m.now())))
	foot := []string{s.keyLine(w, as(m.keys.Home, "home"), m.keys.Leave)}
	lines = append(lines, m.handOver(w, h-len(flatLines(lines))-len(foot))...)
	return withFoot(lines, foot, w, h)
}

func endsText(p *plan.Plan) string {
	if n := p.Spares(); n > 0 {
		return fmt.Sprintf("%d, the last %d spare, %s", p.EndsWound(), n, plan.Counted(len(p.Chains), "chain", "chains"))
	}
	return fmt.Sprintf("%d, %s", p.EndsWound(), plan.Counted(len(p.Chains), "chain", "chains"))
}

// when writes a time as a weaver says it.
func when(t, now time.Time) string {
	if t.IsZero() {
		return "-"
	}
	t, now = t.Local(), now.Local()
	day := func(t time.Time) time.Time { return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, t.Location()) }
	switch days := int(day(now).Sub(day(t)).Hours()+12) / 24; {
	case days == 0:
		return "today, " + t.Format("15:04")
	case days == 1:
		return "yesterday, " + t.Format("15:04")
	default:
		return t.Format("2 January 2006, 15:04")
	}
}
