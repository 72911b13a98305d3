package stripe

import (
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"millside/plan/measure"

	"pgregory.net/rapid"
)

// letters writes the ends as one letter each, a for colour 1.
func letters(ends []int) string {
	var b strings.Builder
	for _, c := range ends {
		b.WriteByte(byte('a' + c - 1))
	}
	return b.String()
}

func TestParseEnds(t *testing.T) {
	for _, c := range []struct{ text, ends, plain string }{
		{"red", "a", "1 red"},
		{"3 red", "aaa", "3 red"},
		{"3red,2 blue", "aaabb", "3 red, 2 blue"},
		{"red, red, Blue", "aab", "1 red, 1 red, 1 Blue"},
		{"red\nred\r\nblue\rred", "aaba", "1 red, 1 red, 1 blue, 1 red"},
		{"2 off white, 1 OFF  White,", "aaa", "2 off white, 1 off white"},
		{"2 times (2 red, blue)", "aabaab", "2 times (2 red, 1 blue)"},
		{"2 TIMES (\n2 red\nblue\n)", "aabaab", "2 times (2 red, 1 blue)"},
		{"2 times balanced (2 red, blue), 1 blue", "aabaabaab", "2 times balanced (2 red, 1 blue), 1 blue"},
		{"mirror (2 red, blue)", "aabbaa", "mirror (2 red, 1 blue)"},
		{"point (2 red, 3 blue)", "aabbbaa", "point (2 red, 3 blue)"},
		{"point (red)", "a", "point (1 red)"},
		{"back (red, 2 times (blue, green))", "cbcba", "back (1 red, 2 times (1 blue, 1 green))"},
		{"2 times (red, mirror (blue, point (green, 2 red)))", "abcaaccaacbabcaaccaacb",
			"2 times (1 red, mirror (1 blue, point (1 green, 2 red)))"},
		{"2 times balanced (mirror (red, blue), green)", "abbacabbacabba",
			"2 times balanced (mirror (1 red, 1 blue), 1 green)"},
		{"red, weaver's blue-2 where weaver's blue-2 is #0A0b0C", "ab",
			"1 red, 1 weaver's blue-2 where weaver's blue-2 is #0a0b0c"},
	} {
		o, err := Parse(c.text)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		ends, err := o.Ends()
		if err != nil || letters(ends) != c.ends {
			t.Errorf("%q lays %s (%v), not %s", c.text, letters(ends), err, c.ends)
		}
		if got := o.String(); got != c.plain {
			t.Errorf("%q is written %q, not %q", c.text, got, c.plain)
		}
	}
}

// Source: an editor's answer in a weaving magazine, "Winding a warp with complex color order": 406
// ends, a beginning, a group wound 21 times, and an end. The counts of the parts are our own.
func TestPublishedOrderInOneLine(t *testing.T) {
	o, err := Parse("8 white, 21 times (4 red, 14 white), 20 red where red is #b03a2e, white is #f4f1e8")
	if err != nil {
		t.Fatal(err)
	}
	if o.Size() != 406 {
		t.Errorf("%d ends, not 406", o.Size())
	}
	if want := (Colour{Name: "red", Shade: Shade{0xb0, 0x3a, 0x2e}, Known: true}); o.Colours[1] != want {
		t.Errorf("got %v, not %v", o.Colours[1], want)
	}
}

func TestParseErrorsPoint(t *testing.T) {
	for _, c := range []struct {
		text         string
		offset       int
		line, column int
		want         string
	}{
		{"", 0, 1, 1, "write a stripe"},
		{"4 red 2 blue", 6, 1, 7, "comma"},
		{"4 red, 0 blue", 7, 1, 8, "1 to 100000"},
		{"4 red, 123456789012345678901 blue", 7, 1, 8, "1 to 100000"},
		{"4 red, 2", 8, 1, 9, "colour's name"},
		{"é, é,\n  3 times red", 18, 2, 11, "open a bracket"},
		{"3 times (red", 12, 1, 13, "close the bracket"},
		{"3 times ()", 9, 1, 10, "write a stripe"},
		{"red)", 3, 1, 4, "take it out"},
		{"(red)", 0, 1, 1, "say before it"},
		{"3 (red)", 2, 1, 3, "colour's name"},
		{"red; blue", 3, 1, 4, "comma"},
		{"red where blue is #000000", 10, 1, 11, "stripes use"},
		{"red where red is #00000", 17, 1, 18, "six figures"},
		{"red where red is blackish", 17, 1, 18, "six figures"},
		{"red where red #000000", 14, 1, 15, "write: is"},
		{"red where red is #000000, red is #000000", 26, 1, 27, "once"},
		{"red where", 9, 1, 10, "colour's name"},
		{"red where red is #000000 blue", 25, 1, 26, "comma"},
		{"60000 red, 40001 red", 11, 1, 12, "more than 100000"},
		{"red, 50001 times (red, blue)", 5, 1, 6, "more than 100000"},
		{"red, \xff", 5, 1, 6, "UTF-8"},
		{strings.Repeat("mirror (", 17) + "red", 7 + 16*8, 1, 8 + 16*8, "16 deep"},
		{"red, " + strings.Repeat("x", 41), 5, 1, 6, "40 characters"},
		{strings.Repeat(" ", MaxText+1), MaxText, 1, MaxText + 1, "1048576"},
	} {
		_, err := Parse(c.text)
		var te *TextError
		if !errors.As(err, &te) {
			t.Errorf("%.40q: error %v", c.text, err)
			continue
		}
		if te.Offset != c.offset || te.Line != c.line || te.Column != c.column || !strings.Contains(te.Want, c.want) {
			t.Errorf("%.40q: %d (%d:%d) %q, not %d (%d:%d) %q", c.text, te.Offset, te.Line, te.Column, te.Want,
				c.offset, c.line, c.column, c.want)
		}
		if fe := measure.FieldErrors(err); len(fe) != 1 || fe[0].Field != "stripes" {
			t.Errorf("%.40q: field errors %v", c.text, fe)
		}
	}
}

func TestCheckRefuses(t *testing.T) {
	red := []Colour{{Name: "red"}}
	stripe := func(n, c int) Part { return Part{Kind: Stripe, Count: n, Colour: c} }
	many := Part{Kind: Repeat, Count: measure.MaxEnds, Inside: []Part{stripe(measure.MaxEnds, 1)}}
	deep := stripe(1, 1)
	for range MaxDepth + 2 {
		deep = Part{Kind: Mirror, Inside: []Part{deep}}
	}
	for name, o := range map[string]Order{
		"nothing":       {},
		"no ends":       {Colours: red, Parts: []Part{stripe(0, 1)}},
		"unused colour": {Colours: []Colour{{Name: "red"}, {Name: "blue"}}, Parts: []Part{stripe(1, 1)}},
		"no colour":     {Colours: red, Parts: []Part{stripe(1, 2)}},
		"wrong order":   {Colours: []Colour{{Name: "red"}, {Name: "blue"}}, Parts: []Part{stripe(1, 2), stripe(1, 1)}},
		"empty bracket": {Colours: red, Parts: []Part{stripe(1, 1), {Kind: Back}}},
		"kind":          {Colours: red, Parts: []Part{{Kind: 9, Inside: []Part{stripe(1, 1)}}}},
		"too many":      {Colours: red, Parts: []Part{{Kind: Point, Inside: []Part{stripe(1, 1), many}}}},
		"too deep":      {Colours: red, Parts: []Part{deep}},
		"same name":     {Colours: []Colour{{Name: "red"}, {Name: "RED"}}, Parts: []Part{stripe(1, 1), stripe(1, 2)}},
		"marks":         {Colours: []Colour{{Name: `the "red"`}}, Parts: []Part{stripe(1, 1)}},
		"unprintable":   {Colours: []Colour{{Name: "red\x07"}}, Parts: []Part{stripe(1, 1)}},
		"two spaces":    {Colours: []Colour{{Name: "off  white"}}, Parts: []Part{stripe(1, 1)}},
		"space before":  {Colours: []Colour{{Name: " red"}}, Parts: []Part{stripe(1, 1)}},
		"space after":   {Colours: []Colour{{Name: "red "}}, Parts: []Part{stripe(1, 1)}},
		"no name":       {Colours: []Colour{{}}, Parts: []Part{stripe(1, 1)}},
	} {
		if _, err := o.Ends(); len(measure.FieldErrors(err)) != 1 {
			t.Errorf("%s: error %v", name, err)
		}
	}
	if _, err := FromEnds(red, []int{1, 2}); err == nil {
		t.Error("an end of no colour passes")
	}
}

// anyOrder draws an order with colours numbered as they first appear.
func anyOrder(t *rapid.T) Order {
	var o Order
	var parts func(depth int) []Part
	parts = func(depth int) []Part {
		list := make([]Part, rapid.IntRange(1, 3).Draw(t, "parts"))
		for i := range list {
			k := Kind(rapid.IntRange(0, int(Back)).Draw(t, "kind"))
			if depth == 3 {
				k = Stripe
			}
			if list[i].Kind = k; k <= Balanced {
				list[i].Count = rapid.IntRange(1, 4).Draw(t, "count")
			}
			if k != Stripe {
				list[i].Inside = parts(depth + 1)
				continue
			}
			list[i].Colour = rapid.IntRange(1, len(o.Colours)+1).Draw(t, "colour")
			if list[i].Colour > len(o.Colours) {
				c := Colour{Name: fmt.Sprintf(rapid.SampledFrom([]string{"c-%d yarn", "8/2 no. %d", "K%d", "ends %d",
					"écru-%d"}).Draw(t, "name"), len(o.Colours)), Known: rapid.Bool().Draw(t, "known")}
				if c.Known {
					c.Shade.G = rapid.Byte().Draw(t, "green")
				}
				o.Colours = append(o.Colours, c)
			}
		}
		return list
	}
	o.Parts = parts(0)
	return o
}

func TestPrintedOrderReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := anyOrder(t)
		ends, err := o.Ends()
		if err != nil {
			t.Fatal(err)
		}
		if len(ends) != o.Size() {
			t.Fatalf("%d ends, size %d", len(ends), o.Size())
		}
		back, err := Parse(o.String())
		if err != nil || !reflect.DeepEqual(o, back) {
			t.Fatalf("%s reads back as %s (%v)", o, back, err)
		}
		plain, err := FromEnds(o.Colours, ends)
		if err != nil {
			t.Fatal(err)
		}
		again, err := plain.Ends()
		if err != nil || len(again) != len(ends) {
			t.Fatalf("%s as a plain list lays %v (%v), not %v", o, again, err, ends)
		}
		for i := range ends { // the plain list numbers its colours anew
			if o.Colours[ends[i]-1] != plain.Colours[again[i]-1] {
				t.Fatalf("%s as a plain list is %s", o, plain)
			}
		}
	})
}

func FuzzParse(f *testing.F) {
	f.Add("8 white, 21 times (4 red, 14 white), 20 red where red is #b03a2e, white is #f4f1e8")
	f.Add("2 times balanced (mirror (a, b), point(c, 2 d)),\nback (e)")
	f.Fuzz(func(t *testing.T, text string) {
		o, err := Parse(text)
		if err != nil {
			var te *TextError
			if !errors.As(err, &te) || te.Offset < 0 || te.Offset > len(text) || te.Want == "" {
				t.Fatalf("error %v", err)
			}
			return
		}
		if err := o.Check(); err != nil {
			t.Fatalf("%q passes Parse but not Check: %v", text, err)
		}
		if len(o.String()) > MaxText {
			return
		}
		back, err := Parse(o.String())
		if err != nil || !reflect.DeepEqual(o, back) {
			t.Fatalf("%q is written %q and reads back as %v (%v)", text, o, back, err)
		}
	})
}

func BenchmarkParse(b *testing.B) {
	for b.Loop() {
		o, err := Parse("8 white, 21 times (4 red, 14 white), 20 red where red is #b03a2e, white is #f4f1e8")
		if err != nil {
			b.Fatal(err)
		}
		if _, err := o.Ends(); err != nil {
			b.Fatal(err)
		}
	}
}
