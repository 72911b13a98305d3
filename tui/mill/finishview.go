package mill

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"millside/counter/session"
	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/tui/keys"
	"millside/tui/look"
)

// viewFinish leads through the finishing steps, the one in hand as large as it finds room.
func (m Model) viewFinish(w, h int) string {
	s, k, st := m.Styles, m.Keys, m.s.State()
	steps := st.Steps()
	done := len(st.Chains[st.Chain-1].Ticked)
	step, more := st.NextStep()
	title, word := heading{
		words: fmt.Sprintf("WOUND  ·  %d ends in %d passes  ·  step %d of %d", st.EndsStanding(), st.Laid(), done+1,
			len(steps)),
		large: fmt.Sprintf("STEP %d OF %d", done+1, len(steps)), ground: s.OutBand, wordy: true}, "this step is done"
	if !more {
		all := fmt.Sprintf("ALL %d STEPS DONE", len(steps))
		title, word = heading{words: all, large: all, ground: s.OutBand, wordy: true},
			"close the record: the warp is finished"
		step = finishing.Step{Title: strings.Join(m.s.Announce(m.at), " ")}
	}
	name := look.NewPart(m.wordSizes(step.Title, w)...)
	detail, caution := textPart(step.Detail, s.Plain, w), look.NewPart(nil)
	if step.Caution != "" {
		caution = textPart("Take care: "+step.Caution, s.Warn, w)
	}
	marks := mayGo(nil)
	if text := m.marksText(); text != "" {
		marks = mayGo([]string{s.Warn.Render(look.Fit("  "+text+" ", w))})
	}
	list := look.NewPart(nil)
	for _, rows := range []int{3, 5, 8, 14, 20} {
		list.Sizes = append(list.Sizes, look.Drawn(m.stepList(steps, w, rows)))
	}
	wishes := []look.Wish{marks.At(1), name.At(1), name.At(2), list.At(1), list.At(2),
		name.At(3), list.At(3), name.At(4), list.At(4), name.At(5), list.At(5)}
	bindings := []key.Binding{keys.As(k.Laid, word), k.Undo, k.Redo, k.Note, k.Broken, k.Knot, k.Pause, k.Leave}
	word, _, _ = strings.Cut(word, ":")
	switch {
	case w < narrowKeys:
		bindings = []key.Binding{keys.As(k.Laid, word), keys.As(k.Undo, "back"), k.Note, k.Pause, k.Leave}
	case w < roomForKeys:
		bindings = []key.Binding{keys.As(k.Laid, word), keys.As(k.Undo, "back"), keys.As(k.Redo, "again"), k.Note,
			keys.As(k.Broken, "broken"), k.Knot, k.Pause, k.Leave}
	}
	line := s.KeyLine(w, bindings...)
	if m.rec.ReadOnly() {
		line = m.passKeys(w)
	}
	return m.titled(title, line, []*look.Part{name, detail, caution, marks, list}, wishes, w, h)
}

// wordSizes draws a sentence as it is, at double width, and in block letters.
func (m Model) wordSizes(text string, w int) [][]string {
	s := m.Styles
	sizes := [][]string{look.Indent(look.Painted(look.Wrap(text, w-4), s.Title), 2)}
	for z := look.Double; z < look.Blocks+4; z++ {
		rows := s.Wrapped(strings.ToUpper(text), z, w-4)
		if rows == nil {
			break
		}
		sizes = append(sizes, look.Indent(look.Painted(rows, s.Title), 2))
	}
	return sizes
}

// stepList shows the steps done and to come, as many as find room around the current one.
func (m Model) stepList(steps []finishing.Step, w, room int) []string {
	st := m.s.State()
	s, done := m.Styles, st.Chains[st.Chain-1]
	current := len(steps)
	for i, step := range steps {
		if !done.Has(step.ID) {
			current = i
			break
		}
	}
	from := min(max(current-room/3, 0), max(len(steps)-room, 0))
	var out []string
	for i := from; i < min(from+room, len(steps)); i++ {
		mark, style, pointer := "[ ]", s.Plain, "  "
		switch {
		case done.Has(steps[i].ID):
			mark, style = "[x]", s.Dim
		case i == current:
			style, pointer = s.Strong, "▸ "
		}
		out = append(out, look.Fit("  "+pointer+style.Render(mark+" "+steps[i].Title), w))
	}
	return out
}

// viewDone is the end of a warp: what was wound, and what to know about it.
func (m Model) viewDone(w, h int) string {
	s, st := m.Styles, m.s.State()
	p := st.Plan
	row := func(name, value string) string {
		return look.Fit("  "+s.Dim.Render(look.Pad(name, 18))+s.Strong.Render(value), w)
	}
	lines := []string{m.header("", w)}
	lines = append(lines, look.Filled([]string{"", "  FINISHED  ·  the warp is off the mill", ""}, s.OutBand, w)...)
	if h >= 18 {
		lines = append(lines, "")
	}
	lines = append(lines,
		row("ends", endsText(p)),
		row("length", p.Path.Length.As(p.Spec.Units.Long(), 2).String()),
		row("yarn", p.WarpYarn().As(p.Spec.Units.Long(), 0).String()+" in the ends"),
		row("passes", fmt.Sprintf("%d by %s, return order %s", p.Passes(), groupText(p), p.Spec.ReturnOrder)),
		row("begun", look.When(st.Started, m.at)), row("finished", look.When(st.Last, m.at)))
	foot := []string{s.KeyLine(w, m.Keys.Home, m.Keys.Reopen, m.Keys.Leave)}
	if msg := m.message(); msg.Level == session.Alarm {
		foot = append(m.messageRows(msg, w), foot...)
	}
	lines = append(lines, m.handOverRows(w, h-len(lines)-len(foot))...)
	return look.WithFoot(lines, foot, w, h)
}

func endsText(p *plan.Plan) string {
	if n := p.Spares(); n > 0 {
		return fmt.Sprintf("%d, the last %d spare, %s", p.EndsWound(), n,
			measure.Counted(len(p.Chains), "chain", "chains"))
	}
	return fmt.Sprintf("%d, %s", p.EndsWound(), measure.Counted(len(p.Chains), "chain", "chains"))
}

// groupText is how many ends a pass carries: "10", and of stripes the fewest and the most, "2 to 5".
func groupText(p *plan.Plan) string {
	if !p.Striped() {
		return strconv.Itoa(p.Spec.Group)
	}
	least, most := p.Spec.Positions, 0
	for _, c := range p.Chains {
		for _, pass := range c.Passes {
			least, most = min(least, pass.Ends()), max(most, pass.Ends())
		}
	}
	if least >= most {
		return strconv.Itoa(most)
	}
	return fmt.Sprintf("%d to %d", least, most)
}
