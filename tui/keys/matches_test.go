package keys

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"
)

// A word that is also the name of a key is text when its letters come at once, or are pasted.
func TestWordsAreNoKeys(t *testing.T) {
	k := Default()
	for _, name := range []string{"left", "esc", "up", "tab", "enter", "pgdown", "ctrl+s", "backspace"} {
		word := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
		if Matches(word, k.Left, k.Back, k.Up, k.NextField, k.NextPage, k.Begin, k.Undo) {
			t.Errorf("%q is taken for a key", name)
		}
	}
	if Matches(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("q"), Paste: true}, k.Leave) {
		t.Error("a pasted letter is taken for a key")
	}
	for _, msg := range []tea.KeyMsg{{Type: tea.KeyLeft}, {Type: tea.KeyEsc}, {Type: tea.KeyUp}} {
		if !Matches(msg, k.Left, k.Back, k.Up) {
			t.Errorf("%s isn't taken for a key", msg)
		}
	}
}
