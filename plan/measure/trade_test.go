package measure

import (
	"errors"
	"strings"
	"testing"
)

// The trade's own words for setts. A bare number is read where one unit only makes it a sett that is woven
// by hand.
func TestSettWords(t *testing.T) {
	for text, want := range map[string]string{
		"20 epi": "20 an inch", "20epi": "20 an inch", "20 EPI": "20 an inch", "20 e.p.i.": "20 an inch",
		"18 ppi":     "18 an inch",
		"20 ends/in": "20 an inch", "20 picks per inch": "20 an inch", "8 epc": "8 a cm", "8 ends/cm": "8 a cm",
		"7½ epi":                "7.5 an inch",
		"80 per 10 centimeters": "80 in 10 cm", "160": "160 in 10 cm", "1.5": "1.5 a cm",
	} {
		if got, err := ParseSett(text); err != nil || got.String() != want {
			t.Errorf("%s: %v (%v), not %s", text, got, err, want)
		}
	}
	for text, want := range map[string]string{
		"20": "20 an inch or 20 in 10 cm or 20 a cm", "80": "80 an inch or 80 in 10 cm", "5": "5 an inch or 5 a cm",
		"0": "such as 20 an inch", "5000": "such as", "epi": "such as",
	} {
		if got, err := ParseSett(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v (%v), not %s", text, got, err, want)
		}
	}
}

func TestLengthsAndMassesOnce(t *testing.T) {
	for text, want := range map[string]Length{
		"5½ yd": 11 * Yard / 2, "½ yd": Yard / 2, "20in": 20 * Inch, "1⅜ in": 11 * Inch / 8, "4 yd 18 in": 4*Yard +
			18*Inch, "3′ 6″": 42 * Inch, "2m50cm": 250 * Centimetre,
		"1⁄2 yd": Yard / 2,
	} {
		if got, err := ParseLength(text); err != nil || got != want {
			t.Errorf("%s: %v (%v), not %v", text, got, err, want)
		}
	}
	for _, text := range []string{"4 yd 4 yd", "4 in 1 yd", "4 yd 2 m", "1 m 1 m"} {
		if got, err := ParseLength(text); err == nil ||
			!strings.Contains(err.Error(), "each unit once and the larger one first") {
			t.Errorf("%s: %v (%v)", text, got, err)
		}
	}
	if got, err := ParseMass("1½ lb"); err != nil || got != 3*Pound/2 {
		t.Errorf("%v (%v)", got, err)
	}
	if got, err := ParseMass("250 g 180 g"); err == nil {
		t.Errorf("250 g 180 g is read as %v", got)
	}
	if got, err := ParseMasses("250 g 180 g"); err == nil ||
		!strings.Contains(err.Error(), "a comma between two values of a list") {
		t.Errorf("a list without a comma is read as %v (%v)", got, err)
	}
}

func TestYarnWords(t *testing.T) {
	for text, want := range map[string]string{
		"3360 ypp": "3360 yd/lb", "3360ypp": "3360 yd/lb", "Nm 7/2": "metric 7, 2 plies", "Nm 2/7": "metric 7, 2 plies",
		"5/2 pearl cotton":       "cotton 5, 2 plies",
		"10/2 mercerized cotton": "cotton 10, 2 plies", "10/2 mercerised cotton": "cotton 10, 2 plies",
		"8/4 carpet warp": "cotton 8, 4 plies", "Nec 8/2": "cotton 8, 2 plies",
		"10s Irish": "linen lea 10", "NeL 22/2": "linen lea 22, 2 plies", "8/2 rayon": "cotton 8, 2 plies",
		// Cottolin by the lea and by the cotton count, each in its usual size (from memory).
		"22/2 cottolin": "linen lea 22, 2 plies", "cottolin 8/2": "cotton 8, 2 plies",
		"30s/2 spun silk": "spun silk 30, 2 plies", "spun silk 20, 2 plies": "spun silk 20, 2 plies",
		"2½ run": "woollen run 2.5",
	} {
		if got, err := ParseYarn(text); err != nil || got.String() != want {
			t.Errorf("%s: %v (%v), not %s", text, got, err, want)
		}
	}
	// 20/2 spun silk is sold with 5,000 yd/lb (M. Petrini 2020): that is the metric count, 4,961; in the English
	// count it would be 16,800.
	for text, readings := range map[string][]string{
		"spun silk 20/2": {"spun silk 20, 2 plies", "metric 20, 2 plies"},
		"20/2 spun silk": {"spun silk 20, 2 plies", "metric 20, 2 plies"},
		"2/28 merino":    {"worsted 28, 2 plies", "metric 28, 2 plies"},
	} {
		_, err := ParseYarn(text)
		var asked *AmbiguousYarn
		if !errors.As(err, &asked) {
			t.Errorf("%s: %v", text, err)
			continue
		}
		for i, want := range readings {
			if asked.Readings[i].String() != want {
				t.Errorf("%s: reading %d is %v, not %s", text, i+1, asked.Readings[i], want)
			}
		}
	}
}

// No more figures than a label is good for are shown; what is kept is exact. 200 yd in 50 g are
// 200 x 453.59237 / 50 = 1,814.36948 yd/lb.
func TestLabelIsShownInWholeYards(t *testing.T) {
	for text, want := range map[string]string{"200 yd / 50 g": "1814 yd/lb", "210 m / 50 g": "4200 m/kg",
		"40 yd / 250 g": "72.6 yd/lb", "3360 ypp": "3360 yd/lb"} {
		y, err := ParseYarn(text)
		if err != nil || y.Shown() != want {
			t.Errorf("%s is shown as %s (%v)", text, y.Shown(), err)
		}
		if back, err := ParseYarn(y.Readable()); err != nil || back != y {
			t.Errorf("%s is written as %s, which is read as %v (%v)", text, y.Readable(), back, err)
		}
	}
}
