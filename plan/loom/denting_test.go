package loom

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/measure"
)

func widths(pairs ...any) []measure.Length {
	var list []measure.Length
	for i := 0; i < len(pairs); i += 2 {
		list = append(list, slices.Repeat([]measure.Length{pairs[i+1].(measure.Length)}, pairs[i].(int))...)
	}
	return list
}

// Arithmetic: in a reed of 10 dents an inch a thread of 1/20 in is two to a dent, one of 1/40 in four.
func TestDenting(t *testing.T) {
	ten, err := ParseReed("10 dents an inch")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		widths []measure.Length
		dents  []int
	}{
		{widths(8, measure.Inch/20), []int{2, 2, 2, 2}},
		{widths(4, measure.Inch/20, 8, measure.Inch/40, 4, measure.Inch/20), []int{2, 2, 4, 4, 2, 2}},
		// A thread that takes three dents' width lies in the middle one of them.
		{widths(2, measure.Inch/10, 1, 3*measure.Inch/10, 1, measure.Inch/10), []int{1, 1, 0, 1, 0, 1}},
		{widths(1, measure.Inch), []int{1}},
	} {
		dents, err := ten.Denting(c.widths)
		if err != nil || !slices.Equal(dents, c.dents) {
			t.Errorf("%v: %v (%v), not %v", c.widths, dents, err, c.dents)
		}
	}
	for _, bad := range [][]measure.Length{nil, {0}, {2 * measure.Metre}, widths(300, measure.Length(1000))} {
		if dents, err := ten.Denting(bad); len(measure.FieldErrors(err)) != 1 {
			t.Errorf("%.3v: %v (%v)", bad, dents, err)
		}
	}
	if got := dentsText([]int{2, 2, 4, 0, 0, 2}); got != "2 dents of 2, 1 of 4, 2 empty, 1 of 2" {
		t.Error(got)
	}
}

// All ends are in a dent, from the first to the last, and the list can be sleyed.
func TestDentingHoldsAllEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		reed, err := ParseReed(rapid.SampledFrom([]string{"8 dents an inch", "50 in 10 cm", "60 Stockport"}).Draw(t,
			"reed"))
		if err != nil {
			t.Fatal(err)
		}
		var list []measure.Length
		for range rapid.IntRange(1, 200).Draw(t, "ends") {
			list = append(list, measure.Length(rapid.IntRange(500, 8000).Draw(t, "width"))*measure.Millimetre/1000)
		}
		dents, err := reed.Denting(list)
		if err != nil {
			t.Fatal(err)
		}
		l, err := reed.Sley(Sleying{Ends: len(list), Dents: dents})
		if err != nil || dents[0] == 0 || dents[len(dents)-1] == 0 || l.DentOf(len(list)) != len(dents) {
			t.Fatalf("%v (%v)", dents, err)
		}
	})
}
