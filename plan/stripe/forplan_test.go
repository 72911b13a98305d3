package stripe_test

import (
	"context"
	"encoding/json"
	"reflect"
	"testing"

	"millside/plan"
	"millside/plan/stripe"
	"millside/plan/stripe/schedule"
	"millside/plan/times"
	"millside/plan/wind"

	"pgregory.net/rapid"
)

// Whatever the stripes, the paddle and the return order, a plan made of the schedule lays exactly the
// asked colours, and no two neighbours lie over the same lease peg; in several chains too, and in the
// plan for the other return order. The sides are worked out here from openings and positions alone.
func TestPlanLaysTheStripes(t *testing.T) {
	most := 7
	if stripe.RaceEnabled {
		most = 4
	}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SampledFrom([]string{
			"4 red, 3 times (2 white, 1 blue, 5 red), 4 red",
			"mirror (3 red, 1 white, 2 blue, 7 white)",
			"3 times balanced (4 white, 2 red, 1 blue)",
			"red, white, blue, red, green, white, blue, green, red, white",
			"20 white",
		}).Draw(t, "stripes")
		spec := plan.DefaultSpec()
		spec.Stripes = text
		spec.Positions = rapid.IntRange(1, most).Draw(t, "positions")
		spec.Group = 1
		spec.ReturnOrder = wind.ReturnOrder(rapid.IntRange(0, 1).Draw(t, "order"))
		spec.Foot = wind.FootPosition(rapid.IntRange(0, 1).Draw(t, "foot"))
		spec.ChainEnds = rapid.SampledFrom([]int{0, 0, 20}).Draw(t, "chain")
		spec.EvenChains = rapid.Bool().Draw(t, "even")
		// One position lays an end on each pass, so that an odd warp can't finish at the lease.
		ask := stripe.Ask{Limits: schedule.Limits{FinishAtLease: spec.Positions > 1 && rapid.Bool().Draw(t, "finish")}}
		made, err := stripe.ForPlan(context.Background(), spec, ask, nil)
		if err != nil {
			t.Fatal(err)
		}
		want, err := made.Order.Ends()
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range []plan.Spec{made.Spec, made.Spec.WithOrder(spec.ReturnOrder.Other())} {
			p, err := plan.New(s)
			if err != nil {
				t.Fatal(err)
			}
			lies(t, p, want)
			if s.ReturnOrder == spec.ReturnOrder && spec.ChainEnds == 0 {
				sumAgrees(t, p, made)
			}
		}
	})
}

// lies lays a plan pass by pass and compares it with the asked colours.
func lies(t *rapid.T, p *plan.Plan, want []int) {
	var got []int
	lastOver := false
	for _, c := range p.Chains {
		for _, pass := range c.Passes {
			var positions []int
			for pos := range pass.Carried.All() {
				positions = append(positions, pos)
			}
			if (pass.Direction == wind.Return &&
				p.Spec.ReturnOrder == wind.MirroredOrder) != (p.Spec.Foot == wind.FootLast) {
				for i, j := 0, len(positions)-1; i < j; i, j = i+1, j-1 {
					positions[i], positions[j] = positions[j], positions[i]
				}
			}
			atA := pass.FirstOpening // outward meets peg A first, return peg B
			if pass.Direction == wind.Return {
				atA = atA.Other()
			}
			for _, pos := range positions {
				over := (pos%2 == 1) == (atA == wind.HolesUp)
				if len(got) > 0 && over == lastOver {
					t.Fatalf("ends %d and %d lie over the same peg", len(got), len(got)+1)
				}
				lastOver = over
				got = append(got, p.SetUpOf(pass)[pos-1])
				if p.EndColour(len(got)) != got[len(got)-1] {
					t.Fatalf("end %d: EndColour says %d", len(got), p.EndColour(len(got)))
				}
			}
		}
	}
	if !reflect.DeepEqual(got, want) {
		t.Fatalf("laid %v, want %v", got, want)
	}
}

// A striped spec is kept in a record's first line: written and read it is the same.
func TestStripedSpecRoundTrip(t *testing.T) {
	spec := plan.DefaultSpec()
	spec.Stripes, spec.Positions = "8 white, 3 times (4 red, 4 white), 8 red where red is #b03a2e, white is #f4f1e8",
		8
	made, err := stripe.ForPlan(context.Background(), spec, stripe.Ask{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(made.Spec)
	if err != nil {
		t.Fatal(err)
	}
	var back plan.Spec
	if err := json.Unmarshal(text, &back); err != nil || !reflect.DeepEqual(back, made.Spec) {
		t.Fatalf("%s\nis read as %+v, %v", text, back, err)
	}
}

// sumAgrees holds what the schedule says of its work against the ledger of package plan.
func sumAgrees(t *rapid.T, p *plan.Plan, made *stripe.Plan) {
	sum, own := p.WorkSum(), made.Schedule.Sum
	want := schedule.Sum{Passes: sum.Passes, Halts: sum.Halts, Cuts: sum.Cuts, Ties: sum.Ties, Threads: sum.Threads,
		Far: sum.FarFinishes > 0}
	if own != want {
		t.Fatalf("the schedule says %v, the ledger %v", own, want)
	}
	if total := p.Spec.HandTimesAt(times.Pace{}).Total(sum, nil); total != made.Schedule.Total {
		t.Fatalf("the schedule takes %v, by the ledger %v", made.Schedule.Total, total)
	}
}
