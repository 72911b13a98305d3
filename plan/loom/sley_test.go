package loom

import (
	"fmt"
	"math"
	"math/big"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/internal/measuretest"
	"millside/plan/measure"
)

// House of Wool, "Reed substitution guide" (web page), which rounds to the nearest half: within half an
// end. A dash is a cell that the page leaves out.
const publishedOrders = `
order    5     6     8     10    12    15
0-1      2.5   3     4     5     6     7.5
0-1-1    3     4     5     7     8     10
1        5     6     8     10    12    15
1-1-1-2  6     7.5   10    12.5  15    19
1-1-2    7     8     11    13.5  16    20
1-2      7.5   9     12    15    18    22.5
1-2-2    8     10    13    17    20    25
1-2-2-2  9     10.5  14    17.5  21    26
2        10    12    16    20    24    30
2-2-3    12    14    19    -     28    35
2-3      12.5  15    20    25    30    37.5`

func TestPublishedOrders(t *testing.T) {
	lines := strings.Split(strings.TrimSpace(publishedOrders), "\n")
	dents := strings.Fields(lines[0])[1:]
	for _, line := range lines[1:] {
		cells := strings.Fields(line)
		var order []int
		for _, part := range strings.Split(cells[0], "-") {
			order = append(order, int(part[0]-'0'))
		}
		for i, cell := range cells[1:] {
			if cell == "-" {
				continue
			}
			r := reed(t, dents[i]+" dents an inch")
			gives, err := r.Gives(order)
			if err != nil || math.Abs(measuretest.EndsAnInch(gives)-float64(measuretest.Float(t, cell))) > 0.5 {
				t.Errorf("%s on %s dents gives %v, %v; printed %s", cells[0], dents[i], gives, err, cell)
				continue
			}
			// And the other way about: that sett in that reed has that order, wherever it begins.
			o, err := r.Order(gives, longestOrder)
			if err != nil || !o.Exact || !sameRound(o.Dents, order) {
				t.Errorf("%v on %s dents has the order %v, %v; printed %s", gives, dents[i], o, err, cells[0])
			}
		}
	}
}

// sameRound says whether two orders are the same but for where the repeat begins.
func sameRound(a, b []int) bool {
	return len(a) == len(b) && strings.Contains("-"+orderText(a)+"-"+orderText(a)+"-", "-"+orderText(b)+"-")
}

func TestOrders(t *testing.T) {
	for _, c := range []struct {
		reed, sett, want string
	}{
		// Every weaver's table, from memory; the multiset of the repeat and its evenness count.
		{"8 dents an inch", "10 an inch", "1-1-1-2"}, // also P. Osterkamp, "Useful information: more charts"
		{"8 dents an inch", "12 an inch", "1-2"},
		{"8 dents an inch", "20 an inch", "2-3"},
		{"10 dents an inch", "12 an inch", "1-1-1-1-2"},
		{"10 dents an inch", "15 an inch", "1-2"},
		{"10 dents an inch", "18 an inch", "1-2-2-2-2"},
		{"10 dents an inch", "24 an inch", "2-2-3-2-3"},
		{"10 dents an inch", "25 an inch", "2-3"},
		{"12 dents an inch", "15 an inch", "1-1-1-2"},
		{"12 dents an inch", "18 an inch", "1-2"},
		{"12 dents an inch", "20 an inch", "1-2-2"},
		{"12 dents an inch", "16 an inch", "2-1-1"}, // interweave.com, "Sleying the reed for specific setts"
		{"6 dents an inch", "10 an inch", "1-2-2"},  // schoolofsweetgeorgia.com
	} {
		o, err := reed(t, c.reed).Order(measuretest.Sett(t, c.sett), longestOrder)
		var want []int
		for _, part := range strings.Split(c.want, "-") {
			want = append(want, int(part[0]-'0'))
		}
		if err != nil || !o.Exact || !sameRound(o.Dents, want) {
			t.Errorf("%s in %s: %v, %v; want %s", c.sett, c.reed, o, err, c.want)
		}
	}
}

func TestOrdersNearASett(t *testing.T) {
	// 12 ends in a 10-dent reed may be taken as 12.5 with 1-1-1-2 where the weaver accepts the
	// difference (P. Osterkamp, "Useful information: more charts").
	list := reed(t, "10 dents an inch").NearOrders(measuretest.Sett(t, "12 an inch"), 4, 5*measure.OnePercent)
	if len(list) != 1 || list[0].String() != "1-1-1-2" || list[0].Gives.String() != "12.5 an inch" || !list[0].Closer ||
		list[0].Off.String() != "4.1667 %" {
		t.Errorf("near orders %+v; want 1-1-1-2 alone", list)
	}
	o, err := reed(t, "40 in 10 cm").Order(measuretest.Sett(t, "20 an inch"), longestOrder)
	if err != nil || o.Exact || o.String() != "2" || o.Gives.String() != "20.32 an inch" || !o.Closer {
		t.Errorf("20 an inch in 40 in 10 cm: %+v, %v", o, err)
	}
}

func TestWidthInTheReed(t *testing.T) {
	for _, c := range []struct {
		ends, dent int
		want       string
	}{
		// 406 ends, two a dent in a 10-dent reed, are a little over 20 in (20.3); three a dent a little
		// over 13 1/2 (13.53; 136 dents here, since the last is begun: 13.6). An editor's answer in a
		// weaving magazine, "Winding a warp with complex color order".
		{406, 2, "20.3 in"},
		{406, 3, "13.6 in"},
	} {
		l, err := reed(t, "10 dents an inch").Sley(Sleying{Ends: c.ends, Order: []int{c.dent}})
		if err != nil || l.Width.In(measure.Inches, 2) != c.want {
			t.Errorf("%d ends at %d a dent: %v, %v; want %s", c.ends, c.dent, l.Width, err, c.want)
		}
	}
}

func TestSley(t *testing.T) {
	r := reed(t, "10 dents an inch").WithWidth(2 * measure.Inch)
	l, err := r.Sley(Sleying{Ends: 20, Order: []int{1, 2}, EdgeDents: 2, EdgeEnds: 2, FirstEnd: RightSide})
	if err != nil {
		t.Fatal(err)
	}
	if got := orderText(l.Dents); got != "2-2-1-2-1-2-1-2-1-2-2-2" {
		t.Errorf("dents %s", got)
	}
	// 20 dents in the reed, 12 used: four free at each side.
	if !l.Fits || l.ReedDents != 20 || l.FirstDent != 5 || l.LastDent != 16 || l.LeftOfCentre != 6 {
		t.Errorf("place in the reed: %+v", l)
	}
	if l.DentOf(1) != 12 || l.DentOf(20) != 1 || l.DentOf(5) != 10 || l.DentOf(0) != 0 || l.DentOf(21) != 0 {
		t.Errorf("ends 1, 20, 5 are in dents %d, %d, %d", l.DentOf(1), l.DentOf(20), l.DentOf(5))
	}
	l, err = r.Sley(Sleying{Ends: 43, Order: []int{0, 1, 1}})
	if err != nil || l.Fits || l.FirstDent != 0 || l.Dents[0] == 0 || l.Dents[len(l.Dents)-1] == 0 ||
		l.Rows[2].Warning == "" {
		t.Errorf("a warp that is too wide: %+v, %v", l, err)
	}
	l, err = r.Sley(Sleying{Ends: 11, Order: []int{2}})
	if err != nil || l.Rows[0].Warning == "" || orderText(l.Dents) != "2-2-2-2-2-1" {
		t.Errorf("an order that is broken off: %+v, %v", l, err)
	}
}

func TestSleyAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, err := reedOf(big.NewRat(rapid.Int64Range(2, 40).Draw(t, "reed"), 1), DentsPerInch,
			measure.Length(rapid.Int64Range(0, int64(2*measure.Metre)).Draw(t, "width")))
		if err != nil {
			t.Fatal(err)
		}
		s := measuretest.Sett(t, fmt.Sprintf("%d/%d an inch", rapid.Int64Range(2, 300).Draw(t, "sett"),
			rapid.Int64Range(1, 8).Draw(t, "over")))
		o, err := r.Order(s, rapid.IntRange(1, longestOrder).Draw(t, "longest"))
		if err != nil {
			t.Skip("the reed doesn't suit the sett")
		}
		w := Sleying{Ends: rapid.IntRange(1, 900).Draw(t, "ends"), Order: o.Dents,
			EdgeDents: rapid.IntRange(0, 3).Draw(t, "edge"), EdgeEnds: 2,
			FirstEnd: Side(rapid.IntRange(0, 1).Draw(t, "side"))}
		if 2*w.EdgeDents*w.EdgeEnds > w.Ends {
			w.EdgeDents = 0
		}
		l, err := r.Sley(w)
		if err != nil {
			t.Fatal(err)
		}
		sum := 0
		for _, n := range l.Dents {
			sum += n
		}
		if sum != w.Ends || l.Dents[0] == 0 || l.Dents[len(l.Dents)-1] == 0 {
			t.Fatalf("dents %v hold %d of %d", l.Dents, sum, w.Ends)
		}
		if l.Fits && l.ReedDents > 0 {
			left, right := l.FirstDent-1, l.ReedDents-l.LastDent
			if left < 0 || right < 0 || measure.Distance(left, right) > 1 {
				t.Fatalf("%d dents free left, %d right", left, right)
			}
		}
		held := make([]int, len(l.Dents))
		for end := 1; end <= w.Ends; end++ {
			held[l.DentOf(end)-1]++
		}
		if !slices.Equal(held, l.Dents) {
			t.Fatalf("by end %v, by dent %v", held, l.Dents)
		}
		// The nearest order with so few dents: no other count of ends over as many dents comes nearer.
		if !o.Exact && o.Off == 0 {
			t.Fatalf("%v of %v is neither exact nor off", o, s)
		}
	})
}

func TestRankReeds(t *testing.T) {
	var reeds []Reed
	for _, n := range []int{5, 6, 8, 10, 12, 15} {
		reeds = append(reeds, reed(t, fmt.Sprint(n)+" dents an inch"))
	}
	list := RankReeds(reeds, measuretest.Sett(t, "20 an inch"), 400)
	if len(list) != 6 || list[0].Reed != reeds[3] || list[0].Reasons[0] != "two ends in every dent, the ideal" {
		t.Errorf("the best reed for 20 an inch: %+v", list)
	}
	if list = RankReeds([]Reed{reeds[3].WithWidth(19 * measure.Inch), reeds[2].WithWidth(25 * measure.Inch)},
		measuretest.Sett(t, "20 an inch"), 400); list[0].Reed.Width() != 25*measure.Inch || list[1].Fits {
		t.Errorf("a reed that is too narrow comes first: %+v", list)
	}
	if list = RankReeds([]Reed{{}}, measure.Sett{}, 400); len(list) != 0 {
		t.Errorf("nothing suits nothing: %+v", list)
	}
	if list = RankReeds(reeds, measuretest.Sett(t, "20 an inch"), math.MaxInt); list != nil {
		t.Errorf("too many ends: %+v", list)
	}
}

func TestSleyRefuses(t *testing.T) {
	r := reed(t, "10 dents an inch")
	for name, w := range map[string]Sleying{
		"no ends":         {Order: []int{1}},
		"negative ends":   {Ends: -1, Order: []int{1}},
		"too many":        {Ends: math.MaxInt, Order: []int{1}},
		"no order":        {Ends: 10},
		"empty order":     {Ends: 10, Order: []int{0, 0}},
		"negative order":  {Ends: 10, Order: []int{-1, 2}},
		"wide edges":      {Ends: 10, Order: []int{1}, EdgeDents: 3, EdgeEnds: 2},
		"huge edges":      {Ends: 10, Order: []int{1}, EdgeDents: math.MaxInt, EdgeEnds: math.MaxInt},
		"empty edge dent": {Ends: 10, Order: []int{1}, EdgeDents: 1},
		"no side":         {Ends: 10, Order: []int{1}, FirstEnd: 7},
	} {
		if _, err := r.Sley(w); len(measure.FieldErrors(err)) != 1 {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := (Reed{}).Sley(Sleying{Ends: 1, Order: []int{1}}); err == nil {
		t.Error("the zero reed is no error")
	}
	for _, c := range []struct {
		reed    Reed
		sett    measure.Sett
		longest int
	}{{Reed{}, measuretest.Sett(t, "20 an inch"), 5}, {r, measure.Sett{}, 5}, {r, measuretest.Sett(t, "20 an inch"), 0},
		{r, measuretest.Sett(t, "20 an inch"), 13}, {reed(t, "1 dents an inch"), measuretest.Sett(t, "900 an inch"), 5},
		{reed(t, "900 dents an inch"), measuretest.Sett(t, "1 an inch"), 5}} {
		if o, err := c.reed.Order(c.sett, c.longest); err == nil {
			t.Errorf("%v in %v within %d gives %v", c.sett, c.reed, c.longest, o)
		}
	}
}

func BenchmarkSley(b *testing.B) {
	r := reed(b, "10 dents an inch").WithWidth(measure.Metre)
	s := measuretest.Sett(b, "24 an inch")
	for b.Loop() {
		o, err := r.Order(s, longestOrder)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := r.Sley(Sleying{Ends: 900, Order: o.Dents}); err != nil {
			b.Fatal(err)
		}
	}
}
