package measure_test

import (
	"errors"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"millside/plan/measure"
)

func TestParseLength(t *testing.T) {
	for _, tt := range []struct {
		text string
		want measure.Length
	}{
		{"7.5 yd", 270 * measure.Inch},
		{"7 1/2 yd", 270 * measure.Inch},
		{"15/2 yd", 270 * measure.Inch},
		{"7,5 yd", 270 * measure.Inch},
		{"6.4m", 6400 * measure.Millimetre},
		{"6,4 m", 6400 * measure.Millimetre},
		{"250 in", 250 * measure.Inch},
		{"4 yd 18 in", 162 * measure.Inch},
		{"4yd18in", 162 * measure.Inch},
		{"4 yd 18 1/2 in", 162*measure.Inch + measure.Inch/2},
		{`6' 3"`, 75 * measure.Inch},
		{"6′ 3″", 75 * measure.Inch},
		{"  3 Metres ", 3 * measure.Metre},
		{"12 in.", 12 * measure.Inch},
		{".5 m", 500 * measure.Millimetre},
		{"0 m", 0},
		{"1.200 yd", 43*measure.Inch + measure.Inch/5},
		{"1,2000 m", 1200 * measure.Millimetre},
		{"1200 yd", 1200 * measure.Yard},
		{"3\u00a0m", 3 * measure.Metre},
		{"150 cm 5 mm", 1505 * measure.Millimetre},
		{"100000 m", 100_000 * measure.Metre},
		// Rounded to the nearest nanometre: a third of a yard is exact, a seventh of an inch is not
		// (3,628,571.43 nm).
		{"1/3 yd", 12 * measure.Inch},
		{"1/7 in", 3_628_571},
		{"0.0000004 mm", 0},
		{"0.0000005 mm", 1},
	} {
		if got, err := measure.ParseLength(tt.text); err != nil || got != tt.want {
			t.Errorf("ParseLength(%q) = %d, %v; want %d nm", tt.text, got, err, tt.want)
		}
	}
}

func TestParseLengthRefuses(t *testing.T) {
	const unit, thousands, most = "a number and a unit", "no comma before three digits", "at most 100000 m"
	for _, tt := range []struct{ text, want string }{
		{"", unit}, {"   ", unit}, {"yd", unit}, {"7.5", unit}, {"m 3", unit}, {"3 m 4", unit}, {"3 ells", unit},
		{"-3 m", unit}, {"+3 m", unit}, {"1e9 m", unit}, {"0x10 m", unit}, {"٣ m", unit}, {"NaN m", unit},
		{"Inf m", unit},
		{"1/0 m", unit}, {"1/ m", unit}, {"/2 m", unit}, {"1.5/2 m", unit}, {"1/2.5 m", unit}, {"1 200 m", unit},
		{"5. m", unit}, {". m", unit}, {"1.2.3 m", unit}, {"7.5 1/2 yd", unit}, {"3 m\x00", unit}, {"3\xff m", unit},
		{"1,200 yd", thousands}, {"1,234,567 yd", thousands}, {"1,2,3 m", thousands},
		{"100000.000000001 m", most}, {"999999999999999999 m", most},
		{strings.Repeat("9", 40) + " m", unit}, {strings.Repeat("9", 400) + " m", "at most 100 characters"},
		{strings.Repeat("1/999983 m ", 10_000), "at most 100 characters"},
	} {
		got, err := measure.ParseLength(tt.text)
		var fe *measure.FieldError
		if !errors.As(err, &fe) || got != 0 || fe.Field != "" || !strings.Contains(fe.Want, tt.want) {
			t.Errorf("ParseLength(%.40q) = %v, %v; want an error with %q", tt.text, got, err, tt.want)
		}
	}
}

// What String writes is read back to the same length.
func TestLengthTextRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]measure.Length{measure.Nanometre, measure.Millimetre, measure.Inch, measure.Yard,
			measure.Metre}).Draw(t, "unit")
		l := unit * measure.Length(rapid.Int64Range(0, int64(100_000*measure.Metre/unit)).Draw(t, "count"))
		if got, err := measure.ParseLength(l.String()); err != nil || got != l {
			t.Fatalf("%d nm is written %q and read as %d, %v", l, l.String(), got, err)
		}
		text, err := l.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		var back measure.Length
		if err := back.UnmarshalText(text); err != nil || back != l {
			t.Fatalf("%q is read as %d, %v", text, back, err)
		}
	})
}

func TestUnmarshalTextLeavesTheValueOnError(t *testing.T) {
	l := measure.Yard
	if err := l.UnmarshalText([]byte("three")); err == nil || l != measure.Yard {
		t.Errorf("a bad text gave %v, %v", l, err)
	}
}

func TestLengthShown(t *testing.T) {
	for _, tt := range []struct {
		l        measure.Length
		unit     measure.LengthUnit
		decimals int
		want     string
	}{
		{270 * measure.Inch, measure.Yards, 1, "7.5 yd"},
		{270 * measure.Inch, measure.Yards, 0, "8 yd"}, // halves away from nil
		{-270 * measure.Inch, measure.Yards, 0, "-8 yd"},
		{measure.Metre, measure.Yards, 3, "1.094 yd"},
		{measure.Metre, measure.Inches, 2, "39.37 in"},
		{2 * measure.Yard, measure.Feet, 2, "6 ft"},
		{100 * measure.Metre, measure.Metres, 2, "100 m"},
		{5 * measure.Millimetre, measure.Centimetres, 1, "0.5 cm"},
		{-measure.Nanometre, measure.Metres, 2, "0 m"},
		{0, measure.Metres, 2, "0 m"},
		{measure.Nanometre, measure.Metres, 99, "0.000000001 m"}, // decimals are held to 9
		{measure.Metre, measure.Metres, -5, "1 m"},
	} {
		if got := tt.l.In(tt.unit, tt.decimals); got != tt.want {
			t.Errorf("%d nm in %d, %d decimals: %q, want %q", tt.l, tt.unit, tt.decimals, got, tt.want)
		}
	}
}

func FuzzParseLength(f *testing.F) {
	for _, s := range []string{"7.5 yd", "7 1/2 yd", "4 yd 18 in", "6,4 m", "1,200 yd", "", "yd", "-3 m", "1e9 m",
		"٣ m", `6' 3"`, "1/0 m", "1/7 in", "\xff", "3 m 3 m 3 m"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		l, err := measure.ParseLength(s)
		if err != nil {
			var fe *measure.FieldError
			if !errors.As(err, &fe) || fe.Value != s || fe.Want == "" || !utf8.ValidString(err.Error()) {
				t.Fatalf("ParseLength(%q): an error that doesn't say what would do: %v", s, err)
			}
			return
		}
		if l < 0 || l > 100_000*measure.Metre {
			t.Fatalf("ParseLength(%q) = %d nm, out of range", s, l)
		}
		if back, err := measure.ParseLength(l.String()); err != nil || back != l {
			t.Fatalf("ParseLength(%q) = %d nm, written %q and read as %d, %v", s, l, l.String(), back, err)
		}
	})
}

// A length comes back in the units that it was written in, as far as those of the plan say them exactly.
func TestWritten(t *testing.T) {
	for _, c := range []struct {
		units measure.LengthUnitSystem
		text  string
		want  string
	}{
		{measure.Imperial, "2.5 yd", "2.5 yd"}, {measure.Imperial, "1 yd", "1 yd"},
		{measure.Imperial, "18 in", "18 in"}, {measure.Imperial, "5 yd", "5 yd"},
		{measure.Imperial, "7 1/4 in", "7.25 in"}, {measure.Imperial, "4 yd 18 in", "4.5 yd"},
		{measure.Imperial, "60 in", "60 in"}, {measure.Imperial, "6.4 m", "6.4 m"},
		{measure.Metric, "1 yd", "1 yd"}, {measure.Metric, "91 cm", "91 cm"},
		{measure.Metric, "4.5 m", "4.5 m"}, {measure.Metric, "2.25 m", "2.25 m"},
		{measure.Metric, "33 cm", "33 cm"}, {measure.Metric, "0.5 in", "0.5 in"},
		{measure.Metric, "0 m", "0 m"},
	} {
		l, err := measure.ParseLength(c.text)
		if err != nil {
			t.Fatal(err)
		}
		if got := c.units.Written(l); got != c.want {
			t.Errorf("%s is written %s, not %s", c.text, got, c.want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		l := measure.Length(rapid.Int64Range(0, int64(measure.MaxLength)).Draw(t, "length"))
		for _, units := range []measure.LengthUnitSystem{measure.Imperial, measure.Metric} {
			if back, err := measure.ParseLength(units.Written(l)); err != nil || back != l {
				t.Fatalf("%d is written %s: %v, %v", int64(l), units.Written(l), int64(back), err)
			}
		}
	})
}
