package keys

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// Matches says whether a key press is one of those of the bindings. Several letters that were read at once, or
// pasted, are text: the word "left" isn't the key of that name, though Bubble Tea writes both alike.
func Matches(msg tea.KeyMsg, bindings ...key.Binding) bool {
	return !Text(msg) && key.Matches(msg, bindings...)
}

// Text says whether a message can only be text: several letters in one read, or something pasted.
func Text(msg tea.KeyMsg) bool {
	return msg.Type == tea.KeyRunes && (len(msg.Runes) > 1 || msg.Paste)
}
