package tui

import (
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
)

// The smallest terminal that the full screens are laid out for. Below it a screen says so and shows
// the count alone.
const (
	minWidth  = 40
	minHeight = 12
)

// fit cuts a line to a width, marking the cut.
func fit(s string, w int) string {
	if lipgloss.Width(s) <= w {
		return s
	}
	return ansi.Truncate(s, max(w, 0), "…")
}

// pad fills a line up to a width with blanks, and cuts what is over.
func pad(s string, w int) string {
	s = fit(s, w)
	return s + strings.Repeat(" ", max(w-lipgloss.Width(s), 0))
}

// center sets a line in the middle.
func center(s string, w int) string {
	s = fit(s, w)
	return strings.Repeat(" ", max((w-lipgloss.Width(s))/2, 0)) + s
}

// spread sets one text to the left and one to the right of a line. The left one gives way.
func spread(left, right string, w int) string {
	room := w - lipgloss.Width(right)
	if room < 1 {
		return fit(left, w)
	}
	return pad(left, room) + right
}

// wrap breaks words into lines of at most w cells.
func wrap(s string, w int) []string {
	if s == "" {
		return nil
	}
	return strings.Split(ansi.Wordwrap(s, max(w, 1), ""), "\n")
}

// screenful makes a text exactly h lines high and no wider than w: a view that is too high would lose
// its top lines.
func screenful(lines []string, w, h int) string {
	out := make([]string, 0, h)
	for _, block := range lines {
		for _, line := range strings.Split(block, "\n") {
			out = append(out, fit(line, w))
		}
	}
	for len(out) < h {
		out = append(out, "")
	}
	return strings.Join(out[:h], "\n")
}

// withFoot lays lines above, and the foot at the last rows of the screen. Lines that find no room are
// cut: screens put what matters most first.
func withFoot(lines, foot []string, w, h int) string {
	var flat []string
	for _, l := range lines {
		flat = append(flat, strings.Split(l, "\n")...)
	}
	room := max(h-len(foot), 0)
	for len(flat) < room {
		flat = append(flat, "")
	}
	return screenful(append(flat[:room:room], foot...), w, h)
}

// beside sets two blocks side by side with a gap, the left one padded to a width.
func beside(left, right []string, leftWidth, gap int) []string {
	var out []string
	for i := range max(len(left), len(right)) {
		var l, r string
		if i < len(left) {
			l = left[i]
		}
		if i < len(right) {
			r = right[i]
		}
		out = append(out, pad(l, leftWidth)+strings.Repeat(" ", gap)+r)
	}
	return out
}

// indent sets lines in from the left.
func indent(lines []string, n int) []string {
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = strings.Repeat(" ", n) + l
	}
	return out
}

// painted draws every line in a style.
func painted(lines []string, s lipgloss.Style) []string {
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = s.Render(l)
	}
	return out
}

// filled draws lines on one ground, each padded to the full width.
func filled(lines []string, s lipgloss.Style, w int) []string {
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = s.Render(pad(l, w))
	}
	return out
}
