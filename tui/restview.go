package tui

import (
	"fmt"
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/lipgloss"

	"millside/plan"
)

// viewResting is the pause, and the page on coming back: what must be seen on the mill before winding
// goes on.
func (m winding) viewResting(w, h int) string {
	s, k := m.styles, m.keys
	title := "PAUSED"
	if m.mode == modeResume {
		title = "WELCOME BACK"
	}
	lines := []string{m.header(w)}
	lines = append(lines, filled([]string{"", "  " + title + "  ·  look at the mill before you go on", ""}, s.warn, w)...)
	if h >= 22 {
		lines = append(lines, "")
	}
	lines = append(lines, m.mustBeSeen(w, h)...)
	if m.flash != "" {
		lines = append(lines, "", s.warn.Render(fit("  "+m.flash+" ", w)))
	}
	foot := []string{s.keyLine(w, k.GoOn, as(k.Recount, "doesn't: recount"), k.Note, k.Leave)}
	return withFoot(lines, foot, w, h)
}

// mustBeSeen lists what stands on the mill if the count is right.
func (m winding) mustBeSeen(w, h int) []string {
	s, c, laid := m.styles, m.st.Current(), m.st.Laid()
	cross := m.st.Cross()
	row := func(name, value string) string {
		return fit("  "+s.dim.Render(pad(name, 18))+s.strong.Render(value), w)
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
	if away := m.st.Away(m.now()); away > time.Minute || m.st.Paused {
		out = append(out, row("stopped", when(m.st.Last, m.now())))
	}
	if m.st.TwistAdvice() != "" {
		out = append(out, fit("  "+m.styles.warn.Render(" "+m.st.TwistAdvice()+" "), w))
	}
	out = append(out,
		row("paddle", where),
		row("last turn", strings.ToUpper(last.TurnAfter.String())+" round the end peg"),
		row("counting cross", fmt.Sprintf("%s over peg 1, %d over peg 2", plan.Counted(cross.OverPeg1, "group", "groups"), cross.OverPeg2)))
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
func (m winding) crossPicture(over1, over2, w int) []string {
	c := newCanvas(w-4, 5, m.st.Plan.Spec.Hand == plan.LeftHanded)
	f := rowsOf(5)
	x1, x2 := (w-4)/4, (w-4)*3/4
	mid := (x1 + x2) / 2
	c.across(2, mid-2, f.top, '━', inkPath)
	c.across(2, mid-2, f.bottom, '━', inkPath)
	c.across(mid+2, w-7, f.top, '━', inkPath)
	c.across(mid+2, w-7, f.bottom, '━', inkPath)
	for i := range 3 {
		c.set(mid-1+i, f.top+i, '╲', inkPath)
		c.set(mid+1-i, f.top+i, '╱', inkPath)
	}
	c.set(mid, f.mid, '╳', inkPath)
	c.peg(x1, f, '1')
	c.peg(x2, f, '2')
	c.text(x1, f.label, plan.Counted(over1, "group", "groups")+" over", inkStrong)
	c.text(x2, f.label, plan.Counted(over2, "group", "groups")+" over", inkStrong)
	c.text(x1, f.names, "peg 1", inkLabel)
	c.text(x2, f.names, "peg 2", inkLabel)
	return indent(c.lines(m.styles.inks(plan.Outward)), 2)
}

// viewLease asks the weaver to compare the second group in the lease with the drawing.
func (m winding) viewLease(w, h int) string {
	s, k := m.styles, m.keys
	order := m.st.Plan.Spec.ReturnOrder
	lines := []string{m.header(w)}
	lines = append(lines, filled([]string{"", "  LOOK AT THE LEASE  ·  do both groups lie as drawn?", ""}, s.warn, w)...)
	lines = append(lines, "")
	lines = append(lines, m.leasePicture(w)...)
	lines = append(lines, "")
	text := "The second group lies in the same order as the first: its lowest position next to the first group. In the other order its highest position would lie there."
	if order == plan.MirroredOrder {
		text = "The second group lies the other way round: its highest position next to the first group. In the other order its lowest position would lie there."
	}
	lines = append(lines, indent(wrap(text, w-4), 2)...)
	if m.ignore != "" {
		lines = append(lines, "", s.alarm.Render(fit("  ! "+m.ignore+" ", w)))
	}
	foot := []string{s.keyLine(w, as(k.GoOn, "as drawn"), k.Other, k.Undo, k.Leave)}
	return withFoot(lines, foot, w, h)
}

// leasePicture shows the positions of the first two groups in the order in which they lie in the
// lease: ends over peg A above, ends under it below. Groups too wide for the screen lose their middle.
func (m winding) leasePicture(w int) []string {
	const names, cell = 14, 3
	c, s := m.st.Current(), m.styles
	perGroup := max((w-names-8)/cell/2, 3)
	rows := [5]string{pad("over peg A", names), pad("under peg A", names), pad("position", names), pad("colour", names), pad("", names)}
	for i, p := range []plan.Pass{c.Passes[0], c.Passes[1]} {
		over, under, positions, colours := m.groupPicture(p, perGroup)
		wide := max(lipgloss.Width(positions), 14)
		for row, text := range []string{s.outward.Render(over), s.outward.Render(under), s.strong.Render(positions), colours, s.dim.Render([]string{"  first group", "  second group"}[i])} {
			rows[row] += pad(text, wide) + "   "
		}
	}
	out := rows[:]
	if !m.st.Plan.Striped() {
		out = append(rows[:3:3], rows[4])
	}
	return indent(out, 2)
}

// groupPicture draws at most so many ends of a group, three cells each.
func (m winding) groupPicture(p plan.Pass, most int) (over, under, positions, colours string) {
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
		colours += m.styles.patch(m.st.Plan, m.st.Plan.EndColour(end), 3)
	}
	return over, under, positions, colours
}

// viewPrompt asks for a count or a note.
func (m winding) viewPrompt(w, h int) string {
	s, k, title := m.styles, m.keys, m.prompt.question.title()
	lines := []string{m.header(w)}
	lines = append(lines, filled([]string{"", "  " + title, ""}, s.warn, w)...)
	lines = append(lines, "")
	lines = append(lines, m.prompt.lines(s, m.st, w)...)
	keys := []key.Binding{bind("enter", "keep it", "enter"), k.Back}
	if len(m.prompt.fields) > 1 {
		keys = append(keys, bind("tab", "next field", "tab"))
	}
	return withFoot(lines, []string{s.keyLine(w, keys...)}, w, h)
}

// viewBroken says loudly that nothing was counted.
func (m winding) viewBroken(w, h int) string {
	s, k := m.styles, m.keys
	lines := []string{m.header(w)}
	lines = append(lines, filled([]string{"", "  NOT SAVED  ·  the count did not move", ""}, s.alarm, w)...)
	lines = append(lines, "", s.strong.Render(fmt.Sprintf("  %d passes are on the disk", m.st.Laid())), "")
	lines = append(lines, indent(wrap(plan.Clean(m.broken.Error()), w-4), 2)...)
	lines = append(lines, "")
	lines = append(lines, indent(wrap("Stop winding. Make room on the disk, or put the stick back, then try again: the record is read anew, and the page after it says what must stand on the mill.", w-4), 2)...)
	return withFoot(lines, []string{s.keyLine(w, k.Retry, k.Leave)}, w, h)
}

// viewHelp lists all keys of the winding screen and what they do.
func (m winding) viewHelp(w, h int) string {
	s := m.styles
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
	lines := []string{m.header(w), "", "  " + s.title.Render("Keys while winding"), ""}
	for _, r := range rows {
		if w >= 90 {
			lines = append(lines, "  "+s.strong.Render(pad(r[0], 34))+r[1])
			continue
		}
		lines = append(lines, "  "+s.strong.Render(fit(r[0], w-4)), "      "+s.dim.Render(fit(r[1], w-8)))
	}
	if h < len(lines)+4 {
		lines = m.helpTight(rows, w)
	}
	guard := fmt.Sprintf("A press sooner than %s after the last is not counted.", seconds(m.st.Plan.Spec.GuardMillis))
	if m.st.Plan.Spec.GuardMillis == 0 {
		guard = "The guard is off: every press counts."
	}
	lines = append(lines, "", "  "+guard)
	return withFoot(lines, []string{s.keyLine(w, bind("any key", "back", "esc"))}, w, h)
}

// shortKeys is the first of several keys for one thing, or both of two single letters.
func shortKeys(keys string) string {
	if len(keys) <= 3 {
		return keys
	}
	return strings.SplitN(keys, " ", 2)[0]
}

// helpTight is the list of keys for a small window: one line each.
func (m winding) helpTight(rows [][2]string, w int) []string {
	lines := []string{m.header(w), "", "  " + m.styles.title.Render("Keys while winding"), ""}
	for _, r := range rows {
		lines = append(lines, fit("  "+m.styles.strong.Render(pad(shortKeys(r[0]), 8))+r[1], w))
	}
	return lines
}
