package cloth

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/internal/measuretest"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

func TestEndsOfACloth(t *testing.T) {
	for _, c := range []struct {
		name   string
		cloth  Width
		inReed string
		wanted int
	}{
		// Measured Threads, web log, towels.
		{"22 in at 24", Width{Finished: 22 * measure.Inch, Sett: measuretest.Sett(t, "24 an inch")}, "22 in", 528},
		// Shrinkage divides, it doesn't add: 20 % and 10 in wanted need 12.5 in (cnch.org, p=13821).
		{"20 % shrinkage", Width{Finished: 10 * measure.Inch, Shrinkage: 20 * measure.OnePercent,
			Sett: measuretest.Sett(t, "20 an inch")}, "12.5 in", 250},
		// 44.5 in, a quarter inch a side doubled, 72 an inch at two a dent: 44 x 72 + 0.5 x 72 x 2 = 3,240
		// (textilecalculations.com, total quantity of materials in a piece). A quarter inch is 18 ends.
		{"doubled selvedges", Width{Finished: 89 * measure.Inch / 2, Sett: measuretest.Sett(t, "72 an inch"),
			Doubled: 18}, "44.5 in", 3240},
		// Reed 60s Stockport, two a dent, 38 in in the reed: 2,280 ends (C. P. Brooks, "Cotton
		// Manufacturing", 1892, weight of a piece).
		{"Brooks", Width{Finished: 38 * measure.Inch, Sett: measuretest.Sett(t, "60 an inch")}, "38 in", 2280},
		// Scotch 1,100 reed, two a dent, 38 in: 2,260 ends (Brooks 1892, p. 96); 2200 / 37 x 38 = 2,259.5.
		{"Brooks, Scotch reed", Width{Finished: 38 * measure.Inch, Sett: measuretest.Sett(t, "2200/37 an inch")},
			"38 in", 2260},
		// Own example: both allowances, floating selvedges and a count that is rounded up.
		{"both allowances", Width{Finished: 20 * measure.Inch, Shrinkage: 10 * measure.OnePercent,
			DrawIn: 8 * measure.OnePercent, Sett: measuretest.Sett(t, "20 an inch"), Doubled: 2, Floating: 2},
			"24.15 in", 484 + 4 + 2},
	} {
		got, err := c.cloth.Ends()
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if got.Wanted != c.wanted || got.InReed.In(measure.Inches, 2) != c.inReed {
			t.Errorf("%s: %d ends over %s, want %d over %s", c.name, got.Wanted, got.InReed.In(measure.Inches, 2),
				c.wanted, c.inReed)
		}
	}
	// 12 in give 9.6 in with 20 % (cnch.org, p=13821).
	narrow, err := Width{Finished: 96 * measure.Inch / 10, Shrinkage: 20 * measure.OnePercent,
		Sett: measuretest.Sett(t, "10 an inch")}.Ends()
	if err != nil || narrow.OffLoom != 12*measure.Inch {
		t.Errorf("9.6 in with 20 %% come from %v, %v; want 12 in", narrow, err)
	}
}

func TestBrooksAllowsSixPercent(t *testing.T) {
	// "The cloth is 36 in, so 38 in in the reed allows about 6 %" (Brooks 1892, p. 96). Two inches are
	// 5.56 % of the 36 and 5.26 % of the 38: the draw-in of 5.26 % leads back to the 38.
	got, err := Width{Finished: 36 * measure.Inch, DrawIn: 52_632, Sett: measuretest.Sett(t, "60 an inch")}.Ends()
	if err != nil || got.InReed.In(measure.Inches, 3) != "38 in" {
		t.Errorf("36 in with 5.2632 %% are %v in the reed, %v; want 38 in", got.InReed, err)
	}
}

func TestCountsThatFit(t *testing.T) {
	c := Width{Finished: 20 * measure.Inch, Sett: measuretest.Sett(t, "20 an inch"), Floating: 2, Repeat: 24,
		Balance: 8, Group: 10}
	e, err := c.Ends()
	if err != nil {
		t.Fatal(err)
	}
	// 400 ends and two floating ones. Repeats: 16 x 24 + 8 + 2 = 394 below, 418 above. Groups: 400, 410.
	// Both: 370 (15 repeats) below and 490 (20 repeats) above.
	var got []int
	for _, f := range e.Fits {
		got = append(got, f.Ends)
	}
	want := []int{402, 400, 394, 410, 418, 370, 490}
	if len(got) != len(want) {
		t.Fatalf("counts %v, want %v", got, want)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Fatalf("counts %v, want %v", got, want)
		}
	}
	if f := e.Fits[5]; !f.WholeRepeats || !f.WholePasses || f.Repeats != 15 || f.Passes != 37 ||
		f.Finished.In(measure.Inches, 1) != "18.4 in" {
		t.Errorf("370 ends: %+v", f)
	}
}

func TestCountsThatFitHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Width{
			Finished: measure.Length(rapid.Int64Range(int64(measure.Centimetre), int64(2*measure.Metre)).Draw(t,
				"width")),
			DrawIn:   measure.Percent(rapid.Int64Range(0, int64(20*measure.OnePercent)).Draw(t, "draw-in")),
			Sett:     measuretest.Sett(t, fmt.Sprintf("%d an inch", rapid.Int64Range(4, 60).Draw(t, "sett"))),
			Floating: rapid.IntRange(0, 4).Draw(t, "floating"),
			Repeat:   rapid.IntRange(0, 60).Draw(t, "repeat"),
			Group:    rapid.IntRange(0, 30).Draw(t, "group"),
		}
		if c.Repeat > 0 {
			c.Balance = rapid.IntRange(0, c.Repeat-1).Draw(t, "balance")
		}
		e, err := c.Ends()
		if err != nil {
			t.Fatal(err)
		}
		if e.Wanted != e.Body+e.Doubling+e.Floating || len(e.Fits) == 0 || e.Fits[0].Ends != e.Wanted {
			t.Fatalf("wanted %+v", e)
		}
		// A whole number of ends that is rounded up is less than an end wider than the width.
		if w := c.Sett.WidthOf(e.Body); w < e.InReed-1 || w > e.InReed+c.Sett.WidthOf(1) {
			t.Fatalf("%d ends are %v for %v in the reed", e.Body, w, e.InReed)
		}
		both := map[bool]bool{}
		for _, f := range e.Fits {
			if f.WholeRepeats && (f.Body-c.Balance) != f.Repeats*c.Repeat || f.WholePasses && f.Ends%c.Group != 0 ||
				f.Ends != f.Body+c.Floating || f.Why == "" {
				t.Fatalf("fit %+v of %+v", f, c)
			}
			if f.WholeRepeats && f.WholePasses {
				both[f.Ends >= e.Wanted] = true
			}
		}
		// The nearest above that suits both, found by trying every count.
		if c.Repeat > 0 && c.Group > 0 {
			for n := e.Wanted; n < e.Wanted+c.Repeat*c.Group; n++ {
				if body := n - c.Floating - c.Balance; body >= 0 && body%c.Repeat == 0 && n%c.Group == 0 &&
					n-c.Floating > 0 {
					if !both[true] {
						t.Fatalf("%d suits both and isn't offered: %+v", n, e.Fits)
					}
					break
				}
			}
		}
	})
}

func TestLengthOfAWarp(t *testing.T) {
	for _, c := range []struct {
		name  string
		cloth Length
		want  string
	}{
		// Four towels: 4 x 34 in + 31 in waste + 13 in take-up = 180 in = 5 yd (interweave.com,
		// "Determining warp length"). 13 of 136 in are 9.5588 %.
		{"four towels", Length{Piece: 34 * measure.Inch, Pieces: 4, TakeUp: 95_588, TakeUpOf: TakeUpOfCloth,
			Waste: 31 * measure.Inch}, "5 yd"},
		// 40 yd + 5 % = 42 yd (textilecalculations.com, total quantity of materials in a piece).
		{"a share of the cloth", Length{Piece: 40 * measure.Yard, Pieces: 1, TakeUp: 5 * measure.OnePercent,
			TakeUpOf: TakeUpOfCloth}, "42 yd"},
		// 5-end satin: 4 % (72 x 4 / 70 = 4.11), 94 yd of cloth take 98 yd of warp (J. T. Taylor, "Cotton
		// Weaving and Designing", 6th ed. 1909, p. 427): 97.92, and 98 with the share unrounded.
		{"a share of the warp", Length{Piece: 94 * measure.Yard, Pieces: 1, TakeUp: 41_143}, "98.03 yd"},
		{"a share of the warp, rounded", Length{Piece: 94 * measure.Yard, Pieces: 1, TakeUp: 4 * measure.OnePercent},
			"97.92 yd"},
		// Shrinkage divides: 20 % and 10 in wanted need 12.5 in (cnch.org, p=13821).
		{"shrinkage", Length{Piece: 10 * measure.Inch, Pieces: 1, Shrinkage: 20 * measure.OnePercent}, "0.35 yd"},
		// Own example, every line: (4 x 28 + 8 x 1) / 0.9 / 0.92 + 8 x 2 + 15 + 30 + 6 in.
		{"every line", Length{Piece: 28 * measure.Inch, Pieces: 4, Hem: measure.Inch, Fringe: 2 * measure.Inch,
			Shrinkage: 10 * measure.OnePercent, TakeUp: 8 * measure.OnePercent, Sample: 15 * measure.Inch,
			Waste: 30 * measure.Inch, Knotting: 6 * measure.Inch}, "5.89 yd"},
	} {
		got, err := c.cloth.Warp()
		if err != nil || got.Total.In(measure.Yards, 2) != c.want {
			t.Errorf("%s: %v, %v; want %s", c.name, got.Total.In(measure.Yards, 4), err, c.want)
		}
	}
}

func TestWarpLengthIsTheSumOfItsLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := func(name string, high measure.Length) measure.Length {
			return measure.Length(rapid.Int64Range(0, int64(high)).Draw(t, name))
		}
		c := Length{
			Piece: 1 + length("piece", 10*measure.Metre), Pieces: rapid.IntRange(1, 20).Draw(t, "pieces"),
			Hem: length("hem", measure.Metre), Fringe: length("fringe", measure.Metre),
			Shrinkage: measure.Percent(rapid.Int64Range(0, int64(90*measure.OnePercent)).Draw(t, "shrinkage")),
			TakeUp:    measure.Percent(rapid.Int64Range(0, int64(90*measure.OnePercent)).Draw(t, "take-up")),
			TakeUpOf:  TakeUpOf(rapid.IntRange(0, 1).Draw(t, "of")),
			Sample:    length("sample", measure.Metre), Waste: length("waste", 2*measure.Metre),
			Knotting: length("knotting", measure.Metre),
			Units:    measure.LengthUnitSystem(rapid.IntRange(0, 1).Draw(t, "units")),
		}
		w, err := c.Warp()
		if err != nil {
			t.Fatal(err)
		}
		var sum measure.Length
		for _, l := range w.Lines {
			if l.Amount < 0 {
				t.Fatalf("%s is %v", l.Name, l.Amount)
			}
			sum += l.Amount
		}
		if sum != w.Total || w.Woven > w.Total {
			t.Fatalf("the lines make %v, the total is %v", sum, w.Total)
		}
		// Weaving and washing the warp gives the cloth again, to the nanometre of each rounding.
		woven := ratio.Sub(ratio.Of(w.Total), ratio.Of(c.Fringe.Times(2*c.Pieces)+c.Sample+c.Waste+c.Knotting))
		if c.TakeUpOf == TakeUpOfWarp {
			woven = ratio.Mul(woven, c.TakeUp.Left())
		} else {
			woven = ratio.Quo(woven, ratio.Add(ratio.Of(1), c.TakeUp.Of()))
		}
		cloth, _ := measure.LengthOf(ratio.Down, ratio.Mul(woven, c.Shrinkage.Left()))
		want := (c.Piece + 2*c.Hem).Times(c.Pieces)
		if cloth < want || cloth > want+2 {
			t.Fatalf("the warp makes %v of cloth, wanted %v", cloth, want)
		}
	})
}

func TestAllowancesWarnAndNeverRefuse(t *testing.T) {
	c := Length{Piece: measure.Metre, Pieces: 1, Shrinkage: 30 * measure.OnePercent, Fibre: CottonFibre,
		TakeUp: 2 * measure.OnePercent, Sample: measure.Metre, Waste: 20 * measure.Centimetre, Units: measure.Metric}
	w, err := c.Warp()
	if err != nil {
		t.Fatal(err)
	}
	warned := map[string]string{}
	for _, l := range w.Lines {
		warned[l.Name] = l.Warning
	}
	for name, word := range map[string]string{"shrinkage": "more", "take-up": "less", "sample": "more",
		"loom waste": "less"} {
		if !strings.Contains(warned[name], word) {
			t.Errorf("%s: warning %q, want one with %q", name, warned[name], word)
		}
	}
	usual := Length{Piece: measure.Metre, Pieces: 1, Shrinkage: 8 * measure.OnePercent, Fibre: CottonFibre,
		TakeUp: 8 * measure.OnePercent, Waste: 60 * measure.Centimetre}
	if w, err = usual.Warp(); err != nil {
		t.Fatal(err)
	}
	for _, l := range w.Lines {
		if l.Warning != "" {
			t.Errorf("%s: unexpected warning %q", l.Name, l.Warning)
		}
	}
	rows := w.Rows(measure.Metric)
	if last := rows[len(rows)-1]; last.Name != "warp" || !strings.HasSuffix(last.Value.String(), " m") {
		t.Errorf("the last row is %+v", last)
	}
}

// The usual ranges: from memory, common practice. Both ends of a range are usual.
func TestUsualRanges(t *testing.T) {
	for fibre, want := range map[Fibre][2]measure.Percent{CottonFibre: {5, 12}, WoolFibre: {10, 20},
		LinenFibre: {5, 10}, SilkFibre: {2, 5}} {
		u := usualShrinkage[fibre]
		low, high := want[0]*measure.OnePercent, want[1]*measure.OnePercent
		if u.warn("shrinkage", low) != "" || u.warn("shrinkage", high) != "" || u.warn("shrinkage", low-1) == "" ||
			u.warn("shrinkage", high+1) == "" {
			t.Errorf("%v: the range is %s", fibre, u.text())
		}
	}
	if usualShrinkage[OtherFibre].warn("shrinkage", 0) != "" || usualShrinkage[OtherFibre].text() != "" {
		t.Error("a fibre without a range warns")
	}
	if usualTakeUp.text() != "5 % to 12 %" || usualDrawIn.text() != "5 % to 10 %" {
		t.Errorf("take-up %s, draw-in %s", usualTakeUp.text(), usualDrawIn.text())
	}
	for _, c := range []struct {
		usual      usualLength
		l          measure.Length
		units      measure.LengthUnitSystem
		outOfRange bool
	}{
		{usualWaste, 18 * measure.Inch, measure.Imperial, false},
		{usualWaste, 36 * measure.Inch, measure.Imperial, false},
		{usualWaste, 45 * measure.Centimetre, measure.Metric, false},
		{usualWaste, 90 * measure.Centimetre, measure.Metric, false},
		{usualWaste, 17 * measure.Inch, measure.Imperial, true},
		{usualWaste, 37 * measure.Inch, measure.Imperial, true},
		{usualSample, 12 * measure.Inch, measure.Imperial, false},
		{usualSample, 18 * measure.Inch, measure.Imperial, false},
		{usualSample, 19 * measure.Inch, measure.Imperial, true},
	} {
		if got := c.usual.warn("it", c.l, c.units); (got != "") != c.outOfRange {
			t.Errorf("%v: %q", c.l, got)
		}
	}
}

func TestClothRefuses(t *testing.T) {
	if _, err := (Width{}).Ends(); len(measure.FieldErrors(err)) != 2 {
		t.Errorf("a cloth without width and sett: %v", err)
	}
	bad := Width{Finished: math.MaxInt64, Shrinkage: -1, DrawIn: 100 * measure.OnePercent,
		Sett: measuretest.Sett(t, "20 an inch"), Doubled: -1, Floating: 5, Repeat: -1, Balance: 1, Group: 61}
	if _, err := bad.Ends(); len(measure.FieldErrors(err)) != 8 {
		t.Errorf("%d errors: %v", len(measure.FieldErrors(err)), err)
	}
	if _, err := (Width{Finished: 10 * measure.Metre, Sett: measuretest.Sett(t, "1000 an inch")}).Ends(); err == nil {
		t.Error("393,701 ends are no error")
	}
	if _, err := (Width{Finished: measure.Inch, Sett: measuretest.Sett(t, "4 an inch"),
		Doubled: 3}).Ends(); err == nil {
		t.Error("more doubled ends than ends are no error")
	}
	if _, err := (Length{}).Warp(); len(measure.FieldErrors(err)) != 2 {
		t.Errorf("a cloth without length and pieces: %v", err)
	}
	worst := Length{Piece: math.MaxInt64, Pieces: math.MaxInt64, Hem: -1, Fringe: math.MaxInt64,
		Shrinkage: 91 * measure.OnePercent, TakeUp: -1, TakeUpOf: 9, Sample: -1, Waste: -1, Knotting: -1}
	if _, err := worst.Warp(); len(measure.FieldErrors(err)) != 10 {
		t.Errorf("%d errors: %v", len(measure.FieldErrors(err)), err)
	}
}
