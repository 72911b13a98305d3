package loom

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/field"
	"millside/plan/internal/measuretest"
	"millside/plan/measure"
)

func TestFillBeam(t *testing.T) {
	for _, c := range []struct {
		sett       string
		ends       int
		section    measure.Length
		first      []int
		full, left int
	}{
		// A weaver's web log (cuponthebus, "Arithmetic", 2018): 440 ends at 20 an inch are 11 sections of 40 spools.
		{"20 an inch", 440, 2 * measure.Inch, []int{40, 40, 40}, 11, 0},
		// By hand: 17.5 an inch in sections of an inch are 17 and 18 in turn; 450 / 17.5 = 25.7, and 450 - 437 = 13.
		{"17.5 an inch", 450, measure.Inch, []int{17, 18, 17, 18}, 25, 13},
		{"80 in 10 cm", 100, 5 * measure.Centimetre, []int{40, 40, 20}, 2, 20},
		{"20 an inch", 30, 2 * measure.Inch, []int{30}, 0, 30},
	} {
		b, err := FillBeam(c.ends, measuretest.Sett(t, c.sett), c.section, measure.Imperial)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.Equal(b.Ends[:len(c.first)], c.first) || b.Full != c.full || b.Left != c.left {
			t.Errorf("%d at %s: %v, %d full, %d left", c.ends, c.sett, b.Ends, b.Full, b.Left)
		}
	}
	for _, c := range []struct {
		sett    string
		ends    int
		section measure.Length
		field   *field.Field
	}{{"0.5 an inch", 40, measure.Inch, field.BeamSection}, {"20 an inch", 0, measure.Inch, field.Ends},
		{"20 an inch", 40, 0, field.BeamSection}} {
		_, err := FillBeam(c.ends, measuretest.Sett(t, c.sett), c.section, measure.Metric)
		if all := measure.FieldErrors(err); len(all) != 1 || all[0].Field != c.field.Name {
			t.Errorf("%d at %s in %s: %v", c.ends, c.sett, c.section, err)
		}
	}
	if _, err := FillBeam(40, measure.Sett{}, measure.Inch, measure.Metric); err == nil {
		t.Error("no sett is no error")
	}
}

// Whatever is beamed: the sections hold all ends, no full one is more than an end from its share, and the sections
// together are never more than an end away from the width of their ends.
func TestBeamAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ends := rapid.IntRange(1, 3000).Draw(t, "ends")
		number := rapid.SampledFrom([]string{"20", "17.5", "6 1/3", "96", "2.54"}).Draw(t, "sett")
		sett, err := measure.ParseSett(number + " an inch")
		if err != nil {
			t.Fatal(err)
		}
		section := measure.Length(rapid.IntRange(10, 100).Draw(t, "section")) * measure.Millimetre
		b, err := FillBeam(ends, sett, section, measure.Metric)
		if err != nil {
			if sett.Count(section).Cmp(sett.Count(sett.WidthOf(1))) < 0 {
				return
			}
			t.Fatal(err)
		}
		sum, share := 0, sett.Count(section)
		exact, _ := share.Float64()
		for i, n := range b.Ends {
			sum += n
			if off := float64(sum) - exact*float64(i+1); i < b.Full && (off > 1e-6 || off < -1) {
				t.Fatalf("%d ends in %d sections of %v", sum, i+1, exact)
			}
		}
		whole := b.Full
		if b.Left > 0 {
			whole++
		}
		if sum != ends || whole != len(b.Ends) || b.Left > 0 && b.Ends[len(b.Ends)-1] != b.Left ||
			b.Left > int(exact)+1 {
			t.Fatalf("%d ends: %v, %d full, %d left", ends, b.Ends, b.Full, b.Left)
		}
	})
}
