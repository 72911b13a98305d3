package stripe

import (
	"math/rand/v2"
	"testing"
	"time"

	"millside/plan"
)

// exactCase draws a warp and limits that the exact search can take.
func (r lot) exactCase(most int) ([]int, Limits, Weights) {
	ends := r.ends(most, r.from(1, 5))
	l := Limits{
		Positions: r.from(1, 7), ReturnOrder: plan.ReturnOrder(r.from(0, 1)),
		FinishAtLease: r.from(0, 5) == 0, OneDirection: r.from(0, 5) == 0,
	}
	for size := 1; size <= l.Positions && r.from(0, 3) == 0; size++ {
		if r.from(0, 2) > 0 {
			l.Sizes = append(l.Sizes, size)
		}
	}
	w := DefaultWeights()
	if r.from(0, 1) == 0 {
		w = r.weights()
	}
	return ends, l, w
}

// The two searches have little in common: one goes forward and keeps every paddle by its positions, the
// other goes by what shorter warps cost and leaves open where the positions are. They agree.
func TestExactAgainstLabels(t *testing.T) {
	r := lot{rand.New(rand.NewPCG(7, 8))}
	cases, both := 4000, 0
	if testing.Short() {
		cases = 800
	}
	for range cases {
		ends, l, w := r.exactCase(14)
		p, err := prepare(ends, l, w)
		if err != nil {
			continue
		}
		known := p.bestByHand()
		labelled, whole := p.searchWhole(known.Total, 1_000_000)
		steps, least, done := newExact(p).run(cost(known.Total), exactLimits{base: 10_000_000})
		if !whole || !done {
			continue
		}
		both++
		want, got := known.Total, known.Total
		if labelled != nil {
			want = p.build(labelled).Total
		}
		if steps != nil {
			s := p.build(steps)
			if got = s.Total; cost(got) != least {
				t.Fatalf("%v, %+v, %+v: least %v, but %+v", ends, l, w, time.Duration(least), s)
			}
			if why := holds(s, ends, l, w); why != "" {
				t.Fatalf("%v, %+v, %+v: %s", ends, l, w, why)
			}
		}
		if got != want || cost(got) != least {
			t.Fatalf("%v, %+v, %+v: %v, not %v, bound %v", ends, l, w, got, want, time.Duration(least))
		}
	}
	if both < cases/2 {
		t.Errorf("only %d of %d cases were solved by both", both, cases)
	}
}

// Wherever the exact search gives up, its bound isn't above the least cost.
func TestRoughBound(t *testing.T) {
	r := lot{rand.New(rand.NewPCG(9, 10))}
	cases, rough := 1500, 0
	if testing.Short() {
		cases = 300
	}
	for range cases {
		ends, l, w := r.exactCase(25)
		p, err := prepare(ends, l, w)
		if err != nil {
			continue
		}
		known := cost(p.bestByHand().Total)
		_, least, done := newExact(p).run(known, exactLimits{base: 4_000_000})
		if !done {
			continue
		}
		few := exactLimits{base: r.from(0, 20_000), rough: r.from(0, 40_000)}
		_, bound, exact := newExact(p).run(known, few)
		if bound > least || exact && bound < least {
			t.Fatalf("%v, %+v, %+v, %+v: bound %v of %v", ends, l, w, few, time.Duration(bound), time.Duration(least))
		}
		if !exact && bound > 0 {
			rough++
		}
	}
	if rough < cases/10 {
		t.Errorf("only %d of %d cases were bounded roughly", rough, cases)
	}
}

func TestUpTo(t *testing.T) {
	for d, want := range map[time.Duration]string{
		1: "1 min", time.Minute: "1 min", time.Minute + 1: "2 min", time.Hour - 1: "1 h 00 min", 65 * time.Minute: "1 h 05 min",
	} {
		if got := upTo(d); got != want {
			t.Errorf("%v is %q, not %q", d, got, want)
		}
	}
}
