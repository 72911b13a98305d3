package stripe

import (
	"testing"

	"millside/plan"
)

// fixed is a list of warps on which the scheduler is measured, from small ones to ordinary ones, and
// whether it proves its schedule at the usual effort.
var fixed = []struct {
	name, text string
	positions  int
	order      plan.ReturnOrder
	proved     bool
}{
	{"mirror14", "mirror (3 cream, 2 moss, 1 plum), 2 cream", 12, plan.SameOrder, true},
	{"mirror14", "mirror (3 cream, 2 moss, 1 plum), 2 cream", 12, plan.MirroredOrder, true},
	{"single21", "3 times (red, white, blue, green, red, blue, white)", 12, plan.SameOrder, true},
	{"sampler24", "6 red, 5 white, 4 blue, 3 green, 2 black, 4 gold", 12, plan.SameOrder, true},
	{"repeat30", "5 times (4 red, 2 white), 4 red", 12, plan.SameOrder, true},
	{"point41", "point (4 a, 3 b, 2 c, 5 d, 1 e, 3 f, 5 a)", 12, plan.MirroredOrder, true},
	{"odd48", "5 a, 2 b, 1 c, 7 d, 2 b, 3 a, 1 e, 1 c, 6 f, 2 a, 4 d, 1 b, 3 e, 2 c, 5 a, 3 f", 12, plan.SameOrder, false},
	{"odd48", "5 a, 2 b, 1 c, 7 d, 2 b, 3 a, 1 e, 1 c, 6 f, 2 a, 4 d, 1 b, 3 e, 2 c, 5 a, 3 f", 12, plan.MirroredOrder, false},
	{"plaid60", "3 times (8 a, 2 b, 2 c, 2 b, 6 d)", 10, plan.SameOrder, true},
	{"plaid120", "6 times (8 a, 2 b, 2 c, 2 b, 6 d)", 12, plan.MirroredOrder, true},
	{"tartan200", "2 times (mirror (4 a, 2 b, 12 c, 2 b, 2 d, 2 b, 8 e, 1 f, 17 a))", 12, plan.SameOrder, false},
	{"article406", "8 white, 21 times (4 red, 14 white), 20 red", 12, plan.SameOrder, true},
	{"repeat420", "30 times (3 a, 2 b, 1 c, 4 d, 2 b, 2 e)", 12, plan.SameOrder, true},
	{"sampler300", "40 a, 40 b, 30 c, 50 d, 40 e, 60 f, 40 a", 12, plan.SameOrder, false},
}

// endsOf gives the ends of a stripe order.
func endsOf(t testing.TB, text string) []int {
	o, err := Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	ends, err := o.Ends()
	if err != nil {
		t.Fatal(err)
	}
	return ends
}

func TestFixed(t *testing.T) {
	w := DefaultWeights()
	for _, c := range fixed {
		if !c.proved && testing.Short() {
			continue // they take longest
		}
		ends, l := endsOf(t, c.text), Limits{Positions: c.positions, ReturnOrder: c.order}
		s, err := Make(ends, l, w)
		if err != nil {
			t.Fatal(err)
		}
		if why := holds(s, ends, l, w); why != "" {
			t.Errorf("%s, %v: %s", c.name, c.order, why)
		}
		if why := leaseHolds(s, ends); why != "" {
			t.Errorf("%s, %v: %s", c.name, c.order, why)
		}
		if s.Proof.Optimal != c.proved || s.Proof.Gap < 0 {
			t.Errorf("%s, %v: %v, %+v", c.name, c.order, s.Total, s.Proof)
		}
	}
}

func BenchmarkFixed(b *testing.B) {
	for _, c := range fixed {
		ends := endsOf(b, c.text)
		b.Run(c.name+"/"+c.order.String(), func(b *testing.B) { benchmark(b, ends, c.positions, c.order) })
	}
}

// What a weaver waits for while the stripes are typed: both return orders and what they are compared with.
func BenchmarkForPlan(b *testing.B) {
	for _, c := range fixed {
		spec := plan.DefaultSpec()
		spec.Stripes, spec.Positions, spec.ReturnOrder = c.text, c.positions, c.order
		b.Run(c.name+"/"+c.order.String(), func(b *testing.B) {
			for b.Loop() {
				if _, err := ForPlan(spec, Limits{}, DefaultWeights()); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
