package look

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
)

// keyMore is the sign that there are more keys than the line has room for.
const keyMore = "…"

// KeyLine is the one line of keys at the foot of a screen. Keys that find no room are left out from the right, with a
// sign.
func (s Styles) KeyLine(w int, bindings ...key.Binding) string {
	return s.KeyLines(w, 1, bindings...)[0]
}

// KeyLines are the keys at the foot of a screen in so many lines at the most. Keys that find no room are left out, with
// a sign.
func (s Styles) KeyLines(w, rows int, bindings ...key.Binding) []string {
	if line := s.keyRow("  ", bindings); Wide(line) <= w {
		return []string{line}
	}
	return s.keyRows(w, rows, bindings)
}

// keyRow writes keys one behind the other.
func (s Styles) keyRow(gap string, bindings []key.Binding) string {
	var parts []string
	for _, b := range bindings {
		if text := s.keyText(b); text != "" {
			parts = append(parts, text)
		}
	}
	return " " + strings.Join(parts, s.Dim.Render(gap))
}

// keyText is one key and what it does; empty for one that doesn't work.
func (s Styles) keyText(b key.Binding) string {
	if !b.Enabled() {
		return ""
	}
	return s.Strong.Render(b.Help().Key) + " " + s.Dim.Render(b.Help().Desc)
}

// keyRows fills rows with keys; the last ends in the sign if not all found room.
func (s Styles) keyRows(w, rows int, bindings []key.Binding) []string {
	lines := []string{" "}
	for _, b := range bindings {
		text := s.keyText(b)
		if text == "" {
			continue
		}
		at := len(lines) - 1
		with := lines[at] + s.Dim.Render(" ") + text
		if lines[at] == " " {
			with = " " + text
		}
		room := w
		if at == rows-1 && b.Help() != bindings[len(bindings)-1].Help() {
			room -= 2 // for the sign
		}
		switch {
		case Wide(with) <= room || lines[at] == " " && at < rows-1:
			lines[at] = with
		case at < rows-1:
			lines = append(lines, " "+text)
		default:
			lines[at] += s.Dim.Render(" " + keyMore)
			return lines
		}
	}
	return lines
}
