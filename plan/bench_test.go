package plan_test

import (
	"fmt"
	"testing"

	"millside/plan"
	"millside/plan/measure"
)

// The largest warp; the project's target is under 50 ms.
func BenchmarkNew100k(b *testing.B) {
	for _, g := range []int{1, 10} {
		b.Run(fmt.Sprintf("group=%d", g), func(b *testing.B) {
			s := plan.DefaultSpec()
			s.Ends, s.Group = measure.MaxEnds, g
			b.ReportAllocs()
			for b.Loop() {
				if _, err := plan.New(s); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkParseLength(b *testing.B) {
	for b.Loop() {
		if _, err := measure.ParseLength("4 yd 18 1/2 in"); err != nil {
			b.Fatal(err)
		}
	}
}
