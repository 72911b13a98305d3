package plan

import (
	"errors"
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/cloth"
	"millside/plan/frame"
	"millside/plan/internal/measuretest"
	"millside/plan/measure"
	"millside/plan/wind"
)

// plainPlan is a plan for a test.
func plainPlan(t testing.TB, change func(*Spec)) *Plan {
	t.Helper()
	s := DefaultSpec()
	if change != nil {
		change(&s)
	}
	p, err := New(s)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestYarnOfPublishedWarps(t *testing.T) {
	for _, c := range []struct {
		name   string
		ends   int
		length measure.Length
		yarn   measure.YarnSize
		yards  string
		mass   string
	}{
		// Reed 60s Stockport, 38 in: 2,280 ends x 38 yd = 103 1/7 hanks of 840 yd; / 30s = 3.4381 lb
		// (C. P. Brooks, "Cotton Manufacturing", 1892, weight of a piece).
		{"Brooks", 2280, 38 * measure.Yard, measuretest.Yarn(t, measure.Cotton, 30, 1), "86640 yd", "3.4381 lb"},
		// Scotch 1,100 reed, 38 in: 2,260 ends, 38 yd, number 30: 3.407 lb (Brooks 1892, p. 96; 3.4079).
		{"Brooks, Scotch reed", 2260, 38 * measure.Yard, measuretest.Yarn(t, measure.Cotton, 30, 1), "85880 yd",
			"3.4079 lb"},
		// 3,240 ends x 42 yd = 162 hanks (textilecalculations.com).
		{"162 hanks", 3240, 42 * measure.Yard, measuretest.Yarn(t, measure.Cotton, 1, 1), "136080 yd", "162 lb"},
		// 528 ends x 4 yd = 2,112 yd (Measured Threads, web log, towels).
		{"towels", 528, 4 * measure.Yard, measuretest.Yarn(t, measure.Cotton, 8, 2), "2112 yd", "0.6286 lb"},
		// 56 ends x 90 in = 140 yd (sparksearcher web log).
		{"narrow", 56, 90 * measure.Inch, measuretest.Yarn(t, measure.Cotton, 8, 2), "140 yd", "0.0417 lb"},
	} {
		// A mill whose pegs give the length exactly.
		p := plainPlan(t, func(s *Spec) {
			s.Ends, s.Length, s.Mill = c.ends, c.length,
				frame.Mill{Circumference: 2 * measure.Yard, PegStep: 18 * measure.Inch}
		})
		got, err := p.Yarn(OneYarn(12, "white", c.yarn), Extras{})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if got.Length.In(measure.Yards, 4) != c.yards || got.Mass.In(measure.Pounds, 4) != c.mass ||
			got.Ends != c.ends {
			t.Errorf("%s: %d ends, %s, %s; want %d, %s, %s", c.name, got.Ends, got.Length.In(measure.Yards, 4),
				got.Mass.In(measure.Pounds, 4), c.ends, c.yards, c.mass)
		}
	}
}

func TestConesRunOut(t *testing.T) {
	// 40 passes of 5 yd, own example. 8/2 cotton: 3,360 yd/lb, 210 yd/oz.
	p := plainPlan(t, func(s *Spec) { s.Ends, s.Group = 200, 5 })
	cones := OneYarn(5, "white", measuretest.Yarn(t, measure.Cotton, 8, 2))
	cones[0].Gross, cones[0].Tube = 2*measure.Ounce, measure.Ounce // 210 yd: enough for 40 x 5 yd
	cones[1].Gross, cones[1].Tube = measure.Ounce, measure.Ounce/2 // 105 yd: 21 passes
	cones[2].Gross = measure.Gram                                  // 7.4 yd: one pass
	cones[4].Colour = "blue"
	got, err := p.Yarn(cones, Extras{})
	if err != nil {
		t.Fatal(err)
	}
	if u := got.Cones[0]; u.RunsOut != nil || u.Left.In(measure.Yards, 3) != "10 yd" || u.Short != 0 {
		t.Errorf("the first cone: %+v", u)
	}
	if u := got.Cones[1]; u.RunsOut == nil || *u.RunsOut != (Place{Chain: 1, Pass: 22, Position: 2}) ||
		u.Short.In(measure.Yards, 3) != "95 yd" {
		t.Errorf("the second cone: %+v", u)
	}
	if u := got.Cones[2]; u.RunsOut == nil || u.RunsOut.Pass != 2 {
		t.Errorf("the third cone: %+v", u)
	}
	if u := got.Cones[3]; u.Weighed || u.RunsOut != nil || u.Left != 0 {
		t.Errorf("the fourth cone wasn't weighed: %+v", u)
	}
	if len(got.Totals) != 2 || got.Totals[0].Ends != 160 || got.Totals[1].Colour != "blue" || got.Totals[1].Ends != 40 {
		t.Errorf("totals by colour: %+v", got.Totals)
	}
}

func TestConesChangedOnTheWay(t *testing.T) {
	p := plainPlan(t, func(s *Spec) { s.Ends, s.Group, s.ChainEnds = 100, 5, 50 })
	y := measuretest.Yarn(t, measure.Cotton, 8, 2)
	cones := append(OneYarn(4, "white", y), Cone{Position: 5, Colour: "red", Yarn: y, ToPass: 12},
		Cone{Position: 5, Colour: "blue", Yarn: y, FromPass: 13})
	got, err := p.Yarn(cones, Extras{PerPass: measure.Inch, PerTie: measure.Yard})
	if err != nil {
		t.Fatal(err)
	}
	red, blue := got.Cones[4], got.Cones[5]
	if red.Passes != 12 || red.Ties != 2 || blue.Passes != 8 || blue.Ties != 1 {
		t.Errorf("red %+v, blue %+v", red, blue)
	}
	if want := 12*(5*measure.Yard+measure.Inch) + 2*measure.Yard; red.Used != want {
		t.Errorf("red takes %v, want %v", red.Used, want)
	}
}

func TestYarnRefuses(t *testing.T) {
	p := plainPlan(t, nil)
	y := measuretest.Yarn(t, measure.Cotton, 8, 2)
	for name, cones := range map[string][]Cone{
		"none":          nil,
		"too few":       OneYarn(9, "", y),
		"two in one":    append(OneYarn(10, "", y), Cone{Position: 3, Yarn: y, FromPass: 7}),
		"bad position":  append(OneYarn(10, "", y), Cone{Position: 61, Yarn: y}),
		"control codes": OneYarn(10, "red\x1b[2J", y),
		"no yarn":       OneYarn(10, "", measure.YarnSize{}),
		"heavy tube": append(OneYarn(9, "", y),
			Cone{Position: 10, Yarn: y, Gross: measure.Gram, Tube: measure.Pound}),
		"negative":       append(OneYarn(9, "", y), Cone{Position: 10, Yarn: y, Gross: -1}),
		"too heavy":      append(OneYarn(9, "", y), Cone{Position: 10, Yarn: y, Gross: math.MaxInt64}),
		"passes crossed": append(OneYarn(9, "", y), Cone{Position: 10, Yarn: y, FromPass: 5, ToPass: 4}),
		"before pass 1":  append(OneYarn(9, "", y), Cone{Position: 10, Yarn: y, FromPass: -1}),
		"a gap": append(OneYarn(9, "", y), Cone{Position: 10, Yarn: y, ToPass: 4},
			Cone{Position: 10, Yarn: y, FromPass: 6}),
	} {
		_, err := p.Yarn(cones, Extras{})
		var fe *measure.FieldError
		if !errors.As(err, &fe) || fe.Field == "" {
			t.Errorf("%s: %v; want a FieldError with a field", name, err)
		}
	}
	if _, err := p.Yarn(OneYarn(10, "", y),
		Extras{PerPass: -1, PerTie: math.MaxInt64}); len(measure.FieldErrors(err)) != 2 {
		t.Errorf("bad extras: %v", err)
	}
}

func TestYarnIsTheSumOfThePasses(t *testing.T) {
	y := measuretest.Yarn(t, measure.Cotton, 8, 2)
	rapid.Check(t, func(t *rapid.T) {
		s := DefaultSpec()
		s.Ends = rapid.IntRange(1, 500).Draw(t, "ends")
		s.Group = rapid.IntRange(1, 12).Draw(t, "group")
		s.LastPass = wind.LastPass(rapid.IntRange(0, 1).Draw(t, "last"))
		s.ChainEnds = rapid.SampledFrom([]int{0, 60, 100}).Draw(t, "chain")
		p, err := New(s)
		if err != nil {
			t.Fatal(err)
		}
		cones := OneYarn(12, "white", y)
		for i := range cones {
			cones[i].Gross = measure.Mass(rapid.Int64Range(0, int64(measure.Pound)).Draw(t, "gross"))
			cones[i].Colour = rapid.SampledFrom([]string{"red", "blue"}).Draw(t, "colour")
		}
		x := Extras{PerPass: measure.Length(rapid.Int64Range(0, int64(measure.Metre)).Draw(t, "pass")),
			PerTie: measure.Length(rapid.Int64Range(0, int64(measure.Metre)).Draw(t, "chain extra"))}
		w, err := p.Yarn(cones, x)
		if err != nil {
			t.Fatal(err)
		}
		var want, totals measure.Length
		ends := 0
		for _, c := range p.Chains {
			for _, pass := range c.Passes {
				want += (p.Path.Length + x.PerPass).Times(pass.Ends())
			}
			want += x.PerTie.Times(c.Passes[0].Ends())
		}
		var mass measure.Mass
		for _, total := range w.Totals {
			totals += total.Length
			ends += total.Ends
			mass += total.Mass
		}
		if w.Length != want || totals != want || w.Ends != p.EndsWound() || ends != w.Ends || mass != w.Mass {
			t.Fatalf("the yarn is %v over %d ends, the passes %v over %d", w.Length, w.Ends, want, p.EndsWound())
		}
		for _, u := range w.Cones {
			if u.Weighed && (u.Left != 0 && u.Short != 0 || (u.Short > 0) != (u.RunsOut != nil)) {
				t.Fatalf("cone %+v", u)
			}
		}
	})
}

func TestWeft(t *testing.T) {
	picks, err := measure.SettOf(big.NewRat(2300, 36), measure.PerInch) // 2,300 picks a yard
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		weft cloth.Weft
		yard string
		mass string
	}{
		// 2,300 picks a yard, 37.5 in wide, 36 yards, number 36: 2.85 lb (C. P. Brooks, "Cotton
		// Manufacturing", 1892, p. 96).
		{"Brooks", cloth.Weft{Width: 75 * measure.Inch / 2, Woven: 36 * measure.Yard, Picks: picks,
			Yarn: measuretest.Yarn(t, measure.Cotton, 36, 1)}, "86250 yd", "2.85 lb"},
		// 34 in x 84 picks x 60 yd / 840 = 204 hanks (J. T. Taylor, "Cotton Weaving and Designing", 6th
		// ed. 1909, p. 436).
		{"Taylor", cloth.Weft{Width: 34 * measure.Inch, Woven: 60 * measure.Yard,
			Picks: measuretest.Sett(t, "84 an inch"), Yarn: measuretest.Yarn(t, measure.Cotton, 1, 1)}, "171360 yd",
			"204 lb"},
		// Own example: a tenth more for take-up, no yarn named.
		{"take-up", cloth.Weft{Width: measure.Yard, Woven: measure.Yard, Picks: measuretest.Sett(t, "10 an inch"),
			TakeUp: 10 * measure.OnePercent}, "396 yd", "0 lb"},
	} {
		got, err := c.weft.Estimate()
		if err != nil || got.Length.In(measure.Yards, 3) != c.yard || got.Mass.In(measure.Pounds, 2) != c.mass {
			t.Errorf("%s: %+v, %v; want %s, %s", c.name, got, err, c.yard, c.mass)
		}
	}
	if _, err := (cloth.Weft{TakeUp: -1}).Estimate(); len(measure.FieldErrors(err)) != 4 {
		t.Errorf("an empty weft: %v", err)
	}
	if _, err := (cloth.Weft{Width: 20 * measure.Metre, Woven: 1_000_000 * measure.Metre,
		Picks: measuretest.Sett(t, "1000 an inch")}).Estimate(); err == nil {
		t.Error("a weft beyond any cloth is no error")
	}
}

// The tails of the cones are those of the ledger: as many as ends are tied on, whatever the stripes. The cones of
// a striped warp follow the colours of the positions.
func TestTailsAreTiesOfTheLedger(t *testing.T) {
	y := measuretest.Yarn(t, measure.Cotton, 8, 2)
	p := plainPlan(t, func(s *Spec) {
		s.Yarn.Size = y
		s.Stripes, s.Ends, s.Group = "by hand", 22, 4
		s.Schedule = &Schedule{Colours: []StripeColour{{Name: "sand"}, {Name: "moss"}},
			SetUps: []SetUp{{1, 1, 2, 2}, {1, 2, 2, 2}}, Passes: []ScheduledPass{
				{Carried: wind.Span(1, 4), SetUp: 1}, {Carried: wind.Span(1, 2), SetUp: 1},
				{Carried: wind.Span(1, 4), SetUp: 1}, // 3 and 4 come back
				{Carried: wind.Span(1, 4), SetUp: 2}, {Carried: wind.Span(1, 4), SetUp: 2},
				{Carried: wind.Span(2, 3), SetUp: 2},
				{Carried: wind.Span(1, 2), SetUp: 2}}}
	})
	// By hand: 4 at the start, 3 and 4 again on pass 3, 2 with its new colour on pass 4, 1 again on pass 7.
	if got := p.WorkSum().Ties; got != 8 {
		t.Fatalf("%d ends are tied on, want 8", got)
	}
	x := Extras{PerPass: measure.Inch, PerTie: measure.Yard}
	w, err := p.Yarn(p.Cones(), x)
	if err != nil {
		t.Fatal(err)
	}
	if w.Ties != 8 || w.Tails != 8*measure.Yard || p.TailYarn(x) != 8*measure.Yard {
		t.Errorf("%d ties, %v of tails", w.Ties, w.Tails)
	}
	if want := (p.Path.Length + measure.Inch).Times(22) + 8*measure.Yard; w.Length != want {
		t.Errorf("%v of yarn, want %v", w.Length, want)
	}
}
