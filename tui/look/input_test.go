package look

import (
	"io"
	"strings"
	"testing"

	"github.com/muesli/termenv"
)

// Wherever the cursor stands in a long text, the letter under it is in the part that is drawn.
func TestInputViewShowsTheCursor(t *testing.T) {
	var text []rune
	for i := range rune(200) {
		text = append(text, 'Ā'+i)
	}
	in := NewInput(NewStyles(io.Discard, termenv.Ascii), string(text), 1000)
	for _, w := range []int{4, 20, 60, 300} {
		for at := range len(text) + 1 {
			in.SetCursor(at)
			view := InputView(in, w)
			shown := strings.TrimRight(view, " ")
			if Wide(view) > w {
				t.Fatalf("width %d, cursor %d: drawn %d wide", w, at, Wide(view))
			}
			if at < len(text) && !strings.ContainsRune(shown, text[at]) {
				t.Fatalf("width %d, cursor %d: %q is not in %q", w, at, text[at], shown)
			}
			if at == len(text) && !strings.ContainsRune(shown, text[at-1]) {
				t.Fatalf("width %d, cursor behind the text: its end is not in %q", w, shown)
			}
			if n := len([]rune(shown)); n < min(w, len(text))-1 {
				t.Fatalf("width %d, cursor %d: only %d letters are shown", w, at, n)
			}
		}
	}
}

// A sign stands at each side at which some of a text is hidden, and at no other.
func TestInputViewShowsWhereItIsCut(t *testing.T) {
	in := NewInput(NewStyles(io.Discard, termenv.Ascii), "abcdefghijklmnopqrstuvwxyz", 100)
	for _, c := range []struct {
		at   int
		want string
	}{{26, "…stuvwxyz"}, {20, "…stuvwxyz"}, {12, "…mnopqrs…"}, {8, "…ijklmno…"}, {3, "abcdefgh…"}, {0, "abcdefgh…"}} {
		in.SetCursor(c.at)
		if got := strings.TrimRight(InputView(in, 10), " "); got != c.want {
			t.Errorf("cursor at %d: %q, want %q", c.at, got, c.want)
		}
	}
	in.SetValue("short")
	if got := InputView(in, 10); strings.Contains(got, "…") {
		t.Errorf("a text that is shown whole has a sign: %q", got)
	}
	if got := Tail("abcdefgh", 4); got != "…fgh" {
		t.Errorf("the end: %q", got)
	}
}
