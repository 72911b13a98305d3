package look

import (
	"github.com/charmbracelet/bubbles/help"
	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/lipgloss"
)

// KeyLine is the one line of keys at the foot of a screen. Keys that find no room are left out from
// the right, with a mark.
func (s Styles) KeyLine(w int, bindings ...key.Binding) string {
	h := help.New()
	h.ShortSeparator = "  "
	h.Styles = help.Styles{Ellipsis: s.Dim, ShortKey: s.Strong, ShortDesc: s.Dim, ShortSeparator: s.Dim}
	if lipgloss.Width(h.ShortHelpView(bindings)) >= w {
		h.ShortSeparator, h.Width = " ", max(w-1, 1)
	}
	return " " + h.ShortHelpView(bindings)
}
