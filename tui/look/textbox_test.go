package look

import (
	"io"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"
	"pgregory.net/rapid"
)

func box(text string) TextBox {
	return NewTextBox(NewStyles(io.Discard, termenv.Ascii), text, 10_000)
}

// Every letter of the text is drawn once and in its order, in no row wider than the box, and the row that is named
// holds the cursor wherever it stands.
func TestTextBoxDrawsAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[a-zäß4 ,(\n]{0,120}`).Draw(t, "text")
		w := rapid.IntRange(4, 50).Draw(t, "width")
		b := box(text)
		for _, k := range rapid.SliceOfN(rapid.SampledFrom([]tea.KeyType{tea.KeyUp, tea.KeyDown, tea.KeyLeft,
			tea.KeyHome, tea.KeyCtrlHome, tea.KeyEnd}), 0, 12).Draw(t, "keys") {
			b, _ = b.Type(tea.KeyMsg{Type: k}, w)
		}
		if b.Value() != text {
			t.Fatalf("%q became %q", text, b.Value())
		}
		lines, keep, _ := b.Lines(w, nil, nil, true)
		flat := func(s string) string { return strings.Join(strings.Fields(s), "") }
		if got := flat(strings.Join(lines, "")); got != flat(text) {
			t.Fatalf("%q is drawn as %q", text, lines)
		}
		for _, l := range lines {
			if Wide(strings.TrimRight(l, " ")) > w {
				t.Fatalf("%q is wider than %d", l, w)
			}
		}
		rows := b.rows(w)
		if at := b.cursorAt(); len(rows) != len(lines) || at < rows[keep].from || at > rows[keep].to {
			t.Fatalf("the cursor is at %d, row %d is %v", at, keep, rows)
		}
	})
}

// What is typed, pasted or read at once goes in at the cursor, and a copy stays as it was.
func TestTextBoxTyping(t *testing.T) {
	b := box("4 red")
	before := b
	for _, msg := range []tea.KeyMsg{
		{Type: tea.KeyEnter},
		{Type: tea.KeyRunes, Runes: []rune("8")},
		{Type: tea.KeySpace, Runes: []rune{' '}},
		{Type: tea.KeyRunes, Runes: []rune("left")},
		{Type: tea.KeyRunes, Runes: []rune("\r\n2 up"), Paste: true},
	} {
		b, _ = b.Type(msg, 40)
	}
	if want := "4 red\n8 left\n2 up"; b.Value() != want || before.Value() != "4 red" {
		t.Errorf("%q, and the copy %q", b.Value(), before.Value())
	}
	if !b.OnLast(40) || b.OnFirst(40) {
		t.Error("doesn't stand in the last row")
	}
	b, _ = b.Type(tea.KeyMsg{Type: tea.KeyUp}, 40)
	b, _ = b.Type(tea.KeyMsg{Type: tea.KeyUp}, 40)
	if !b.OnFirst(40) {
		t.Error("doesn't stand in the first row")
	}
}

// The pointer stands below its place, behind the text too.
func TestTextBoxPoints(t *testing.T) {
	for _, c := range []struct {
		text     string
		from, to int
		want     string
	}{
		{"4 red; 2 blue", 5, 6, "4 red; 2 blue|     ^"},
		{"4 röd\n2 times", 9, 14, "4 röd|2 times|  ^^^^^"},
		{"4 red,", 6, 6, "4 red,|      ^"},
	} {
		s := NewStyles(io.Discard, termenv.Ascii)
		lines, _, _ := box(c.text).Lines(30, nil, &Inked{c.from, c.to, s.Alarm}, false)
		if got := strings.Join(lines, "|"); got != c.want {
			t.Errorf("%q", got)
		}
	}
}

// A text is broken at a blank, and not at a hyphen of a colour's name.
func TestNoNameIsBrokenAtItsHyphen(t *testing.T) {
	order := strings.Repeat("8 natural-white, 4 sea-blue, 12 brick-red-and-sand, ", 6)
	for w := 24; w < 130; w++ {
		lines, _, _ := NewTextBox(NewStyles(io.Discard, termenv.Ascii), order, 10_000).Lines(w, nil, nil, false)
		for _, line := range append(lines, Wrap("laid: "+order, w)...) {
			if strings.HasSuffix(strings.TrimSpace(line), "-") {
				t.Errorf("%d wide: %q", w, line)
			}
		}
	}
}
