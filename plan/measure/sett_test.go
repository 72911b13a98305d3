package measure

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// sett makes a sett for a test.
func sett(t interface {
	Helper()
	Fatal(...any)
}, text string) Sett {
	t.Helper()
	s, err := ParseSett(text)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestParseSett(t *testing.T) {
	for in, want := range map[string]string{
		"20 an inch": "20 an inch", "20 ends an inch": "20 an inch", "20/in": "20 an inch", "20 per inch": "20 an inch",
		"7 1/2 an inch": "7.5 an inch", "7,5/in": "7.5 an inch", "40/3 an inch": "40/3 an inch",
		"80 in 10 cm": "80 in 10 cm", "80/10 cm": "80 in 10 cm", "80 picks per 10cm": "80 in 10 cm",
		"8 a cm": "8 a cm", "8/cm": "8 a cm", "8 Ends Per  Centimetre": "8 a cm",
	} {
		if got, err := ParseSett(in); err != nil || got.String() != want {
			t.Errorf("ParseSett(%q) = %q, %v; want %q", in, got, err, want)
		}
	}
	for _, in := range []string{"", "20", "an inch", "0 an inch", "-5 an inch", "1/0 an inch", "0.05 an inch",
		"1001 an inch", "20 an ell", "20 in", "1,200/in", "20 ends"} {
		if got, err := ParseSett(in); err == nil {
			t.Errorf("ParseSett(%q) = %q, want an error", in, got)
		}
	}
}

func TestSettInOtherUnits(t *testing.T) {
	// Dents an inch = dents in 10 cm x 0.254, exactly (interweave.com, "Converting metric reeds").
	if got := sett(t, "40 in 10 cm").In(PerInch).String(); got != "10.16 an inch" {
		t.Errorf("40 in 10 cm are %s, want 10.16 an inch", got)
	}
	for in, want := range map[string]string{"20 an inch": "78.74 in 10 cm", "8 a cm": "80 in 10 cm"} {
		if got := sett(t, in).In(PerTenCentimetres).Shown(2); got != want {
			t.Errorf("%s are %s, want %s", in, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		s, err := SettOf(big.NewRat(rapid.Int64Range(1, 1_000_000).Draw(t, "num"),
			rapid.Int64Range(1, 1000).Draw(t, "den")),
			SettUnit(rapid.IntRange(0, 2).Draw(t, "unit")))
		if err != nil {
			t.Skip("out of range")
		}
		to := s.In(SettUnit(rapid.IntRange(0, 2).Draw(t, "to")))
		if to.In(s.Unit()) != s {
			t.Fatalf("%v over %v and back is %v", s, to.Unit(), to.In(s.Unit()))
		}
		for _, x := range []Sett{s, to} {
			if got, err := ParseSett(x.String()); err != nil || got != x {
				t.Fatalf("%q is read back as %v, %v", x.String(), got, err)
			}
		}
	})
}

func TestEndsInAWidth(t *testing.T) {
	for _, c := range []struct {
		sett  string
		width Length
		want  int
	}{
		{"24 an inch", 22 * Inch, 528},   // Measured Threads, web log, towels
		{"20 an inch", 22 * Inch, 440},   // cuponthebus, "Arithmetic", web log 2018
		{"8 an inch", 7 * Inch, 56},      // sparksearcher web log
		{"20 an inch", 22*Inch + 1, 441}, // a started end is a whole one
		{"20 an inch", -Inch, 0},         // no width, no ends
		{"1000 an inch", math.MaxInt64, math.MaxInt32},
	} {
		if got := sett(t, c.sett).EndsUp(c.width); got != c.want {
			t.Errorf("%s over %v are %d ends, want %d", c.sett, c.width, got, c.want)
		}
	}
	if got := sett(t, "24 an inch").WidthOf(528); got != 22*Inch {
		t.Errorf("528 ends at 24 an inch are %v wide, want 22 in", got)
	}
	var none Sett
	if none.EndsUp(Metre) != 0 || none.WidthOf(5) != 0 || none.String() != "" || !none.In(PerCentimetre).IsZero() {
		t.Error("the zero sett holds ends")
	}
	if _, err := SettOf(big.NewRat(1, 1), SettUnit(7)); err == nil {
		t.Error("an unknown unit is no error")
	}
	if got := sett(t, "1 an inch").WidthOf(math.MaxInt64); got <= 0 {
		t.Errorf("a huge count is %v wide", got)
	}
}

func FuzzParseSett(f *testing.F) {
	for _, s := range []string{"20 an inch", "80/10 cm", "7 1/2 per inch", "40/3 an inch", "8 a cm"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, in string) {
		s, err := ParseSett(in)
		if err != nil {
			return
		}
		if back, err := ParseSett(s.String()); err != nil || back != s {
			t.Fatalf("%q gives %q, read back as %q, %v", in, s, back, err)
		}
	})
}
