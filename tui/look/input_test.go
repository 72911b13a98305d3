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
