package stripe_test

import (
	"context"
	"slices"
	"testing"

	"millside/plan"
	"millside/plan/loom"
	"millside/plan/stripe"
)

// Colour orders in print are mostly read from right to left (an editor's answers in a weaving magazine,
// 2016, 2023). Which end that begins with depends on the side that end 1 is on.
func TestWrittenFromASide(t *testing.T) {
	forth, back := []int{1, 1, 2, 3}, []int{3, 2, 1, 1}
	for _, c := range []struct {
		from  plan.WrittenFrom
		first loom.Side
		ends  []int
	}{
		{plan.FromEndOne, loom.LeftSide, forth}, {plan.FromEndOne, loom.RightSide, forth},
		{plan.FromTheLeft, loom.LeftSide, forth}, {plan.FromTheLeft, loom.RightSide, back},
		{plan.FromTheRight, loom.LeftSide, back}, {plan.FromTheRight, loom.RightSide, forth},
	} {
		spec := plan.DefaultSpec()
		spec.Stripes, spec.StripesFrom, spec.Loom.FirstEnd = "2 red, white, blue", c.from, c.first
		written, laid, err := stripe.Written(spec)
		if err != nil {
			t.Fatal(err)
		}
		ends, err := laid.Ends()
		if err != nil || !slices.Equal(ends, c.ends) || written.String() != "2 red, 1 white, 1 blue" {
			t.Errorf("written from %v, end 1 on the %v: %v (%v), written %s", c.from, c.first, ends, err, written)
		}
		made, err := stripe.ForPlan(context.Background(), spec, stripe.Ask{}, nil)
		if err != nil {
			t.Fatal(err)
		}
		p, err := plan.New(made.Spec)
		if err != nil {
			t.Fatal(err)
		}
		for i, want := range c.ends {
			if got := p.EndColour(i + 1); got != want {
				t.Errorf("written from %v, end 1 on the %v: end %d is of colour %d, not %d", c.from, c.first, i+1, got,
					want)
			}
		}
		if made.Spec.Stripes != written.String() {
			t.Errorf("the stripes became %s", made.Spec.Stripes)
		}
	}
}

// An order with as many brackets as may be can be turned, and turned back.
func TestTurnedTwice(t *testing.T) {
	text := "1 red"
	for range stripe.MaxDepth {
		text = "back (" + text + ", 1 blue)"
	}
	o, err := stripe.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	want, err := o.Ends()
	if err != nil {
		t.Fatal(err)
	}
	slices.Reverse(want)
	if got, err := o.Turned().Ends(); err != nil || !slices.Equal(got, want) {
		t.Errorf("turned it lays %v (%v)", got, err)
	}
	if o.Turned().Turned().String() != o.String() {
		t.Errorf("turned twice it is %s", o.Turned().Turned())
	}
}

// A colour with a known name is drawn in its shade; the notation keeps the name alone.
func TestKnownNameIsDrawn(t *testing.T) {
	spec := plan.DefaultSpec()
	spec.Stripes = "4 navy, 2 madder"
	made, err := stripe.ForPlan(context.Background(), spec, stripe.Ask{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	c := made.Spec.Schedule.Colours
	if c[0].Shade != "#000080" || c[1].Shade != "" || made.Spec.Stripes != "4 navy, 2 madder" {
		t.Errorf("%+v, %s", c, made.Spec.Stripes)
	}
}
