package loom

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/measure"
)

// Worked by hand: in a repeat of 4 dents of 2, 2 of 4 and 2 empty lie 16 ends in 8 dents.
func TestDentSectionsByHand(t *testing.T) {
	for _, c := range []struct {
		text string
		ends int
		want []int
	}{
		{"4 dents of 2, 2 of 4, 2 empty", 16, []int{2, 2, 2, 2, 4, 4}},
		{"4 dents of 2, 2 of 4, 2 empty", 20, []int{2, 2, 2, 2, 4, 4, 0, 0, 2, 2}},
		{"2 dents empty, 1 dent of 3", 7, []int{3, 0, 0, 3, 0, 0, 1}},
	} {
		d, err := ParseDentSections(c.text)
		if err != nil {
			t.Fatal(err)
		}
		got, err := d.Fill(c.ends)
		if err != nil || !slices.Equal(got, c.want) {
			t.Errorf("%s, %d ends: %v, %v", c.text, c.ends, got, err)
		}
	}
	for _, bad := range []string{"many", "0 of 2", "3 empty", "4 of 101", "2000 of 2", "3 of", "4 dents"} {
		if d, err := ParseDentSections(bad); err == nil {
			t.Errorf("%q is read as %v", bad, d)
		}
	}
}

// Whatever the sections are: all ends lie in the dents, the outer dents hold some, what is written is read again, and
// the widths of the ends are together that of the dents, but for a nanometre in each.
func TestDentSections(t *testing.T) {
	reed, err := ParseReed("12 dents an inch")
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		d := DentSections{{rapid.IntRange(1, 9).Draw(t, "dents"), rapid.IntRange(1, 5).Draw(t, "ends")}}
		for range rapid.IntRange(0, 4).Draw(t, "more") {
			d = append(d, DentSection{rapid.IntRange(1, 9).Draw(t, "dents"), rapid.IntRange(0, 5).Draw(t, "ends")})
		}
		if again, err := ParseDentSections(d.String()); err != nil || !slices.Equal(again, d) {
			t.Fatalf("%v is read as %v, %v", d, again, err)
		}
		n := rapid.IntRange(1, 400).Draw(t, "warp")
		dents, err := d.Fill(n)
		if err != nil {
			t.Fatal(err)
		}
		sum := 0
		for _, k := range dents {
			sum += k
		}
		if sum != n || dents[0] == 0 || dents[len(dents)-1] == 0 {
			t.Fatalf("%d ends in %v", n, dents)
		}
		widths, all := reed.Widths(dents), measure.Length(0)
		for _, w := range widths {
			all += w
		}
		if off := reed.widthOf(len(dents)) - all; len(widths) != n || off < 0 || off > measure.Length(n) {
			t.Fatalf("%d widths, %v of %v", len(widths), all, reed.widthOf(len(dents)))
		}
	})
}
