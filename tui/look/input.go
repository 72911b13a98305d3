package look

import (
	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
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

// hidden is the sign at the side of a line at which some of it isn't shown.
const hidden = "…"

// InputView draws a field at most w cells wide, the cell for the cursor behind the text counted: what is too long
// is scrolled so that the cursor is seen, with a sign at each side at which some of it is hidden.
func InputView(in textinput.Model, w int) string {
	text, at := []rune(in.Value()), in.Position()
	if Wide(in.Value()) < w || w < 4 {
		in.Width = max(w-1, 1)
		// A field finds its window only when the cursor leaves it, so that the cursor goes to the end and back.
		in.CursorEnd()
		in.SetCursor(at)
		return in.View()
	}
	from, to := window(text, at, w-1)
	in.SetValue(string(text[from:to]))
	in.SetCursor(at - from)
	view := in.View()
	if from > 0 {
		view = hidden + view
	}
	if to < len(text) {
		view += hidden
	}
	return view
}

// window is the part of a text that is too long for so many cells with the cursor in it: the end or the beginning where
// the cursor is seen there, else what follows the cursor. There is room left for the signs.
func window(text []rune, at, cells int) (from, to int) {
	cells-- // the sign at the one side
	from = len(text)
	for n := 0; from > 0 && n+Wide(string(text[from-1])) <= cells; from-- {
		n += Wide(string(text[from-1]))
	}
	if at >= from {
		return from, len(text)
	}
	fill := func(from, room int) int {
		to := from
		for n := 0; to < len(text) && n+Wide(string(text[to])) <= room; to++ {
			n += Wide(string(text[to]))
		}
		return to
	}
	if to = fill(0, cells); at < to {
		return 0, to
	}
	return at, fill(at, cells-1)
}

// Tail is the end of a text in so many cells, with a sign where its beginning is hidden.
func Tail(s string, w int) string {
	over := Wide(s) - max(w, 1)
	if over <= 0 {
		return s
	}
	return ansi.TruncateLeft(s, over+1, hidden)
}
