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
	Plain   Style
	Title   Style // names of screens and warps
	Dim     Style // what may be overlooked
	Strong  Style
	Figure  Style // the big figures
	Outward Style // what belongs to an outward pass
	Ret     Style // what belongs to a return pass
	Slots   Style // the half of the group in the slots
	OutBand Style // the direction, on its own ground
	RetBand Style
	Warn    Style // something is due
	Alarm   Style // something is wrong
	Good    Style
	Field   Style // the field being filled in
	done    Style // what of a bar is done
	// Color says that there are colours, ASCII that only the characters of ASCII can be shown.
	Color, ASCII bool
}

// NewStyles makes the looks for an output. With the Ascii profile nothing is coloured, nor bold.
func NewStyles(w io.Writer, profile termenv.Profile) Styles {
	r := renderer(w, profile)
	fg := func(c string) lipgloss.Style { return r.NewStyle().Foreground(lipgloss.Color(c)) }
	bold := func(c string) Style { return styled(fg(c).Bold(true)) }
	// Not bold: many terminals draw bold black as grey.
	on := func(f, b string) Style { return styled(fg(f).Background(lipgloss.Color(b))) }
	s := base(r)
	s.Outward, s.Ret, s.Slots, s.Good = bold("6"), bold("5"), bold("2"), bold("2")
	s.OutBand, s.RetBand, s.Warn, s.Alarm = on("0", "6"), on("15", "5"), on("0", "3"), on("15", "1")
	s.Color, s.done = profile != termenv.Ascii, styled(fg("6"))
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
	fg := func(c string) lipgloss.Style { return s.r.NewStyle().Foreground(lipgloss.Color(c)) }
	bold := func(c string) Style { return styled(fg(c).Bold(true)) }
	s.Outward, s.Ret, s.Slots, s.Good = bold(teal), bold(plum), bold(moss), bold(moss)
	s.done = styled(fg(teal))
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
	bold, ground := styled(r.NewStyle().Bold(true)), styled(r.NewStyle().Reverse(true))
	s.Outward, s.Ret, s.Slots, s.Good = bold, bold, s.Plain, bold
	s.OutBand, s.RetBand, s.Warn = ground, ground, ground
	s.Alarm = styled(r.NewStyle().Reverse(true).Bold(true))
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
	bold := styled(r.NewStyle().Bold(true))
	return Styles{r: r, Plain: styled(r.NewStyle()), Title: bold, Dim: styled(r.NewStyle().Faint(true)),
		Strong: bold, Figure: bold, Field: styled(r.NewStyle().Bold(true).Underline(true))}
}

// Bar is a bar of so many cells, filled as far as done is of all.
func (s Styles) Bar(done, all, cells int) string {
	cells = max(cells, 0)
	full := min(max(done, 0)*cells/max(all, 1), cells)
	bar := s.Plain
	if s.Color {
		bar = s.done
	}
	return bar.Render(strings.Repeat("█", full)) + s.Dim.Render(strings.Repeat("░", cells-full))
}

// Way is the colour of a direction.
func (s Styles) Way(d wind.Direction) Style {
	if d.Far() {
		return s.Outward
	}
	return s.Ret
}

// Band is the ground of a direction.
func (s Styles) Band(d wind.Direction) Style {
	if d.Far() {
		return s.OutBand
	}
	return s.RetBand
}

// Inks gives the drawing of a pass its colours.
func (s Styles) Inks(d wind.Direction) func(Ink) Style {
	return func(k Ink) Style {
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

// InksBehind gives it the colours of what is left behind.
func (s Styles) InksBehind(d wind.Direction) func(Ink) Style {
	ink, known := s.Inks(d), map[Ink]Style{}
	return func(k Ink) Style {
		if _, ok := known[k]; !ok {
			known[k] = ink(k).behind()
		}
		return known[k]
	}
}
