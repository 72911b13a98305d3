package look

import (
	"strings"

	"github.com/charmbracelet/lipgloss"
)

// Style is how words look. It writes what its lipgloss style writes, byte for byte, but most looks only put a code
// before the words and one behind, and those are worked out once: lipgloss weighs margins, borders and widths anew
// for each word (BenchmarkRender in this package: some twenty times as long).
type Style struct {
	lip           *lipgloss.Style // a pointer: looks are handed on by value, and a lipgloss style is large
	before, after string
	wraps         bool // before and after are all that it does
}

// styled works out the codes of a style.
func styled(l lipgloss.Style) Style {
	const words = "a b"
	before, after, found := strings.Cut(l.Render(words), words)
	return Style{lip: &l, before: before, after: after, wraps: found}
}

// Render puts a text into the style.
func (s Style) Render(text string) string {
	if !s.wraps || text == "" || strings.ContainsAny(text, "\n\r\t") {
		return s.lip.Render(text)
	}
	return s.before + text + s.after
}

// Lipgloss is the style for what is drawn by other libraries.
func (s Style) Lipgloss() lipgloss.Style { return *s.lip }

// behind is the style of what is left behind: faint, and not bold.
func (s Style) behind() Style { return styled(s.lip.Bold(false).Faint(true)) }
