package loom

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/internal/measuretest"
	"millside/plan/measure"
)

// reed makes a reed for a test.
func reed(t interface {
	Helper()
	Fatal(...any)
}, text string) Reed {
	t.Helper()
	r, err := ParseReed(text)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestParseReed(t *testing.T) {
	for in, want := range map[string]string{
		"10 dents an inch": "10 dents an inch", "10 dent": "10 dents an inch", "10/in": "10 dents an inch",
		"10 per inch": "10 dents an inch",
		"40 in 10 cm": "40 dents in 10 cm", "40/10 cm": "40 dents in 10 cm", "40 metric": "40 dents in 10 cm",
		"5 a cm": "5 dents a cm", "5/cm": "5 dents a cm", "7.5 dents in 10 cm": "7.5 dents in 10 cm",
		"60 Stockport": "60 Stockport", "60s Stockport": "60 Stockport", "40s radcliffe": "40 Radcliffe",
		"1100 Scotch": "1100 Scotch", "50 Bradford": "50 Bradford",
	} {
		if got, err := ParseReed(in); err != nil || got.String() != want {
			t.Errorf("ParseReed(%q) = %q, %v; want %q", in, got, err, want)
		}
	}
	for _, in := range []string{"", "dents", "0 dents an inch", "-1 dents an inch", "1001 dents an inch",
		"10 dents an ell", "1,200 Scotch", "0.00000001 dents a cm"} {
		if got, err := ParseReed(in); err == nil {
			t.Errorf("ParseReed(%q) = %q, want an error", in, got)
		}
	}
}

func TestReedCounts(t *testing.T) {
	for _, c := range []struct {
		reed    string
		order   []int
		want    float64
		within  float64
		because string
	}{
		{"60 Stockport", []int{3}, 90, 0, "J. T. Taylor, Cotton Weaving and Designing, 6th ed. 1909, p. 243"},
		{"40 Radcliffe", []int{2}, 80, 0, "Taylor 1909: 40s Radcliffe = 80s Stockport"},
		{"80 Stockport", []int{2}, 80, 0, "Taylor 1909: 40s Radcliffe = 80s Stockport"},
		{"50 Bradford", []int{2}, 55 + 20.0/36, 1e-9, "Taylor 1909, p. 244: a 50 sett is 55 20/36 ends an inch"},
		{"1100 Scotch", []int{2}, 2200.0 / 37, 1e-9, "Taylor 1909, p. 244: dents in 37 inches"},
		{"40 in 10 cm", []int{1}, 10.16, 1e-9, "exactly x 0.254; interweave.com, Converting metric reeds"},
		{"10 dents an inch", []int{2, 2, 3}, 70.0 / 3, 1e-9, "a printed chart has 24.5 for this; exactly 23.33"},
	} {
		got, err := reed(t, c.reed).Gives(c.order)
		if err != nil || math.Abs(measuretest.EndsAnInch(got)-c.want) > c.within {
			t.Errorf("%s, %v: %v, %v; want %v (%s)", c.reed, c.order, got, err, c.want, c.because)
		}
	}
	// The trade's rough matches (interweave.com, "Converting metric reeds"): within a dent.
	for metric, inches := range map[string]float64{"20/10 cm": 5, "25/10 cm": 6, "30/10 cm": 8, "40/10 cm": 10,
		"45/10 cm": 12, "50/10 cm": 12, "60/10 cm": 15} {
		if got := measuretest.EndsAnInch(reed(t, metric).Dents(measure.PerInch)); math.Abs(got-inches) > 1 {
			t.Errorf("%s is %v dents an inch, roughly %v in print", metric, got, inches)
		}
	}
	// Scotch 1,100, 38 in: 1,130 splits (C. P. Brooks, "Cotton Manufacturing", 1892, p. 96), cut off
	// here: 1129.7.
	wide := reed(t, "1100 Scotch").WithWidth(38 * measure.Inch)
	l, err := wide.Sley(Sleying{Ends: 2, Order: []int{2}})
	if err != nil || l.ReedDents != 1129 {
		t.Errorf("38 in of an 1,100 Scotch reed have %d dents, %v; want 1,129.7 cut off", l.ReedDents, err)
	}
}

func TestReedThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		system := ReedSystem(rapid.IntRange(0, len(reedSystems)-1).Draw(t, "system"))
		r, err := reedOf(big.NewRat(rapid.Int64Range(1, 5000).Draw(t, "num"), rapid.Int64Range(1, 9).Draw(t, "den")),
			system,
			measure.Length(rapid.Int64Range(0, int64(2*measure.Metre)).Draw(t, "width")))
		if err != nil {
			t.Skip("out of range")
		}
		if got, err := ParseReed(r.String()); err != nil || got.WithWidth(r.Width()) != r {
			t.Fatalf("%q is read back as %q, %v", r, got, err)
		}
		text, _ := r.MarshalText()
		var back Reed
		if err := back.UnmarshalText(text); err != nil || back != r {
			t.Fatalf("%s is read back as %+v, %v", text, back, err)
		}
		if a, b := measuretest.EndsAnInch(r.Dents(measure.PerInch)),
			measuretest.EndsAnInch(r.Dents(measure.PerTenCentimetres)); math.Abs(a/b-1) > 1e-12 {
			t.Fatalf("%v dents an inch or %v", a, b)
		}
	})
}

func TestReedRefuses(t *testing.T) {
	if _, err := reedOf(big.NewRat(10, 1), ReedSystem(9), 0); err == nil {
		t.Error("an unknown system is no error")
	}
	if _, err := reedOf(big.NewRat(10, 1), DentsPerInch, 21*measure.Metre); err == nil {
		t.Error("a reed of 21 m is no error")
	}
	if _, err := reedOf(new(big.Rat), DentsPerInch, 0); err == nil {
		t.Error("a reed of 0 is no error")
	}
	var none Reed
	if none.String() != "" || !none.Dents(measure.PerInch).IsZero() {
		t.Error("the zero reed has dents")
	}
	if _, err := none.Gives([]int{1}); err == nil {
		t.Error("the zero reed gives a sett")
	}
	for _, bad := range []string{"10 dents an inch; 5", "10 dents an inch; 21 m", "ten"} {
		if err := none.UnmarshalText([]byte(bad)); err == nil {
			t.Errorf("%q is no error", bad)
		}
	}
}

func FuzzParseReed(f *testing.F) {
	for _, s := range []string{"10 dents an inch", "40/10 cm", "60s Stockport", "5 a cm", "7 1/2 dent"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, in string) {
		r, err := ParseReed(in)
		if err != nil {
			return
		}
		if back, err := ParseReed(r.String()); err != nil || back != r {
			t.Fatalf("%q gives %q, read back as %q, %v", in, r, back, err)
		}
	})
}

// The trade's own words for reeds. Bolton: 36s x 39 in at two ends a dent are 2,315.9 ends by Brooks'
// formula ("Cotton Manufacturing", 3rd ed. 1892, p. 96).
func TestReedWords(t *testing.T) {
	for text, want := range map[string]string{
		"10 dpi": "10 dents an inch", "10dpi": "10 dents an inch", "10-dent": "10 dents an inch",
		"10 dents/in": "10 dents an inch", "12 dents in the inch": "12 dents an inch",
		"40/10": "40 dents in 10 cm", "Bradford 72": "72 Bradford", "bradford 72s": "72 Bradford",
		"Stockport 60": "60 Stockport", "36 Bolton": "36 Bolton", "36s bolton": "36 Bolton",
		"10": "10 dents an inch", "60": "60 dents in 10 cm",
	} {
		if got, err := ParseReed(text); err != nil || got.String() != want {
			t.Errorf("%s: %v (%v), not %s", text, got, err, want)
		}
	}
	for text, want := range map[string]string{"20": "20 dents an inch or 20 in 10 cm", "2": "such as", "200": "such as",
		"60s": "such as"} {
		if got, err := ParseReed(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v (%v)", text, got, err)
		}
	}
	bolton, err := ParseReed("36 Bolton")
	if err != nil {
		t.Fatal(err)
	}
	ends := bolton.Dents(measure.PerInch).Rat()
	ends.Mul(ends, big.NewRat(39*2, 1))
	if got := ends.FloatString(1); got != "2315.9" {
		t.Errorf("36s Bolton x 39 in has %s ends", got)
	}
}
