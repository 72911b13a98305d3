package measure_test

import (
	"math"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"millside/plan/measure"
)

// A second opinion: GNU units, where it is installed. It gives 12 figures, so the comparison is to one
// part in 10^11.
func TestLengthsAgainstGNUUnits(t *testing.T) {
	units, err := exec.LookPath("units")
	if err != nil {
		t.Skip("GNU units is not installed: no second opinion on lengths")
	}
	for _, tt := range []struct{ text, from string }{
		{"7.5 yd", "7.5 yard"}, {"7 1/2 yd", "7.5 yard"}, {"4 yd 18 in", "4 yard + 18 inch"},
		{"250 in", "250 inch"}, {"6' 3\"", "6 foot + 3 inch"}, {"1/7 in", "1|7 inch"}, {"6.4m", "6.4 meter"},
		{"150 cm", "150 cm"},
	} {
		l, err := measure.ParseLength(tt.text)
		if err != nil {
			t.Fatal(err)
		}
		for _, to := range []struct {
			unit measure.LengthUnit
			name string
		}{{measure.Yards, "yard"}, {measure.Metres, "meter"}, {measure.Inches, "inch"}, {measure.Centimetres, "cm"},
			{measure.Feet, "foot"}} {
			// -t: the number alone; -o: enough figures.
			out, err := exec.Command(units, "-t", "-o", "%.12g", tt.from, to.name).CombinedOutput()
			if err != nil {
				t.Fatalf("units %q %q: %v: %s", tt.from, to.name, err, out)
			}
			want, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
			if err != nil {
				t.Fatalf("units answered %q", out)
			}
			got, err := strconv.ParseFloat(strings.Fields(l.In(to.unit, 9))[0], 64)
			if err != nil {
				t.Fatal(err)
			}
			// Half a nanometre may be rounded off when read, and half a unit of the ninth decimal when shown.
			if math.Abs(got-want) > 1e-11*want+5e-8 {
				t.Errorf("%s in %s: %v, GNU units says %v", tt.text, to.name, got, want)
			}
		}
	}
}
