package cloth

import (
	"math"
	"strings"
	"testing"

	"millside/plan/internal/measuretest"
	"millside/plan/measure"
)

func sized(t testing.TB, text string) measure.YarnSize {
	t.Helper()
	if text == "" {
		return measure.YarnSize{}
	}
	y, err := measure.ParseYarn(text)
	if err != nil {
		t.Fatal(err)
	}
	return y
}

// By hand: cotton 8/2 has 52.16 diameters an inch (TestHelpSett in measure). Warp-faced all of them lie side by side,
// so that a start is twice that of plain weave, which is common practice, no source. Weft-faced with a weft that is
// alike, an end takes three diameters, its own and two of the weft.
func TestHelpFaced(t *testing.T) {
	for _, c := range []struct {
		yarn, weft      string
		face            Face
		greatest, start float64
	}{
		{"cotton 8/2", "", Balanced, 26.08, 19.56},
		{"cotton 8/2", "", WarpFaced, 52.16, 39.12},
		{"cotton 8/2", "", WeftFaced, 17.39, 13.04},
		{"cotton 8/2", "cotton 8/2", WeftFaced, 17.39, 13.04},
		// 0.9 x root of 1680 = 36.88 and of 500 = 20.12: 1 / (1 / 36.88 + 2 / 20.12) = 7.90.
		{"cotton 8/4", "500 yd/lb", WeftFaced, 7.90, 5.93},
	} {
		h, err := c.face.Sett(sized(t, c.yarn), sized(t, c.weft), measure.DiameterFactors()[0], measure.Imperial)
		if err != nil {
			t.Fatal(err)
		}
		if g, s := measuretest.EndsAnInch(h.Greatest), measuretest.EndsAnInch(h.Start); math.Abs(g-c.greatest) > 0.01 ||
			math.Abs(s-c.start) > 0.01 || len(h.Rows) != 3 || !strings.Contains(h.Note, "sample") {
			t.Errorf("%s, %s: closest %v, start %v; want %v and %v", c.yarn, c.face, g, s, c.greatest, c.start)
		}
		if c.face != Balanced && h.Rows[1].Usual != facedSource {
			t.Errorf("%s doesn't say that it has no source", c.face)
		}
	}
}

// What is woven: rugs on cotton 8/4 with a thick wool have 4 to 8 ends an inch, tapestries on cotton 12/6 with a weft
// about as thick 6 to 10 (both common practice, no source).
func TestWeftFacedInUse(t *testing.T) {
	for _, c := range []struct {
		yarn, weft string
		low, high  float64
	}{{"cotton 8/4", "500 yd/lb", 4, 8}, {"cotton 12/6", "1500 yd/lb", 6, 10}} {
		h, err := WeftFaced.Sett(sized(t, c.yarn), sized(t, c.weft), measure.DiameterFactors()[0], measure.Imperial)
		if s := measuretest.EndsAnInch(h.Start); err != nil || s < c.low || s > c.high {
			t.Errorf("%s: starts at %v, %v; want %v to %v", c.yarn, s, err, c.low, c.high)
		}
	}
}

func TestSettSuitsTheFace(t *testing.T) {
	cotton := sized(t, "cotton 8/2")
	for _, c := range []struct {
		face       Face
		sett, says string
	}{{WeftFaced, "17 an inch", ""}, {WeftFaced, "18 an inch", "18 an inch is too close"},
		{WarpFaced, "27 an inch", ""}, {WarpFaced, "26 an inch", "26 an inch is too open"},
		{Balanced, "90 an inch", ""}} {
		h, err := c.face.Sett(cotton, measure.YarnSize{}, measure.DiameterFactors()[0], measure.Imperial)
		if err != nil {
			t.Fatal(err)
		}
		sett, err := measure.ParseSett(c.sett)
		if err != nil {
			t.Fatal(err)
		}
		if got := c.face.Suits(sett, h).String(); !strings.HasPrefix(got, c.says) || (got == "") != (c.says == "") {
			t.Errorf("%s, %s: %q", c.face, c.sett, got)
		}
	}
	if _, err := WarpFaced.Sett(measure.YarnSize{}, cotton, measure.DiameterFactor{},
		measure.Imperial); len(measure.FieldErrors(err)) != 2 {
		t.Errorf("nothing given: %v", err)
	}
	if _, err := WeftFaced.Sett(measuretest.Yarn(t, measure.Tex, 100_000, 1), measure.YarnSize{},
		measure.DiameterFactor{Hundredths: 1}, measure.Imperial); err == nil {
		t.Error("a sett of next to nothing is no error")
	}
}
