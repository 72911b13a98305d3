package tui

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"millside/plan"
)

// yarn is the look of a colour of yarn: its own colour as ground, and black or white on it, whichever is
// easier to read. A colour that nobody described has no ground, only its letter.
func (s styles) yarn(c plan.StripeColour) lipgloss.Style {
	rgb, err := strconv.ParseUint(strings.TrimPrefix(c.Shade, "#"), 16, 24)
	if err != nil || c.Shade == "" {
		return s.strong
	}
	on := "#000000"
	if r, g, b := int(rgb>>16), int(rgb>>8&255), int(rgb&255); 299*r+587*g+114*b < 128_000 {
		on = "#ffffff"
	}
	return s.r.NewStyle().Foreground(lipgloss.Color(on)).Background(lipgloss.Color(c.Shade))
}

// patch shows a colour by its letter on its own ground, w cells wide.
func (s styles) patch(p *plan.Plan, colour, w int) string {
	c, ok := p.Colour(colour)
	if !ok {
		return pad(center("·", w), w)
	}
	return s.yarn(c).Render(pad(center(string(plan.Letter(colour)), w), w))
}

// named shows a colour's patch and its name.
func (s styles) named(p *plan.Plan, colour int) string {
	c, ok := p.Colour(colour)
	if !ok {
		return "empty"
	}
	return s.patch(p, colour, 3) + " " + c.Name
}

// paddleOrder lists the positions of a pass in the order in which they lie in the lease, parked ones in
// their place.
func paddleOrder(p *plan.Plan, pass plan.Pass) []int {
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
func (m winding) paddleLines(pass plan.Pass, w, rows int) []string {
	p, s := m.st.Plan, m.styles
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
			cells.WriteString(s.patch(p, colour, cell))
		case colour == 0 || cell < 3:
			cells.WriteString(s.dim.Render(pad(center("·", cell), cell)))
		default:
			cells.WriteString(s.dim.Render(pad(center("("+string(plan.Letter(colour))+")", cell), cell)))
		}
		number := fmt.Sprint(pos)
		if cell < 3 && pos%5 != 0 || len(number) > cell {
			number = ""
		}
		numbers.WriteString(pad(center(number, cell), cell))
	}
	out := []string{"  " + s.dim.Render(label) + cells.String()}
	if rows > 1 {
		out = append(out, "  "+s.dim.Render(pad("position", len(label))+numbers.String()))
	}
	return out
}

// stripeBar is the whole warp across the screen in the yarns' own colours, and below it how much of it
// stands.
func (m winding) stripeBar(w int) []string {
	p, s := m.st.Plan, m.styles
	all, width := p.EndsWound(), max(w-4, 1)
	bar := stripeCells(s, p, width, func(x int) int { return p.EndColour(x*all/width + 1) })
	laid := m.st.EndsStandingAll() * width / all
	text := fmt.Sprintf(" %d of %d passes laid", m.st.PassesLaidAll(), p.Passes())
	marks := []rune(strings.Repeat("━", max(laid-1, 0)) + "▲")
	if len(marks)+lipgloss.Width(text) > width {
		marks = []rune(spread(text, "▲", max(laid, 1)))
		text = ""
	}
	for _, i := range m.st.Incidents { // an x under each end to look for at the loom
		if x := (i.End - 1) * width / all; i.Stands() && i.End > 0 && x < len(marks)-1 {
			marks[x] = 'x'
		}
	}
	return []string{"  " + bar, "  " + s.outward.Render(string(marks)) + text}
}
