package look

import (
	"fmt"
	"slices"
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
	return s.keyRows(w, rows, s.Dim.Render(" "+keyMore), bindings)
}

// KeyLinesAnd are the keys at the foot of a screen in so many lines at the most, and a key that lists them all: where
// some find no room, it stands behind the sign for that.
func (s Styles) KeyLinesAnd(w, rows int, all key.Binding, bindings ...key.Binding) []string {
	sign := s.Dim.Render(" "+keyMore+" ") + s.keyText(all)
	return s.keyRows(w, rows, sign, append(slices.Clone(bindings), all))
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
func (s Styles) keyRows(w, rows int, sign string, bindings []key.Binding) []string {
	if line := s.keyRow("  ", bindings); Wide(line) <= w {
		return []string{line}
	}
	lines := []string{" "}
	for i, b := range bindings {
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
		if at == rows-1 && i < len(bindings)-1 {
			room -= Wide(sign)
		}
		switch {
		case Wide(with) <= room || lines[at] == " " && at < rows-1:
			lines[at] = with
		case at < rows-1:
			lines = append(lines, " "+text)
		default:
			lines[at] += sign
			return lines
		}
	}
	return lines
}

// KeyTable sets keys and what they do one below the other, or in columns where there are too many for so many rows.
// Those that find no room are counted, the least needed first. Names gives what a key is called.
func (s Styles) KeyTable(w, room int, names func(b key.Binding, narrow bool) string, bindings []key.Binding) []string {
	columns := max(min((len(bindings)+room-1)/max(room, 1), w/keyColumn), 1)
	wide, label := (w-2)/columns, 8
	for _, b := range bindings {
		label = max(label, Wide(b.Help().Key))
	}
	if columns == 1 && w >= 80 {
		label = 34
	}
	each := max(min((len(bindings)+columns-1)/columns, room), 1)
	rows := make([]string, each)
	shown := bindings[:min(each*columns, len(bindings))]
	if more := len(bindings) - len(shown); more > 0 {
		shown = shown[:len(shown)-1]
		rows[each-1] = s.Dim.Render(fmt.Sprintf("and %d more, in a larger window", more+1))
	}
	for i, b := range shown {
		if columns > 1 && i/each == columns-1 && len(shown) < len(bindings) && i%each == each-1 {
			break
		}
		rows[i%each] = Pad(rows[i%each], wide*(i/each)) +
			Pad(s.Strong.Render(Pad(names(b, label < 20), label))+" "+b.Help().Desc, wide-1)
	}
	return Indent(rows, 2)
}

// keyColumn is the narrowest column of keys.
const keyColumn = 29
