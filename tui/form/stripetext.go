package form

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"millside/plan"
	"millside/plan/measure"
	"millside/plan/stripe"
	"millside/tui/keys"
	"millside/tui/look"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

const (
	usualWidth = 80 // of a terminal whose width isn't known
	boxMargin  = 4  // to the left of the stripes' text
	mostAdvice = 3  // rows that a mended text takes
)

// Sized is the form in a terminal of so many cells: how long a text is wrapped depends on it, and so does where the
// cursor goes in it.
func (m Model) Sized(w int) Model {
	m.w = w
	return m
}

// boxWidth is the width of the stripes' text in a terminal of so many cells.
func boxWidth(w int) int { return max(w-boxMargin-1, 4) }

// text is what stands in a field.
func (m Model) text(i int) string {
	if i == m.boxAt {
		return m.box.Value()
	}
	return m.inputs[i].Value()
}

// inBox says whether the text of the stripes is being written.
func (m Model) inBox() bool { return m.at == m.boxAt }

// keptIn says whether a key that elsewhere leads to another field does something in the text of the stripes: it makes
// a new line, or goes to another row.
func (m Model) keptIn(msg tea.KeyMsg) bool {
	w := boxWidth(m.w)
	return keys.Matches(msg, m.Keys.NewLine) || msg.Type == tea.KeyDown && !m.box.OnLast(w) ||
		msg.Type == tea.KeyUp && !m.box.OnFirst(w)
}

// mistake is where the stripes can't be read, and its place in the text as it stands in the field; nil where they can.
func (m Model) mistake() (*stripe.TextError, int) {
	var te *stripe.TextError
	if !errors.As(m.stripesAt, &te) {
		return nil, 0
	}
	text := m.box.Value() // the blanks before it were not read
	return te, te.Offset + len(text) - len(strings.TrimLeft(text, " \t\r\n"))
}

// advice is the text that the stripes could be changed into with one key: as they are likely to be meant, or a small
// change that winds far faster; "" where there is neither.
func (m Model) advice() string {
	if te, _ := m.mistake(); te != nil {
		return te.Try
	}
	if c := m.beside.change; c != nil && m.beside.key == m.key() {
		return c.Order.String()
	}
	return ""
}

// take takes the advice.
func (m Model) take() Model {
	if text := m.advice(); text != "" {
		m.box = m.box.With(text)
		return m.compute()
	}
	return m
}

// stripesField is the text of the stripes over the whole width, in at most so many rows, and below it what is wrong
// with it. Each stripe stands in its colour; rows that find no room are marked by an ellipsis.
func (m Model) stripesField(w, most int) []string {
	s := m.Styles
	mark := "    "
	if m.inBox() {
		mark = "  ▸ "
	}
	head, below := mark+m.fields[m.boxAt].Label, m.underStripes(w)
	if n := m.order.Size(); n > 0 {
		head += s.Dim.Render(", " + measure.Counted(n, "end", "ends"))
	}
	below = below[:min(len(below), max(most-3, 0))]
	te, at := m.mistake()
	var point *look.Inked
	pieces := m.colourPieces()
	if te != nil {
		point = &look.Inked{From: at, To: at + len(te.Found), Style: s.Alarm}
		pieces = append(pieces, *point)
	}
	lines, keep, pointer := m.box.Lines(boxWidth(w), pieces, point, m.inBox())
	rows := around(lines, keep, pointer, max(most-1-len(below), 1))
	return append(append([]string{look.Fit(head, w)}, rows...), below...)
}

// around is the part of some rows round the one to keep in view, and with the pointer too where both find room, with a
// margin that says where there are more.
func around(lines []string, keep, pointer, room int) []string {
	from := min(max(keep-room*2/3, 0), max(len(lines)-room, 0))
	if first, last := min(keep, pointer), max(keep, pointer); pointer >= 0 && last-first < room {
		from = min(max(from, last-room+1), first)
	}
	to := min(from+room, len(lines))
	out := look.Indent(lines[from:to], boxMargin)
	if from > 0 {
		out[0] = "  … " + lines[from]
	}
	if to < len(lines) {
		out[len(out)-1] = "  … " + lines[to-1]
	}
	return out
}

// colourPieces are the stripes in the text, each in the look of its colour.
func (m Model) colourPieces() []look.Inked {
	spans, colours := stripe.Spans(m.box.Value())
	var pieces []look.Inked
	for _, span := range spans {
		c := colours[span.Colour-1]
		kept := plan.StripeColour{Name: c.Name}
		if shade, ok := c.Look(); ok {
			kept.Shade = shade.String()
		}
		pieces = append(pieces, look.Inked{From: span.From, To: span.To, Style: m.Styles.Yarn(kept)})
	}
	return pieces
}

// underStripes says what is wrong with the text and how it could read, or what may stand there.
func (m Model) underStripes(w int) []string {
	s, te := m.Styles, (*stripe.TextError)(nil)
	if te, _ = m.mistake(); te == nil {
		if problem := m.problems[m.fields[m.boxAt].Name]; problem != "" {
			return look.Indent(look.Painted(look.Wrap("! "+problem, w-7), s.Alarm), 6)
		}
		if m.inBox() && plain(m.spec) {
			return look.Indent(look.Painted(look.Wrap(m.fields[m.boxAt].Hint(), w-7), s.Dim), 6)
		}
		return nil
	}
	out := look.Painted(look.Wrap("! "+te.Want, w-7), s.Alarm)
	if te.Try != "" {
		text := fmt.Sprintf("%s: %s, %s", m.Keys.Take.Help().Key, measure.Counted(te.TryEnds, "end", "ends"),
			nearby(te.Try, te.Offset, mostAdvice*(w-7)-30))
		lines := look.Wrap(text, w-7)
		out = append(out, look.Painted(lines[:min(len(lines), mostAdvice)], s.Good)...)
	}
	return look.Indent(out, 6)
}

// nearby is the part of a text round a place, in bytes, on one line and about so many characters long.
func nearby(text string, at, room int) string {
	room = max(room, 20)
	runes := []rune(strings.ReplaceAll(text, "\n", " "))
	if len(runes) <= room {
		return string(runes)
	}
	from := min(max(utf8.RuneCountInString(text[:min(at, len(text))])-room/2, 0), len(runes)-room)
	shown := string(runes[from : from+room])
	if from > 0 {
		shown = "…" + shown
	}
	if from+room < len(runes) {
		shown += "…"
	}
	return shown
}

// stripesKeys are the keys of the page of stripes. In a narrow window those go that every page has.
func (m Model) stripesKeys(w int) []key.Binding {
	k, wide := m.Keys, w >= wideForm
	line := []key.Binding{k.Begin}
	switch {
	case wide:
		line = append(line, k.NextField, k.NextPage)
	case m.advice() == "":
		line = append(line, k.NextPage)
	}
	switch {
	case m.advice() != "":
		line = append([]key.Binding{k.Take}, line...)
	case len(m.fields[m.at].options) > 0:
		line = append(line, k.Right)
	}
	if m.inBox() && wide {
		line = append(line, k.NewLine)
	}
	return append(line, k.Rest, keys.As(k.Choice, "way"), k.Back)
}
