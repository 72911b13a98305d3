// Package asking is a list of fields that are filled in on a page whose answer stands beside: each line is typed, or
// chosen where its field has words; and the answer is turned over in parts where it is long. It knows nothing of what
// is asked.
package asking

import (
	"fmt"
	"iter"
	"maps"
	"slices"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"millside/plan/field"
	"millside/tui/keys"
	"millside/tui/look"
)

// textLimit is the longest text of a line, in characters.
const textLimit = 400

// labelWidth holds the longest label.
const labelWidth = 18

// line is one field. One with words is chosen, any other typed.
type line struct {
	of   *field.Field
	text textinput.Model
	word int
}

// value is the text of a line as its field reads it; "" where nothing is said.
func (l line) value() string {
	if len(l.of.Words) > 0 {
		if l.word == 0 {
			return ""
		}
		return l.of.Words[l.word]
	}
	return l.text.Value()
}

// Lines is the list; one of its lines is filled in. It never changes: what changes it gives another.
type Lines struct {
	styles look.Styles
	keys   keys.Map
	lines  []line
	at     int
}

// New is the list of fields with nothing said.
func New(s look.Styles, k keys.Map, fields []*field.Field) Lines {
	l := Lines{styles: s, keys: k}
	for _, f := range fields {
		l.lines = append(l.lines, line{of: f, text: look.NewInput(s, "", textLimit)})
	}
	l.lines[0].text.Focus()
	return l
}

// All yields each field of which something is said with its text, as the field reads it, in the order of the lines.
func (l Lines) All() iter.Seq2[*field.Field, string] {
	return func(yield func(*field.Field, string) bool) {
		for _, one := range l.lines {
			if text := one.value(); text != "" && !yield(one.of, text) {
				return
			}
		}
	}
}

// Said is the same by field.
func (l Lines) Said() map[*field.Field]string { return maps.Collect(l.All()) }

// With is the list with a text in the line of a field; one that isn't there changes nothing.
func (l Lines) With(f *field.Field, text string) Lines {
	l.lines = slices.Clone(l.lines)
	for i := range l.lines {
		if one := &l.lines[i]; one.of == f {
			one.text.SetValue(text)
			one.word = max(slices.Index(f.Words, text), 0)
		}
	}
	return l
}

// At is the field that is filled in.
func (l Lines) At() *field.Field { return l.lines[l.at].of }

// To goes to the line of a field that an error calls by this name; false where there is none.
func (l Lines) To(name string) (Lines, bool) {
	i := slices.IndexFunc(l.lines, func(one line) bool { return one.of.Name == name })
	if i < 0 {
		return l, false
	}
	return l.to(i), true
}

// to goes to a line.
func (l Lines) to(i int) Lines {
	l.lines = slices.Clone(l.lines)
	l.lines[l.at].text.Blur()
	l.at = (i + len(l.lines)) % len(l.lines)
	l.lines[l.at].text.Focus()
	return l
}

// Press takes a key, and says whether something else is said now.
func (l Lines) Press(msg tea.KeyMsg) (Lines, bool) {
	k, one := l.keys, l.lines[l.at]
	switch {
	case keys.Matches(msg, k.PrevField):
		return l.to(l.at - 1), false
	case keys.Matches(msg, k.NextField):
		return l.to(l.at + 1), false
	case len(one.of.Words) > 0:
		n := len(one.of.Words)
		switch {
		case keys.Matches(msg, k.Right):
			one.word = (one.word + 1) % n
		case keys.Matches(msg, k.Left):
			one.word = (one.word + n - 1) % n
		}
	default:
		one.text, _ = look.TypeInto(one.text, msg)
	}
	same := one.value() == l.lines[l.at].value()
	l.lines = slices.Clone(l.lines)
	l.lines[l.at] = one
	return l, !same
}

// View draws the list in exactly so many rows around the line that is filled in, with its hint. The first row is free
// for the sign that there is more above.
func (l Lines) View(w, rows int) []string {
	lines, of := l.drawn(w)
	return l.styles.Scrolled(lines, of, l.at, rows)
}

// ViewOver is the same above something else, with a line between them, on a page w cells wide.
func (l Lines) ViewOver(w, rows int) []string {
	lines, of := l.drawn(w - 2)
	return l.styles.ScrolledOver(lines, of, l.at, w, rows)
}

// drawn are the lines, and which of the list each of them belongs to.
func (l Lines) drawn(w int) (lines []string, of []int) {
	for i, one := range l.lines {
		here := i == l.at
		mark, value := "    ", one.text.Value()
		switch words := one.of.Words; {
		case len(words) > 0 && here:
			value = l.styles.Strong.Render("◀ " + words[one.word] + " ▶")
		case len(words) > 0:
			value = words[one.word]
		case here:
			value = look.InputView(one.text, max(w-labelWidth-6, 4))
		}
		if here {
			mark = "  ▸ "
		}
		line := look.Fit(mark+look.Pad(look.Fit(one.of.Label, labelWidth), labelWidth)+" "+value, w)
		lines, of = append(lines, line), append(of, i)
		if here {
			for _, text := range look.Wrap(one.of.Help, w-7) {
				lines, of = append(lines, "      "+l.styles.Dim.Render(text)), append(of, i)
			}
		}
	}
	return lines, of
}

// AllKeys are the keys that work on the lines and on the answer, in the words of the page that lists them.
func (l Lines) AllKeys() []key.Binding {
	k := l.keys
	list := []key.Binding{keys.As(k.NextField, "next field"), keys.As(k.PrevField, "field before")}
	if len(l.At().Words) > 0 {
		list = append(list, keys.As(k.Right, "next word"), keys.As(k.Left, "word before"))
	}
	return append(list, keys.As(k.Rest, "more of the answer"))
}

// ListKey is the key that lists all keys: where any text is typed, a question mark belongs to it.
func (l Lines) ListKey() key.Binding {
	if l.At().Value == field.Text {
		return l.keys.AllKeysTyping
	}
	return l.keys.AllKeys
}

// Turned is the part of a long answer that has been turned to; at counts the turns, back and forth.
func (l Lines) Turned(lines []string, at, room int) []string {
	if len(lines) <= room || room < 3 {
		return lines
	}
	page := room - 1
	pages := (len(lines) + page - 1) / page
	at = (at%pages + pages) % pages
	out := append([]string{}, lines[at*page:min((at+1)*page, len(lines))]...)
	for len(out) < page {
		out = append(out, "")
	}
	return append(out, l.styles.Dim.Render(fmt.Sprintf("part %d of %d: %s turns over", at+1, pages,
		l.keys.Rest.Help().Key)))
}
