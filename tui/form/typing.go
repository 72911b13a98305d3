package form

import (
	"maps"
	"slices"

	"millside/tui/look"

	tea "github.com/charmbracelet/bubbletea"
)

// typed hands a key to the field that is being filled in. The first one that writes something takes the place
// of a value that the weaver has not touched, as a value to start from is seldom a part of the one that is
// wanted; a key that moves or takes away keeps it, to be changed. The text of the stripes is long, and always kept.
func (m Model) typed(msg tea.KeyMsg) (Model, tea.Cmd) {
	if m.inBox() {
		box, cmd := m.box.Type(msg, boxWidth(m.w))
		m.box = box
		return m.compute(), cmd
	}
	m.inputs = slices.Clone(m.inputs)
	if m.replaces(msg) {
		m.inputs[m.at].SetValue("")
	}
	m.own = maps.Clone(m.own)
	m.own[m.at] = true
	next, cmd := look.TypeInto(m.inputs[m.at], msg)
	m.inputs[m.at] = next
	return m.compute(), cmd
}

// replaces says whether a key takes the place of what stands in the field.
func (m Model) replaces(msg tea.KeyMsg) bool {
	writes := msg.Type == tea.KeyRunes && !msg.Alt || msg.Type == tea.KeySpace
	return writes && !m.own[m.at]
}
