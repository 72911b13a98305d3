package measure

import (
	"math"
	"strings"
	"testing"
)

// factor finds a published factor by its hundredths.
func factor(t testing.TB, hundredths int) DiameterFactor {
	t.Helper()
	for _, f := range DiameterFactors() {
		if f.Hundredths == hundredths {
			return f
		}
	}
	t.Fatalf("no factor of %d hundredths", hundredths)
	return DiameterFactor{}
}

// endsAnInch is a sett as a number, for comparing with a rounded figure in print.
func endsAnInch(s Sett) float64 {
	f, _ := s.In(PerInch).Rat().Float64()
	return f
}

func TestHelpSett(t *testing.T) {
	plain, twill := Weave{"plain", 2, 2}, Weave{"2/2 twill", 4, 2}
	for _, c := range []struct {
		yarn                string
		hundredths          int
		weave               Weave
		diameters, greatest float64
		within              float64
	}{
		// J. T. Taylor, "Cotton Weaving and Designing", 6th ed. 1909, pp. 436, 453, 458 of the web
		// edition; printed to halves, so within 0.7. Plain keeps one half, a 2/2 twill drops a third.
		{"cotton 15", 95, plain, 106.5, 53.25, 0.7},
		{"cotton 26", 95, plain, 140.5, 70.25, 0.7},
		{"cotton 32", 95, twill, 156, 104, 0.7},
		{"cotton 60", 95, plain, 213, 106.5, 0.7},
		// faena.medievaltextiles.org/ash.html, 1999: cotton 8/2 has 52 diameters, plain 26, 2/2 twill 34
		// (34.78, cut off).
		{"cotton 8/2", 90, plain, 52, 26, 0.2},
		{"cotton 8/2", 90, twill, 52, 34.78, 0.2},
		// The factor for soft woollen on the same yarn, reckoned from 0.84 x root of 3,360 = 48.69.
		{"3360 yd/lb", 84, plain, 48.69, 24.345, 0.01},
	} {
		y, err := ParseYarn(c.yarn)
		if err != nil {
			t.Fatal(err)
		}
		h, err := HelpSett(y, c.weave, factor(t, c.hundredths), Imperial)
		if err != nil {
			t.Error(err)
			continue
		}
		if d, g := endsAnInch(h.Diameters), endsAnInch(h.Greatest); math.Abs(d-c.diameters) > c.within ||
			math.Abs(g-c.greatest) > c.within {
			t.Errorf("%s, %d: %v diameters, %s %v; want %v and %v", c.yarn, c.hundredths, d, c.weave.Name, g,
				c.diameters, c.greatest)
		}
		if got, want := endsAnInch(h.Start), endsAnInch(h.Greatest)*3/4; math.Abs(got-want) > 1e-9 {
			t.Errorf("%s starts at %v, want three quarters, %v", c.yarn, got, want)
		}
		if !strings.Contains(h.Note, "sample") || len(h.Rows) != 3 ||
			!strings.Contains(h.Rows[0].Usual, c.weave.sourceWord(c.hundredths)) {
			t.Errorf("%s: the note %q or the rows %+v don't say what it is", c.yarn, h.Note, h.Rows)
		}
	}
}

// sourceWord is the name that the result must show beside a factor.
func (Weave) sourceWord(hundredths int) string {
	if hundredths == 95 {
		return "Taylor"
	}
	return "Ashenhurst"
}

func TestHelpSettInMetric(t *testing.T) {
	h, err := HelpSett(yarn(t, Cotton, 8, 2), Weave{"plain", 2, 2}, factor(t, 90), Metric)
	if err != nil || h.Greatest.Shown(0) != "103 in 10 cm" {
		t.Errorf("%+v, %v; want 103 in 10 cm", h, err)
	}
}

func TestYarnDiameter(t *testing.T) {
	// 52.16 diameters an inch (see TestHelpSett) are 0.487 mm each.
	d, err := YarnDiameter(yarn(t, Cotton, 8, 2), factor(t, 90))
	if err != nil || d.In(Centimetres, 4) != "0.0487 cm" {
		t.Errorf("%v, %v", d, err)
	}
	if _, err := YarnDiameter(YarnSize{}, factor(t, 90)); err == nil {
		t.Error("the zero yarn has a diameter")
	}
	if _, err := YarnDiameter(yarn(t, Cotton, 8, 2), DiameterFactor{}); err == nil {
		t.Error("a factor of nothing is no error")
	}
}

func TestHelpSettRefuses(t *testing.T) {
	if _, err := HelpSett(YarnSize{}, Weave{}, DiameterFactor{}, Imperial); len(FieldErrors(err)) != 4 {
		t.Errorf("nothing given: %v", err)
	}
	if _, err := HelpSett(yarn(t, Tex, 100_000, 1), Weave{"odd", 1, 1000}, DiameterFactor{Hundredths: 1},
		Imperial); err == nil {
		t.Error("a sett of next to nothing is no error")
	}
	for _, w := range Weaves() {
		if _, err := HelpSett(yarn(t, Cotton, 8, 2), w, factor(t, 90), Imperial); err != nil {
			t.Errorf("%s: %v", w.Name, err)
		}
	}
}
