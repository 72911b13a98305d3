package stripe_test

import (
	"context"
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/stripe"
)

// Own example, by hand: 40 ends of which the first 16 are red. Two chains are even at 20, but the colour changes near
// it, and a chain that ends between two stripes is one colour.
func TestEvenChainsEndBetweenStripes(t *testing.T) {
	spec := plan.DefaultSpec()
	spec.Stripes, spec.Positions, spec.EvenChains, spec.ChainCount = "16 red, 24 white", 4, true, 2
	made, err := stripe.ForPlan(context.Background(), spec, stripe.Ask{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.New(made.Spec)
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Chains) != 2 || p.Chains[0].Last != 16 || !strings.Contains(p.Chains[0].Why, "between two stripes") ||
		p.SplitWhy != "2 chains, evenly in whole bouts: so many were asked for" {
		t.Errorf("chains %+v, %q", p.Chains, p.SplitWhy)
	}
}
