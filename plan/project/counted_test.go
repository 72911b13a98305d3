package project

import (
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/internal/loomtest"
	"millside/plan/internal/measuretest"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/times"
)

// spanned is a warp for a cloth that is so wide in the reed, without draw-in and shrinkage.
func spanned(t *testing.T, width measure.Length, sett, reed, dents string, layers int) plan.Spec {
	t.Helper()
	s := plan.DefaultSpec()
	s.Cloth.Used, s.Cloth.Width.Finished, s.Cloth.Width.Layers = true, width, layers
	s.Cloth.Length.Piece, s.Cloth.Length.Pieces = 2*measure.Yard, 1
	s.Loom.Sett = measuretest.Sett(t, sett)
	if reed != "" {
		s.Loom.Reed = loomtest.Reed(t, reed)
	}
	var err error
	if s.Loom.Dents, err = loom.ParseDentSections(dents); err != nil {
		t.Fatal(err)
	}
	return s
}

// Worked by hand: the ends of a warp are its width in the reed x the sett that the sley order really gives (common
// practice, no source).
func TestEndsAreCountedAtTheRealSett(t *testing.T) {
	const cm = measure.Centimetre
	for _, c := range []struct {
		width             measure.Length
		sett, reed, dents string
		layers, want      int
		gives             string // "" where it is what was asked for
	}{
		// 22 / 12 = 11 ends in 6 dents, 1-2-2-2-2-2, is just 22 an inch: 24 x 22 = 528.
		{24 * measure.Inch, "22 an inch", "12 dents an inch", "", 0, 528, ""},
		// 20 / 12 = 5 ends in 3 dents, 1-2-2, is just 20 an inch: 20 x 20 = 400.
		{20 * measure.Inch, "20 an inch", "12 dents an inch", "", 0, 400, ""},
		// 7 / 4 = 7 ends in 4 dents is just 7 a cm: 60 x 7 = 420.
		{60 * cm, "7 a cm", "40 in 10 cm", "", 0, 420, ""},
		// 40 dents in 10 cm are 10.16 an inch, so 2 in a dent are 20.32: 24 x 20.32 = 487.68, so 488 and not 480.
		{24 * measure.Inch, "20 an inch", "40 in 10 cm", "", 0, 488, "20.32 an inch"},
		// 10 dents an inch are 3.937 a cm, so 2 in a dent are 7.874: 50 x 7.874 = 393.7, so 394 and not 400.
		{50 * cm, "8 a cm", "10 dents an inch", "", 0, 394, "7.87 a cm"},
		// Two layers of 10 an inch are 20 together: 488 as above.
		{24 * measure.Inch, "10 an inch", "40 in 10 cm", "", 2, 488, "20.32 an inch"},
		// 24 in are 240 dents, ten times 24 dents with 20 x 2 + 4 x 4 = 56 ends: 560, and not 480.
		{24 * measure.Inch, "20 an inch", "10 dents an inch", "20 dents of 2, 4 of 4", 0, 560, "23.33 an inch"},
		// Without a reed nothing else is known than what was asked for.
		{24 * measure.Inch, "20 an inch", "", "", 0, 480, ""},
	} {
		s := spanned(t, c.width, c.sett, c.reed, c.dents, c.layers)
		n, _, err := EndsOf(s)
		pr, err2 := New(s, times.Pace{})
		if err != nil || err2 != nil {
			t.Fatalf("%s in %s: %v, %v", c.sett, c.reed, err, err2)
		}
		if n != c.want || pr.Plan.EndsWound() != c.want || pr.Ends.Wanted != c.want {
			t.Errorf("%v at %s in %s: %d, %d and %d ends, want %d", c.width, c.sett, c.reed, n, pr.Plan.EndsWound(),
				pr.Ends.Wanted, c.want)
		}
		if c.reed == "" {
			continue
		}
		// The warp is as wide in its reed as was asked for, but for a dent.
		if off := pr.Sley.Width - c.width; off < -measure.Millimetre || off > 3*measure.Millimetre {
			t.Errorf("%v at %s in %s: %v wide", c.width, c.sett, c.reed, pr.Sley.Width)
		}
		var row string
		for _, r := range pr.Ends.Rows {
			if r.Name == "sett that the reed gives" {
				row = r.Value.String()
			}
		}
		if c.gives == "" && row != "" || !strings.HasPrefix(row, c.gives) {
			t.Errorf("%s in %s: the steps say %q", c.sett, c.reed, row)
		}
		warning := pr.SettRows()[0].Warning
		if (c.gives != "") != strings.HasSuffix(warning, "the ends of the width are counted at it") {
			t.Errorf("%s in %s: told %q", c.sett, c.reed, warning)
		}
	}
}

// A warp that was planned before there was the rule is shown as it was counted.
func TestAnOldCountIsShownAsItWasCounted(t *testing.T) {
	s := spanned(t, 24*measure.Inch, "20 an inch", "40 in 10 cm", "", 0)
	now, err := New(s, times.Pace{})
	if err != nil {
		t.Fatal(err)
	}
	s = now.Plan.Spec
	s.Ends = 480
	p, err := plan.New(s)
	if err != nil {
		t.Fatal(err)
	}
	old, err := Of(p, times.Pace{})
	if err != nil {
		t.Fatal(err)
	}
	if old.Ends.Wanted != 480 || !strings.Contains(old.SettRows()[0].Warning, "23.62 in wide in it, not 24 in") {
		t.Errorf("%d ends wanted, %s", old.Ends.Wanted, old.SettRows()[0].Warning)
	}
}
