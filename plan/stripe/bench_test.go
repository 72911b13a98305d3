package stripe

import (
	"fmt"
	"testing"
	"time"

	"millside/plan"
)

// plaid is a warp of so many ends: a repeat of stripes of 2 to 12 ends in so many colours, drawn up by
// a fixed rule, laid again and again.
func plaid(ends, colours, stripes int) []int {
	var all []int
	for len(all) < ends {
		x := 7
		for i := range stripes {
			x = (x*31 + 11) % 101
			c := i%colours + 1
			if i%3 == 2 {
				c = x%colours + 1
			}
			for range 2 + x%6*2 {
				all = append(all, c)
			}
		}
	}
	return all[:ends]
}

// scattered is a warp of stripes of 1 to 15 ends of colours as if by lot, without a repeat.
func scattered(ends, colours int) []int {
	var all []int
	x := uint32(12345)
	next := func(n int) int {
		x = x*1664525 + 1013904223
		return int(x>>16) % n
	}
	for len(all) < ends {
		c := next(colours) + 1
		for range 1 + next(15) {
			all = append(all, c)
		}
	}
	return all[:ends]
}

func benchmark(b *testing.B, ends []int, positions int, order plan.ReturnOrder) {
	b.ReportAllocs()
	var s *Schedule
	for b.Loop() {
		var err error
		if s, err = Make(ends, Limits{Positions: positions, ReturnOrder: order}, DefaultWeights()); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(s.Total.Minutes(), "minutes")
	b.ReportMetric(100*float64(s.Proof.Gap)/float64(s.Total), "%gap")
	b.ReportMetric(float64(s.Cost.Changes), "changes")
	b.ReportMetric(float64(s.Cost.Passes), "passes")
}

// The asked sizes: 500 ends in 6 colours on 12 positions within 100 ms, 5,000 in 12 on 20 within 2 s
// and 200 MB.
func BenchmarkMake(b *testing.B) {
	for _, c := range []struct{ ends, colours, positions int }{{500, 6, 12}, {5000, 12, 20}} {
		for _, order := range []plan.ReturnOrder{plan.SameOrder, plan.MirroredOrder} {
			name := fmt.Sprintf("%dends/%dcolours/%dpositions/%v", c.ends, c.colours, c.positions, order)
			b.Run(name+"/plaid", func(b *testing.B) { benchmark(b, plaid(c.ends, c.colours, 2*c.colours), c.positions, order) })
			b.Run(name+"/scattered", func(b *testing.B) { benchmark(b, scattered(c.ends, c.colours), c.positions, order) })
		}
	}
}

// Growth with the ends, all else being equal.
func BenchmarkGrowth(b *testing.B) {
	for _, n := range []int{500, 1000, 2000, 4000, 8000} {
		b.Run(fmt.Sprintf("%dends", n), func(b *testing.B) {
			start := time.Now()
			benchmark(b, scattered(n, 6), 12, plan.SameOrder)
			b.ReportMetric(float64(time.Since(start).Microseconds())/float64(b.N)/float64(n), "µs/end")
		})
	}
}
