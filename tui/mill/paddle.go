package mill

import (
	"fmt"
	"strings"

	"millside/counter/session"
	"millside/plan"
	"millside/plan/stripe"
	"millside/plan/wind"
	"millside/tui/look"
)

// paddleOrder lists the positions of a pass in the order in which they lie in the lease, parked ones in
// their place.
func paddleOrder(p *plan.Plan, pass wind.Pass) []int {
	last := p.SetUpOf(pass).Threaded().Last()
	order := make([]int, 0, last)
	for pos := 1; pos <= last; pos++ {
		order = append(order, pos)
	}
	if pass.Mirrored {
		for i, j := 0, len(order)-1; i < j; i, j = i+1, j-1 {
			order[i], order[j] = order[j], order[i]
		}
	}
	return order
}

// paddleLines shows the paddle as it must be threaded, position by position, in the order in which it
// lies in the lease for this pass. Parked positions have no ground and stand in brackets. Where there are kinds of
// pass, this is how its kind is drawn, and it has its name; then is what follows, said beside it where there is room.
func (m Model) paddleLines(pass wind.Pass, kind int, then string, w, rows int) []string {
	p, s := m.s.State().Plan, m.Styles
	order, set := paddleOrder(p, pass), p.SetUpOf(pass)
	label := "paddle"
	if kind != 0 {
		label = session.KindWords(kind)
	}
	label = look.Pad(label, max(paddleLabel, look.Wide(label)+1))
	cell := min(max((w-len(label)-4)/max(len(order), 1), 1), 4)
	var cells, numbers strings.Builder
	for _, pos := range order {
		colour := 0
		if pos <= len(set) {
			colour = set[pos-1]
		}
		switch {
		case pass.Carried.Has(pos):
			cells.WriteString(s.Patch(p, colour, cell))
		case colour == 0 || cell < 3:
			cells.WriteString(s.Dim.Render(look.Pad(look.Center("·", cell), cell)))
		default:
			cells.WriteString(s.Dim.Render(look.Pad(look.Center("("+string(plan.Letter(colour))+")", cell), cell)))
		}
		number := fmt.Sprint(pos)
		if cell < 3 && pos%5 != 0 || len(number) > cell {
			number = ""
		}
		numbers.WriteString(look.Pad(look.Center(number, cell), cell))
	}
	out := []string{"  " + s.Dim.Render(label) + cells.String()}
	if then != "" && look.Wide(out[0])+3+look.Wide(then) <= w {
		out[0] += "   " + s.Strong.Render(then)
	}
	if rows > 1 {
		out = append(out, "  "+s.Dim.Render(look.Pad("position", len(label))+numbers.String()))
	}
	return out
}

// stripeBar is the whole warp across the screen in the yarns' own colours, and below it how much of it
// stands.
func (m Model) stripeBar(w int) []string {
	p, s := m.s.State().Plan, m.Styles
	all, width := p.EndsWound(), max(w-4, 1)
	stands := m.s.State().EndsStandingAll()
	drawn := stripe.DrawStripes(m.runs, width, min(stands+1, all))
	bar := look.StripeCells(s, p, len(drawn.Cells), func(x int) int { return drawn.Cells[x].Colour })
	laid := drawn.Laid(stands)
	text := ""
	if !drawn.Whole {
		text = fmt.Sprintf(" drawn: ends %d to %d", drawn.First(), drawn.Last())
	}
	marks := []rune(strings.Repeat("━", max(laid-1, 0)) + "▲")
	if len(marks)+look.Wide(text) > width {
		marks = []rune(look.Spread(text, "▲", max(laid, 1)))
		text = ""
	}
	for _, i := range m.s.State().Incidents { // an x under each end to look for at the loom
		if x := drawn.CellOf(i.End); i.Stands() && i.End >= drawn.First() && i.End <= drawn.Last() && x < len(marks)-1 {
			marks[x] = 'x'
		}
	}
	return []string{"  " + bar, "  " + s.Outward.Render(string(marks)) + text}
}

// paddleLabel is how wide what stands before the paddle is, where its words are no wider.
const paddleLabel = 10

// paddleSizes shows the paddle of a striped warp: its colours, and below them the positions. The kind is 0 where the
// paddle has none to show.
func (m Model) paddleSizes(p wind.Pass, kind int, then string, w int) [][]string {
	if !m.s.State().Plan.Striped() {
		return [][]string{nil}
	}
	return [][]string{nil, m.paddleLines(p, kind, then, w, 1), m.paddleLines(p, kind, then, w, 2)}
}

// kindHead is how many rows stand above the kinds of pass: an empty one, and what they are.
const kindHead = 2

// kindRows draws each kind of pass once, as many as there is room for, position 1 first; nil where there are none, or
// where there is no room.
func (m Model) kindRows(w, room int) []string {
	list, more := m.s.Kinds(room - kindHead)
	if more > 0 {
		list, more = m.s.Kinds(room - kindHead - 1)
	}
	if len(list) == 0 {
		return nil
	}
	rows := []string{"", "  " + m.Styles.Title.Render("Kinds of pass") + ", position 1 first; in brackets: parked"}
	for _, k := range list {
		k.First.Mirrored = false
		rows = append(rows, m.paddleLines(k.First, k.Number, "", w, 1)...)
	}
	if more > 0 {
		rows = append(rows, "  "+m.Styles.Dim.Render(fmt.Sprintf("and %d more, on the whole plan", more)))
	}
	return rows
}

// kindSizes draws the kinds of pass: not at all, or as many as find room in so many rows.
func (m Model) kindSizes(w, h int) []look.Drawing {
	sizes := []look.Drawing{look.Drawn(nil)}
	list, _ := m.s.Kinds(h)
	for room := kindHead + 2; room <= min(h, kindHead+len(list)); room++ {
		sizes = append(sizes, look.Drawing{Rows: room, Draw: func() []string { return m.kindRows(w, room) }})
	}
	return sizes
}
