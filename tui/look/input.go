package look

import (
	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"
)

// NewInput is a field that takes text of at most so many letters, with a cursor that stands still: nothing
// moves while nothing happens.
func NewInput(s Styles, value string, limit int) textinput.Model {
	in := textinput.New()
	in.Prompt = ""
	in.CharLimit = limit
	in.SetValue(value)
	in.CursorEnd()
	in.Cursor.SetMode(cursor.CursorStatic)
	in.TextStyle, in.Cursor.Style, in.Cursor.TextStyle = *s.Strong.lip, *s.Plain.lip, *s.Strong.lip
	return in
}

// TypeInto hands a message to a field. Letters that were read at once go in one by one, so that a word which
// is also the name of a key is text.
func TypeInto(in textinput.Model, msg tea.Msg) (textinput.Model, tea.Cmd) {
	k, ok := msg.(tea.KeyMsg)
	if !ok || k.Type != tea.KeyRunes || k.Paste || len(k.Runes) <= 1 {
		return in.Update(msg)
	}
	var cmds []tea.Cmd
	for _, r := range k.Runes {
		next, cmd := in.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
		in, cmds = next, append(cmds, cmd)
	}
	return in, tea.Batch(cmds...)
}

// InputView draws a field at most w cells wide, the cell for the cursor behind the text counted: what is too long
// is scrolled so that the cursor is seen.
func InputView(in textinput.Model, w int) string {
	at := in.Position()
	in.Width = max(w-1, 1)
	// A field finds its window only when the cursor leaves it, so that the cursor goes to the end and back.
	in.CursorEnd()
	in.SetCursor(at)
	return in.View()
}
