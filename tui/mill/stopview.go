package mill

import (
	"fmt"
	"strings"

	"millside/counter/session"
	"millside/plan"
	"millside/plan/measure"
	"millside/plan/wind"
	"millside/tui/keys"
	"millside/tui/look"
)

// viewStop is the work at an end peg: at which peg, position by position what is cut off, threaded and tied on, and
// what stays.
func (m Model) viewStop(w, h int) string {
	s, k := m.Styles, m.Keys
	stop, _ := m.s.Stop()
	peg := strings.ToUpper(stop.Work.Peg.String())
	title := heading{words: fmt.Sprintf("STOP AT THE %s BEFORE PASS %d", peg, stop.Work.Before),
		large: "STOP  " + strings.Replace(peg, " END", "", 1), ground: s.Warn}
	if look.Wide(title.words) > w-4 { // the pass is named in the smallest window too
		title.words = strings.Replace(title.words, " END PEG", " PEG", 1)
	}
	if stop.Work.Starts() {
		title = heading{words: "THREAD THE PADDLE", large: "THREAD THE PADDLE", ground: s.Warn, narrow: "THREAD"}
	}
	lines := look.NewPart(m.stopSizes(stop, w)...)
	paddle, kinds := m.stopPaddle(stop, w, h)
	stays, how := textPart(stop.Stays, s.Strong, w), mayGo(m.sentences([]string{stop.How}, w))
	count := mayGo(nil)
	if m.s.State().Laid() > 0 {
		count = mayGo(look.Indent(look.Painted(look.Wrap(m.s.Announce(m.at)[0], w-4), s.Dim), 2))
	}
	body := []*look.Part{lines, stays, paddle, how, count, kinds}
	wishes := []look.Wish{lines.At(1), lines.At(2), lines.At(3), paddle.At(1), how.At(1), paddle.At(2), count.At(1)}
	for n := 1; n < len(kinds.Sizes); n++ {
		wishes = append(wishes, kinds.At(n))
	}
	for z := 4; z < 8; z++ {
		wishes = append(wishes, lines.At(z))
	}
	return m.titled(title, s.KeyLine(w, keys.As(k.Laid, "the work is done"), k.Undo, k.Pause, k.Leave), body, wishes, w,
		h)
}

// stopPaddle draws the paddle as the work leaves it: before the first pass all that is threaded, and each kind of pass;
// later the kind that follows.
func (m Model) stopPaddle(stop session.Stop, w, h int) (paddle, kinds *look.Part) {
	if stop.Work.Starts() || stop.Kind == 0 {
		return look.NewPart(m.paddleSizes(m.wholePaddle(), 0, "", w)...), &look.Part{Sizes: m.kindSizes(w, h)}
	}
	next, _ := m.s.State().NextPass()
	next.Mirrored = false
	return look.NewPart(m.paddleSizes(next, stop.Kind, "", w)...), look.NewPart(nil)
}

// wholePaddle is the pass in hand as if it carried all threaded positions, in paddle order.
func (m Model) wholePaddle() wind.Pass {
	st := m.s.State()
	next, _ := st.NextPass()
	next.Carried, next.Mirrored = st.Plan.SetUpOf(next).Threaded(), false
	return next
}

// stopSizes draws the work: in one paragraph, a line for each, at double width, and in block letters.
func (m Model) stopSizes(stop session.Stop, w int) [][]string {
	s := m.Styles
	var texts []string
	for _, l := range stop.Lines {
		texts = append(texts, l.Text)
	}
	paragraph := look.Indent(look.Painted(look.Wrap(strings.Join(texts, "; "), w-4), s.Strong), 2)
	sizes := [][]string{paragraph}
	for z := look.AsItIs; z < look.Blocks+5; z++ {
		var rows []string
		for _, l := range stop.Lines {
			big := m.stopLine(l, z, w-4)
			if big == nil {
				return sizes
			}
			rows = append(rows, big...)
		}
		sizes = append(sizes, look.Indent(rows, 2))
	}
	return sizes
}

// stopLine draws the work on some positions at a size, with the yarns in their own colours beside it.
func (m Model) stopLine(l session.StopLine, z look.Size, w int) []string {
	s, p := m.Styles, m.s.State().Plan
	if z == look.AsItIs {
		return look.Painted(look.Wrap(l.Text, w), s.Strong)
	}
	rows := m.workAt(strings.ToUpper(l.Verb), strings.ToUpper(l.Positions.String()), z, w)
	if rows == nil {
		return nil
	}
	rows = look.Painted(rows, s.Strong)
	if l.From == 0 && l.To == 0 {
		return append(rows, look.Blanks(len(rows)/3)...)
	}
	yarn := m.yarnChange(p, l, len(rows))
	if wide := widest(rows); wide+3+widest(yarn) <= w {
		rows = look.Beside(rows, yarn, wide, 3)
	} else {
		rows = append(rows, yarn...)
	}
	return append(rows, look.Blanks(len(rows)/3)...)
}

// workAt draws what is done and to which positions at a size: on one line, or the positions on lines of their
// own, so that "2 to 9" isn't torn apart.
func (m Model) workAt(verb, positions string, z look.Size, w int) []string {
	s := m.Styles
	if all := verb + " " + positions; s.Width(all, z) <= w {
		return s.Wrapped(all, z, w)
	}
	first, second := s.Wrapped(verb, z, w), s.Wrapped(positions, z, w)
	if first == nil || second == nil {
		return nil
	}
	if z >= look.Blocks {
		first = append(first, "")
	}
	return append(first, second...)
}

// yarnChange shows the yarn that goes and the one that comes, each on its own ground, some rows high.
func (m Model) yarnChange(p *plan.Plan, l session.StopLine, rows int) []string {
	out := m.yarnBlock(p, l.To, rows)
	if l.From == 0 {
		return out
	}
	from := m.yarnBlock(p, l.From, rows)
	arrow := middle([]string{m.Styles.Strong.Render("▶")}, rows)
	return look.Beside(look.Beside(from, arrow, widest(from), 2), out, widest(from)+3, 2)
}

// yarnBlock is a yarn's colour as a block, with its letter and its name beside it.
func (m Model) yarnBlock(p *plan.Plan, colour, rows int) []string {
	c, ok := p.Colour(colour)
	if !ok {
		return middle([]string{"empty"}, rows)
	}
	ground := m.Styles.Yarn(c)
	out := make([]string, rows)
	for i := range out {
		text := ""
		if i == rows/2 {
			text = string(plan.Letter(colour))
		}
		side := m.Styles.Strong.Render("│") // a yarn in the colour of the ground has its edges too
		out[i] = side + ground.Render(look.Pad(look.Center(text, 2+2*rows), 2+2*rows)) + side
	}
	name := middle([]string{measure.Clean(c.Name)}, rows)
	return look.Beside(out, name, look.Wide(out[0]), 1)
}
