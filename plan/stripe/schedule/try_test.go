package schedule

import (
	"context"
	"fmt"
	"os"
	"strconv"
	"testing"
	"time"
)

func TestTry(t *testing.T) {
	if os.Getenv("TRY") == "" {
		t.Skip()
	}
	for _, o := range orders() {
		start := time.Now()
		var firsts time.Duration
		eff, _ := strconv.Atoi(os.Getenv("EFFORT"))
		f, err := Make(context.Background(), o.ends, Limits{Positions: o.positions, Effort: eff}, usual, func(*Schedule) {
			if firsts == 0 {
				firsts = time.Since(start)
			}
		})
		if err != nil {
			t.Fatal(err)
		}
		s := f.Taken
		c := s
		if f.Cheapest != nil {
			c = f.Cheapest
		}
		fmt.Printf("%-20s %3d ends %2d pos: first %v best %6.2f kinds %d taken %6.2f kinds %d bound %6.2f gap %4.1f%% sum %v  %v\n", o.name, len(o.ends), o.positions, firsts.Round(time.Millisecond), c.Total.Minutes(), c.Kinds, s.Total.Minutes(), s.Kinds, c.Proof.Bound.Minutes(), 100*float64(c.Proof.Gap)/float64(c.Total), c.Sum, time.Since(start).Round(time.Millisecond))
	}
}
