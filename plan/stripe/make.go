package stripe

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"millside/plan/measure"
)

// What the search may do for each end at the usual effort; a warp of few ends counts as if it had more,
// one of very many as if it had fewer. A look takes some ten nanoseconds.
const (
	looksPerEnd = 4_000
	fewEnds     = 200
	manyEnds    = 20_000
	// manyLooks is what a search of the whole may always take.
	manyLooks = 20_000
	// manyLabels bounds the memory: a label takes some 50 bytes and one for each position.
	manyLabels = 2_000_000
)

// Make cuts a warp into passes and set-ups. Ends is the colour of each end, from 1, as [Order.Ends]
// gives it; 1 to measure.MaxEnds ends and at most MaxColours colours.
//
// First an exact search tries to find the least there can be and to prove it (see exact.go), as long as
// that doesn't take too many looks; where packages are short another one does (see search.go). Failing
// that, the result is the best that was found among the by-hand ways, winding the whole warp from one
// good set-up, and a search that keeps only the most promising labels; and the proof gives a bound, by
// counting or from what the exact search had come to, and the gap.
//
// The error is a [*measure.FieldError] for input out of its range, or where no schedule can keep the
// limits.
func Make(ends []int, l Limits, w Weights) (*Schedule, error) {
	return makeWithin(ends, l, w, 1)
}

// makeWithin is Make with only a part of the looks: one in so many.
func makeWithin(ends []int, l Limits, w Weights, part int) (*Schedule, error) {
	p, err := prepare(ends, l, w)
	if err != nil {
		return nil, err
	}
	effort := max(l.Effort, 1)
	looks := looksPerEnd * effort * min(max(len(ends), fewEnds), manyEnds) / part
	known := p.bestByHand()
	if p.scarce || p.colours > exactColours {
		return p.makeLabelled(known, looks), nil
	}
	x := newExact(p)
	steps, least, whole := x.run(cost(known.Total), limitsOf(len(ends), effort).part(part))
	p.looked = x.looked
	if whole {
		return p.proved(steps, known), nil
	}
	bound := max(p.bound(), time.Duration(least))
	if known.Total > bound {
		known = p.searchSome(known, looks, x.sets())
	}
	known.Proof = p.proof(known.Total, bound)
	return known, nil
}

// limitsOf is how long an exact search of so many ends may take: short warps of irregular stripes are
// the hardest that it can solve, longer ones come out soon (a repeat that the paddle suits) or never.
func limitsOf(ends, effort int) exactLimits {
	base := max(240_000_000/max(60, ends), 500_000)
	return exactLimits{base: base * effort, perEnd: 1500 * effort, rough: 400_000 * effort}
}

// makeLabelled makes a schedule where packages are short.
func (p *problem) makeLabelled(known *Schedule, looks int) *Schedule {
	if steps, whole := p.searchWhole(known.Total, looks/4); whole {
		return p.proved(steps, known)
	}
	bound := p.bound()
	if known.Total > bound {
		known = p.searchSome(known, looks, nil)
	}
	if known.Total > bound {
		if steps, whole := p.searchWhole(known.Total, looks/4); whole {
			return p.proved(steps, known)
		}
	}
	known.Proof = p.proof(known.Total, bound)
	return known
}

// prepare checks the input and makes a problem that has a solution.
func prepare(ends []int, l Limits, w Weights) (*problem, error) {
	colours, err := l.check(ends)
	if err != nil {
		return nil, err
	}
	if err := w.check(); err != nil {
		return nil, err
	}
	p := newProblem(ends, colours, l, w)
	if p.rest[0][0] < never {
		return p, nil
	}
	if p.atLease {
		l.FinishAtLease = false
		if newProblem(ends, colours, l, w).rest[0][0] < never {
			return nil, &measure.FieldError{Field: "finish", Value: "at the lease", Want: "another finish, or other group sizes: no even number of passes can lay these ends"}
		}
	}
	return nil, &measure.FieldError{Field: "group sizes", Value: sizesText(l.Sizes), Want: "sizes that add up to the ends, each pass within the packages at hand"}
}

func sizesText(sizes []int) string {
	var list []string
	for _, n := range sizes {
		list = append(list, strconv.Itoa(n))
	}
	return strings.Join(list, ", ")
}

// searchWhole looks at every schedule that costs less than best. It says whether it came to an end
// without dropping any, and gives the steps of the best one, nil if there is none below best.
func (p *problem) searchWhole(best time.Duration, looks int) ([]step, bool) {
	s := &search{problem: p, whole: true, best: cost(best), width: 1 << 13, start: p.looked, limit: p.looked + looks}
	steps := s.run(nil)
	return steps, !s.dropped
}

// searchSome looks for a schedule better than the one known, from good set-ups on, keeping only as
// many labels as the number of looks allows.
func (p *problem) searchSome(known *Schedule, looks int, sets [][]uint8) *Schedule {
	seeds := append(p.seeds(looks/2), sets...)
	for _, seed := range seeds {
		if steps := p.windWith(seed); steps != nil {
			known = cheaper(known, p.build(steps))
		}
	}
	passes := 2 * p.positions * p.maxSize // the passes looked at for one label at both directions, at most
	width := max(4, min(looks/passes, manyLabels/2)/len(p.ends))
	s := &search{problem: p, best: cost(known.Total), width: width}
	if steps := s.run(seeds); steps != nil {
		known = cheaper(known, p.build(steps))
	}
	return known
}

func cheaper(a, b *Schedule) *Schedule {
	if a == nil || b != nil && b.Total < a.Total {
		return b
	}
	return a
}

// proved is the result of a search that looked at everything: its steps, or what was known before if
// nothing is below that.
func (p *problem) proved(steps []step, known *Schedule) *Schedule {
	if steps != nil {
		known = p.build(steps)
	}
	known.Proof = Proof{
		Optimal: true, Bound: known.Total, Exhaustive: true, Looked: p.looked,
		Why: "every way to lay these ends was looked at or is no better: nothing costs less under these weights and limits",
	}
	return known
}

// proof compares a total with a bound got by counting.
func (p *problem) proof(total, bound time.Duration) Proof {
	f := Proof{Bound: min(bound, total), Looked: p.looked}
	f.Gap = total - f.Bound
	f.Optimal = f.Gap == 0
	f.Why = fmt.Sprintf("the warp is too large to look at every way: this is the best that was found, and a better one could save %s at most", upTo(f.Gap))
	if f.Optimal {
		f.Why = "the fewest passes, changes and stops that these ends need by count come to the same: nothing costs less under these weights and limits"
	}
	return f
}

// upTo is a time in words, in whole minutes, rounded up: what is said of a gap must not be too little.
func upTo(d time.Duration) string {
	minutes := int((d + time.Minute - 1) / time.Minute)
	if minutes < 60 {
		return fmt.Sprintf("%d min", minutes)
	}
	return fmt.Sprintf("%d h %02d min", minutes/60, minutes%60)
}
