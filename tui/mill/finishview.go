package mill

import (
	"fmt"
	"strings"

	"millside/plan"
	"millside/plan/measure"
	"millside/tui/keys"
	"millside/tui/look"
)

// viewFinish leads through the finishing steps, the current one large.
func (m Model) viewFinish(w, h int) string {
	s, steps := m.Styles, m.st.Steps()
	done := m.st.Chains[m.st.Chain-1]
	next, more := m.st.NextStep()
	lines := []string{m.header(w)}
	head := fmt.Sprintf("  WOUND  ·  %d ends in %d passes  ·  step %d of %d", m.st.EndsStanding(), m.st.Laid(), len(done.Ticked)+1, len(steps))
	if !more {
		head = fmt.Sprintf("  ALL %d STEPS DONE", len(steps))
	}
	lines = append(lines, look.Filled([]string{"", head, ""}, s.OutBand, w)...)
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
	return look.WithFoot(lines, foot, w, h)
}

func (m Model) finishFoot(w int, more bool) []string {
	s, k := m.Styles, m.Keys
	if m.rec.ReadOnly() {
		return []string{m.keyLineWind(w)}
	}
	word := "this step is done"
	if !more {
		word = "close the record: the warp is finished"
	}
	var out []string
	if marks := m.marksText(); marks != "" {
		out = append(out, s.Warn.Render(look.Fit("  "+marks+" ", w)))
	}
	if m.ignore != "" {
		out = append(out, s.Alarm.Render(look.Fit("  ! "+m.ignore+" ", w)))
	}
	return append(out, s.KeyLine(w, keys.As(k.Done, word), k.Untick, k.Note, k.Leave))
}

func flatLines(lines []string) []string { return strings.Split(strings.Join(lines, "\n"), "\n") }

// stepDetail is the step to do now, with its caution.
func (m Model) stepDetail(step plan.Step, more bool, w int) []string {
	s := m.Styles
	if !more {
		text := "This chain is tied, labelled and off the mill."
		if m.st.Chain < len(m.st.Chains) {
			text += " The next chain follows."
		}
		return look.Indent(look.Wrap(text, w-4), 2)
	}
	out := look.Painted(look.Wrap(strings.ToUpper(step.Title), w-4), s.Title)
	out = append(out, look.Wrap(step.Detail, w-4)...)
	if step.Caution != "" {
		out = append(out, "")
		out = append(out, look.Painted(look.Wrap("Take care: "+step.Caution, w-4), s.Warn)...)
	}
	return look.Indent(out, 2)
}

// stepList shows the steps done and to come, as many as find room around the current one.
func (m Model) stepList(steps []plan.Step, w, room int) []string {
	s, done := m.Styles, m.st.Chains[m.st.Chain-1]
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
		mark, style := "[ ]", s.Plain
		switch {
		case done.Has(steps[i].ID):
			mark, style = "[x]", s.Dim
		case i == current:
			mark, style = "[ ]", s.Strong
		}
		pointer := "  "
		if i == current {
			pointer = "▸ "
		}
		out = append(out, look.Fit("  "+pointer+style.Render(mark+" "+steps[i].Title), w))
	}
	return out
}

// viewDone is the end of a warp: what was wound, and what to know about it.
func (m Model) viewDone(w, h int) string {
	s, p := m.Styles, m.st.Plan
	lines := []string{m.header(w)}
	lines = append(lines, look.Filled([]string{"", "  FINISHED  ·  the warp is off the mill", ""}, s.OutBand, w)...)
	if h >= 18 {
		lines = append(lines, "")
	}
	row := func(name, value string) string {
		return look.Fit("  "+s.Dim.Render(look.Pad(name, 18))+s.Strong.Render(value), w)
	}
	lines = append(lines,
		row("ends", endsText(p)),
		row("length", p.Path.Length.In(p.Spec.Units.Long(), 2)),
		row("yarn", p.WarpYarn().In(p.Spec.Units.Long(), 0)+" in the ends"),
		row("passes", fmt.Sprintf("%d by %d, return order %s", p.Passes(), p.Spec.Group, p.Spec.ReturnOrder)),
		row("begun", look.When(m.st.Started, m.at)), row("finished", look.When(m.st.Last, m.at)))
	foot := []string{s.KeyLine(w, keys.As(m.Keys.Home, "home"), m.Keys.Leave)}
	lines = append(lines, m.handOver(w, h-len(flatLines(lines))-len(foot))...)
	return look.WithFoot(lines, foot, w, h)
}

func endsText(p *plan.Plan) string {
	if n := p.Spares(); n > 0 {
		return fmt.Sprintf("%d, the last %d spare, %s", p.EndsWound(), n, measure.Counted(len(p.Chains), "chain", "chains"))
	}
	return fmt.Sprintf("%d, %s", p.EndsWound(), measure.Counted(len(p.Chains), "chain", "chains"))
}
