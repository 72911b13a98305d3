package measure

import "testing"

func TestGuessTakeUp(t *testing.T) {
	for _, c := range []struct {
		name, intersections, want string
	}{
		// J. T. Taylor, "Cotton Weaving and Designing", 6th ed. 1909, p. 427: 5-end satin, 180 picks, 70s
		// weft: 72 x 4 / 70, in print 4 %; plain, 120 picks, 70s: 6 6/7 %.
		{"5-end satin", "72 an inch", "4.1143 %"},
		{"plain", "120 an inch", "6.8571 %"},
	} {
		got, how, err := GuessTakeUp(sett(t, c.intersections), yarn(t, Cotton, 70, 1))
		if err != nil || got.String() != c.want || how.WithNumbers.String() == "" {
			t.Errorf("%s: %v, %v; want %s", c.name, got, err, c.want)
		}
	}
	if _, _, err := GuessTakeUp(Sett{}, yarn(t, Cotton, 70, 1)); err == nil {
		t.Error("no intersections are no error")
	}
	if _, _, err := GuessTakeUp(sett(t, "20 an inch"), YarnSize{}); err == nil {
		t.Error("no weft is no error")
	}
	if _, _, err := GuessTakeUp(sett(t, "1000 an inch"), yarn(t, Tex, 100_000, 1)); err == nil {
		t.Error("a take-up over 90 % is no error")
	}
}
