package stripe_test

import (
	"slices"
	"testing"

	"millside/plan"
	"millside/plan/entry"
	"millside/plan/internal/measuretest"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/stripe"
	"millside/plan/wind"

	"pgregory.net/rapid"
)

// Stripes and a cloth's width that say two numbers of ends: 5 in at 4 an inch with nothing lost are 20 ends.
func TestStripesToTheWidth(t *testing.T) {
	base := entry.NewSpec(measure.Imperial)
	base.Cloth.Used, base.Cloth.Assumed = true, nil
	base.Cloth.Width.Finished, base.Cloth.Length.Piece = 5*measure.Inch, measure.Yard
	base.Loom.Sett = measuretest.Sett(t, "4 an inch")
	for _, c := range []struct {
		text string
		how  wind.Laid
		from plan.WrittenFrom
		want string
	}{
		{"4 red, 3 white", wind.AsWritten, plan.FromEndOne, "4 red, 3 white"},
		{"4 red, 3 white", wind.Repeated, plan.FromEndOne, "4 red, 3 white, 4 red, 3 white, 4 red, 2 white"},
		{"4 red, 3 white", wind.WholeRepeats, plan.FromEndOne, "2 times (4 red, 3 white)"},
		{"4 red, 3 white", wind.CutToEnds, plan.FromEndOne, "4 red, 3 white"},
		{"18 red, 9 white", wind.CutToEnds, plan.FromEndOne, "18 red, 2 white"},
		{"18 red, 9 white", wind.Repeated, plan.FromEndOne, "18 red, 2 white"},
		{"23 red, 9 white", wind.CutToEnds, plan.FromEndOne, "20 red"},
		// Written from the right, with end 1 on the left: what is left out is what is written last.
		{"18 red, 9 white", wind.CutToEnds, plan.FromTheRight, "2 white, 18 red"},
	} {
		s := base
		s.Stripes, s.StripesFrom, s.Asked.Laid.How = c.text, c.from, c.how
		_, laid, err := stripe.Written(s)
		want, err2 := stripe.Parse(c.want)
		if err != nil || err2 != nil || !slices.Equal(colours(t, laid), colours(t, want)) {
			t.Errorf("%s, %s: %s (%v, %v)", c.text, c.how, laid, err, err2)
		}
	}
	s := base
	s.Stripes, s.Asked.Laid.How = "18 red, 9 white", wind.WholeRepeats
	if _, _, err := stripe.Written(s); len(measure.FieldErrors(err)) != 1 {
		t.Errorf("no whole repeat: %v", err)
	}
	s.Asked.Laid.How, s.Loom.Sett = wind.Repeated, measure.Sett{}
	if _, _, err := stripe.Written(s); len(measure.FieldErrors(err)) == 0 {
		t.Errorf("no sett: %v", err)
	}
}

func colours(t *testing.T, o stripe.Order) []string {
	t.Helper()
	ends, err := o.Ends()
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, c := range ends {
		list = append(list, o.Colours[c-1].Name)
	}
	return list
}

// What is laid is the written order from the side that it is written from, over and over, and a plan that was made
// so gives the same when it is made again.
func TestLaidRepeats(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := plan.DefaultSpec()
		s.Stripes = rapid.SampledFrom([]string{"4 red, 3 white", "mirror (2 red, 1 blue)", "7 grey"}).Draw(t, "text")
		s.Ends = rapid.IntRange(7, 60).Draw(t, "ends")
		s.Asked.Laid.How = wind.Laid(rapid.IntRange(1, 3).Draw(t, "how"))
		s.StripesFrom = plan.WrittenFrom(rapid.IntRange(0, 2).Draw(t, "from"))
		s.Loom.FirstEnd = loom.Side(rapid.IntRange(0, 1).Draw(t, "side"))
		written, laid, err := stripe.Written(s)
		if err != nil {
			t.Fatal(err)
		}
		once, err1 := written.Ends()
		ends, err2 := laid.Ends()
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		if s.StripesTurned() {
			slices.Reverse(ends)
		}
		for i, c := range ends {
			if laid.Colours[c-1] != written.Colours[once[i%len(once)]-1] {
				t.Fatalf("end %d of %s is %v", i+1, laid, laid.Colours[c-1])
			}
		}
		s.Ends = len(ends)
		if _, again, err := stripe.Written(s); err != nil || again.Size() != laid.Size() {
			t.Fatalf("again: %s (%v)", again, err)
		}
	})
}
