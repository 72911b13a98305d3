package mill

import (
	"fmt"
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/key"

	"millside/counter/session"
	"millside/plan/measure"
	"millside/plan/wind"
	"millside/tui/keys"
	"millside/tui/look"
)

// passPage is the screen at the mill: what it is made of, each in its sizes. The instruction for the pass in
// hand and the message have their rows first; all else gives way to them.
type passPage struct {
	// bare are the steps before they are set on their side.
	bare [][]sized

	header, band, steps, now, reminders, paddle, pegs, mill, ends, progress, next, message, keys *look.Part
}

// viewPass is the screen at the mill, from three metres.
func (m Model) viewPass(w, h int) string {
	in, _ := m.s.Instruction(m.at)
	p := m.passPage(in, w)
	rows := m.besideSteps(in, p, w, h)
	if rows == nil {
		rows = look.Arrange(h, p.parts(), p.wishes(h))
	}
	return look.Screenful(rows, w, h)
}

func (p *passPage) parts() []*look.Part {
	return []*look.Part{p.header, p.band, p.steps, p.now, p.reminders, p.paddle, p.pegs, p.mill, p.ends, p.progress,
		p.next, p.message, p.keys}
}

// millFrom is the height from which the mill is drawn.
const millFrom = 46

// wishes are in the order of what matters at three metres.
func (p *passPage) wishes(h int) []look.Wish {
	block := look.Blocks
	wishes := []look.Wish{p.next.At(1), p.keys.At(1), p.steps.At(sizeOf(look.Double, bare)), p.band.At(1),
		p.steps.At(sizeOf(block, small)), p.progress.At(1), p.steps.At(sizeOf(block, bare)), p.now.At(1),
		p.reminders.At(1), p.next.At(2), p.message.At(1), p.header.At(1), p.paddle.At(1), p.progress.At(2),
		p.pegs.At(1),
		p.paddle.At(2), p.steps.At(sizeOf(block, roomy))}
	if h >= millFrom {
		wishes = append(wishes, p.mill.At(1))
	}
	for i := 1; i <= 8; i++ {
		z := block + look.Size(i)
		wishes = append(wishes, p.band.At(i+1))
		wishes = append(wishes, p.steps.At(sizeOf(z, small)))
		if i%2 == 0 { // half a row is empty below the letters; the other sizes would touch one another
			wishes = append(wishes, p.steps.At(sizeOf(z, bare)))
		}
		wishes = append(wishes, p.steps.At(sizeOf(z, roomy)), p.ends.At(1), p.ends.At(min(i, 2)),
			p.pegs.At(i), p.mill.At(i), p.steps.At(sizeOf(z-1, worded)))
	}
	return append(wishes, p.now.At(2), p.ends.At(2))
}

func (m Model) passPage(in session.Instruction, w int) *passPage {
	s, dir := m.Styles, in.Pass.Direction
	steps := stepSizes(s, stepsOf(in), w-4)
	placed := make([]look.Drawing, len(steps))
	for i := range steps {
		placed[i] = look.Drawing{Rows: rowsOf(steps[i]),
			Draw: func() []string { return m.onSide(coloured(steps[i], s.Way(dir)), dir, w) }}
	}
	header := tight(look.NewPart(nil, []string{m.passHeader(in, w)}))
	if in.Last { // it must be done for this pass, so it gives way to nothing
		header.Sizes = header.Sizes[1:]
	}
	return &passPage{
		bare:      steps,
		header:    header,
		band:      &look.Part{Sizes: m.bandSizes(in, w)},
		steps:     &look.Part{Sizes: placed},
		now:       look.NewPart(m.itemSizes(otherItems(in.Now), "NOW  ", w)...),
		reminders: look.NewPart(m.itemSizes(in.Reminders, "", w)...),
		paddle:    look.NewPart(m.paddleSizes(in.Pass, in.Kind, thenOf(in.Next), w)...),
		pegs:      &look.Part{Sizes: m.pegSizes(in.Pass, w)},
		mill:      &look.Part{Sizes: m.millSizes(in.Pass, w)},
		ends:      &look.Part{Sizes: m.endSizes(in, w)},
		progress:  tight(look.NewPart(m.progressSizes(in, w)...)),
		next:      tight(look.NewPart(m.nextSizes(in.Next, w)...)),
		message:   tight(look.NewPart(m.messageSizes(w)...)),
		keys:      look.NewPart(nil, []string{m.passKeys(w)}),
	}
}

// besideSteps draws the mill beside the steps where that is wide enough; nil where it isn't.
func (m Model) besideSteps(in session.Instruction, p *passPage, w, h int) []string {
	if h < millFrom {
		return nil
	}
	below := p.mill.Sizes
	p.mill.Sizes = below[:1]
	look.Choose(h, p.parts(), p.wishes(h))
	steps := coloured(p.bare[p.steps.Size()], m.Styles.Way(in.Pass.Direction))
	wide := widest(steps)
	c := look.DrawMill(m.s.State().Plan, in.Pass, min(w-wide-10, 90), min(len(steps), 24))
	if c == nil {
		p.mill.Sizes = below
		return nil
	}
	mill := middle(c.Lines(m.Styles.Inks(in.Pass.Direction)), len(steps))
	rows := look.Beside(look.Indent(steps, 2), mill, wide+6, 2)
	if m.onRight(in.Pass.Direction) {
		rows = look.Beside(look.Indent(mill, 2), steps, w-wide-4, 2)
	}
	p.steps.Sizes = []look.Drawing{look.Drawn(rows)}
	return look.Arrange(h, p.parts(), p.wishes(h))
}

// widest is the width of the widest row.
func widest(rows []string) int {
	wide := 0
	for _, r := range rows {
		wide = max(wide, look.Wide(r))
	}
	return wide
}

func tight(p *look.Part) *look.Part {
	p.Tight = true
	return p
}

// passHeader names the warp and the chain; on the last pass it says so, in its own colours.
func (m Model) passHeader(in session.Instruction, w int) string {
	if word := lastWords(in); word != "" {
		word = " " + look.Fit(word, w-4) + " "
		row := strings.Repeat("═", max((w-look.Wide(word))/2, 0)) + word
		return m.Styles.Warn.Render(row + strings.Repeat("═", max(w-look.Wide(row), 0)))
	}
	words := fmt.Sprintf("pass %d of %d, %s", in.Pass.Number, in.Of, in.Pass.Direction)
	if in.Kind != 0 {
		words += ", " + session.KindWords(in.Kind)
	}
	return m.header(words, w)
}

// lastWords says that the pass is the last one, and what it lays; empty where it isn't.
func lastWords(in session.Instruction) string {
	for _, item := range in.Now {
		if item.Kind == session.ItemLast {
			return strings.Replace(item.Text, "last pass", "LAST PASS", 1)
		}
	}
	return ""
}

// header names the warp and the chain, and says in words what the page draws large.
func (m Model) header(words string, w int) string {
	s, st := m.Styles, m.s.State()
	spec := st.Plan.Spec
	right := fmt.Sprintf("%d ends by %s ", spec.Ends, groupText(st.Plan))
	if left, ok := m.s.TimeLeft(); ok {
		right = leftText(left.Likely, left.Low, left.High) + " "
	}
	if n := len(st.Chains); n > 1 {
		chain := fmt.Sprintf("chain %d of %d", st.Chain, n)
		if colour, ok := st.Plan.Colour(st.Plan.ChainColour(st.Chain)); ok {
			chain += ": " + measure.Clean(colour.Name)
		}
		right = fmt.Sprintf("%s, %d of %d ends in all ", chain, st.EndsStandingAll(), st.Plan.EndsWound())
	}
	if m.rec.ReadOnly() {
		right = s.Warn.Render(" only looking ")
	}
	left := " " + s.Title.Render(measure.Clean(spec.Name))
	if words != "" {
		room := w - look.Wide(right) - look.Wide(words) - 4
		if room < leastName && !m.rec.ReadOnly() { // what the page is about comes before how much there is in all
			room, right = room+look.Wide(right), ""
		}
		left = " " + look.Fit(left[1:], room) + "  " + words
	}
	return look.Spread(left, s.Dim.Render(right), w)
}

// leastName is the room that a warp's name has in a header, so that it can be told from another.
const leastName = 6

// leftText says how long the rest of the chain takes at the winder's own pace.
func leftText(likely, low, high time.Duration) string {
	text := "about " + look.Roughly(likely) + " left"
	if low, high := low.Round(time.Minute), high.Round(time.Minute); low < high {
		text += fmt.Sprintf(" (%s to %s)", strings.TrimSuffix(look.Roughly(low), " min"), look.Roughly(high))
	}
	return text
}

// messageSizes is what just happened: one row that is always there, so that nothing else moves, and more
// where there is room.
func (m Model) messageSizes(w int) [][]string {
	msg := m.message()
	rows := m.messageRows(msg, w)
	if len(rows) <= 1 {
		return [][]string{append(rows, look.Blanks(1-len(rows))...)}
	}
	first := m.levelStyle(msg.Level).Render(look.Pad("  "+look.Fit(mark(msg)+msg.Text, w-4), w))
	return [][]string{{first}, rows}
}

// message is what the skin itself has to say, or else what the session says.
func (m Model) message() session.Message {
	if m.word.Text != "" {
		return m.word
	}
	return m.s.Message()
}

func mark(msg session.Message) string {
	if msg.Level == session.Alarm {
		return "! "
	}
	return ""
}

func (m Model) messageRows(msg session.Message, w int) []string {
	var out []string
	for _, l := range look.Wrap(mark(msg)+measure.Clean(msg.Text), w-4) {
		out = append(out, m.levelStyle(msg.Level).Render(look.Pad("  "+l, w)))
	}
	return out
}

func (m Model) levelStyle(l session.Level) look.Style {
	switch l {
	case session.Alarm:
		return m.Styles.Alarm
	case session.Due:
		return m.Styles.Warn
	}
	return m.Styles.Plain
}

// pegSizes draws the end of the mill that the group is heading for; where there is room, both ends.
func (m Model) pegSizes(p wind.Pass, w int) []look.Drawing {
	sizes := []look.Drawing{look.Drawn(nil)}
	for _, rows := range []int{look.PegRows, 9, 11} {
		sizes = append(sizes, look.Drawing{Rows: rows, Draw: func() []string { return m.drawing(p, w, rows) }})
	}
	return sizes
}

func (m Model) drawing(p wind.Pass, w, rows int) []string {
	hand, style := m.s.State().Plan.Spec.Hand, m.Styles.Inks(p.Direction)
	if w < 100 {
		draw := look.DrawLease
		if p.Direction.Far() {
			draw = look.DrawCross
		}
		return look.Indent(draw(p, w-4, rows, hand).Lines(style), 2)
	}
	half := (w - 8) / 2
	// The end that is left behind is drawn faint, the one that the group is heading for in full.
	behind := m.Styles.InksBehind(p.Direction)
	nearStyle, farStyle := behind, style
	if !p.Direction.Far() {
		nearStyle, farStyle = style, behind
	}
	lease := look.DrawLease(p, half, rows, hand).Lines(nearStyle)
	cross := look.DrawCross(p, half, rows, hand).Lines(farStyle)
	if hand == wind.LeftHanded {
		lease, cross = cross, lease
	}
	return look.Indent(look.Beside(lease, cross, half, 4), 2)
}

// millSizes draws the mill below the rest, where it isn't drawn beside the steps.
func (m Model) millSizes(p wind.Pass, w int) []look.Drawing {
	sizes := []look.Drawing{look.Drawn(nil)}
	if !look.MillFits(m.s.State().Plan, w-4, look.MillHeight) {
		return sizes
	}
	for _, rows := range []int{look.MillHeight, 12, 16, 20} {
		sizes = append(sizes, look.Drawing{Rows: rows, Draw: func() []string {
			return look.Indent(look.DrawMill(m.s.State().Plan, p, min(w-4, 100),
				rows).Lines(m.Styles.Inks(p.Direction)), 2)
		}})
	}
	return sizes
}

// progressSizes is the bar over all chains, with its numbers; in a striped warp the stripes are the bar, and
// the numbers come first where there is no room for both. The ends that stand are named here, away from the
// number of the pass.
func (m Model) progressSizes(in session.Instruction, w int) [][]string {
	st := m.s.State()
	laid, all := st.PassesLaidAll(), st.Plan.Passes()
	ends := measure.Counted(in.Standing, "end", "ends")
	text := fmt.Sprintf("  %s of %d on the mill  %d of %d passes laid", m.Styles.Strong.Render(ends), in.ChainEnds,
		laid, all)
	if look.Wide(text)+8 > w {
		text = fmt.Sprintf("  %s  %d of %d passes laid", m.Styles.Strong.Render(ends), laid, all)
	}
	if st.Plan.Striped() {
		return [][]string{nil, {text}, append(m.stripeBar(w), text)}
	}
	if look.Wide(text)+8 > w {
		return [][]string{nil, {text}}
	}
	return [][]string{nil, {"  " + m.Styles.Bar(laid, all, w-look.Wide(text)-4) + text}}
}

// The widths below which lines of keys use short words, and then leave out what is needed least.
const (
	roomForKeys = 100
	narrowKeys  = 78
)

func (m Model) passKeys(w int) string {
	k := m.Keys
	if m.rec.ReadOnly() {
		return m.Styles.KeyLine(w, k.Refresh, k.Far, k.Home, k.Leave)
	}
	if w < narrowKeys {
		k.Recount, k.Laid, k.Undo, k.Help = keys.As(k.Recount, "count"), keys.As(k.Laid, "laid"),
			keys.As(k.Undo, "back"), keys.As(k.Help, "")
	}
	line := []key.Binding{k.Laid, k.Undo, k.Pause, k.Recount, k.Note, k.Far, k.Help, k.Leave}
	return m.Styles.KeyLine(w, line...)
}
