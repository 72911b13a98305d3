package stripe_test

import (
	"context"
	"encoding/json"
	"fmt"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/stripe"
	"millside/plan/stripe/schedule"
	"millside/plan/times"
	"millside/plan/wind"
)

// chainsDrawn is a random order wound as a chain for each colour, and the colours that were asked for.
func chainsDrawn(t *rapid.T) (*plan.Plan, *stripe.Plan, []int) {
	names := []string{"white", "navy", "red", "green"}
	colours := rapid.IntRange(1, len(names)).Draw(t, "colours")
	text := ""
	for i := range rapid.IntRange(1, 9).Draw(t, "stripes") {
		if i > 0 {
			text += ", "
		}
		text += fmt.Sprintf("%d %s", rapid.IntRange(1, 15).Draw(t, "ends"),
			names[rapid.IntRange(0, colours-1).Draw(t, "colour")])
	}
	spec := plan.DefaultSpec()
	spec.Stripes, spec.Group = text, 1
	spec.Positions = rapid.IntRange(1, 9).Draw(t, "positions")
	spec.ReturnOrder = wind.ReturnOrder(rapid.IntRange(0, 1).Draw(t, "order"))
	spec.Foot = wind.FootPosition(rapid.IntRange(0, 1).Draw(t, "foot"))
	spec.StripesFrom = plan.WrittenFrom(rapid.IntRange(0, 2).Draw(t, "from"))
	spec.ChainEnds = rapid.SampledFrom([]int{0, 0, 20}).Draw(t, "most")
	ask := stripe.Ask{Way: schedule.ChainEach, Limits: schedule.Limits{Quick: true}}
	if rapid.Bool().Draw(t, "few packages") {
		ask.Limits.Packages = []int{2, 1, 3, 2}
	}
	made, err := stripe.ForPlan(context.Background(), spec, ask, nil)
	if err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	p, err := plan.New(made.Spec)
	if err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	want, err := made.Order.Ends()
	if err != nil {
		t.Fatal(err)
	}
	return p, made, want
}

// However the order runs, a chain for each colour gives each end of the order once and in its colour: the ends
// are laid here by position and turn of the paddle alone, and picked from the leases one by one.
func TestChainForEachColour(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, made, want := chainsDrawn(t)
		type laid struct {
			at     plan.Place
			colour int
		}
		lease := map[int][]laid{} // of each colour, from the foot of the peg on
		for _, c := range p.Chains {
			for _, pass := range c.Passes {
				var group []laid
				for pos := range pass.Carried.All() {
					group = append(group, laid{plan.Place{Chain: c.Number, Pass: pass.Number, Position: pos},
						p.SetUpOf(pass)[pos-1]})
				}
				if (pass.Direction == wind.Return && p.Spec.ReturnOrder == wind.MirroredOrder) !=
					(p.Spec.Foot == wind.FootLast) {
					for i, j := 0, len(group)-1; i < j; i, j = i+1, j-1 {
						group[i], group[j] = group[j], group[i]
					}
				}
				for _, e := range group {
					if e.colour != p.ChainColour(c.Number) {
						t.Fatalf("chain %d is of colour %d, and has %+v", c.Number, p.ChainColour(c.Number), e)
					}
					lease[e.colour] = append(lease[e.colour], e)
				}
			}
		}
		end := 0
		for _, run := range p.EndRuns() {
			for range run.Ends() {
				end++
				picked := lease[run.Colour][0]
				lease[run.Colour] = lease[run.Colour][1:]
				if end > len(want) || picked.colour != want[end-1] || p.EndColour(end) != want[end-1] {
					t.Fatalf("end %d is picked as %+v, colour %d is said", end, picked, p.EndColour(end))
				}
				if n, err := p.End(picked.at); err != nil || n != end {
					t.Fatalf("%+v is end %d, %v; picked as end %d", picked.at, n, err, end)
				}
				if at, err := p.Locate(end); err != nil || at != picked.at {
					t.Fatalf("end %d is at %+v, %v; picked at %+v", end, at, err, picked.at)
				}
			}
		}
		if end != len(want) {
			t.Fatalf("%d ends are picked, of %d", end, len(want))
		}
		if len(p.LeaseFaults) != 0 {
			t.Fatalf("faults of the lease: %+v", p.LeaseFaults)
		}
		seen := map[[2]int]int{} // end, beginning or finishing: how often
		for _, e := range finishing.PegEnds(p) {
			if at, err := p.Locate(e.End); err != nil || at.Chain != e.Chain {
				t.Fatalf("the knot %+v lies at %+v, %v", e, at, err)
			}
			k := [2]int{e.End, 0}
			if e.Begins {
				k[1] = 1
			}
			if seen[k]++; seen[k] > 1 {
				t.Fatalf("the knot %+v is named twice", e)
			}
		}
		if p.Spec.ChainEnds == 0 { // by the times that it was chosen by
			got := p.Spec.HandTimesAt(times.Pace{}).Total(p.WorkSum(), p.Path.PassTurns())
			if got != made.Schedule.Total {
				t.Fatalf("the ledger takes %v, the schedule says %v", got, made.Schedule.Total)
			}
		}
	})
}

// A record's first line keeps the order, and reads as it was written; the other return order gives the same
// colours.
func TestChainForEachColourIsKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, _, want := chainsDrawn(t)
		line, err := json.Marshal(p.Spec)
		if err != nil {
			t.Fatal(err)
		}
		var back plan.Spec
		if err := json.Unmarshal(line, &back); err != nil || !reflect.DeepEqual(back, p.Spec) {
			t.Fatalf("%s reads as %+v, %v", line, back, err)
		}
		other, err := plan.New(back.WithOrder(back.ReturnOrder.Other()))
		if err != nil {
			t.Fatal(err)
		}
		for i, c := range want {
			if other.EndColour(i+1) != c {
				t.Fatalf("end %d is of colour %d in the other return order, not %d", i+1, other.EndColour(i+1), c)
			}
		}
	})
}

// A record that was tampered with is refused with the field that won't do.
func TestChainOrderThatWontDo(t *testing.T) {
	spec := plan.DefaultSpec()
	spec.Stripes, spec.Positions = "4 white, 3 navy, 2 white", 4
	made, err := stripe.ForPlan(context.Background(), spec, stripe.Ask{Way: schedule.ChainEach}, nil)
	if err != nil {
		t.Fatal(err)
	}
	good := *made.Spec.Schedule
	for name, order := range map[string][]plan.ColourRun{
		"a colour too often": {{Ends: 5, Colour: 1}, {Ends: 4, Colour: 2}},
		"no such colour":     {{Ends: 6, Colour: 1}, {Ends: 3, Colour: 3}},
		"too many ends":      {{Ends: 6, Colour: 1}, {Ends: 3000, Colour: 2}},
		"too few ends":       {{Ends: 6, Colour: 1}, {Ends: 2, Colour: 2}},
		"no ends":            {{Ends: 6, Colour: 1}, {Ends: 0, Colour: 2}, {Ends: 3, Colour: 2}},
	} {
		bad := good
		bad.Order = order
		s := made.Spec
		s.Schedule = &bad
		if _, err := plan.New(s); len(measure.FieldErrors(err)) == 0 {
			t.Errorf("%s: %v", name, err)
		}
	}
	var r plan.ColourRun
	if err := r.UnmarshalText([]byte("08 of 1")); err == nil {
		t.Error("08 of 1 is read")
	}
}
