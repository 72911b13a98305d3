package asked

import (
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"

	"millside/cmd/millside/internal/prose"
	"millside/plan/stripe"
	"millside/plan/times"
)

func TestMinutes(t *testing.T) {
	for text, want := range map[string]time.Duration{
		"0": 0, "60": time.Hour, "60.0000": time.Hour, "0.6": 36 * time.Second, "0,9": 54 * time.Second,
		"1.5": 90 * time.Second,
		".25": 15 * time.Second, "2.": 2 * time.Minute, " 1 ": time.Minute, "0.0001": 6 * time.Millisecond,
	} {
		var d time.Duration
		if err := (minutesValue{&d}).Set(text); err != nil || d != want {
			t.Errorf("%q is %v (%v), not %v", text, d, err, want)
		}
	}
	for _, text := range []string{"", ".", "-1", "60.0001", "61", "999", "0.00001", "1:30", "1/2", "36s", "1,200.5",
		"+1", "1e1", "NaN"} {
		d := time.Second
		if err := (minutesValue{&d}).Set(text); err == nil || d != time.Second {
			t.Errorf("%q was read as %v (%v)", text, d, err)
		}
	}
}

// What is shown of a time that was read is the same time.
func TestMinutesShown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := time.Duration(rapid.IntRange(0, 600_000).Draw(t, "parts")) * (time.Minute / 10_000)
		var got time.Duration
		if err := (minutesValue{&got}).Set(times.MinutesText(want)); err != nil || got != want {
			t.Fatalf("%v is shown as %q and read as %v (%v)", want, times.MinutesText(want), got, err)
		}
	})
}

func TestPackages(t *testing.T) {
	colours := []stripe.Colour{{Name: "red"}, {Name: "sea blue"}, {Name: "colour-3"}}
	got, err := parsePackages("Sea  Blue 2, colour-3 10", colours)
	if err != nil || !slices.Equal(got, []int{0, 2, 10}) {
		t.Errorf("%v (%v)", got, err)
	}
	for _, text := range []string{"", "red", "2", "2 red", "red -1", "red 0", "red 100001", "green 2", "red 1, red 1",
		"red 1,,red 2", "red 2 sea blue 3"} {
		if got, err := parsePackages(text, colours); err == nil {
			t.Errorf("%q was read as %v", text, got)
		}
	}
}

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
