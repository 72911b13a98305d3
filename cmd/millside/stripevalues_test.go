package main

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"millside/plan/stripe"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"
)

func TestMinutes(t *testing.T) {
	for text, want := range map[string]time.Duration{
		"0": 0, "60": time.Hour, "60.0000": time.Hour, "0.6": 36 * time.Second, "0,9": 54 * time.Second, "1.5": 90 * time.Second,
		".25": 15 * time.Second, "2.": 2 * time.Minute, " 1 ": time.Minute, "0.0001": 6 * time.Millisecond,
	} {
		var d time.Duration
		if err := (minutesValue{&d}).Set(text); err != nil || d != want {
			t.Errorf("%q is %v (%v), not %v", text, d, err, want)
		}
	}
	for _, text := range []string{"", ".", "-1", "60.0001", "61", "999", "0.00001", "1:30", "1/2", "36s", "1,200.5", "+1", "1e1", "NaN"} {
		d := time.Second
		if err := (minutesValue{&d}).Set(text); err == nil || d != time.Second {
			t.Errorf("%q was read as %v (%v)", text, d, err)
		}
	}
}

// What is shown of a time that was read is the same time.
func TestMinutesShown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := time.Duration(rapid.IntRange(0, 60*inMinute).Draw(t, "parts")) * (time.Minute / inMinute)
		var got time.Duration
		if err := (minutesValue{&got}).Set(minutesOf(want)); err != nil || got != want {
			t.Fatalf("%v is shown as %q and read as %v (%v)", want, minutesOf(want), got, err)
		}
	})
}

func TestTimeText(t *testing.T) {
	for d, want := range map[time.Duration]string{
		0: "0 s", time.Second: "1 s", 90 * time.Second: "1 min 30 s", time.Hour: "1 h", 2*time.Hour + 3*time.Second: "2 h 3 s",
		100 * time.Millisecond: "about 0 s", time.Minute - time.Millisecond: "about 1 min", 1500 * time.Millisecond: "about 2 s",
	} {
		if got := timeText(d); got != want {
			t.Errorf("%v is %q, not %q", d, got, want)
		}
	}
}

// A draft whose stripes take more notation than a record keeps is refused before it is cut into passes.
func TestDraftOfTooManyStripes(t *testing.T) {
	text := []byte("[WARP]\nThreads=6000\n[WARP COLORS]\n")
	r := rand.New(rand.NewPCG(1, 2))
	for i := range 6000 {
		text = fmt.Appendf(text, "%d=%d\n", i+1, 100+2*r.IntN(40)+i%2) // neighbours differ
	}
	path := filepath.Join(t.TempDir(), "huge.wif")
	if err := os.WriteFile(path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	code, out, errOut := runIn(t.TempDir(), "plan", "--draft", path, "--thread-1", "left")
	if code != exitUsage || out != "" || !strings.Contains(errOut, `characters of notation" won't do; give stripes that take at most 50000`) {
		t.Errorf("exit code %d, %q, %q", code, out, errOut)
	}
}

func TestPackages(t *testing.T) {
	colours := []stripe.Colour{{Name: "red"}, {Name: "sea blue"}, {Name: "colour-3"}}
	got, err := parsePackages("Sea  Blue 2, colour-3 10", colours)
	if err != nil || !slices.Equal(got, []int{0, 2, 10}) {
		t.Errorf("%v (%v)", got, err)
	}
	for _, text := range []string{"", "red", "2", "2 red", "red -1", "red 0", "red 100001", "green 2", "red 1, red 1", "red 1,,red 2", "red 2 sea blue 3"} {
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
		text := strings.Join(rapid.SliceOf(rapid.SampledFrom([]string{"4 red, ", "times ", "(", ")", "リネン ", "\t", "\n", "é", "\x1b", "\xff", "4 ", "and so on, "})).Draw(t, "text"), "")
		_, err := stripe.Parse(text)
		if err == nil {
			return
		}
		lines := strings.Split(pointAt(err, text).Error(), "\n")
		if len(lines) != 3 || !utf8.ValidString(lines[1]) {
			t.Fatalf("%q", lines)
		}
		if line, mark := ansi.StringWidth(lines[1]), len(lines[2]); line > textWidth-len("millside: ") || mark > line+1 {
			t.Fatalf("%d columns, the mark at %d:\n%s\n%s", line, mark, lines[1], lines[2])
		}
	})
}
