package stripe

import (
	"strings"
	"testing"
)

func TestDrawn(t *testing.T) {
	for _, c := range []struct {
		text  string
		cells int
		want  string
		said  string
	}{
		{"4 red, 2 white, 4 red", 10, "AAAABBAAAA", ""},
		{"4 red, 2 white, 4 red", 5, "AABAA", ""},
		// Every second end in fewer cells than ends: sampled it would be red alone.
		{"40 times (red, white)", 40, "AAAAAAAAAAAAAAAAAAAABBBBBBBBBBBBBBBBBBBB",
			"each bracket is drawn once: 40 times (1 red, 1 white)"},
		{"9 green, 40 times (red, white), 9 green", 20, "AAAAAAAAABCAAAAAAAAA",
			"each bracket is drawn once: 9 green, 40 times (1 red, 1 white), 9 green"},
		{"back (40 times (red, white), 9 green)", 11, "CCCCCCCCCBA", "9 green, 40 times (1 white, 1 red)"},
		{"1 red, 2 white, 1 blue, 2 red, 1 white, 1 red, 1 blue", 4, "ABBC", "drawn are ends 1 to 4 of 9"},
	} {
		o, err := Parse(c.text)
		if err != nil {
			t.Fatal(err)
		}
		d, said := o.Drawn(c.cells)
		var b strings.Builder
		for _, cell := range d.Cells {
			b.WriteRune(rune('A' + cell.Colour - 1))
		}
		if b.String() != c.want || !strings.Contains(said, c.said) || (said == "") != (c.said == "") {
			t.Errorf("%s in %d cells: %s, %q", c.text, c.cells, b.String(), said)
		}
	}
}
