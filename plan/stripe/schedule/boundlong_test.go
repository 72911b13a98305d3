package schedule

import (
	"context"
	"math/rand/v2"
	"testing"
)

// The bound of a warp cut into pieces is never above the least that the table finds, wherever it is cut and
// whatever the limits and the times; nor is it nil all the time.
func TestBoundOfPieces(t *testing.T) {
	r := lot{rand.New(rand.NewPCG(11, 12))}
	cases := 200
	if testing.Short() {
		cases = 60
	}
	part := 0.0
	for range cases {
		colours := r.from(1, 3)
		ends, l, w := r.ends(8, 30, colours), r.limits(colours), r.times()
		l.MostHalts = nil
		p, err := prepare(ends, l, w)
		if err != nil {
			continue
		}
		table := newTable(l, w, colours)
		for i := len(ends) - 1; i > 0; i-- {
			table.push(ends[i])
		}
		least := table.least(ends[0])
		if least >= unreachable {
			continue
		}
		m := newMaker(context.Background(), p, l, nil)
		m.total = max(cost(least), 1)
		bound := m.boundPieces(r.from(p.maxSize, 12))
		if duration(bound) > least {
			t.Fatalf("%v, %+v, %+v: the bound is %v, the least %v", ends, l, w, duration(bound), least)
		}
		part += float64(bound) / float64(m.total)
	}
	if part < 0.3*float64(cases) {
		t.Errorf("bounds are %.1f of %d least costs", part, cases)
	}
}

// A long warp has a useful bound, above a half of its cost.
func TestBoundOfLongWarp(t *testing.T) {
	if testing.Short() {
		t.Skip("takes a second")
	}
	ends := again(205, run(1, 13), run(2, 5), run(3, 7))
	found, err := Make(context.Background(), ends, Limits{Positions: 8, Quick: true}, usual, nil)
	if err != nil {
		t.Fatal(err)
	}
	s := cheapest(found)
	if s.Proof.Bound < s.Total*7/10 || s.Proof.Bound > s.Total {
		t.Errorf("%v with a bound of %v", s.Total, s.Proof.Bound)
	}
}
