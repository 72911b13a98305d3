package asked

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"

	"millside/cmd/millside/internal/prose"
	"millside/plan/stripe"
)

// The mark stands under the place: in the right line, behind tabs and wide letters.
func TestPoint(t *testing.T) {
	for text, want := range map[string]string{
		"red, (2 blue)": "  red, (2 blue)\n       ^",
		"12 red\n\t4 リネン,\tblue (3 white)\n2": "   4 リネン, blue (3 white)\n                  ^",
		"12 red\r\n3 times 4":                 "  3 times 4\n          ^",
		"mirror (4 red":                       "  mirror (4 red\n               ^",
		"4 red,\x1b[31m":                      "  4 red,[31m\n        ^",
		"red \xff":                            "  red \uFFFD\n      ^",
	} {
		_, err := stripe.Parse(text)
		_, got, _ := strings.Cut(pointAt(err, text).Error(), "\n")
		if got != want {
			t.Errorf("%q:\n%s\nnot\n%s", text, got, want)
		}
	}
}

// Whatever was typed, the mark stands within a line that fits into a terminal, under what stands there.
func TestPointAnywhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOf(rapid.SampledFrom([]string{"4 red, ", "times ", "(", ")", "リネン ", "\t", "\n",
			"é", "\x1b", "\xff", "4 ", "and so on, "})).Draw(t, "text"), "")
		_, err := stripe.Parse(text)
		if err == nil {
			return
		}
		lines := strings.Split(pointAt(err, text).Error(), "\n")
		if len(lines) != 3 || !utf8.ValidString(lines[1]) {
			t.Fatalf("%q", lines)
		}
		if line, mark := ansi.StringWidth(lines[1]), len(lines[2]); line > prose.TextWidth-len("millside: ") ||
			mark > line+1 {
			t.Fatalf("%d columns, the mark at %d:\n%s\n%s", line, mark, lines[1], lines[2])
		}
	})
}
