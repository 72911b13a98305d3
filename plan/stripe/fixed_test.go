package stripe

import (
	"testing"

	"millside/plan"
)

// fixed is a list of warps on which the scheduler is measured, from small ones to ordinary ones.
var fixed = []struct {
	name, text string
	positions  int
	order      plan.ReturnOrder
}{
	{"mirror14", "mirror (3 cream, 2 moss, 1 plum), 2 cream", 12, plan.SameOrder},
	{"mirror14", "mirror (3 cream, 2 moss, 1 plum), 2 cream", 12, plan.MirroredOrder},
	{"single21", "3 times (red, white, blue, green, red, blue, white)", 12, plan.SameOrder},
	{"sampler24", "6 red, 5 white, 4 blue, 3 green, 2 black, 4 gold", 12, plan.SameOrder},
	{"repeat30", "5 times (4 red, 2 white), 4 red", 12, plan.SameOrder},
	{"point41", "point (4 a, 3 b, 2 c, 5 d, 1 e, 3 f, 5 a)", 12, plan.MirroredOrder},
	{"odd48", "5 a, 2 b, 1 c, 7 d, 2 b, 3 a, 1 e, 1 c, 6 f, 2 a, 4 d, 1 b, 3 e, 2 c, 5 a, 3 f", 12, plan.SameOrder},
	{"odd48", "5 a, 2 b, 1 c, 7 d, 2 b, 3 a, 1 e, 1 c, 6 f, 2 a, 4 d, 1 b, 3 e, 2 c, 5 a, 3 f", 12, plan.MirroredOrder},
	{"plaid60", "3 times (8 a, 2 b, 2 c, 2 b, 6 d)", 10, plan.SameOrder},
	{"plaid120", "6 times (8 a, 2 b, 2 c, 2 b, 6 d)", 12, plan.MirroredOrder},
	{"tartan200", "2 times (mirror (4 a, 2 b, 12 c, 2 b, 2 d, 2 b, 8 e, 1 f, 17 a))", 12, plan.SameOrder},
	{"article406", "8 white, 21 times (4 red, 14 white), 20 red", 12, plan.SameOrder},
	{"repeat420", "30 times (3 a, 2 b, 1 c, 4 d, 2 b, 2 e)", 12, plan.SameOrder},
	{"sampler300", "40 a, 40 b, 30 c, 50 d, 40 e, 60 f, 40 a", 12, plan.SameOrder},
}

func BenchmarkFixed(b *testing.B) {
	for _, c := range fixed {
		o, err := Parse(c.text)
		if err != nil {
			b.Fatal(err)
		}
		ends, err := o.Ends()
		if err != nil {
			b.Fatal(err)
		}
		b.Run(c.name+"/"+c.order.String(), func(b *testing.B) { benchmark(b, ends, c.positions, c.order) })
	}
}
