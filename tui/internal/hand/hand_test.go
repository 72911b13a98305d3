package hand

import (
	"context"
	"encoding/json"
	"flag"
	"os"
	"testing"

	"millside/plan"
	"millside/plan/stripe"
)

// The schedules that are kept lay the stripes; -update searches for them anew.
func TestKeptSchedulesLayTheStripes(t *testing.T) {
	specs := []plan.Spec{striped("Plaid scarf", plaid, 10), striped("Fading runner", fade, 6)}
	if flag.Lookup("update").Value.String() == "true" {
		keep := map[string]scheduled{}
		for _, s := range specs {
			made, err := stripe.ForPlan(context.Background(), s, stripe.Ask{}, nil)
			if err != nil {
				t.Fatal(err)
			}
			keep[s.Name] = scheduled{made.Spec.Stripes, made.Spec.Ends, made.Spec.Group, made.Spec.Schedule,
				made.Spec.Other}
		}
		text, err := json.MarshalIndent(keep, "", "\t")
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile("schedules.json", append(text, '\n'), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	for i, s := range []plan.Spec{Plaid(), Fade()} {
		order, err := stripe.Parse(specs[i].Stripes)
		if err != nil {
			t.Fatal(err)
		}
		want, err := order.Ends()
		if err != nil {
			t.Fatal(err)
		}
		for _, spec := range []plan.Spec{s, s.WithOrder(s.ReturnOrder.Other())} {
			p, err := plan.New(spec)
			if err != nil {
				t.Fatal(err)
			}
			if p.EndsWound() != len(want) {
				t.Fatalf("%s: %d ends of %d", s.Name, p.EndsWound(), len(want))
			}
			for i, colour := range want {
				if got := p.EndColour(i + 1); got != colour {
					t.Errorf("%s: end %d is of colour %d, not %d", s.Name, i+1, got, colour)
				}
			}
		}
	}
}
