package stripe

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestFolded(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"red", "1 red"},
		{"4 red, 2 white", "4 red, 2 white"},
		// Brackets are put where they make it shorter only.
		{"red, blue, red, blue", "2 times (1 red, 1 blue)"},
		{"4 red, blue, 4 red", "4 red, 1 blue, 4 red"},
		// The order of the published example, facts.md "Worked examples from books", counts made up here.
		{"8 white, 21 times (4 red, 14 white), 20 red", "8 white, 21 times (4 red, 14 white), 20 red"},
		{"60 times (red, blue)", "60 times (1 red, 1 blue)"},
		{"9 times (8 red, 8 white, 6 times (red, white, blue), 8 green)",
			"9 times (8 red, 8 white, 6 times (1 red, 1 white, 1 blue), 8 green)"},
		{"mirror (4 red, 2 white, 7 blue, 3 white, 9 red, 1 blue)",
			"point (4 red, 2 white, 7 blue, 3 white, 9 red, 2 blue)"},
		{"10 times (4 red, 2 white), 4 red", "10 times (4 red, 2 white), 4 red"},
		// Stripes that touch in a repeat become one; the repeat is found where they do.
		{"9 times (2 red, 3 white, 5 red)", "2 red, 8 times (3 white, 7 red), 3 white, 5 red"},
	} {
		o, err := Parse(c.text)
		if err != nil {
			t.Fatal(err)
		}
		ends, err := o.Ends()
		if err != nil {
			t.Fatal(err)
		}
		flat, err := FromEnds(o.Colours, ends)
		if err != nil {
			t.Fatal(err)
		}
		if got := flat.Folded().String(); got != c.want {
			t.Errorf("%s\nis folded to %s,\nnot %s", c.text, got, c.want)
		}
		if got := o.Folded(); len(o.Parts) > 0 && o.Parts[0].Kind != Stripe && got.String() != o.String() {
			t.Errorf("%v has brackets, and became %v", o, got)
		}
	}
}

// Folded, an order has the same ends, is no longer, and can be written and read.
func TestFoldedKeepsTheEnds(t *testing.T) {
	colours := []Colour{{Name: "red"}, {Name: "white"}, {Name: "sea blue", Known: true}}
	rapid.Check(t, func(t *rapid.T) {
		one := rapid.SliceOfN(rapid.IntRange(1, 3), 1, 8)
		var ends []int
		for range rapid.IntRange(1, 6).Draw(t, "blocks") {
			block := slices.Repeat(one.Draw(t, "block"), rapid.IntRange(1, 12).Draw(t, "times"))
			if rapid.Bool().Draw(t, "mirrored") {
				back := slices.Clone(block)
				slices.Reverse(back)
				block = append(block, back...)
			}
			ends = append(ends, block...)
		}
		flat, err := FromEnds(colours, ends)
		if err != nil {
			t.Fatal(err)
		}
		want, err := flat.Ends()
		if err != nil {
			t.Fatal(err)
		}
		folded := flat.Folded()
		if got, err := folded.Ends(); err != nil || !slices.Equal(got, want) {
			t.Fatalf("%v lays %v, not %v (%v)", folded, got, want, err)
		}
		if len(folded.String()) > len(flat.String()) {
			t.Fatalf("%v is longer than %v", folded, flat)
		}
		if back, err := Parse(folded.String()); err != nil || back.String() != folded.String() {
			t.Fatalf("%v is read as %v (%v)", folded, back, err)
		}
	})
}

// The longest warps: without a repeat, and of one that is too long to be found.
func BenchmarkFolded(b *testing.B) {
	colours := make([]Colour, 12)
	for i := range colours {
		colours[i].Name = string(rune('a' + i))
	}
	for name, ends := range map[string][]int{"scattered": scattered(100_000, 12), "plaid": plaid(100_000, 12, 500)} {
		flat, err := FromEnds(colours, ends)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				flat.Folded()
			}
		})
	}
}
