package stripe

import (
	"os"
	"sync"
	"testing"
	"time"

	"millside/plan"
)

// TestExhaustive holds the scheduler against the table on every stripe order, up to the naming of the
// colours, for paddles of up to 4 positions and both return orders: every order of up to 8 ends, and
// every order of 3 colours of up to 10. With MILLSIDE_EXHAUSTIVE set it is every order of up to 10
// ends, 1,139,336 cases, which takes some minutes; under the race detector it is fewer.
func TestExhaustive(t *testing.T) {
	type span struct{ ends, colours int }
	spans := []span{{8, 8}, {10, 3}}
	switch {
	case os.Getenv("MILLSIDE_EXHAUSTIVE") != "":
		spans = []span{{10, 10}}
	case testing.Short(), RaceEnabled:
		spans = []span{{6, 6}, {8, 2}}
	}
	var wait sync.WaitGroup
	for positions := 1; positions <= 4; positions++ {
		for _, order := range []plan.ReturnOrder{plan.SameOrder, plan.MirroredOrder} {
			wait.Go(func() {
				l, w := Limits{Positions: positions, ReturnOrder: order}, DefaultWeights()
				checked := 0
				for _, s := range spans {
					newTable(l, w).forEach(s.ends, s.colours, func(ends []int, least time.Duration) {
						checked++
						if why := agrees(ends, l, w, least); why != "" {
							t.Errorf("%v, %d positions, %v: %s", ends, positions, order, why)
						}
					})
				}
				t.Logf("%d positions, %v: %d orders", positions, order, checked)
			})
		}
	}
	wait.Wait()
}
