package stripe

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestSpans(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"8 white, 21 times (4 red,\n14 white), red where red is #b03a2e", "8 white=1 4 red=2 14 white=1 red=2 of 2"},
		{`4 "8/2 navy", 2 navy blue, 3 NAVY  blue, 2 wool(`,
			`4 "8/2 navy"=1 2 navy blue=2 3 NAVY  blue=2 2 wool=3 of 3`},
		{"4 red, 2 ends", "4 red=1 of 1"},
		{"", "of 0"},
	} {
		spans, colours := Spans(c.text)
		var list []string
		for _, s := range spans {
			list = append(list, fmt.Sprintf("%s=%d", c.text[s.From:s.To], s.Colour))
		}
		if got := strings.TrimSpace(strings.Join(list, " ") + fmt.Sprintf(" of %d", len(colours))); got != c.want {
			t.Errorf("%q: %s, not %s", c.text, got, c.want)
		}
	}
	if _, colours := Spans("red where red is navy"); !colours[0].Known {
		t.Error("the shade is lost")
	}
}

// Whatever is typed, the spans lie in the text one behind the other, and count the colours.
func TestSpansLieInTheText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOf(rapid.SampledFrom([]string{"4 red, ", "times ", "2 times (", ")", "リネン ",
			"\n", "é", "\xff", "4 ", "K4 ", `"8/2 `, `"`, " where red is navy"})).Draw(t, "text"), "")
		spans, colours := Spans(text)
		at := 0
		for _, s := range spans {
			if s.From < at || s.To <= s.From || s.To > len(text) || s.Colour < 1 || s.Colour > len(colours) {
				t.Fatalf("%q: %+v of %d colours", text, spans, len(colours))
			}
			at = s.To
		}
	})
}
