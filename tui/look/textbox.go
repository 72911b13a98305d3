package look

import (
	"strings"
	"unicode/utf8"

	"github.com/charmbracelet/bubbles/textarea"
	tea "github.com/charmbracelet/bubbletea"
)

// TextBox is a text field of several lines, which wraps what is too long for its width. Typing, the cursor and the
// wrapping are those of the library's text area; it is drawn here, since each piece of the text may have its own look.
type TextBox struct {
	area   textarea.Model
	cursor Style
}

// mostLines is how many lines the Enter key makes; a text that is put in may have more.
const mostLines = 500

// NewTextBox is a box with a text, the cursor behind it. It takes so many letters.
func NewTextBox(s Styles, value string, limit int) TextBox {
	area := textarea.New()
	area.Prompt, area.ShowLineNumbers = "", false
	area.CharLimit, area.MaxHeight, area.MaxWidth = limit, mostLines, 0
	area.SetValue(oneBreak(value))
	area.Focus()
	return TextBox{area, styled(s.r.NewStyle().Reverse(true))}
}

// oneBreak writes each end of a line as one sign, whatever system it comes from.
func oneBreak(text string) string { return strings.ReplaceAll(text, "\r\n", "\n") }

// Value is the text.
func (b TextBox) Value() string { return b.area.Value() }

// With is the box with another text, the cursor behind it.
func (b TextBox) With(text string) TextBox {
	b.area.SetValue(oneBreak(text))
	return b
}

// own is the box with storage of its own, so that typing leaves a copy of it as it was.
func (b TextBox) own() TextBox {
	line, info := b.area.Line(), b.area.LineInfo()
	b.area.SetValue(b.area.Value())
	for b.area.Line() > line {
		b.area.CursorStart()
		b.area.CursorUp()
	}
	b.area.SetCursor(info.StartColumn + info.ColumnOffset)
	return b
}

// Type hands a key to a box that is drawn w cells wide. Letters that were read at once are text, whatever key they
// are the name of, and so is what was pasted.
func (b TextBox) Type(msg tea.KeyMsg, w int) (TextBox, tea.Cmd) {
	moves := msg.Type == tea.KeyUp || msg.Type == tea.KeyDown
	if !moves { // so that going up and down keeps to the column
		b = b.own()
	}
	b.area.SetWidth(w)
	if msg.Type == tea.KeyRunes && (len(msg.Runes) > 1 || msg.Paste) {
		b.area.InsertString(oneBreak(string(msg.Runes)))
		return b, nil
	}
	var cmd tea.Cmd
	b.area, cmd = b.area.Update(msg)
	return b, cmd
}

// OnFirst says whether the cursor stands in the first row of a box that is drawn w cells wide.
func (b TextBox) OnFirst(w int) bool {
	b.area.SetWidth(w)
	return b.area.Line() == 0 && b.area.LineInfo().RowOffset == 0
}

// OnLast says whether the cursor stands in the last row. See [TextBox.OnFirst].
func (b TextBox) OnLast(w int) bool {
	b.area.SetWidth(w)
	info := b.area.LineInfo()
	return b.area.Line() == b.area.LineCount()-1 && info.RowOffset == info.Height-1
}

// boxRow is a part of the text that is drawn as one row, in bytes.
type boxRow struct{ from, to int }

// rows cuts the text as the text area does.
func (b TextBox) rows(w int) []boxRow {
	a := b.area
	a.SetWidth(w)
	for a.Line() > 0 {
		a.CursorStart()
		a.CursorUp()
	}
	var rows []boxRow
	from := 0
	for i, line := range strings.Split(b.Value(), "\n") {
		if i > 0 { // from its last row the cursor goes to the next line
			a.CursorEnd()
			a.CursorDown()
		}
		runes := []rune(line)
		for at, done := 0, false; !done; {
			a.SetCursor(at)
			info := a.LineInfo()
			next := min(max(info.StartColumn+info.Width, at), len(runes))
			done = info.RowOffset >= info.Height-1
			if done {
				next = len(runes)
			}
			to := from + len(string(runes[at:next]))
			rows = append(rows, boxRow{from, to})
			from, at = to, next
		}
		from++ // the end of the line
	}
	return rows
}

// cursorAt is the cursor's place in bytes.
func (b TextBox) cursorAt() int {
	lines := strings.Split(b.Value(), "\n")
	at := 0
	for _, l := range lines[:b.area.Line()] {
		at += len(l) + 1
	}
	info := b.area.LineInfo()
	runes := []rune(lines[b.area.Line()])
	return at + len(string(runes[:min(info.StartColumn+info.ColumnOffset, len(runes))]))
}

// Inked is a piece of a text, in bytes from 0 to behind the last, and its look. Where pieces overlap the later one
// counts.
type Inked struct {
	From, To int
	Style    Style
}

// Lines draws the box w cells wide: its rows with their pieces in their looks, a row with a pointer below the one
// with the point, unless that is nil, and the cursor, if it is asked for. Row keep holds the cursor, row below the
// pointer, -1 where there is none.
func (b TextBox) Lines(w int, pieces []Inked, point *Inked, cursor bool) (lines []string, keep, below int) {
	text, at := b.Value(), -1
	if cursor {
		at = b.cursorAt()
	}
	looks := make([]int, len(text)) // the piece that each byte belongs to, 0 for none
	for i, p := range pieces {
		for k := max(p.From, 0); k < min(p.To, len(text)); k++ {
			looks[k] = i + 1
		}
	}
	rows := b.rows(w)
	below = -1
	for i, r := range rows {
		last := i == len(rows)-1 || rows[i+1].from > r.to // the last row of its line: the cursor may stand behind it
		if at >= r.from && (at < r.to || last && at <= r.to) {
			keep = len(lines)
		}
		lines = append(lines, b.row(text, r, looks, pieces, at, last))
		if point != nil && point.From >= r.from && (point.From < r.to || last && point.From <= r.to) {
			below = len(lines)
			lines = append(lines, pointer(text, r, *point))
		}
	}
	return lines, keep, below
}

// row draws one row.
func (b TextBox) row(text string, r boxRow, looks []int, pieces []Inked, cursor int, last bool) string {
	var out, run strings.Builder
	flush := func(look int) {
		if look > 0 && run.Len() > 0 {
			out.WriteString(pieces[look-1].Style.Render(run.String()))
		} else {
			out.WriteString(run.String())
		}
		run.Reset()
	}
	look := 0
	for k := r.from; k < r.to; {
		_, n := utf8.DecodeRuneInString(text[k:])
		if looks[k] != look || k == cursor {
			flush(look)
			look = looks[k]
		}
		if k == cursor {
			out.WriteString(b.cursor.Render(text[k : k+n]))
		} else {
			run.WriteString(text[k : k+n])
		}
		k += n
	}
	flush(look)
	if cursor == r.to && last {
		out.WriteString(b.cursor.Render(" "))
	}
	return out.String()
}

// pointer stands below the part of a point that is in a row.
func pointer(text string, r boxRow, p Inked) string {
	to := max(min(p.To, r.to), p.From)
	return strings.Repeat(" ", Wide(text[r.from:p.From])) +
		p.Style.Render(strings.Repeat("^", max(Wide(text[p.From:to]), 1)))
}
