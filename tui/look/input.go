package look

import (
	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/textinput"
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
