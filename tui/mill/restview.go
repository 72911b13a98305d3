package mill

import (
	"fmt"
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/lipgloss"

	"millside/plan"
	"millside/plan/measure"
	"millside/tui/keys"
	"millside/tui/look"
)

// viewResting is the pause, and the page on coming back: what must be seen on the mill before winding
// goes on.
func (m Model) viewResting(w, h int) string {
	s, k := m.Styles, m.Keys
	title := "PAUSED"
	if m.mode == modeResume {
		title = "WELCOME BACK"
	}
	lines := []string{m.header(w)}
	lines = append(lines, look.Filled([]string{"", "  " + title + "  ·  look at the mill before you go on", ""}, s.Warn, w)...)
	if h >= 22 {
		lines = append(lines, "")
	}
	lines = append(lines, m.mustBeSeen(w, h)...)
	if m.flash != "" {
		lines = append(lines, "", s.Warn.Render(look.Fit("  "+m.flash+" ", w)))
	}
	foot := []string{s.KeyLine(w, k.GoOn, keys.As(k.Recount, "doesn't: recount"), k.Note, k.Leave)}
	return look.WithFoot(lines, foot, w, h)
}

// mustBeSeen lists what stands on the mill if the count is right.
func (m Model) mustBeSeen(w, h int) []string {
	s, c, laid := m.Styles, m.st.Current(), m.st.Laid()
	cross := m.st.Cross()
	row := func(name, value string) string {
		return look.Fit("  "+s.Dim.Render(look.Pad(name, 18))+s.Strong.Render(value), w)
	}
	out := []string{
		row("passes laid", fmt.Sprintf("%d of %d", laid, len(c.Passes))),
		row("ends standing", fmt.Sprintf("%d of %d", m.st.EndsStanding(), c.Ends())),
	}
	if laid == 0 {
		return append(out, row("paddle", "at the lease, nothing wound yet"))
	}
	last := c.Passes[laid-1]
	where := "at the near end, by the lease"
	if last.Direction.Far() {
		where = "at the far end, by the counting cross"
	}
	if away := m.st.Away(m.at); away > time.Minute || m.st.Paused {
		out = append(out, row("stopped", look.When(m.st.Last, m.at)))
	}
	if m.st.TwistAdvice() != "" {
		out = append(out, look.Fit("  "+m.Styles.Warn.Render(" "+m.st.TwistAdvice()+" "), w))
	}
	out = append(out,
		row("paddle", where),
		row("last turn", strings.ToUpper(last.TurnAfter.String())+" round the end peg"),
		row("counting cross", fmt.Sprintf("%s over peg 1, %d over peg 2", measure.Counted(cross.OverPeg1, "group", "groups"), cross.OverPeg2)))
	if h >= 18 {
		out = append(out, "")
		out = append(out, m.crossPicture(cross.OverPeg1, cross.OverPeg2, w)...)
	}
	if m.st.Wound() {
		out = append(out, row("next", "the finishing steps"))
	}
	return out
}

// crossPicture draws the two pegs of the counting cross with the groups that lie over each.
func (m Model) crossPicture(over1, over2, w int) []string {
	c := look.NewCanvas(w-4, 5, m.st.Plan.Spec.Hand == plan.LeftHanded)
	f := look.RowsOf(5)
	x1, x2 := (w-4)/4, (w-4)*3/4
	mid := (x1 + x2) / 2
	c.Across(2, mid-2, f.Top, '━', look.InkPath)
	c.Across(2, mid-2, f.Bottom, '━', look.InkPath)
	c.Across(mid+2, w-7, f.Top, '━', look.InkPath)
	c.Across(mid+2, w-7, f.Bottom, '━', look.InkPath)
	for i := range 3 {
		c.Set(mid-1+i, f.Top+i, '╲', look.InkPath)
		c.Set(mid+1-i, f.Top+i, '╱', look.InkPath)
	}
	c.Set(mid, f.Mid, '╳', look.InkPath)
	c.Peg(x1, f, '1')
	c.Peg(x2, f, '2')
	c.Text(x1, f.Label, measure.Counted(over1, "group", "groups")+" over", look.InkStrong)
	c.Text(x2, f.Label, measure.Counted(over2, "group", "groups")+" over", look.InkStrong)
	c.Text(x1, f.Names, "peg 1", look.InkLabel)
	c.Text(x2, f.Names, "peg 2", look.InkLabel)
	return look.Indent(c.Lines(m.Styles.Inks(plan.Outward)), 2)
}

// viewLease asks the weaver to compare the second group in the lease with the drawing.
func (m Model) viewLease(w, h int) string {
	s, k := m.Styles, m.Keys
	order := m.st.Plan.Spec.ReturnOrder
	lines := []string{m.header(w)}
	lines = append(lines, look.Filled([]string{"", "  LOOK AT THE LEASE  ·  do both groups lie as drawn?", ""}, s.Warn, w)...)
	lines = append(lines, "")
	lines = append(lines, m.leasePicture(w)...)
	lines = append(lines, "")
	text := "The second group lies in the same order as the first: its lowest position next to the first group. In the other order its highest position would lie there."
	if order == plan.MirroredOrder {
		text = "The second group lies the other way round: its highest position next to the first group. In the other order its lowest position would lie there."
	}
	lines = append(lines, look.Indent(look.Wrap(text, w-4), 2)...)
	if m.ignore != "" {
		lines = append(lines, "", s.Alarm.Render(look.Fit("  ! "+m.ignore+" ", w)))
	}
	foot := []string{s.KeyLine(w, keys.As(k.GoOn, "as drawn"), k.Other, k.Undo, k.Leave)}
	return look.WithFoot(lines, foot, w, h)
}

// leasePicture shows the positions of the first two groups in the order in which they lie in the
// lease: ends over peg A above, ends under it below. Groups too wide for the screen lose their middle.
func (m Model) leasePicture(w int) []string {
	const names, cell = 14, 3
	c, s := m.st.Current(), m.Styles
	perGroup := max((w-names-8)/cell/2, 3)
	rows := [5]string{look.Pad("over peg A", names), look.Pad("under peg A", names), look.Pad("position", names), look.Pad("colour", names), look.Pad("", names)}
	for i, p := range []plan.Pass{c.Passes[0], c.Passes[1]} {
		over, under, positions, colours := m.groupPicture(p, perGroup)
		wide := max(lipgloss.Width(positions), 14)
		for row, text := range []string{s.Outward.Render(over), s.Outward.Render(under), s.Strong.Render(positions), colours, s.Dim.Render([]string{"  first group", "  second group"}[i])} {
			rows[row] += look.Pad(text, wide) + "   "
		}
	}
	out := rows[:]
	if !m.st.Plan.Striped() {
		out = append(rows[:3:3], rows[4])
	}
	return look.Indent(out, 2)
}

// groupPicture draws at most so many ends of a group, three cells each.
func (m Model) groupPicture(p plan.Pass, most int) (over, under, positions, colours string) {
	for end := p.First; end <= p.Last; end++ {
		if i := end - p.First; p.Ends() > most && i >= (most-1)/2 && i < p.Ends()-most/2 {
			if i == (most-1)/2 {
				over, under, positions, colours = over+"   ", under+"   ", positions+"  …", colours+"  …"
			}
			continue
		}
		pos := p.PositionOf(end)
		up, down := "  ●", "   "
		if !p.OverA(pos) {
			up, down = down, up
		}
		over, under, positions = over+up, under+down, positions+fmt.Sprintf("%3d", pos)
		colours += m.Styles.Patch(m.st.Plan, m.st.Plan.EndColour(end), 3)
	}
	return over, under, positions, colours
}

// viewPrompt asks for a count or a note.
func (m Model) viewPrompt(w, h int) string {
	s, k, title := m.Styles, m.Keys, m.prompt.question.title()
	lines := []string{m.header(w)}
	lines = append(lines, look.Filled([]string{"", "  " + title, ""}, s.Warn, w)...)
	lines = append(lines, "")
	lines = append(lines, m.prompt.lines(s, m.st, w)...)
	line := []key.Binding{k.Keep, k.Back}
	if len(m.prompt.fields) > 1 {
		line = append(line, k.NextAnswer)
	}
	return look.WithFoot(lines, []string{s.KeyLine(w, line...)}, w, h)
}

// viewBroken says loudly that nothing was counted.
func (m Model) viewBroken(w, h int) string {
	s, k := m.Styles, m.Keys
	lines := []string{m.header(w)}
	lines = append(lines, look.Filled([]string{"", "  NOT SAVED  ·  the count did not move", ""}, s.Alarm, w)...)
	lines = append(lines, "", s.Strong.Render(fmt.Sprintf("  %d passes are on the disk", m.st.Laid())), "")
	lines = append(lines, look.Indent(look.Wrap(measure.Clean(m.broken.Error()), w-4), 2)...)
	lines = append(lines, "")
	lines = append(lines, look.Indent(look.Wrap("Stop winding. Make room on the disk, or put the stick back, then try again: the record is read anew, and the page after it says what must stand on the mill.", w-4), 2)...)
	return look.WithFoot(lines, []string{s.KeyLine(w, k.Retry, k.Leave)}, w, h)
}

// viewHelp lists all keys of the winding screen and what they do.
func (m Model) viewHelp(w, h int) string {
	s := m.Styles
	rows := [][2]string{
		{"space enter right down page-down", "this pass is laid; a mouse click, a clicker or a pedal too"},
		{"u backspace page-up", "take the last pass back"},
		{"p", "pause"},
		{"c", "recount: set the count to what stands on the pegs"},
		{"n", "note, kept with the pass"},
		{"b k", "an end broke; an end has a knot: which position?"},
		{"y", "new cone in a position"},
		{"w", "the group went the wrong way round the last peg; again: the twist is out"},
		{"m g", "opening missed, wrong peg on the last pass: marked for the loom"},
		{"t", "count tie made: the count is known here"},
		{"d", "drop the last mark"},
		{"f", "far view: the count alone, as large as it goes"},
		{"s", "settings: your own key, pedal or clicker; the bell"},
		{"q", "leave; every pass is already on the disk"},
		{"ctrl+c  ctrl+z", "leave at once; put aside until fg"},
	}
	lines := []string{m.header(w), "", "  " + s.Title.Render("Keys while winding"), ""}
	for _, r := range rows {
		if w >= 90 {
			lines = append(lines, "  "+s.Strong.Render(look.Pad(r[0], 34))+r[1])
			continue
		}
		lines = append(lines, "  "+s.Strong.Render(look.Fit(r[0], w-4)), "      "+s.Dim.Render(look.Fit(r[1], w-8)))
	}
	if h < len(lines)+4 {
		lines = m.helpTight(rows, w)
	}
	guard := fmt.Sprintf("A press sooner than %s after the last is not counted.", seconds(m.st.Plan.Spec.GuardMillis))
	if m.st.Plan.Spec.GuardMillis == 0 {
		guard = "The guard is off: every press counts."
	}
	lines = append(lines, "", "  "+guard)
	return look.WithFoot(lines, []string{s.KeyLine(w, m.Keys.AnyBack)}, w, h)
}

// shortKeys is the first of several keys for one thing, or both of two single letters.
func shortKeys(keys string) string {
	if len(keys) <= 3 {
		return keys
	}
	return strings.SplitN(keys, " ", 2)[0]
}

// helpTight is the list of keys for a small window: one line each.
func (m Model) helpTight(rows [][2]string, w int) []string {
	lines := []string{m.header(w), "", "  " + m.Styles.Title.Render("Keys while winding"), ""}
	for _, r := range rows {
		lines = append(lines, look.Fit("  "+m.Styles.Strong.Render(look.Pad(shortKeys(r[0]), 8))+r[1], w))
	}
	return lines
}
