package look

import (
	"strconv"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"millside/plan"
)

// Yarn is the look of a colour of yarn: its own colour as ground, and black or white on it, whichever is
// easier to read. A colour that nobody described has no ground, only its letter.
func (s Styles) Yarn(c plan.StripeColour) Style {
	rgb, err := strconv.ParseUint(strings.TrimPrefix(c.Shade, "#"), 16, 24)
	if err != nil || c.Shade == "" || !s.Color {
		return s.Strong
	}
	on := "#000000"
	if r, g, b := int(rgb>>16), int(rgb>>8&255), int(rgb&255); 299*r+587*g+114*b < 128_000 {
		on = "#ffffff"
	}
	yarn := s.r.NewStyle().Foreground(lipgloss.Color(on)).Background(lipgloss.Color(c.Shade))
	return Style{lip: &yarn}
}

// Patch shows a colour by its letter on its own ground, w cells wide.
func (s Styles) Patch(p *plan.Plan, colour, w int) string {
	c, ok := p.Colour(colour)
	if !ok {
		return Pad(Center("·", w), w)
	}
	return s.Yarn(c).Render(Pad(Center(string(plan.Letter(colour)), w), w))
}

// Named shows a colour's patch and its name.
func (s Styles) Named(p *plan.Plan, colour int) string {
	c, ok := p.Colour(colour)
	if !ok {
		return "empty"
	}
	return s.Patch(p, colour, 3) + " " + c.Name
}

// StripeCells draws so many cells, each in the colour that at gives, with a letter at the start of each
// run, or in every cell where there are no colours to see.
func StripeCells(s Styles, p *plan.Plan, w int, at func(x int) int) string {
	cells := make([]int, w)
	for x := range cells {
		cells[x] = at(x)
	}
	var b strings.Builder
	for x := 0; x < w; {
		end := x + 1
		for end < w && cells[end] == cells[x] {
			end++
		}
		c, _ := p.Colour(cells[x])
		letter := string(plan.Letter(cells[x]))
		text := letter + strings.Repeat(" ", end-x-1)
		if !s.Color || c.Shade == "" {
			text = strings.Repeat(letter, end-x)
		}
		b.WriteString(s.Yarn(c).Render(text))
		x = end
	}
	return b.String()
}
