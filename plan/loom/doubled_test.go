package loom

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/measure"
)

// Doubled selvedge ends add ends and no width; floating ones have a dent of their own (both from memory). Worked by
// hand: 12 ends at 2 a dent with the outer two at each edge doubled are 8 places in 4 dents, 4 in the outer ones.
func TestDoubledEnds(t *testing.T) {
	for _, c := range []struct {
		name string
		w    Sleying
		want []int
		edge int
	}{
		{"two a dent", Sleying{Ends: 12, Order: []int{2}, Doubled: 2}, []int{4, 2, 2, 4}, 1},
		{"three in twos", Sleying{Ends: 18, Order: []int{2}, Doubled: 3}, []int{4, 3, 2, 2, 3, 4}, 2},
		{"one a dent", Sleying{Ends: 10, Order: []int{1}, Doubled: 2}, []int{2, 2, 1, 1, 2, 2}, 2},
		{"all of them", Sleying{Ends: 8, Order: []int{2}, Doubled: 2}, []int{4, 4}, 1},
		{"floating", Sleying{Ends: 10, Order: []int{2}, Floating: 2}, []int{1, 2, 2, 2, 2, 1}, 1},
		{"one floating", Sleying{Ends: 9, Order: []int{2}, Floating: 1}, []int{1, 2, 2, 2, 2}, 1},
		{"both", Sleying{Ends: 14, Order: []int{2}, Doubled: 2, Floating: 2}, []int{1, 4, 2, 2, 4, 1}, 2},
		{"with selvedge dents", Sleying{Ends: 16, Order: []int{2}, EdgeDents: 1, EdgeEnds: 3, Doubled: 2},
			[]int{5, 2, 2, 2, 5}, 1},
	} {
		l, err := reed(t, "10 dents an inch").Sley(c.w)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if !slices.Equal(l.Dents, c.want) || l.Edge != c.edge {
			t.Errorf("%s: %v with an edge of %d, not %v with %d", c.name, l.Dents, l.Edge, c.want, c.edge)
		}
	}
	for _, w := range []Sleying{{Ends: 6, Order: []int{2}, Doubled: 2}, {Ends: 6, Order: []int{2}, Doubled: -1},
		{Ends: 6, Order: []int{2}, Floating: 5}, {Ends: 1, Order: []int{2}, Floating: 2}} {
		if _, err := reed(t, "10 dents an inch").Sley(w); len(measure.FieldErrors(err)) != 1 {
			t.Errorf("%+v: %v", w, err)
		}
	}
}

// Whatever is doubled, the warp is as wide as the same without the second ends, and the dents add up.
func TestDoubledAddNoWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := reed(t, "12 dents an inch")
		order := rapid.SliceOfN(rapid.IntRange(1, 4), 1, 5).Draw(t, "order")
		places := rapid.IntRange(4, 300).Draw(t, "places")
		doubled := rapid.IntRange(0, places/2).Draw(t, "doubled")
		single, err1 := r.Sley(Sleying{Ends: places, Order: order})
		double, err2 := r.Sley(Sleying{Ends: places + 2*doubled, Order: order, Doubled: doubled})
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		sum := 0
		for _, n := range double.Dents {
			sum += n
		}
		if double.Width != single.Width || sum != places+2*doubled {
			t.Fatalf("%v wide and not %v; %d ends", double.Width, single.Width, sum)
		}
	})
}
