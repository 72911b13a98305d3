package prose

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"
)

// What is shown holds nothing that a terminal acts on, whatever went in, and letters stay.
func TestClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := string(rapid.SliceOf(rapid.Byte()).Draw(t, "bytes")) + rapid.String().Draw(t, "text")
		got := Clean(s)
		if !utf8.ValidString(got) {
			t.Fatalf("%q became %q, which is no text", s, got)
		}
		for _, r := range got {
			if unicode.IsControl(r) || r >= '\u202A' && r <= '\u202E' || r >= '\u2066' && r <= '\u2069' {
				t.Fatalf("%q still holds %U", got, r)
			}
		}
		if Clean(got) != got {
			t.Fatalf("cleaning %q again changes it", got)
		}
	})
	for _, s := range []string{"sea-blue tea towels", "Leinen grün 20/2", "می\u200cخواهم", "リネン", "a  b"} {
		if got := Clean(s); got != s {
			t.Errorf("%q became %q", s, got)
		}
	}
}

// Broken text keeps its words, and a line is over the width only if one word is.
func TestWrap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOf(rapid.StringMatching(`[a-zé毛]{1,30}`)).Draw(t, "words")
		indent := rapid.IntRange(0, 30).Draw(t, "indent")
		got := Wrap(strings.Join(words, " "), indent)
		if back := strings.Fields(got); strings.Join(back, " ") != strings.Join(words, " ") {
			t.Fatalf("words %q became %q", words, back)
		}
		for i, line := range strings.Split(got, "\n") {
			n := ansi.StringWidth(line)
			if i == 0 {
				n += indent
			}
			if n > TextWidth && strings.Contains(line, " ") {
				t.Fatalf("a line of %d: %q", n, line)
			}
		}
	})
}
