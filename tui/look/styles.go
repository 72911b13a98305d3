package look

import (
	"io"
	"slices"
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"millside/plan/wind"
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
	// Color says that there are colours, ASCII that only the characters of ASCII can be shown.
	Color, ASCII bool
}

// NewStyles makes the looks for an output. With the Ascii profile nothing is coloured, nor bold.
func NewStyles(w io.Writer, profile termenv.Profile) Styles {
	r := renderer(w, profile)
	fg := func(c string) lipgloss.Style { return r.NewStyle().Foreground(lipgloss.Color(c)) }
	// Not bold: many terminals draw bold black as grey.
	on := func(f, b string) lipgloss.Style { return fg(f).Background(lipgloss.Color(b)) }
	s := base(r)
	s.Outward, s.Ret, s.Slots, s.Good = fg("6").Bold(true), fg("5").Bold(true), fg("2").Bold(true), fg("2").Bold(true)
	s.OutBand, s.RetBand, s.Warn, s.Alarm = on("0", "6"), on("15", "5"), on("0", "3"), on("15", "1")
	s.Color = profile != termenv.Ascii
	return s
}

// OnLight makes the looks darker where colours stand on the ground itself, for a ground that is light: many terminals'
// cyan and green can't be read on white.
func (s Styles) OnLight(profile termenv.Profile) Styles {
	if !s.Color {
		return s
	}
	teal, plum, moss := lightInks[0], lightInks[1], lightInks[2]
	if profile == termenv.ANSI {
		teal, plum, moss = "4", "5", "0" // of the sixteen those that are dark on most terminals
	}
	fg := func(c string) lipgloss.Style { return s.r.NewStyle().Foreground(lipgloss.Color(c)).Bold(true) }
	s.Outward, s.Ret, s.Slots, s.Good = fg(teal), fg(plum), fg(moss), fg(moss)
	return s
}

// lightInks are the colours of the usual palette of 256 for outward, for return and for the slots on a light ground.
var lightInks = [3]string{"24", "90", "22"}

// LightGround says whether the terminal's ground is light, as the environment tells it: COLORFGBG, which some terminals
// set, ends with the number of the ground among the sixteen colours. Where it isn't set the ground counts as dark.
func LightGround(env func(string) string) bool {
	v := env("COLORFGBG")
	ground := v[strings.LastIndex(v, ";")+1:]
	return v != ground && slices.Contains([]string{"7", "9", "10", "11", "12", "13", "14", "15"}, ground)
}

// NewUncoloured makes looks without any colour that keep bold, underlined and reversed: for a terminal
// whose user wants no colour (the convention of no-color.org asks for no more than that).
func NewUncoloured(w io.Writer) Styles {
	r := renderer(w, termenv.ANSI)
	s := base(r)
	bold, ground := r.NewStyle().Bold(true), r.NewStyle().Reverse(true)
	s.Outward, s.Ret, s.Slots, s.Good = bold, bold, r.NewStyle(), bold
	s.OutBand, s.RetBand, s.Warn, s.Alarm = ground, ground, ground, ground.Bold(true)
	return s
}

func renderer(w io.Writer, profile termenv.Profile) *lipgloss.Renderer {
	r := lipgloss.NewRenderer(w)
	r.SetColorProfile(profile)
	// The ground is never asked for: some terminals don't answer, and these looks suit both.
	r.SetHasDarkBackground(true)
	return r
}

// base are the looks that need no colour.
func base(r *lipgloss.Renderer) Styles {
	bold := r.NewStyle().Bold(true)
	return Styles{r: r, Plain: r.NewStyle(), Title: bold, Dim: r.NewStyle().Faint(true), Strong: bold, Figure: bold,
		Field: bold.Underline(true)}
}

// Bar is a bar of so many cells, filled as far as done is of all.
func (s Styles) Bar(done, all, cells int) string {
	cells = max(cells, 0)
	full := min(max(done, 0)*cells/max(all, 1), cells)
	bar := s.Plain
	if s.Color {
		bar = s.Outward.Bold(false)
	}
	return bar.Render(strings.Repeat("█", full)) + s.Dim.Render(strings.Repeat("░", cells-full))
}

// Way is the colour of a direction.
func (s Styles) Way(d wind.Direction) lipgloss.Style {
	if d.Far() {
		return s.Outward
	}
	return s.Ret
}

// Band is the ground of a direction.
func (s Styles) Band(d wind.Direction) lipgloss.Style {
	if d.Far() {
		return s.OutBand
	}
	return s.RetBand
}

// Inks gives the drawing of a pass its colours.
func (s Styles) Inks(d wind.Direction) func(Ink) lipgloss.Style {
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
