package loom

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/measure"
)

// Worked by hand: 8 ends of 1/8 in, 8 of 1/16 in, 8 of 1/8 in are 2 1/2 in wide, and a raddle with teeth 1/2 in apart
// has five spaces under them, centred on a space: 4, 4, 8, 4 and 4 ends.
func TestUnevenRaddleByHand(t *testing.T) {
	var widths []measure.Length
	for _, w := range []measure.Length{measure.Inch / 8, measure.Inch / 16, measure.Inch / 8} {
		widths = append(widths, slices.Repeat([]measure.Length{w}, 8)...)
	}
	sett, err := measure.ParseSett("10 an inch")
	if err != nil {
		t.Fatal(err)
	}
	l, err := Raddle{Space: measure.Inch / 2}.Fill(Raddling{Ends: 24, Sett: sett, Widths: widths})
	if err != nil {
		t.Fatal(err)
	}
	var ends []int
	for _, s := range l.Sections {
		ends = append(ends, s.Ends)
	}
	if !slices.Equal(ends, []int{4, 4, 8, 4, 4}) || !l.MiddleSpace || len(l.Order) > 0 {
		t.Errorf("%v, on a space: %v, order %v", ends, l.MiddleSpace, l.Order)
	}
}

// Ends of one width lie in the same spaces whether their widths are listed or their sett is given.
func TestUnevenRaddleOfEvenEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 300).Draw(t, "ends")
		perInch := rapid.SampledFrom([]int{4, 5, 8, 10, 16, 20, 25, 32, 40}).Draw(t, "sett") // whole nanometres
		sett, err := measure.ParseSett(fmt.Sprintf("%d an inch", perInch))
		if err != nil {
			t.Fatal(err)
		}
		w := Raddling{Ends: n, Sett: sett, FirstEnd: Side(rapid.IntRange(0, 1).Draw(t, "side"))}
		r := Raddle{Space: measure.Inch / measure.Length(rapid.SampledFrom([]int{1, 2, 4}).Draw(t, "space"))}
		even, err := r.Fill(w)
		if err != nil {
			t.Fatal(err)
		}
		w.Widths = slices.Repeat([]measure.Length{measure.Inch / measure.Length(perInch)}, n)
		listed, err := r.Fill(w)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.Equal(even.Sections, listed.Sections) {
			t.Fatalf("%v, listed %v", even.Sections, listed.Sections)
		}
	})
}
