package look

import (
	"io"

	"github.com/charmbracelet/bubbles/progress"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"millside/plan"
)

// Styles holds the looks that all screens share. Only the sixteen colours of the terminal are used,
// so that they suit a light and a dark ground alike; yarns are the exception.
type Styles struct {
	r       *lipgloss.Renderer
	Plain   lipgloss.Style
	Title   lipgloss.Style // names of screens and warps
	Dim     lipgloss.Style // what may be overlooked
	Strong  lipgloss.Style
	Figure  lipgloss.Style // the big figures
	Outward lipgloss.Style // what belongs to an outward pass
	Ret     lipgloss.Style // what belongs to a return pass
	Slots   lipgloss.Style // the half of the group in the slots
	OutBand lipgloss.Style // the direction, on its own ground
	RetBand lipgloss.Style
	Warn    lipgloss.Style // something is due
	Alarm   lipgloss.Style // something is wrong
	Good    lipgloss.Style
	Field   lipgloss.Style // the field being filled in
	Color   bool
}

// NewStyles makes the looks for an output. With the Ascii profile nothing is coloured.
func NewStyles(w io.Writer, profile termenv.Profile) Styles {
	r := lipgloss.NewRenderer(w)
	r.SetColorProfile(profile)
	// The ground is never asked for: some terminals don't answer, and these looks suit both.
	r.SetHasDarkBackground(true)
	fg := func(c string) lipgloss.Style { return r.NewStyle().Foreground(lipgloss.Color(c)) }
	// Not bold: many terminals draw bold black as grey.
	on := func(f, b string) lipgloss.Style { return fg(f).Background(lipgloss.Color(b)) }
	return Styles{
		r: r, Plain: r.NewStyle(), Title: r.NewStyle().Bold(true), Dim: r.NewStyle().Faint(true),
		Strong: r.NewStyle().Bold(true), Figure: r.NewStyle().Bold(true),
		Outward: fg("6").Bold(true), Ret: fg("5").Bold(true), Slots: fg("2").Bold(true),
		OutBand: on("0", "6"), RetBand: on("15", "5"), Warn: on("0", "3"), Alarm: on("15", "1"),
		Good: fg("2").Bold(true), Field: r.NewStyle().Bold(true).Underline(true),
		Color: profile != termenv.Ascii,
	}
}

// Bar is a bar of so many cells, filled as far as done is of all.
func (s Styles) Bar(done, all, cells int) string {
	bar := progress.New(progress.WithoutPercentage(), progress.WithSolidFill("6"), progress.WithFillCharacters('█', '░'),
		progress.WithWidth(cells), progress.WithColorProfile(s.r.ColorProfile()))
	bar.EmptyColor = "8"
	return bar.ViewAs(float64(done) / float64(max(all, 1)))
}

// Way is the colour of a direction.
func (s Styles) Way(d plan.Direction) lipgloss.Style {
	if d.Far() {
		return s.Outward
	}
	return s.Ret
}

// Band is the ground of a direction.
func (s Styles) Band(d plan.Direction) lipgloss.Style {
	if d.Far() {
		return s.OutBand
	}
	return s.RetBand
}

// Inks gives the drawing of a pass its colours.
func (s Styles) Inks(d plan.Direction) func(Ink) lipgloss.Style {
	return func(k Ink) lipgloss.Style {
		switch k {
		case InkPath:
			return s.Way(d)
		case InkPath2:
			return s.Slots
		case InkStrong, InkPeg:
			return s.Strong
		case InkLabel:
			return s.Dim
		default:
			return s.Plain
		}
	}
}
