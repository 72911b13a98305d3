package look

import (
	"github.com/charmbracelet/bubbles/help"
	"github.com/charmbracelet/bubbles/key"
)

// KeyLine is the one line of keys at the foot of a screen. Keys that find no room are left out from
// the right, with a mark.
func (s Styles) KeyLine(w int, bindings ...key.Binding) string {
	h := help.New()
	h.ShortSeparator = "  "
	h.Styles = help.Styles{Ellipsis: *s.Dim.lip, ShortKey: *s.Strong.lip, ShortDesc: *s.Dim.lip,
		ShortSeparator: *s.Dim.lip}
	line := h.ShortHelpView(bindings)
	if Wide(line) >= w {
		h.ShortSeparator, h.Width = " ", max(w-1, 1)
		line = h.ShortHelpView(bindings)
	}
	return " " + line
}
