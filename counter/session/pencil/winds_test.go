package pencil

import (
	"context"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"millside/plan"
	"millside/plan/stripe"
	"millside/plan/stripe/schedule"
	"millside/plan/wind"
)

// planned plans stripes in one of the ways; false where they can't be wound so.
func planned(t testing.TB, text string, way schedule.Way, change func(*plan.Spec)) (*Warp, bool) {
	t.Helper()
	spec := plan.DefaultSpec()
	spec.Stripes = text
	change(&spec)
	ask := stripe.Ask{Way: way, Limits: schedule.Limits{Effort: 1}}
	made, err := stripe.ForPlan(context.Background(), spec, ask, nil)
	if err != nil {
		return nil, false
	}
	p, err := plan.New(made.Spec)
	if err != nil {
		t.Fatal(err)
	}
	ends, err := made.Order.Ends()
	if err != nil {
		t.Fatal(err)
	}
	var order []string
	for _, c := range ends {
		order = append(order, named(p.ColourText(c)))
	}
	return NewWarp(t, p, order, way == schedule.ChainEach), true
}

func never() bool { return false }

var pencilOrders = []struct {
	text      string
	positions int
}{
	{"4 red, 3 times (2 white, 1 blue, 5 red), 4 red", 6},
	{"mirror (3 red, 1 white, 2 blue, 7 white)", 5},
	{"4 times (4 black, 4 white), 4 black", 8},
	{"3 times (2 red, 2 white, 2 blue)", 6},
	{"8 navy, 21 white, 3 red, 21 white, 8 navy", 8},
	{"red, white, blue, red, green, white, blue, green, red, white", 4},
}

var allWays = []schedule.Way{schedule.Searched, schedule.SideBySide, schedule.Swapped, schedule.OneRepeat,
	schedule.ChainEach}

// Whoever follows the pages with paper and pencil gets the stripes as ordered, in each way to wind, whichever
// way round the hands lay a return pass, and finds each knot where the hand-over says it is.
func TestPencil(t *testing.T) {
	orders := pencilOrders
	if testing.Short() { // each is searched anew, which the race detector makes slow
		orders = orders[3:5]
	}
	for _, o := range orders {
		for _, way := range allWays {
			for _, mirrored := range []bool{false, true} {
				for _, foot := range []wind.FootPosition{wind.FootFirst, wind.FootLast} {
					name := fmt.Sprintf("%s/%v/mirrored=%v,%v", o.text, way, mirrored, foot)
					t.Run(name, func(t *testing.T) {
						w, ok := planned(t, o.text, way, func(s *plan.Spec) {
							s.Positions, s.Foot = o.positions, foot
						})
						if !ok {
							t.Skip("not this way")
						}
						p := New(t, mirrored, foot == wind.FootLast)
						w.Follow(p, never)
						w.Check(p, nil)
					})
				}
			}
		}
	}
}

// The same with passes taken back in between.
func TestPencilTakesBack(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		o := rapid.SampledFrom(pencilOrders).Draw(rt, "order")
		way := rapid.SampledFrom(allWays).Draw(rt, "way")
		foot := wind.FootPosition(rapid.IntRange(0, 1).Draw(rt, "foot"))
		chain := rapid.SampledFrom([]int{0, 0, 20}).Draw(rt, "chain")
		w, ok := planned(t, o.text, way, func(s *plan.Spec) {
			s.Positions, s.Foot, s.ChainEnds = o.positions, foot, chain
			s.ReturnOrder = wind.ReturnOrder(rapid.IntRange(0, 1).Draw(rt, "planned"))
		})
		if !ok {
			rt.Skip("not this way")
		}
		p := New(t, rapid.Bool().Draw(rt, "mirrored"), foot == wind.FootLast)
		left, often := 60, 11 // one mistake seldom comes alone
		w.Follow(p, func() bool {
			if left--; left < 0 || rapid.IntRange(0, often).Draw(rt, "errs") > 0 {
				often = 11
				return false
			}
			often = 1
			return true
		})
		w.Check(p, nil)
	})
}
