package mill

import (
	"fmt"
	"strings"

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
// lies in the lease for this pass. Parked positions have no ground and stand in brackets.
func (m Model) paddleLines(pass wind.Pass, w, rows int) []string {
	p, s := m.s.State().Plan, m.Styles
	order, set := paddleOrder(p, pass), p.SetUpOf(pass)
	label := "paddle    "
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

// paddleSizes shows the paddle of a striped warp: its colours, and below them the positions.
func (m Model) paddleSizes(p wind.Pass, w int) [][]string {
	if !m.s.State().Plan.Striped() {
		return [][]string{nil}
	}
	return [][]string{nil, m.paddleLines(p, w, 1), m.paddleLines(p, w, 2)}
}
