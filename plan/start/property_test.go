package start

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"millside/plan"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/times"
)

// drawn draws a plain warp's spec: mill, group, chains, extras, yarn.
func drawn(t *rapid.T) plan.Spec {
	s := plan.DefaultSpec()
	s.Units = measure.LengthUnitSystem(rapid.IntRange(0, 1).Draw(t, "units"))
	s.Positions = rapid.IntRange(1, 16).Draw(t, "positions")
	s.Group = rapid.IntRange(1, s.Positions).Draw(t, "group")
	s.Mill.Circumference = measure.Length(rapid.Int64Range(100, 400).Draw(t, "round")) * measure.Centimetre
	s.Mill.PegStep = measure.Length(rapid.Int64Range(5, 100).Draw(t, "peg step")) * measure.Centimetre
	s.Mill.Rise = measure.Length(rapid.Int64Range(0, 10).Draw(t, "rise")) * measure.Centimetre
	s.Yarn.Size, _ = measure.NewYarnSize(measure.YardsPerPound,
		measure.YarnNumber(rapid.Int64Range(500, 9000).Draw(t, "yarn"))*measure.YarnNumberOne, 1)
	if rapid.Bool().Draw(t, "extras") {
		s.Yarn.Extras = plan.Extras{Given: true,
			PerPass: measure.Length(rapid.Int64Range(0, 30).Draw(t, "pegs")) * measure.Centimetre,
			PerTie:  measure.Length(rapid.Int64Range(0, 100).Draw(t, "tails")) * measure.Centimetre}
	}
	s.Yarn.Tube = measure.Mass(rapid.Int64Range(0, 60).Draw(t, "tube")) * measure.Gram
	return s
}

// packages draws packages by weight.
func packages(t *rapid.T, s plan.Spec) []Package {
	var list []Package
	for range rapid.IntRange(1, 20).Draw(t, "packages") {
		list = append(list, Package{Gross: s.Yarn.Tube + measure.Mass(rapid.Int64Range(20, 900).Draw(t, "g"))*
			measure.Gram})
	}
	return list
}

// short is what is missing on the cones of a plan.
func short(t *rapid.T, spec plan.Spec) (missing measure.Length) {
	t.Helper()
	p, err := project.New(spec, times.PublishedPace())
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range p.Yarn.Cones {
		if !c.Weighed {
			t.Fatalf("cone %d isn't weighed", c.Cone.Position)
		}
		missing += c.Short
	}
	return missing
}

// The length that is found suffices in the plan that goes on from it; a peg step more doesn't.
func TestLengthFromYarnIsWhatThePlanAllows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := Known{Ends: rapid.IntRange(1, 900).Draw(t, "ends"), Spec: drawn(t),
			GroupSaid: rapid.Bool().Draw(t, "said")}
		k.OnHand = packages(t, k.Spec)
		if rapid.Bool().Draw(t, "chains") {
			k.Spec.ChainEnds = rapid.IntRange(k.Spec.Positions*2, 400).Draw(t, "chain ends")
		}
		r, err := Solve(testContext, k)
		if err != nil {
			if k.OnHand[0].Gross > 0 && len(measure.FieldErrors(err)) > 0 {
				return // too little yarn
			}
			t.Fatal(err)
		}
		if n := short(t, r.Spec); n != 0 {
			t.Fatalf("%s for %d ends is %s short in the plan", r.Answer, k.Ends, n)
		}
		if r.Spec.Length+k.Spec.Mill.PegStep*2 > 900*measure.Metre {
			return
		}
		more := r.Spec
		more.Length += k.Spec.Mill.PegStep * 2 // hundredths are rounded down, so one step may be none
		if n := short(t, more); n == 0 {
			t.Fatalf("%s for %d ends, and %s would do", r.Answer, k.Ends, more.Length)
		}
	})
}

// The ends that are found suffice; one more doesn't, where the warp is one chain.
func TestEndsFromYarnAreWhatThePlanAllows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := Known{Length: measure.Length(rapid.Int64Range(1, 40).Draw(t, "length")) * measure.Metre, Spec: drawn(t),
			GroupSaid: rapid.Bool().Draw(t, "said")}
		k.OnHand = packages(t, k.Spec)
		chains := rapid.IntRange(0, 3).Draw(t, "chains") == 0
		if chains {
			k.Spec.ChainEnds = rapid.IntRange(k.Spec.Positions*2, 400).Draw(t, "chain ends")
		}
		r, err := Solve(testContext, k)
		if err != nil {
			return // too little yarn
		}
		if n := short(t, r.Spec); n != 0 {
			t.Fatalf("%s of %s is %s short in the plan", r.Answer, k.Length, n)
		}
		if more := r.Spec; !chains && more.Ends < measure.MaxEnds && more.Ends >= more.Group {
			if more.Ends++; short(t, more) == 0 {
				t.Fatalf("%s of %s, and one more would do", r.Answer, k.Length)
			}
		}
	})
}

// The pieces that are found suffice; one more doesn't.
func TestPiecesFromYarnAreWhatThePlanAllows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := Known{FinishedWidth: measure.Length(rapid.Int64Range(10, 120).Draw(t, "width")) * measure.Centimetre,
			FinishedLength: measure.Length(rapid.Int64Range(20, 200).Draw(t, "piece")) * measure.Centimetre,
			Spec:           drawn(t)}
		k.Spec.Cloth.Length.Hem = measure.Length(rapid.Int64Range(0, 5).Draw(t, "hem")) * measure.Centimetre
		k.Spec.Cloth.Length.Fringe = measure.Length(rapid.Int64Range(0, 9).Draw(t, "fringe")) * measure.Centimetre
		k.Spec.Cloth.Length.TakeUp = measure.OnePercent * measure.Percent(rapid.IntRange(0, 20).Draw(t, "take-up"))
		k.Spec.Loom.Sett, _ = measure.ParseSett(fmt.Sprintf("%d an inch", rapid.IntRange(4, 40).Draw(t, "sett")))
		k.OnHand = packages(t, k.Spec)
		r, err := Solve(testContext, k)
		if err != nil {
			return // too little yarn
		}
		if r.Find != ThePieces || !r.Spec.Cloth.Used {
			t.Fatalf("found %s", r.Find)
		}
		if n := short(t, r.Spec); n != 0 {
			t.Fatalf("%s is %s short in the plan", r.Answer, n)
		}
		if more := r.Spec; more.Cloth.Length.Pieces < 1000 {
			more.Cloth.Length.Pieces++
			longer, err := project.FromCloth(more)
			if err == nil && longer.Length <= 1000*measure.Metre && short(t, more) == 0 {
				t.Fatalf("%s, and one more would do", r.Answer)
			}
		}
	})
}

// The yarn that is asked for suffices when it is on hand, as it is shown: the same length comes back at least, and the
// same ends.
func TestYarnThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := Known{Ends: rapid.IntRange(1, 900).Draw(t, "ends"), Spec: drawn(t), GroupSaid: true,
			Length: measure.Length(rapid.Int64Range(50, 3000).Draw(t, "length")) * measure.Centimetre}
		k.Spec.Yarn.Tube = 0
		r := solved(t, k)
		var have []Package
		for _, u := range r.Packages {
			weight, err := measure.ParseMass(u.UsedMass.AtLeast(measure.Grams, 1).Plain())
			if err != nil {
				t.Fatal(err)
			}
			have = append(have, Package{Gross: weight})
		}
		slices.Reverse(have) // in any order
		back := k
		back.Length, back.OnHand = 0, have
		if got := solved(t, back); planned(t, got).Plan.Path.Length < planned(t, r).Plan.Path.Length {
			t.Fatalf("%s of yarn for %s give %s back", r.Answer, k.Length, got.Answer)
		}
		back.Ends, back.Length = 0, k.Length
		if got := solved(t, back); got.Spec.Ends < k.Ends {
			t.Fatalf("%s of yarn for %d ends give %s back", r.Answer, k.Ends, got.Answer)
		}
		back.Ends = k.Ends
		if got := solved(t, back); got.Short {
			t.Fatalf("%s doesn't suffice: %v", r.Answer, got.Lines)
		}
	})
}

// Whatever is said, there is an answer or a refusal, and no panic.
func TestNothingPanics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := func(name string) measure.Length {
			return measure.Length(rapid.SampledFrom([]int64{0, 0, 0, 1, 1_000_000, int64(measure.Yard),
				int64(20 * measure.Metre), int64(2000 * measure.Metre), -5}).Draw(t, name))
		}
		k := Known{Find: Find(rapid.IntRange(0, 5).Draw(t, "find")), Ends: rapid.SampledFrom([]int{0, 0, 1, 7, 400,
			100_000, 200_000, -1}).Draw(t, "ends"), Length: length("length"), FinishedWidth: length("width"),
			ReedWidth: length("in reed"), FinishedLength: length("piece"),
			Pieces: rapid.SampledFrom([]int{0, 1, 4, 5000, -2}).Draw(t, "pieces"), Spec: drawn(t)}
		if rapid.Bool().Draw(t, "sett") {
			k.Spec.Loom.Sett, _ = measure.ParseSett("20 an inch")
		}
		if rapid.Bool().Draw(t, "counted") {
			k.FinishedSett, _ = measure.ParseSett("24 an inch")
		}
		if rapid.Bool().Draw(t, "on hand") {
			k.OnHand = packages(t, k.Spec)
		}
		r, err := Solve(testContext, k)
		if err == nil && (r == nil || len(r.Answer) == 0) {
			t.Fatalf("no answer for %+v", k)
		}
	})
}
