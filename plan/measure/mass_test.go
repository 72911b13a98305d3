package measure

import (
	"errors"
	"os/exec"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestParseMass(t *testing.T) {
	for _, c := range []struct {
		in   string
		want Mass
	}{
		{"1 lb", Pound},
		{"1 1/2 lb", Pound * 3 / 2},
		{"2 lb 3 oz", 2*Pound + 3*Ounce},
		{"250g", 250 * Gram},
		{"0,45 kg", 450 * Gram},
		{"8 oz.", Pound / 2},
		{"0 g", 0},
		// 0.45359237 kg to the pound: international yard and pound agreement, 1959.
		{"0.45359237 kg", Pound},
		{"1/3 g", 333_333_333}, // rounded to the nearest nanogram
	} {
		if got, err := ParseMass(c.in); err != nil || got != c.want {
			t.Errorf("ParseMass(%q) = %d, %v; want %d", c.in, got, err, c.want)
		}
	}
}

func TestParseMassRefuses(t *testing.T) {
	for _, in := range []string{"", "8", "oz", "8 ox", "-1 g", "1,200 g", "1/0 g", "100001 kg", "999999999999999999 kg",
		"8 oz and", "1e9 g", strings.Repeat("1 g ", 100)} {
		got, err := ParseMass(in)
		var fe *FieldError
		if !errors.As(err, &fe) || fe.Value != in || fe.Want == "" {
			t.Errorf("ParseMass(%q) = %v, %v; want a FieldError with the value and what would do", in, got, err)
		}
	}
}

func TestMassShown(t *testing.T) {
	for _, c := range []struct {
		m        Mass
		unit     MassUnit
		decimals int
		want     string
	}{
		{Pound / 2, Pounds, 2, "0.5 lb"},
		{Pound, Grams, 0, "454 g"},
		{Pound, Kilograms, 3, "0.454 kg"},
		{Pound, Ounces, 3, "16 oz"},
		{-Gram / 1000, Grams, 0, "0 g"},
	} {
		if got := c.m.In(c.unit, c.decimals); got != c.want {
			t.Errorf("(%d).In(%d, %d) = %q, want %q", c.m, c.unit, c.decimals, got, c.want)
		}
	}
	if Metric.Heavy() != Kilograms || Imperial.Heavy() != Pounds || Metric.Light() != Grams ||
		Imperial.Light() != Ounces {
		t.Error("the families of units name the wrong units of mass")
	}
}

func TestMassThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := Mass(rapid.Int64Range(0, int64(MaxMass)).Draw(t, "nanograms"))
		got, err := ParseMass(m.String())
		if err != nil || got != m {
			t.Fatalf("%d written as %q is read back as %d, %v", m, m.String(), got, err)
		}
	})
}

func TestPercent(t *testing.T) {
	for in, want := range map[string]Percent{"8 %": 8 * OnePercent, "7.5%": 75_000, "7,5": 75_000, "2 1/2 %": 25_000,
		"0": 0, "100 percent": 100 * OnePercent, "0.0001 %": 1} {
		if got, err := ParsePercent(in); err != nil || got != want {
			t.Errorf("ParsePercent(%q) = %d, %v; want %d", in, got, err, want)
		}
	}
	for _, in := range []string{"", "%", "101 %", "-1 %", "1/3 %", "0.00001 %", "5 % of", "five"} {
		if got, err := ParsePercent(in); err == nil {
			t.Errorf("ParsePercent(%q) = %v, want an error", in, got)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		p := Percent(rapid.Int64Range(0, int64(100*OnePercent)).Draw(t, "share"))
		if got, err := ParsePercent(p.String()); err != nil || got != p {
			t.Fatalf("%d written as %q is read back as %d, %v", p, p, got, err)
		}
	})
}

// gnuUnits asks the program units (GNU Units, 2.22 when this was written) for a conversion, as a second
// opinion from outside. It skips the test where the program isn't installed.
func gnuUnits(t *testing.T, from, to string) string {
	t.Helper()
	path, err := exec.LookPath("units")
	if err != nil {
		t.Skip("the program units (GNU Units) is not installed, so there is no second opinion")
	}
	out, err := exec.Command(path, "-t", "-o", "%.12g", from, to).Output()
	if err != nil {
		t.Skipf("the program units can't convert %q to %q: %v", from, to, err)
	}
	return strings.TrimSpace(string(out))
}

func TestMassSecondOpinion(t *testing.T) {
	for unit, m := range map[string]Mass{"lb": Pound, "oz": Ounce, "kg": Kilogram, "g": Gram} {
		got := strings.TrimSuffix(m.In(Grams, 9), " g")
		if want := gnuUnits(t, unit, "g"); got != want {
			t.Errorf("1 %s is %s g here and %s g in GNU Units", unit, got, want)
		}
	}
}

func FuzzParseMass(f *testing.F) {
	for _, s := range []string{"8 oz", "2 lb 3 oz", "1 1/2 lb", "1,200 g", "1/0 g", "\xff g"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		m, err := ParseMass(s)
		if err != nil {
			return
		}
		if back, err := ParseMass(m.String()); err != nil || back != m {
			t.Fatalf("%q gives %d, written as %q, read back as %d, %v", s, m, m.String(), back, err)
		}
	})
}

// A weight that is needed is shown rounded up: 400 ends of 7 yd are 2,800 yd, of cotton 8/2 at 3,360 yd/lb
// (S. Ableman 2018) 0.8333... lb; 0.833 lb would be a yard short.
func TestNeededIsNeverTooLittle(t *testing.T) {
	y, err := ParseYarn("cotton 8/2")
	if err != nil {
		t.Fatal(err)
	}
	m, err := y.MassOf(2800 * Yard)
	if err != nil {
		t.Fatal(err)
	}
	if got := m.AtLeast(Pounds, 3).String(); got != "0.834 lb" {
		t.Errorf("shown as %s", got)
	}
	for _, u := range []MassUnit{Pounds, Ounces, Grams, Kilograms} {
		for d := range 5 {
			back, err := ParseMass(m.AtLeast(u, d).String())
			if err != nil || back < m {
				t.Errorf("%s is less than %v (%v)", m.AtLeast(u, d).String(), m, err)
			}
		}
	}
	if got := Mass(Pound).AtLeast(Pounds, 3).String(); got != "1 lb" {
		t.Errorf("a pound is shown as %s", got)
	}
}
