package look

import (
	"strings"
	"unicode/utf8"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
)

// The smallest terminal that the full screens are laid out for. Below it a screen says so and shows
// the count alone.
const (
	MinWidth  = 40
	MinHeight = 12
)

// Wide is how many cells a line takes. Most lines are ASCII, the signs of drawings and codes of colours, which are
// counted here; where there is anything else the terminal library counts (BenchmarkWide in this package: some twenty
// times as long).
func Wide(s string) int {
	n := 0
	for i := 0; i < len(s); {
		if s[i] >= ' ' && s[i] <= '~' {
			n++
			i++
			continue
		}
		if end := colourCode(s[i:]); end > 0 {
			i += end
			continue
		}
		r, size := utf8.DecodeRuneInString(s[i:])
		if !oneCell(r) {
			return lipgloss.Width(s)
		}
		n++
		i += size
	}
	return n
}

// oneCell says whether a character takes one cell whatever stands beside it: the lines, blocks and triangles of the
// drawings, arrows, and a few signs.
func oneCell(r rune) bool {
	return r >= '─' && r <= '▟' || r >= '←' && r <= '↓' || r == '▶' || r == '◀' || r == '▸' ||
		r == '…' || r == '·' || r == '×' || r == '½'
}

// colourCode is the length of the code of a colour at the beginning of a text, 0 where there is none.
func colourCode(s string) int {
	if !strings.HasPrefix(s, "\x1b[") {
		return 0
	}
	for i := len("\x1b["); i < len(s); i++ {
		switch c := s[i]; {
		case c == 'm':
			return i + 1
		case c != ';' && (c < '0' || c > '9'):
			return 0
		}
	}
	return 0
}

// Fit cuts a line to a width, marking the cut.
func Fit(s string, w int) string {
	if Wide(s) <= w {
		return s
	}
	return ansi.Truncate(s, max(w, 0), "…")
}

// Pad fills a line up to a width with blanks, and cuts what is over.
func Pad(s string, w int) string {
	s = Fit(s, w)
	return s + strings.Repeat(" ", max(w-Wide(s), 0))
}

// Center sets a line in the middle.
func Center(s string, w int) string {
	s = Fit(s, w)
	return strings.Repeat(" ", max((w-Wide(s))/2, 0)) + s
}

// Spread sets one text to the left and one to the right of a line. The left one gives way.
func Spread(left, right string, w int) string {
	room := w - Wide(right)
	if room < 1 {
		return Fit(left, w)
	}
	return Pad(left, room) + right
}

// Wrap breaks words into lines of at most w cells. A word with hyphens, such as the order in a reed, is broken at one
// only where it is longer than a line.
func Wrap(s string, w int) []string {
	if s == "" {
		return nil
	}
	if !strings.Contains(s, "-") {
		return strings.Split(ansi.Wordwrap(s, max(w, 1), ""), "\n")
	}
	words := strings.Split(s, " ")
	for i, word := range words {
		if strings.Contains(word, "-") && ansi.StringWidth(word) <= w {
			words[i] = strings.ReplaceAll(word, "-", firmHyphen)
		}
	}
	wrapped := ansi.Wordwrap(strings.Join(words, " "), max(w, 1), "")
	return strings.Split(strings.ReplaceAll(wrapped, firmHyphen, "-"), "\n")
}

// firmHyphen stands for a hyphen at which no line is broken: else a line may become a cell too long.
const firmHyphen = "\u2011"

// Screenful makes a text exactly h lines high and no wider than w: a view that is too high would lose
// its top lines.
func Screenful(lines []string, w, h int) string {
	out := make([]string, 0, h)
	for _, block := range lines {
		for _, line := range strings.Split(block, "\n") {
			out = append(out, Fit(line, w))
		}
	}
	for len(out) < h {
		out = append(out, "")
	}
	return strings.Join(out[:h], "\n")
}

// WithFoot lays lines above, and the foot at the last rows of the screen. Lines that find no room are
// cut: screens put what matters most first.
func WithFoot(lines, foot []string, w, h int) string {
	var flat []string
	for _, l := range lines {
		flat = append(flat, strings.Split(l, "\n")...)
	}
	room := max(h-len(foot), 0)
	for len(flat) < room {
		flat = append(flat, "")
	}
	return Screenful(append(flat[:room:room], foot...), w, h)
}

// Beside sets two blocks side by side with a gap, the left one padded to a width.
func Beside(left, right []string, leftWidth, gap int) []string {
	var out []string
	for i := range max(len(left), len(right)) {
		var l, r string
		if i < len(left) {
			l = left[i]
		}
		if i < len(right) {
			r = right[i]
		}
		out = append(out, Pad(l, leftWidth)+strings.Repeat(" ", gap)+r)
	}
	return out
}

// Indent sets lines in from the left.
func Indent(lines []string, n int) []string {
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = strings.Repeat(" ", n) + l
	}
	return out
}

// Painted draws every line in a style.
func Painted(lines []string, s Style) []string {
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = s.Render(l)
	}
	return out
}

// Filled draws lines on one ground, each padded to the full width.
func Filled(lines []string, s Style, w int) []string {
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = s.Render(Pad(l, w))
	}
	return out
}

// Blanks are so many empty lines.
func Blanks(n int) []string { return make([]string, n) }
