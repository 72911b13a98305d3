package schedule

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"sync"
	"testing"
	"time"

	"millside/plan/measure"
	"millside/plan/wind"
)

// agrees says how the scheduler's result differs from the least cost, "" if it doesn't.
func agrees(ends []int, l Limits, t Times, least time.Duration) string {
	f, err := Make(context.Background(), ends, l, t, nil)
	if least >= unreachable {
		if len(measure.FieldErrors(err)) != 1 {
			return fmt.Sprintf("no schedule is possible, but the error is %v", err)
		}
		return ""
	}
	if err != nil {
		return err.Error()
	}
	s := f.Taken
	if f.Cheapest != nil {
		s = f.Cheapest
	}
	for _, s := range []*Schedule{f.Taken, s} {
		if why := holds(s, ends, l, t); why != "" {
			return why
		}
	}
	if s.Total != least || !s.Proof.Least {
		return fmt.Sprintf("total %v, not %v: %+v", s.Total, least, s)
	}
	return ""
}

// Every order of up to 7 ends and 3 colours, for paddles of up to 4 positions and both return orders, against
// the table; with MILLSIDE_EXHAUSTIVE set every order of up to 10 ends, which takes some minutes.
func TestExhaustive(t *testing.T) {
	most := 7
	switch {
	case os.Getenv("MILLSIDE_EXHAUSTIVE") != "":
		most = 10
	case testing.Short():
		most = 6
	}
	var wait sync.WaitGroup
	for positions := 1; positions <= 4; positions++ {
		for _, order := range []wind.ReturnOrder{wind.SameOrder, wind.MirroredOrder} {
			wait.Go(func() {
				l := Limits{Positions: positions, ReturnOrder: order}
				checked := 0
				newTable(l, usual, 3).forEach(most, 3, func(ends []int, least time.Duration) {
					checked++
					if why := agrees(ends, l, usual, least); why != "" {
						t.Errorf("%v, %d positions, %v: %s", ends, positions, order, why)
					}
				})
				t.Logf("%d positions, %v: %d orders", positions, order, checked)
			})
		}
	}
	wait.Wait()
}

// Every limit and any times: the scheduler finds what the table finds, or both find that there is none.
func TestLimitsAgainstTable(t *testing.T) {
	r := lot{rand.New(rand.NewPCG(3, 4))}
	cases := 1500
	if testing.Short() {
		cases = 100
	}
	for range cases {
		colours := r.from(1, 3)
		ends, l, w := r.ends(1, 10, colours), r.limits(colours), r.times()
		table := newTable(l, w, colours)
		for i := len(ends) - 1; i > 0; i-- {
			table.push(ends[i])
		}
		if why := agrees(ends, l, w, table.least(ends[0])); why != "" {
			halts := -1
			if l.MostHalts != nil {
				halts = *l.MostHalts
			}
			t.Fatalf("%v, %+v, halts %d, %+v: %s", ends, l, halts, w, why)
		}
	}
}

// Warps of 20 to 60 ends on 4 to 7 positions: the scheduler finds the least cost that the table finds and
// proves it. It is 300 of them with MILLSIDE_MIDDLE set (some two minutes of the processor), else a part. The table
// holds 2 or 3 colours on 4 and 5 positions, 2 on 6 and 7.
func TestMiddleAgainstTable(t *testing.T) {
	r := lot{rand.New(rand.NewPCG(7, 8))}
	cases := 24
	switch {
	case os.Getenv("MILLSIDE_MIDDLE") != "":
		cases = 300
	case testing.Short():
		cases = 4 // one for each number of positions
	}
	unproved := 0
	for k := range cases {
		positions := 4 + k%4
		colours := 2
		if positions < 6 {
			colours = r.from(2, 3)
		}
		ends := r.stripes(20, 60, colours)
		l := Limits{Positions: positions, ReturnOrder: wind.ReturnOrder(k / 4 % 2)}
		start := time.Now()
		f, err := Make(context.Background(), ends, l, usual, nil)
		if err != nil {
			t.Fatal(err)
		}
		took := time.Since(start)
		s := f.Taken
		if f.Cheapest != nil {
			s = f.Cheapest
		}
		if why := holds(s, ends, l, usual); why != "" {
			t.Fatal(why)
		}
		table := newTable(l, usual, colours)
		for i := len(ends) - 1; i > 0; i-- {
			table.push(ends[i])
		}
		least := table.least(ends[0])
		if s.Total != least || s.Proof.Bound > least {
			t.Errorf("%v, %+v: total %v, bound %v, but the least is %v", ends, l, s.Total, s.Proof.Bound, least)
		}
		if !s.Proof.Least {
			unproved++
			t.Logf("%d ends, %d colours, %d positions: %v not proved, bound %v, %v", len(ends), colours, positions,
				s.Total, s.Proof.Bound, took)
		}
	}
	t.Logf("%d of %d not proved", unproved, cases)
}
