package stripe_test

import (
	"context"
	"testing"

	"millside/plan"
	"millside/plan/stripe"
)

// others plans stripes on a paddle of so many positions.
func others(t *testing.T, text string, positions int) *stripe.Plan {
	t.Helper()
	spec := plan.DefaultSpec()
	spec.Stripes, spec.Positions = text, positions
	made, err := stripe.ForPlan(context.Background(), spec, stripe.Ask{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	return made
}

// A check of 8 and 8 is wound from one set-up with 16 positions, and from none with fewer. The work of a whole
// repeat on each pass is counted here by hand: 4 repeats and the border by itself, all carried from the start, the
// white ones cut off before the border.
func TestOtherPaddles(t *testing.T) {
	made := others(t, "4 times (8 black, 8 white), 8 black", 12)
	list := made.OtherPaddles(context.Background(), map[int]string{14: "grandmother's"})
	found := map[int]stripe.OtherPaddle{}
	last := 0
	for _, o := range list {
		if o.Positions <= last || o.Positions == 12 {
			t.Errorf("%d positions after %d", o.Positions, last)
		}
		last = o.Positions
		found[o.Positions] = o
		if max(o.Packages[0], o.Packages[1]) > o.Positions || o.Total <= 0 {
			t.Errorf("%+v can't be", o)
		}
	}
	if found[14].Name != "grandmother's" {
		t.Errorf("the paddle at hand is missing: %+v", list)
	}
	w := made.Times
	byHand := 5*w.Pass + w.Halt + 16*(w.Cut+w.Tie+w.Thread) + w.Far
	if o := found[16]; o.Total > byHand || o.Passes != 5 || o.Halts != 1 || o.Packages[0] != 8 || o.Packages[1] != 8 {
		t.Errorf("16 positions: %+v, by hand %v", o, byHand)
	}
	if found[16].Total > made.Schedule.Total*9/10 {
		t.Errorf("16 positions take %v, 12 %v", found[16].Total, made.Schedule.Total)
	}
}

// The figure for a paddle is what a schedule takes, so it isn't below the bound that a plan for it shows.
func TestOtherPaddlesAreNotBelowTheBound(t *testing.T) {
	if testing.Short() {
		t.Skip("searches many orders")
	}
	const text = "2 times (9 red, 2 white, 5 blue)"
	for _, o := range others(t, text, 9).OtherPaddles(context.Background(), map[int]string{7: "a", 11: "b", 3: "c"}) {
		made := others(t, text, o.Positions)
		if o.Total < made.Schedule.Proof.Bound {
			t.Errorf("%d positions: %v, but no schedule is below %v", o.Positions, o.Total, made.Schedule.Proof.Bound)
		}
	}
}

// Of 9 and 8 on 16 positions the 9 is one too many. The hint is the written order with one width changed, it saves
// what it says when it is planned, and the plan itself is left as it is.
func TestSmallerChange(t *testing.T) {
	if testing.Short() {
		t.Skip("searches many orders")
	}
	made := others(t, "8 times (9 black, 8 white)", 16)
	before := made.Spec.Stripes
	c := made.SmallerChange(context.Background())
	if c == nil {
		t.Fatal("no hint")
	}
	if c.Ends != 8*16 || c.Total+c.Saved != made.Schedule.Total || made.Spec.Stripes != before {
		t.Errorf("%s: %s, %d ends, %v, %v", c.Words, c.Order, c.Ends, c.Total, c.Saved)
	}
	if c.Saved < made.Schedule.Total/5 {
		t.Errorf("saves %v of %v only", c.Saved, made.Schedule.Total)
	}
	again := others(t, c.Order.String(), 16)
	if again.Schedule.Total > c.Total*101/100 || again.Schedule.Proof.Bound > c.Total {
		t.Errorf("planned it takes %v, the hint said %v", again.Schedule.Total, c.Total)
	}
	for _, s := range []struct {
		text      string
		positions int
	}{
		{"4 times (8 black, 8 white)", 16}, // as fast as it can be
		{"20 white", 6},
		{"red, 2 white", 6},
	} {
		if c := others(t, s.text, s.positions).SmallerChange(context.Background()); c != nil {
			t.Errorf("%s: %s: %s saves %v", s.text, c.Words, c.Order, c.Saved)
		}
	}
}

// An order that is written from the right is given back from the right.
func TestSmallerChangeIsWrittenAsTheOrder(t *testing.T) {
	if testing.Short() {
		t.Skip("searches many orders")
	}
	spec := plan.DefaultSpec()
	spec.Stripes, spec.Positions, spec.StripesFrom = "3 red, 8 times (9 black, 8 white)", 16, plan.FromTheRight
	made, err := stripe.ForPlan(context.Background(), spec, stripe.Ask{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	if c := made.SmallerChange(context.Background()); c == nil || c.Order.Parts[0].Count != 3 {
		t.Errorf("%+v", c)
	}
}

// Where the search is broken off there is nothing to say, and no wait.
func TestOthersBrokenOff(t *testing.T) {
	made := others(t, "2 times (9 red, 2 white, 5 blue)", 9)
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if list, c := made.OtherPaddles(ctx, nil), made.SmallerChange(ctx); list != nil || c != nil {
		t.Errorf("%v, %v", list, c)
	}
}

// A single stripe among others of its width is changed where that is enough, and named by its place.
func TestSingleStripeIsTried(t *testing.T) {
	order, err := stripe.Parse("2 times (9 black, 3 white), 9 black, 9 white")
	if err != nil {
		t.Fatal(err)
	}
	for words, want := range map[string]string{
		"stripe 1 as written, 9 black, made 8":  "2 times (8 black, 3 white), 9 black, 9 white",
		"stripe 3 as written, 9 black, made 8":  "2 times (9 black, 3 white), 8 black, 9 white",
		"stripe 4 as written, 9 white, made 10": "2 times (9 black, 3 white), 9 black, 10 white",
		"each stripe of 9 made 8":               "2 times (8 black, 3 white), 8 black, 8 white",
		"each stripe of 3 made 2":               "2 times (9 black, 2 white), 9 black, 9 white",
	} {
		if got := stripe.SmallChanges(order)[words]; got != want {
			t.Errorf("%s: %q, want %q", words, got, want)
		}
	}
}

// Sizes of paddle that give the same are not told twice.
func TestOtherPaddlesOnce(t *testing.T) {
	made := others(t, "4 times (8 black, 8 white), 8 black", 12)
	list := made.OtherPaddles(context.Background(), map[int]string{17: "the long one"})
	for i, o := range list[1:] {
		if was := list[i]; was.Total == o.Total && was.Passes == o.Passes && was.Halts == o.Halts && was.Name == "" {
			t.Errorf("%d positions and %d give the same", was.Positions, o.Positions)
		}
	}
	if len(list) == 0 || list[len(list)-1].Name != "the long one" {
		t.Errorf("%+v", list)
	}
}
