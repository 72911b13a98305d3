package tui

import (
	"io"

	"github.com/charmbracelet/bubbles/progress"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"millside/plan"
)

// styles holds the looks that all screens share. Only the sixteen colours of the terminal are used,
// so that they suit a light and a dark ground alike; yarns are the exception.
type styles struct {
	r       *lipgloss.Renderer
	plain   lipgloss.Style
	title   lipgloss.Style // names of screens and warps
	dim     lipgloss.Style // what may be overlooked
	strong  lipgloss.Style
	figure  lipgloss.Style // the big figures
	outward lipgloss.Style // what belongs to an outward pass
	ret     lipgloss.Style // what belongs to a return pass
	slots   lipgloss.Style // the half of the group in the slots
	outBand lipgloss.Style // the direction, on its own ground
	retBand lipgloss.Style
	warn    lipgloss.Style // something is due
	alarm   lipgloss.Style // something is wrong
	good    lipgloss.Style
	field   lipgloss.Style // the field being filled in
	color   bool
}

// newStyles makes the looks for an output. With the Ascii profile nothing is coloured.
func newStyles(w io.Writer, profile termenv.Profile) styles {
	r := lipgloss.NewRenderer(w)
	r.SetColorProfile(profile)
	// The ground is never asked for: some terminals don't answer, and these looks suit both.
	r.SetHasDarkBackground(true)
	fg := func(c string) lipgloss.Style { return r.NewStyle().Foreground(lipgloss.Color(c)) }
	// Not bold: many terminals draw bold black as grey.
	on := func(f, b string) lipgloss.Style { return fg(f).Background(lipgloss.Color(b)) }
	return styles{
		r: r, plain: r.NewStyle(), title: r.NewStyle().Bold(true), dim: r.NewStyle().Faint(true),
		strong: r.NewStyle().Bold(true), figure: r.NewStyle().Bold(true),
		outward: fg("6").Bold(true), ret: fg("5").Bold(true), slots: fg("2").Bold(true),
		outBand: on("0", "6"), retBand: on("15", "5"), warn: on("0", "3"), alarm: on("15", "1"),
		good: fg("2").Bold(true), field: r.NewStyle().Bold(true).Underline(true),
		color: profile != termenv.Ascii,
	}
}

// bar is a bar of so many cells, filled as far as done is of all.
func (s styles) bar(done, all, cells int) string {
	bar := progress.New(progress.WithoutPercentage(), progress.WithSolidFill("6"), progress.WithFillCharacters('█', '░'),
		progress.WithWidth(cells), progress.WithColorProfile(s.r.ColorProfile()))
	bar.EmptyColor = "8"
	return bar.ViewAs(float64(done) / float64(max(all, 1)))
}

// way is the colour of a direction.
func (s styles) way(d plan.Direction) lipgloss.Style {
	if d.Far() {
		return s.outward
	}
	return s.ret
}

// band is the ground of a direction.
func (s styles) band(d plan.Direction) lipgloss.Style {
	if d.Far() {
		return s.outBand
	}
	return s.retBand
}

// inks gives the drawing of a pass its colours.
func (s styles) inks(d plan.Direction) func(ink) lipgloss.Style {
	return func(k ink) lipgloss.Style {
		switch k {
		case inkPath:
			return s.way(d)
		case inkPath2:
			return s.slots
		case inkStrong, inkPeg:
			return s.strong
		case inkLabel:
			return s.dim
		default:
			return s.plain
		}
	}
}
