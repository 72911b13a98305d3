package loom

import (
	"fmt"
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/internal/measuretest"
	"millside/plan/measure"
)

func TestSpread(t *testing.T) {
	for _, c := range []struct {
		sum, parts int
		want       string
	}{
		{5, 4, "1-1-1-2"}, {3, 2, "1-2"}, {5, 2, "2-3"}, {12, 5, "2-2-3-2-3"}, {4, 1, "4"}, {1, 2, "0-1"},
		{0, 3, "0-0-0"}, {3, 0, ""}, {-1, 2, ""},
	} {
		if got := orderText(spread(c.sum, c.parts)); got != c.want {
			t.Errorf("%d over %d is %s, want %s", c.sum, c.parts, got, c.want)
		}
	}
	if got := spread(math.MaxInt-1, 7); len(got) != 7 || got[0] <= 0 {
		t.Errorf("a huge sum is spread as %v", got)
	}
}

// The word is balanced: the sums of any two runs of one length, round the repeat, differ by one at the
// most. And it adds up.
func TestSpreadIsEven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sum, parts := rapid.IntRange(0, 200).Draw(t, "sum"), rapid.IntRange(1, 30).Draw(t, "parts")
		word := spread(sum, parts)
		total := 0
		for _, n := range word {
			total += n
		}
		if total != sum || len(word) != parts {
			t.Fatalf("%v makes %d over %d", word, total, len(word))
		}
		for run := 1; run < parts; run++ {
			low, high := math.MaxInt, 0
			for start := range parts {
				n := 0
				for k := range run {
					n += word[(start+k)%parts]
				}
				low, high = min(low, n), max(high, n)
			}
			if high-low > 1 {
				t.Fatalf("%v: runs of %d hold %d to %d", word, run, low, high)
			}
		}
	})
}

func TestNearestFraction(t *testing.T) {
	for _, c := range []struct {
		num, den int64
		limit    int
		want     string
	}{{314159, 100000, 12, "22/7"}, {6, 5, 4, "5/4"}, {5, 2, 4, "5/2"}, {0, 1, 3, "0"}, {1, 3, 2, "1/2"}} {
		if got := nearestFraction(big.NewRat(c.num, c.den), c.limit).RatString(); got != c.want {
			t.Errorf("nearest to %d/%d within %d is %s, want %s", c.num, c.den, c.limit, got, c.want)
		}
	}
}

func endsOf(l *RaddleList) []int {
	var list []int
	for _, s := range l.Sections {
		list = append(list, s.Ends)
	}
	return list
}

func TestFillRaddle(t *testing.T) {
	for _, c := range []struct {
		name   string
		raddle Raddle
		warp   Raddling
		want   string
		order  string
		middle bool
	}{
		// Ten ends in the paddle at 20 ends an inch: two groups make an inch of raddle (common practice,
		// no source).
		{"two groups an inch", Raddle{Space: measure.Inch},
			Raddling{Ends: 80, Sett: measuretest.Sett(t, "20 an inch"), Groups: evenly(80, 10)},
			"20-20-20-20", "2", false},
		{"an odd number of spaces", Raddle{Space: measure.Inch},
			Raddling{Ends: 60, Sett: measuretest.Sett(t, "20 an inch")}, "20-20-20", "20", true},
		{"7.5 a space", Raddle{Space: measure.Inch / 2}, Raddling{Ends: 60, Sett: measuretest.Sett(t, "15 an inch")},
			"7-8-7-8-7-8-7-8", "7-8", false},
		{"part of a space at each side", Raddle{Space: measure.Inch},
			Raddling{Ends: 50, Sett: measuretest.Sett(t, "20 an inch")}, "15-20-15", "20", true},
		{"whole groups", Raddle{Space: measure.Inch},
			Raddling{Ends: 60, Sett: measuretest.Sett(t, "15 an inch"), Groups: evenly(60, 10)},
			"10-20-10-20", "1-2", false},
		{"a sparse warp", Raddle{Space: measure.Inch / 4}, Raddling{Ends: 4, Sett: measuretest.Sett(t, "2 an inch")},
			"1-0-1-0-1-0-1", "0-1", false},
		{"metric", Raddle{Space: measure.Centimetre}, Raddling{Ends: 32, Sett: measuretest.Sett(t, "80 in 10 cm")},
			"8-8-8-8", "8", false},
		{"one end", Raddle{Space: measure.Inch}, Raddling{Ends: 1, Sett: measuretest.Sett(t, "20 an inch")}, "1", "20",
			false},
	} {
		l, err := c.raddle.Fill(c.warp)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if orderText(endsOf(l)) != c.want || orderText(l.Order) != c.order || l.MiddleSpace != c.middle {
			t.Errorf("%s: %v, order %v, middle %v; want %s, %s, %v", c.name, endsOf(l), l.Order, l.MiddleSpace, c.want,
				c.order, c.middle)
		}
	}
}

func TestRaddleFromTheCentreOut(t *testing.T) {
	l, err := Raddle{Space: measure.Inch,
		Spaces: 3}.Fill(Raddling{Ends: 50, Sett: measuretest.Sett(t, "20 an inch"), Groups: evenly(50, 10), Split: true,
		FirstEnd: RightSide})
	if err != nil {
		t.Fatal(err)
	}
	out := l.CentreOut()
	if len(out) != 3 || out[0].FromCentre != 0 || out[1].FromCentre != -1 || out[2].FromCentre != 1 {
		t.Fatalf("from the centre out: %+v", out)
	}
	// End 1 lies on the right: 1 to 15 right, 16 to 35 in the middle, 36 to 50 left. Groups of ten.
	if m := out[0]; m.First != 16 || m.Last != 35 || m.Groups != 3 || m.Cut != 2 {
		t.Errorf("the middle section: %+v", m)
	}
	if r := out[2]; r.First != 1 || r.Last != 15 || r.Groups != 2 || r.Cut != 1 ||
		r.FirstGroup != 1 || r.LastGroup != 2 ||
		r.FirstCut || !r.LastCut {
		t.Errorf("the right section: %+v", r)
	}
	if !l.Fits || l.Width != 3*measure.Inch {
		t.Errorf("it fits: %v, %v", l.Fits, l.Width)
	}
	if l, _ = (Raddle{Space: measure.Inch, Spaces: 2}).Fill(Raddling{Ends: 50,
		Sett: measuretest.Sett(t, "20 an inch")}); l.Fits || l.Row.Warning == "" {
		t.Errorf("three spaces fit into two: %+v", l.Row)
	}
}

func TestRaddleAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := Raddling{
			Ends: rapid.IntRange(1, 800).Draw(t, "ends"),
			Sett: measuretest.Sett(t, fmt.Sprintf("%d an inch",
				rapid.Int64Range(2, 40).Draw(t, "sett"))).In(measure.SettUnit(rapid.IntRange(0, 2).Draw(t, "unit"))),
			Split:    rapid.Bool().Draw(t, "split"),
			FirstEnd: Side(rapid.IntRange(0, 1).Draw(t, "side")),
		}
		for left := w.Ends; left > 0; { // groups of any sizes, as those of a striped warp
			n := min(rapid.IntRange(1, 20).Draw(t, "group"), left)
			w.Groups = append(w.Groups, n)
			left -= n
		}
		r := Raddle{Space: rapid.SampledFrom([]measure.Length{measure.Inch / 4, measure.Inch / 2, measure.Inch,
			measure.Centimetre, 2 * measure.Centimetre}).Draw(t, "space")}
		l, err := r.Fill(w)
		if err != nil {
			t.Fatal(err)
		}
		sum, next := 0, 1
		for i := range l.Sections {
			s := l.Sections[i]
			if w.FirstEnd == RightSide {
				s = l.Sections[len(l.Sections)-1-i]
			}
			sum += s.Ends
			if s.Ends > 0 && (s.First != next || s.Last != next+s.Ends-1) {
				t.Fatalf("section %+v should begin with %d", s, next)
			}
			next += s.Ends
			if !w.Split && s.Cut != 0 {
				t.Fatalf("section %+v cuts a group", s)
			}
			checkGroups(t, w, s)
		}
		if sum != w.Ends {
			t.Fatalf("the sections hold %d of %d ends", sum, w.Ends)
		}
		if len(l.CentreOut()) != len(l.Sections) {
			t.Fatalf("%d sections from the centre out, %d from the left", len(l.CentreOut()), len(l.Sections))
		}
		// Spread evenly: sections inside the warp differ by one end at the most.
		if w.Split {
			low, high := math.MaxInt, 0
			for _, s := range l.Sections[1:max(len(l.Sections)-1, 1)] {
				low, high = min(low, s.Ends), max(high, s.Ends)
			}
			if high > 0 && high-low > 1 {
				t.Fatalf("sections of %d to %d ends: %v", low, high, endsOf(l))
			}
		}
	})
}

// evenly is groups of one size, the last of what is left.
func evenly(ends, group int) []int {
	var list []int
	for ; ends > 0; ends -= group {
		list = append(list, min(group, ends))
	}
	return list
}

// checkGroups counts a section's groups end by end.
func checkGroups(t *rapid.T, w Raddling, s RaddleSection) {
	inside, all := map[int]int{}, map[int]int{}
	end := 0
	for g, n := range w.Groups {
		for range n {
			end++
			all[g+1]++
			if end >= s.First && end <= s.Last {
				inside[g+1]++
			}
		}
	}
	if len(inside) != s.Groups {
		t.Fatalf("section %+v has ends of %d groups", s, len(inside))
	}
	cut := 0
	for g, n := range inside {
		parted := n != all[g]
		if parted {
			cut++
		}
		if g < s.FirstGroup || g > s.LastGroup || g == s.FirstGroup && parted != s.FirstCut ||
			g == s.LastGroup && parted != s.LastCut {
			t.Fatalf("section %+v: %d of the %d ends of group %d lie in it", s, n, all[g], g)
		}
	}
	if cut != s.Cut {
		t.Fatalf("section %+v parts %d groups", s, cut)
	}
}

func TestRaddleRefuses(t *testing.T) {
	if _, err := (Raddle{}).Fill(Raddling{}); len(measure.FieldErrors(err)) != 3 {
		t.Errorf("nothing given: %v", err)
	}
	bad := Raddling{Ends: math.MaxInt, Sett: measuretest.Sett(t, "1 an inch"), Groups: []int{61}, FirstEnd: 2}
	if _, err := (Raddle{Space: measure.Metre, Spaces: -1}).Fill(bad); len(measure.FieldErrors(err)) != 5 {
		t.Errorf("%d errors: %v", len(measure.FieldErrors(err)), err)
	}
	if _, err := (Raddle{Space: measure.Inch}).Fill(Raddling{Ends: 10, Sett: measuretest.Sett(t, "1 an inch"),
		Groups: evenly(9, 3)}); err == nil {
		t.Error("groups that don't add up to the ends are no error")
	}
	if _, err := (Raddle{Space: measure.Millimetre}).Fill(Raddling{Ends: measure.MaxEnds,
		Sett: measuretest.Sett(t, "1 an inch")}); err == nil {
		t.Error("millions of spaces are no error")
	}
}

// The sums in small numbers and in big ones agree.
func TestSpaceFinder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		perSpace := big.NewRat(rapid.Int64Range(1, 5000).Draw(t, "ends"), rapid.Int64Range(1, 200).Draw(t, "spaces"))
		ends := rapid.IntRange(1, measure.MaxEnds).Draw(t, "warp")
		small := newSpaceFinder(perSpace, ends, rapid.Bool().Draw(t, "on a space"))
		large := small
		large.a, large.b = 0, 0
		if at := rapid.IntRange(0, 2*ends).Draw(t, "point"); small.at(at) != large.at(at) {
			t.Fatalf("%d of %d at %v: space %d or %d", at, ends, perSpace, small.at(at), large.at(at))
		}
	})
}

func BenchmarkRaddle(b *testing.B) {
	w := Raddling{Ends: 500, Sett: measuretest.Sett(b, "15 an inch"), Groups: evenly(500, 10)}
	for b.Loop() {
		if _, err := (Raddle{Space: measure.Inch / 2}).Fill(w); err != nil {
			b.Fatal(err)
		}
	}
}
