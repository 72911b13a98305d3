package frame

import (
	"testing"

	"pgregory.net/rapid"

	"millside/plan/measure"
)

// Own examples, by hand. On a mill of two yards round with a peg place each 18 in, a yard is half a turn and the second
// place, 54 in three quarters of a turn and the third.
func TestBordersOnTheMill(t *testing.T) {
	s, err := ParseSections("1 yd indigo, 18 in, 20 in rust x 2")
	if err != nil {
		t.Fatal(err)
	}
	if s.String() != "1 yd indigo, 18 in, 20 in rust x 2" || s.Total() != 94*measure.Inch {
		t.Errorf("read %s, %s long", s, s.Total())
	}
	m := Mill{Circumference: 2 * measure.Yard, PegStep: 18 * measure.Inch}
	p := m.Path(5 * measure.Yard)
	want := []struct{ at, where, before, behind string }{
		{"36 in", "0.5 turns, peg 2", "indigo", ""},
		{"54 in", "0.75 turns, peg 3", "", "rust"},
		{"74 in", "1.03 turns, peg 4 and 2 in", "rust", "rust"},
		{"94 in", "1.31 turns, peg 5 and 4 in", "rust", ""},
	}
	borders := s.Borders(p.Length)
	if len(borders) != len(want) {
		t.Fatalf("%d borders: %v", len(borders), borders)
	}
	for i, b := range borders {
		w := want[i]
		if at := b.At.As(measure.Inches, 1).String(); at != w.at || m.Where(p, b.At, measure.Imperial) != w.where ||
			b.Before != w.before || b.Behind != w.behind {
			t.Errorf("border %d: %s, %s, %+v; want %+v", i+1, at, m.Where(p, b.At, measure.Imperial), b, w)
		}
	}
	if all := (Sections{{5 * measure.Yard, ""}}).Borders(p.Length); all != nil {
		t.Errorf("a section over the whole warp has borders: %v", all)
	}
	board := Board{36 * measure.Inch, 36 * measure.Inch, 18 * measure.Inch}
	for at, where := range map[measure.Length]string{36 * measure.Inch: "peg 1", 54 * measure.Inch: "peg 1 and 18 in",
		72 * measure.Inch: "peg 2"} {
		if got := board.Where(at, measure.Imperial); got != where {
			t.Errorf("%s on the board: %s, want %s", at, got, where)
		}
	}
}

func TestSectionsRefuse(t *testing.T) {
	for _, text := range []string{"indigo", "1 yd,, 2 yd", "5 mm red", "12 in x 0", "12 in x 201",
		"-1 yd", "1 yd re\x1bd"} {
		if s, err := ParseSections(text); err == nil {
			t.Errorf("%q is read as %s", text, s)
		}
	}
}

// What is written is read again as it was.
func TestSectionsReadAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var s Sections
		lengths := rapid.Int64Range(int64(measure.Centimetre), int64(9*measure.Metre))
		names := rapid.SampledFrom([]string{"", "indigo", "light rust", "x", "3 reds"})
		for range rapid.IntRange(1, 12).Draw(t, "sections") {
			s = append(s, Section{measure.Length(lengths.Draw(t, "length")), names.Draw(t, "name")})
		}
		got, err := ParseSections(s.String())
		if err != nil || got.String() != s.String() || got.Total() != s.Total() {
			t.Fatalf("%s is read as %s, %v", s, got, err)
		}
	})
}
