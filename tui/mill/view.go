package mill

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"millside/plan"
	"millside/tui/keys"
	"millside/tui/look"
)

// View draws the page that belongs to the mode at exactly w by h cells.
func (m Model) View(w, h int) string {
	if w < look.MinWidth || h < look.MinHeight {
		return m.viewTiny(w, h)
	}
	switch m.mode {
	case modeResume, modePaused:
		return m.viewResting(w, h)
	case modeLease:
		return m.viewLease(w, h)
	case modeChange:
		return m.viewChange(w, h)
	case modePrompt:
		return m.viewPrompt(w, h)
	case modeHelp:
		return m.viewHelp(w, h)
	case modeFinish:
		return m.viewFinish(w, h)
	case modeDone:
		return m.viewDone(w, h)
	case modeBroken:
		return m.viewBroken(w, h)
	}
	switch _, more := m.st.NextPass(); {
	case !more:
		return m.viewFinish(w, h) // only looking at a warp that is wound
	case m.far && m.isLast():
		return m.framed(w, h, m.viewFar)
	case m.far:
		return m.viewFar(w, h)
	case m.isLast():
		return m.framed(w, h, m.viewPass)
	default:
		return m.viewPass(w, h)
	}
}

// isLast says whether the pass to be laid is the last of its chain.
func (m Model) isLast() bool {
	return m.st.Laid()+1 == len(m.st.Current().Passes)
}

// framed draws a page inside a double border: the last pass changes the whole screen.
func (m Model) framed(w, h int, page func(w, h int) string) string {
	inner := strings.Split(page(w-4, h-2), "\n")
	edge := m.Styles.Warn
	label := " LAST PASS "
	bar := strings.Repeat("═", max((w-2-len(label))/2, 0))
	top := "╔" + bar + label + strings.Repeat("═", max(w-2-len(label)-len(bar)/len("═"), 0)) + "╗"
	out := []string{edge.Render(look.Fit(top, w))}
	for _, l := range inner {
		out = append(out, edge.Render("║")+" "+look.Pad(l, w-4)+" "+edge.Render("║"))
	}
	out = append(out, edge.Render("╚"+strings.Repeat("═", max(w-2, 0))+"╝"))
	return strings.Join(out, "\n")
}

// viewPass is the screen at the mill.
func (m Model) viewPass(w, h int) string {
	pass, _ := m.st.NextPass()
	sz := m.sizes(h)
	lines := []string{m.header(w)}
	lines = append(lines, m.band(pass, w, sz.band)...)
	lines = append(lines, look.Blanks(sz.gap)...)
	lines = append(lines, m.counts(w, sz.figures)...)
	lines = append(lines, look.Blanks(sz.gap)...)
	if sz.paddle > 0 {
		lines = append(lines, m.paddleLines(pass, w, sz.paddle)...)
	}
	lines = append(lines, m.drawing(pass, w, sz.drawing)...)
	if h >= 38 {
		lines = append(lines, "")
	}
	lines = append(lines, m.howTo(pass, w)...)
	foot := m.foot(w, h)
	if len(lines)+len(foot) > h {
		lines = lines[1:] // in a small window the warp's name gives way to what has to be done
	}
	if extra := len(lines) + len(foot) - h; extra > 0 && h < 20 {
		foot = foot[min(extra, len(m.progress(w))):] // then the bar
	}
	return look.WithFoot(lines, foot, w, h)
}

// sizes are the heights of the parts of the winding screen.
type sizes struct{ band, gap, figures, paddle, drawing int }

// sizes shares out the height; a striped warp needs three rows more, for the paddle and the stripes.
func (m Model) sizes(h int) sizes {
	if !m.st.Plan.Striped() {
		return sizesFor(h)
	}
	switch {
	case h >= 22:
		sz := sizesFor(h - 3)
		sz.paddle = 2
		return sz
	case h >= 16:
		return sizes{band: 1, figures: 3, paddle: 1, drawing: look.PegRows}
	default:
		return sizes{band: 1, figures: 3, paddle: 1}
	}
}

// sizesFor shares out the height: the direction and the figures grow first.
func sizesFor(h int) sizes {
	switch {
	case h >= 56:
		return sizes{band: 10, gap: 2, figures: 15, drawing: 11}
	case h >= 46:
		return sizes{band: 8, gap: 1, figures: 13, drawing: 9}
	case h >= 38:
		return sizes{band: 5, gap: 1, figures: 10, drawing: 9}
	case h >= 30:
		return sizes{band: 5, gap: 1, figures: 8, drawing: 5}
	case h >= 24:
		return sizes{band: 3, gap: 1, figures: 5, drawing: look.PegRows}
	case h >= 22:
		return sizes{band: 3, figures: 5, drawing: look.PegRows}
	case h >= 18:
		return sizes{band: 3, figures: 3, drawing: look.PegRows}
	case h >= 16:
		return sizes{band: 1, figures: 3, drawing: look.PegRows}
	default:
		return sizes{band: 1, figures: 3, drawing: 0}
	}
}

// header names the warp and the chain.
func (m Model) header(w int) string {
	s, spec := m.Styles, m.st.Plan.Spec
	right := fmt.Sprintf("%d ends by %d ", spec.Ends, spec.Group)
	if left := m.timeLeft(); left != "" {
		right = left + " "
	}
	if n := len(m.st.Chains); n > 1 {
		right = fmt.Sprintf("chain %d of %d, %d of %d ends in all ", m.st.Chain, n, m.st.EndsStandingAll(), m.st.Plan.EndsWound())
	}
	if m.rec.ReadOnly() {
		right = s.Warn.Render(" only looking ")
	}
	return look.Spread(" "+s.Title.Render(spec.Name), s.Dim.Render(right), w)
}

// band tells the direction: the word in block letters, the arrow, its own side and its own ground.
func (m Model) band(p plan.Pass, w, rows int) []string {
	word, to := "OUTWARD >", "to the counting cross"
	if !p.Direction.Far() {
		word, to = "< RETURN", "back to the lease"
	}
	right := p.Direction.Far() == (m.st.Plan.Spec.Hand == plan.RightHanded)
	if m.st.Plan.Spec.Hand == plan.LeftHanded {
		word = mirrorWord(word)
	}
	big := look.BigText(word, w-4, rows)
	if rows < 3 {
		big = []string{strings.NewReplacer(">", "━━━━▶", "<", "◀━━━━").Replace(word)}
	}
	bigWidth := lipgloss.Width(big[0])
	small := to
	if w-bigWidth-6 < len(to) {
		small = ""
	}
	var out []string
	for i, l := range big {
		note := ""
		if i == len(big)/2 {
			note = small
		}
		line := look.Spread("  "+l, note+"  ", w)
		if right {
			line = look.Spread("  "+note, l+"  ", w)
		}
		out = append(out, m.Styles.Band(p.Direction).Render(look.Pad(line, w)))
	}
	return out
}

// mirrorWord turns the arrow of the direction round for a left-handed layout.
func mirrorWord(word string) string {
	if rest, ok := strings.CutSuffix(word, " >"); ok {
		return "< " + rest
	}
	return strings.TrimPrefix(word, "< ") + " >"
}

// counts shows the number of the pass and the ends that stand.
func (m Model) counts(w, rows int) []string {
	c := m.st.Current()
	half := (w - 2) / 2
	number, standing := fmt.Sprint(m.st.Laid()+1), fmt.Sprint(m.st.EndsStanding())
	scale := min(look.FiguresScale(number, half-12, rows), look.FiguresScale(standing, half-14, rows))
	left := m.figureBlock(number, scale, "PASS", fmt.Sprintf("of %d", len(c.Passes)))
	right := m.figureBlock(standing, scale, "ENDS", "on the mill", fmt.Sprintf("of %d", c.Ends()))
	return look.Indent(look.Beside(left, right, half, 0), 2)
}

// figureBlock sets block figures with words beside them.
func (m Model) figureBlock(text string, scale int, words ...string) []string {
	big := []string{text}
	if scale > 0 {
		big = look.Figures(text, scale)
	}
	out := look.Painted(big, m.Styles.Figure)
	for len(out) < len(words) {
		out = append(out, strings.Repeat(" ", lipgloss.Width(big[0])))
	}
	for i, word := range words {
		row := i
		if i > 0 && i == len(words)-1 {
			row = len(out) - 1 // the last word stands at the foot of the figures
		}
		style := m.Styles.Plain
		if i == 0 {
			style = m.Styles.Strong
		}
		out[row] += "  " + style.Render(word)
	}
	return out
}

// drawing shows the end of the mill that the group is heading for; where there is room, both ends.
func (m Model) drawing(p plan.Pass, w, rows int) []string {
	if rows < look.PegRows {
		return nil
	}
	hand, style := m.st.Plan.Spec.Hand, m.Styles.Inks(p.Direction)
	if w < 100 {
		draw := look.DrawLease
		if p.Direction.Far() {
			draw = look.DrawCross
		}
		return look.Indent(draw(p, w-4, rows, hand).Lines(style), 2)
	}
	half := (w - 8) / 2
	// The end that is left behind is drawn faint, the one that the group is heading for in full.
	behind := func(k look.Ink) lipgloss.Style { return style(k).Bold(false).Faint(true) }
	nearStyle, farStyle := behind, style
	if !p.Direction.Far() {
		nearStyle, farStyle = style, behind
	}
	lease := look.DrawLease(p, half, rows, hand).Lines(nearStyle)
	cross := look.DrawCross(p, half, rows, hand).Lines(farStyle)
	if hand == plan.LeftHanded {
		lease, cross = cross, lease
	}
	return look.Indent(look.Beside(lease, cross, half, 4), 2)
}

// howTo puts the drawing into words: how to leave, how to arrive, how to turn.
func (m Model) howTo(p plan.Pass, w int) []string {
	s := m.Styles
	lease := fmt.Sprintf("%s %s, flick, %s %s", p.FirstPeg(), p.OpeningAt(p.FirstPeg()), p.FirstPeg().Other(), p.OpeningAt(p.FirstPeg().Other()))
	cross := fmt.Sprintf("over %d, under %d", p.CrossOver(), p.CrossUnder())
	atLease, atCross, indented, label := "lease: ", "counting cross: ", "  ", 8
	if w < narrowHow {
		atLease, atCross, indented, label = "", "", "", 7
	}
	leave, arrive, peg := atLease+lease, atCross+cross, "far"
	if !p.Direction.Far() {
		leave, arrive, peg = arrive, leave, "near"
	}
	turn := fmt.Sprintf("%s round the %s end peg", strings.ToUpper(p.TurnAfter.String()), peg)
	if note := m.openingRound(p); note != "" && w >= len(turn)+len(note)+10 {
		turn += "; " + note
	}
	if w < narrowHow {
		turn = fmt.Sprintf("%s, %s peg", strings.ToUpper(p.TurnAfter.String()), peg)
	}
	row := func(word, text string, style lipgloss.Style) string {
		return look.Fit(indented+s.Dim.Render(look.Pad(word, label))+style.Render(text), w)
	}
	return []string{row("leave", leave, s.Plain), row("arrive", arrive, s.Strong), row("turn", turn, s.Strong)}
}

// narrowHow is the width below which the instructions lose all words that can be missed.
const narrowHow = 56

// openingRound says whether the paddle keeps its opening on the way round the near peg.
func (m Model) openingRound(p plan.Pass) string {
	c := m.st.Current()
	switch {
	case p.Direction.Far() || p.Number == len(c.Passes):
		return ""
	case c.KeepsOpening(p.Number):
		return "keep the opening, no flick"
	default:
		return "flick once more round the peg"
	}
}

// foot is what stays at the foot of the screen: how far, what is due, what comes, and the keys. A small
// window has room for one of the two: what is due comes before what is next.
func (m Model) foot(w, h int) []string {
	pass, _ := m.st.NextPass()
	out, next := m.progress(w), m.nextLine(pass, w)
	switch {
	case h >= 22:
		out = append(append(out, m.dueLines(w, 2)...), next)
	case h >= 20:
		out = append(append(out, m.dueLines(w, 1)...), next)
	default:
		due := slices.DeleteFunc(m.dueLines(w, 2), func(l string) bool { return l == "" })
		if len(due) == 0 {
			due = []string{next}
		}
		out = append(out, due...)
	}
	return append(out, m.keyLineWind(w))
}

// narrow is the width below which the key line needs its shortest words.
const narrow = 78

func (m Model) keyLineWind(w int) string {
	k := m.Keys
	if m.rec.ReadOnly() {
		return m.Styles.KeyLine(w, k.Refresh, k.Far, keys.As(k.Back, "home"), k.Leave)
	}
	if w < narrow {
		k.Recount, k.Laid, k.Help = keys.As(k.Recount, "count"), keys.As(k.Laid, "laid"), keys.As(k.Help, "")
	}
	if w < narrow-20 {
		k.Far = keys.As(k.Far, "")
	}
	return m.Styles.KeyLine(w, k.Laid, k.Undo, k.Pause, k.Recount, k.Note, k.Far, k.Help, k.Leave)
}

// progress is the bar over all chains, with its numbers; in a striped warp the stripes are the bar.
func (m Model) progress(w int) []string {
	p := m.st.Plan
	if p.Striped() {
		return m.stripeBar(w)
	}
	laid, all := m.st.PassesLaidAll(), p.Passes()
	text := fmt.Sprintf("  %d of %d passes laid", laid, all)
	bar := m.Styles.Bar(laid, all, max(w-lipgloss.Width(text)-4, 4))
	return []string{"  " + bar + m.Styles.Plain.Render(text)}
}

// dueLines says in so many rows what has to be done now; a press that was not counted and what just
// happened come before it. The rows are there even when there is nothing to say, so that nothing else
// on the screen moves.
func (m Model) dueLines(w, rows int) []string {
	s := m.Styles
	text, style := "", s.Warn
	switch {
	case m.ignore != "":
		text, style = "! "+m.ignore, s.Alarm
	case m.flash != "":
		text = m.flash
	default:
		texts := append(m.troubleDue(), taskTexts(m.dueNow())...)
		if len(texts) > 0 {
			text = "NOW  " + strings.Join(texts, "; ")
		} else if text = m.restText(); text != "" {
			style = s.Plain
		}
	}
	out, lines := make([]string, rows), look.Wrap(text, w-4)
	if len(lines) > rows {
		lines = append(lines[:rows-1], look.Fit(lines[rows-1], w-6)+" …")
	}
	for i, l := range lines {
		out[i] = style.Render(look.Pad("  "+l, w))
	}
	return out
}

// nextLine announces what comes after this pass.
func (m Model) nextLine(p plan.Pass, w int) string {
	s := m.Styles
	texts := append(m.coneTasks(p.Number+1), taskTexts(m.coming())...)
	if len(texts) == 0 {
		way := plan.Return
		if !p.Direction.Far() {
			way = plan.Outward
		}
		texts = []string{fmt.Sprintf("pass %d, %s%s", p.Number+1, way, m.nextTie(p.Number))}
	}
	return look.Fit("  "+s.Dim.Render("next ")+" "+strings.Join(texts, "; "), w)
}

func (m Model) nextTie(number int) string {
	if at := m.st.Plan.NextTie(m.st.Current(), number); at > 0 {
		return fmt.Sprintf("; count tie after pass %d", at)
	}
	return ""
}

// taskTexts puts tasks into words, the pressing ones first.
func taskTexts(tasks []plan.Task) []string {
	var out []string
	for _, t := range tasks {
		switch t.Kind {
		case plan.CheckLease: // asked on a page of its own
		case plan.LastPassIsNext, plan.TieOff:
			out = append([]string{t.Text}, out...)
		default:
			out = append(out, t.Text)
		}
	}
	return out
}

// viewTiny is for a terminal too small for anything but the count.
func (m Model) viewTiny(w, h int) string {
	pass, more := m.st.NextPass()
	if !more || m.mode != modeWind {
		return look.Screenful([]string{"this window is too small for this page", fmt.Sprintf("make it at least %d by %d", look.MinWidth, look.MinHeight)}, w, h)
	}
	return look.Screenful([]string{
		m.Styles.Way(pass.Direction).Render(strings.ToUpper(pass.Direction.String())),
		fmt.Sprintf("pass %d of %d", pass.Number, len(m.st.Current().Passes)),
		fmt.Sprintf("%d ends", m.st.EndsStanding()),
		m.ignore,
	}, w, h)
}
