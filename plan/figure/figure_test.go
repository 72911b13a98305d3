package figure

import (
	"math/big"
	"reflect"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// What a person reads of each figure.
func TestFiguresAsText(t *testing.T) {
	for _, c := range []struct {
		f    Figure
		want string
	}{
		{Text("as it is"), "as it is"},
		{Count{N: 12}, "12"},
		{Counted(1, "pass", "passes"), "1 pass"},
		{Counted(0, "pass", "passes"), "0 passes"},
		{New(big.NewRat(15, 2), 2, "yd"), "7.5 yd"},
		{New(big.NewRat(1, 3), 2, ""), "0.33"},
		{New(big.NewRat(14414, 10), 1, "yd"), "1441 yd"}, // no more figures than a reckoned number has
		{New(big.NewRat(199622, 10), 1, "yd"), "19960 yd"},
		{New(big.NewRat(99996, 10), 1, "yd"), "10000 yd"},
		{New(big.NewRat(-14416, 10), 1, "yd"), "-1442 yd"},
		{New(big.NewRat(1, 8), 4, ""), "0.125"},
		{AtLeast(big.NewRat(14411, 10), 1, "oz"), "1442 oz"},
		{AtLeast(big.NewRat(701, 1000), 1, "oz"), "0.8 oz"},
		{Exact(big.NewRat(1234567, 100), 2, "yd"), "12345.67 yd"},
		{Number{}, "0"},
		{Of(big.NewRat(1, 1), 2, "turn", "turns"), "1 turn"},
		{Of(big.NewRat(999, 1000), 2, "turn", "turns"), "1 turn"}, // what is read decides, not what it was
		{Of(big.NewRat(7, 2), 2, "turn", "turns"), "3.5 turns"},
		{Duration{Time: 36*time.Minute + time.Second}, "37 min"},
		{Duration{Time: 2 * time.Hour, About: true}, "about 2 h"},
		{Duration{Time: 80 * time.Minute}, "1 h 20 min"},
		{Range{4, 9}, "4 to 9"},
		{Range{4, 4}, "4"},
		{List{1, 2, 3}, "1 to 3"},
		{List{2, 4, 6, 8, 10, 12, 14}, "2, 4, 6 ... 14"},
		{List{1, 5}, "1, 5"},
		{List{7}, "7"},
		{List{1, 2, 4}, "1, 2, 4"},
		{List(nil), ""},
		{Colour{Letter: "C", Name: "navy", Shade: "#1f2a50"}, "C navy"},
		{Colour{Shade: "#1f2a50"}, "#1f2a50"},
	} {
		if got := c.f.String(); got != c.want {
			t.Errorf("%#v is %q, not %q", c.f, got, c.want)
		}
	}
}

// Who writes a decimal comma reads one, and files and programs still read a point.
func TestDecimalComma(t *testing.T) {
	WriteComma(true)
	defer WriteComma(false)
	cell := Say("%s of %s", New(big.NewRat(15, 2), 2, "yd"), Counted(40, "end", "ends"))
	text, err := cell.MarshalText()
	if cell.String() != "7,5 yd of 40 ends" || string(text) != "7.5 yd of 40 ends" || err != nil {
		t.Errorf("%q, %q, %v", cell, text, err)
	}
}

// A cell keeps the figures that it was made of, and the words between them as they were written.
func TestSay(t *testing.T) {
	yards, ends := New(big.NewRat(9, 2), 2, "yd"), Counted(40, "end", "ends")
	for _, c := range []struct {
		got  Cell
		want Cell
	}{
		{Say("plain"), Cell{Text("plain")}},
		{Say(""), nil},
		{Say("%d of %s", 3, "four"), Cell{Text("3 of four")}},
		{Say("%s, %s", ends, yards), Cell{ends, Text(", "), yards}},
		{Say("%d x %s = 8 %%", 2, yards), Cell{Text("2 x "), yards, Text(" = 8 %")}},
		{Say("%s each", Cell{ends, Text(" and "), yards}), Cell{ends, Text(" and "), yards, Text(" each")}},
		{Cell{ends}.And(", %s", yards), Cell{ends, Text(", "), yards}},
		{Cell{Text("a")}.And("b"), Cell{Text("ab")}},
		{Join([]Cell{{ends}, {yards}}, " + "), Cell{ends, Text(" + "), yards}},
	} {
		if !reflect.DeepEqual(c.got, c.want) && len(c.got)+len(c.want) > 0 {
			t.Errorf("got %#v, want %#v", c.got, c.want)
		}
	}
}

// The text of a cell is what fmt would have made of its parts, whatever its words are.
func TestSayIsSprintf(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.StringMatching(`[a-z %\[\]]{0,12}`)
		before := strings.ReplaceAll(words.Draw(t, "before"), "%", "")
		after := strings.ReplaceAll(words.Draw(t, "after"), "%", "")
		n := Count{N: rapid.IntRange(0, 100).Draw(t, "n")}
		text := words.Draw(t, "text")
		got := Say(before+"%s"+after+"%s", n, text).String()
		if want := before + n.String() + after + text; got != want {
			t.Fatalf("%q, not %q", got, want)
		}
	})
}

// Only a bare number may stand in a column of numbers.
func TestOnly(t *testing.T) {
	if n, ok := (Cell{Count{N: 3}}).Only(); !ok || n.N != 3 {
		t.Error("a bare number isn't one")
	}
	for _, c := range []Cell{nil, {Text("3")}, {Counted(3, "end", "ends")}, {Count{N: 3}, Count{N: 4}}} {
		if _, ok := c.Only(); ok {
			t.Errorf("%q is a bare number", c)
		}
	}
}
