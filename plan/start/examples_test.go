package start

import (
	"context"
	"testing"

	"millside/plan/cloth"
	"millside/plan/measure"
)

var testContext = context.Background()

// Each way to begin has a worked example: from print, with its source, or reckoned by hand in the comment.
func TestWorkedExamples(t *testing.T) {
	spec := lossless(bare())
	with := func(change func(k *Known)) Known {
		k := Known{Spec: spec}
		change(&k)
		return k
	}
	for _, c := range []struct {
		name   string
		known  Known
		answer string
		lines  map[string]string
	}{
		{"finished width: 22 in at 24 ends an inch are 528 ends (Measured Threads, web log, towels)",
			with(func(k *Known) { k.FinishedWidth, k.Spec.Loom.Sett = 22*measure.Inch, sett(t, "24 an inch") }),
			"528 ends", map[string]string{"width in the reed": "22 in"}},
		{"its yarn: 528 ends of 4 yd take 2,112 yd, 0.629 lb of 3,360 yd/lb (the same)",
			with(func(k *Known) {
				k.Ends, k.Length, k.Spec.Yarn.Size = 528, 4*measure.Yard, yarnOf(t, "cotton 8/2")
			}), "2112 yd, 0.629 lb", map[string]string{"yarn": "2112 yd"}},
		{"width in the reed: 8 ends an inch x 7 in = 56 ends x 90 in = 140 yd (sparksearcher, web log)",
			with(func(k *Known) {
				k.ReedWidth, k.Spec.Loom.Sett, k.Length = 7*measure.Inch, sett(t, "8 an inch"), 90*measure.Inch
			}), "140 yd", map[string]string{"ends for the width": "56 ends"}},
		{"ends: 406, two a dent in 10 dents an inch, are 20.3 in wide (interweave.com, winding a complex order)",
			with(func(k *Known) { k.Ends, k.Spec.Loom.Sett = 406, sett(t, "20 an inch") }),
			"20.3 in in the reed, 20.3 in finished", nil},
		{"the same at three a dent: 13.53 in",
			with(func(k *Known) { k.Ends, k.Spec.Loom.Sett, k.Find = 406, sett(t, "30 an inch"), TheWidth }),
			"13.53 in in the reed, 13.53 in finished", nil},
		{"shrinkage divides: 20 % and 10 in wanted need 12.5 in (cnch.org, p=13821)",
			with(func(k *Known) {
				k.FinishedWidth, k.Spec.Loom.Sett = 10*measure.Inch, sett(t, "20 an inch")
				k.Spec.Cloth.Width.Shrinkage = 20 * measure.OnePercent
			}), "250 ends", map[string]string{"width off the loom": "12.5 in"}},
		{"60s Stockport, two a dent, 38 in and 38 yd: 2,280 ends, 103 1/7 hanks of 840 yd, 3.4381 lb of 30s (C. P. " +
			"Brooks 1892, weight of a piece): 86,640 yd, shown in four figures and rounded up",
			with(func(k *Known) {
				k.ReedWidth, k.Spec.Loom.Sett, k.Length = 38*measure.Inch, sett(t, "60 an inch"), 38*measure.Yard
				k.Spec.Yarn.Size = yarnOf(t, "30s cotton")
			}), "86640 yd, 3.439 lb", map[string]string{"ends for the width": "2280 ends"}},
		{"44.5 in at 72 an inch with a quarter inch doubled a side, 40 yd + 5 %: 3,240 ends, 42 yd, 162 hanks = " +
			"136,080 yd (textilecalculations.com, total quantity of materials in a piece)",
			with(func(k *Known) {
				k.FinishedWidth, k.Spec.Loom.Sett = 89*measure.Inch/2, sett(t, "72 an inch")
				k.Spec.Cloth.Width.Doubled = 18
				k.FinishedLength, k.Pieces = 40*measure.Yard, 1
				k.Spec.Cloth.Length.TakeUp, k.Spec.Cloth.Length.TakeUpOf = 5*measure.OnePercent, cloth.TakeUpOfCloth
			}), "136100 yd", map[string]string{"ends wanted": "3240", "warp": "42 yd"}},
		{"40 spools make 11 sections of 440 ends, 22 in at 20 an inch (cuponthebus, web log, 2018)",
			with(func(k *Known) { k.ReedWidth, k.Spec.Loom.Sett = 22*measure.Inch, sett(t, "20 an inch") }),
			"440 ends", nil},
		{"2.5 oz of 3,360 yd/lb are 525 yd (the same): at 10 ends that is 52.5 yd",
			with(func(k *Known) {
				k.Ends, k.OnHand, k.Spec.Yarn.Size = 10, onHand(t, "2.5 oz"), yarnOf(t, "3360 yd/lb")
				k.Spec.Group, k.GroupSaid = 1, true
			}), "52.5 yd", map[string]string{"yarn on the package that is empty first": "525 yd"}},
		{"pieces: 4 x 34 in + 31 in waste + 13 in take-up = 180 in = 5 yd (interweave.com, determining warp length); " +
			"13 of 136 in are 9.5588 %",
			with(func(k *Known) {
				k.Length, k.FinishedLength = 5*measure.Yard, 34*measure.Inch
				l := &k.Spec.Cloth.Length
				l.TakeUp, l.TakeUpOf, l.Waste = 95_588, cloth.TakeUpOfCloth, 31*measure.Inch
			}), "4 pieces", map[string]string{"warp for one piece": "37.25 in"}},
		{"the length of the same",
			with(func(k *Known) {
				k.Pieces, k.FinishedLength = 4, 34*measure.Inch
				l := &k.Spec.Cloth.Length
				l.TakeUp, l.TakeUpOf, l.Waste = 95_588, cloth.TakeUpOfCloth, 31*measure.Inch
			}), "5 yd", map[string]string{"warp": "5 yd"}},
		// By hand: 20 in x 24 = 480 ends; they were 20 / 0.92 / 0.92 = 23.63 in wide in the reed: 480 / 23.63 is
		// 20.31.
		{"a finished piece to repeat", with(func(k *Known) {
			k.FinishedWidth, k.FinishedSett = 20*measure.Inch, sett(t, "24 an inch")
			k.Spec.Cloth.Width.Shrinkage, k.Spec.Cloth.Width.DrawIn = 8*measure.OnePercent, 8*measure.OnePercent
		}), "480 ends", map[string]string{"sett in the reed": "20.31 an inch", "width in the reed": "23.63 in"}},
		// By hand: a draft of 96 threads at 16 an inch is 6 in wide.
		{"a draft's ends", with(func(k *Known) { k.Ends, k.Spec.Loom.Sett = 96, sett(t, "16 an inch") }),
			"6 in in the reed, 6 in finished", nil},
		// By hand: 400 ends over 20 in are 20 an inch.
		{"ends and a width, no sett", with(func(k *Known) {
			k.Ends, k.ReedWidth, k.Length = 400, 20*measure.Inch, 5*measure.Yard
		}), "2000 yd", map[string]string{"sett in the reed": "20 an inch"}},
		// By hand: each of 10 packages of 200 yd feeds 40 passes of 400 ends: 5 yd.
		{"yarn and ends, the length", with(func(k *Known) { k.Ends, k.OnHand = 400, onHand(t, "10 of 200 yd") }),
			"5 yd", nil},
		// By hand: 190 yd are 4.75 yd a pass, and the pegs stand half a yard apart, so 4.5 yd.
		{"yarn and ends, between two pegs", with(func(k *Known) { k.Ends, k.OnHand = 400, onHand(t, "10 of 190 yd") }),
			"4.5 yd", map[string]string{"how far it reaches": "4.75 yd"}},
		// By hand: 200 yd are 40 passes of 5 yd; four packages of 220 yd feed 44, but no pass is fuller than the 41st:
		// 10 x 40 + 4.
		{"yarn and length, the ends", with(func(k *Known) {
			k.Length, k.OnHand = 5*measure.Yard, onHand(t, "6 of 200 yd, 4 of 220 yd")
		}), "404 ends", nil},
		// By hand: 20 packages of 210 yd feed 20 passes of 400 ends each: 10.5 yd; a piece takes 1 yd, the loom half a
		// yard: 10.
		{"yarn and ends, the pieces", with(func(k *Known) {
			k.Ends, k.OnHand, k.FinishedLength = 400, onHand(t, "20 of 210 yd"), measure.Yard
			k.Spec.Positions, k.Spec.Cloth.Length.Waste = 20, 18*measure.Inch
		}), "10 pieces", nil},
		// By hand: 1,000 yd and 10 positions: 100 yd each, 20 passes of 200 ends: 5 yd.
		{"one cone is wound over", with(func(k *Known) { k.Ends, k.OnHand = 200, onHand(t, "1000 yd") }), "5 yd", nil},
	} {
		r, err := Solve(testContext, c.known)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if r.Answer.Plain() != c.answer {
			t.Errorf("%s: %q, want %q", c.name, r.Answer.Plain(), c.answer)
		}
		for name, want := range c.lines {
			if got := line(t, r, name); got != want {
				t.Errorf("%s: %s is %q, want %q", c.name, name, got, want)
			}
		}
	}
}

// By hand: a repeat of 4 red and 2 white, 5 yd long without tails. Two packages of red of 60 yd feed 12 passes each, so
// 24 ends, 6 repeats; one of white of 100 yd feeds 20 ends, 10 repeats: red runs out first. 6 repeats take 60 yd
// of each red and 60 of the white.
func TestColourThatRunsOutFirst(t *testing.T) {
	k := Known{Find: TheEnds, Length: 5 * measure.Yard, OnHand: onHand(t, "red 2 of 60 yd, white 100 yd"),
		Spec: lossless(bare())}
	k.Spec.Stripes = "4 red, 2 white"
	r := solved(t, k)
	if r.Answer.Plain() != "36 ends" || line(t, r, "repeats of red") != "6 repeats" ||
		line(t, r, "repeats of white") != "10 repeats" {
		t.Errorf("%s from %v", r.Answer, r.Lines)
	}
	if len(r.Packages) != 3 || r.Packages[0].Left != 0 || r.Packages[1].Left != 0 ||
		r.Packages[2].Left != 40*measure.Yard {
		t.Errorf("packages: %+v", r.Packages)
	}
	if r.Spec.Stripes != "6 times (4 red, 2 white)" || r.Spec.Asked.Packages != "red 2, white 1" {
		t.Errorf("stripes %q, packages %q", r.Spec.Stripes, r.Spec.Asked.Packages)
	}
	if testing.Short() {
		t.Skip("the stripes are searched again for each length")
	}
	// The length for a given order: 24 ends of red from two packages of 66 yd are 5.5 yd.
	k = Known{OnHand: onHand(t, "red 2 of 66 yd, white 100 yd"), Spec: k.Spec}
	k.Spec.Stripes = "6 times (4 red, 2 white)"
	if r := solved(t, k); r.Find != TheLength || r.Answer.Plain() != "5.5 yd" {
		t.Errorf("%s of %s", r.Answer, r.Find)
	}
}

// What is assumed of a fibre holds here as in a plan: cotton of 20 x 28 in, four pieces at 20 an inch, is the 473 ends
// and 4.51 yd of the plan.
func TestAssumedAsInThePlan(t *testing.T) {
	s := fromFibre(cloth.CottonFibre)
	s.Loom.Sett = sett(t, "20 an inch")
	s.Cloth.Length.Hem = 0
	r := solved(t, Known{FinishedWidth: 20 * measure.Inch, FinishedLength: 28 * measure.Inch, Pieces: 4, Spec: s})
	p := planned(t, r)
	if !r.Spec.Cloth.Used || p.Plan.Spec.Ends != 473 || p.Plan.Spec.Length.In(measure.Yards, 2) != "4.51 yd" {
		t.Errorf("%d ends of %s", p.Plan.Spec.Ends, p.Plan.Spec.Length.In(measure.Yards, 2))
	}
	if line(t, r, "ends wanted") != "473" || line(t, r, "warp") != "4.51 yd" {
		t.Errorf("told %v", r.Lines)
	}
}
