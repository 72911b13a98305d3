package schedule

import (
	"context"
	"math"
	"slices"
	"strconv"
	"strings"

	"millside/plan/field"
	"millside/plan/measure"
)

// How much is looked at, at the usual effort: a size of pass for one label is a look, some twenty nanoseconds.
const (
	usualLooks = 14_400_000
	quickPart  = 4     // of the looks, where Quick is asked for
	figurePart = 40    // of the looks, where Figure is asked for
	looksOfEnd = 2_500 // for each end of a long warp, in all
	manyEnds   = 1_500 // ends of a warp that is searched in one piece
	fewEnds    = 100   // ends of a warp that is worth a share of the usual looks only
	usualWidth = 6     // labels kept for an end: more of them make the search better less than more changes do
)

// Found is what [Make] found.
type Found struct {
	// Taken is the schedule to wind: of those within a few hundredths of the cheapest one with fewer kinds of
	// pass, or else the cheapest.
	Taken *Schedule
	// Cheapest is the cheapest one where it isn't Taken; else nil.
	Cheapest *Schedule
}

// Make cuts a warp into passes and set-ups. Ends is the colour of each end, from 1; 1 to measure.MaxEnds ends and
// at most MaxColours colours. Progress, unless it is nil, is told each better schedule as it is found, in the
// goroutine of the caller; the first comes at once. Where ctx ends first, the result is the best found so far,
// with a bound that may be lower than it would have been.
//
// The error is a [*measure.FieldError] for input out of its range, or where no schedule was found that keeps the
// limits.
func Make(ctx context.Context, ends []int, l Limits, t Times, progress func(*Schedule)) (Found, error) {
	p, err := prepare(ends, l, t)
	if err != nil {
		return Found{}, err
	}
	return newMaker(ctx, p, l, progress).run(l)
}

// newMaker makes a maker for a problem of those limits.
func newMaker(ctx context.Context, p *problem, l Limits, progress func(*Schedule)) *maker {
	m := &maker{problem: p, ctx: ctx, progress: progress, leastHalts: math.MaxInt, width: usualWidth}
	m.looks = looksFor(len(p.ends), max(l.Effort, 1))
	if l.Quick {
		m.looks /= quickPart
	}
	m.rounds = 250 * max(l.Effort, 1)
	m.paired = !l.Quick && !l.Figure && len(p.ends) >= fewEnds && len(p.ends) <= manyEnds
	if l.Figure {
		m.looks, m.figure = looksFor(len(p.ends), 1)/figurePart, true
	}
	return m
}

// run makes the schedule.
func (m *maker) run(l Limits) (Found, error) {
	m.make(max(l.Effort, 1))
	if m.best == nil {
		return Found{}, m.refuse()
	}
	return m.found(), nil
}

// looksFor is how much is looked at for a warp of so many ends.
func looksFor(ends, effort int) int {
	return max(usualLooks*min(ends, fewEnds)/fewEnds, ends*looksOfEnd) * effort
}

// prepare checks the input and makes a problem that has a solution.
func prepare(ends []int, l Limits, t Times) (*problem, error) {
	colours, err := l.check(ends)
	if err != nil {
		return nil, err
	}
	if err := t.check(); err != nil {
		return nil, err
	}
	p := newProblem(ends, colours, l, t)
	even, odd := p.parities()
	switch {
	case even || odd && !p.atLease:
		return p, nil
	case odd:
		return nil, &measure.FieldError{Field: field.FinishAtLease.Name, Value: "at the lease",
			Want: "another finish, or other group sizes: no even number of passes can lay these ends"}
	default:
		return nil, &measure.FieldError{Field: field.GroupSizes.Name, Value: sizesText(l.Sizes),
			Want: "sizes that add up to the ends, each pass within the packages at hand"}
	}
}

func sizesText(sizes []int) string {
	var list []string
	for _, n := range sizes {
		list = append(list, strconv.Itoa(n))
	}
	return strings.Join(list, ", ")
}

// maker makes a schedule.
type maker struct {
	*problem
	ctx      context.Context
	progress func(*Schedule)
	lots     uint64 // which lots the search draws
	width    int    // labels that it keeps for an end
	paired   bool   // a twin searches beside
	looked   int    // so far
	looks    int    // that may be looked at
	rounds   int    // of the bound
	best     []pass
	total    cost       // of the best
	front    []followed // the best for each number of kinds
	bound    cost       // that no schedule is below
	least    bool       // nothing is cheaper than the best
	figure   bool       // a quick figure is wanted: no bound, no proof
	bounder  *bounder   // with the prices of the bound; nil if there are none
	// The fewest halts of any schedule met, where they are limited.
	leastHalts int
}

// followed is a schedule with its cost and its number of kinds of pass.
type followed struct {
	passes []pass
	total  cost
	kinds  int
}

// over says whether the search was broken off.
func (m *maker) over() bool { return m.ctx.Err() != nil }

// note takes a list of passes into account.
func (m *maker) note(list []pass) {
	if list == nil || m.atLease && len(list)%2 == 1 {
		return
	}
	sum := m.ledger(list, false).sum
	m.leastHalts = min(m.leastHalts, sum.Halts)
	if m.mostHalts >= 0 && sum.Halts > m.mostHalts {
		return
	}
	total := m.costOf(sum)
	if m.best != nil && total > m.total+m.total/followLoss {
		return
	}
	f := followed{list, total, m.kindsOf(list)}
	for _, g := range m.front {
		if g.total <= f.total && g.kinds <= f.kinds {
			return
		}
	}
	m.front = slices.DeleteFunc(m.front, func(g followed) bool { return g.total >= f.total && g.kinds >= f.kinds })
	m.front = append(m.front, f)
	if m.best == nil || total < m.total {
		m.best, m.total = list, total
		m.least = total <= m.bound
		if m.progress != nil {
			m.progress(m.build(list))
		}
	}
}

// kindsOf is how many kinds of pass there are.
func (p *problem) kindsOf(list []pass) int {
	type kind struct {
		carried uint64
		colours string
	}
	seen := map[kind]bool{}
	var word [measure.MaxPositions]byte
	for i, ps := range list {
		for k := range ps.size {
			word[k] = p.letter(ps.first, ps.size, k, i%2)
		}
		seen[kind{ps.carried, string(word[:ps.size])}] = true
	}
	return len(seen)
}

// A schedule with fewer kinds of pass is taken where it costs at most a followLoss-th part more and has at
// least a followGain-th part fewer kinds.
const (
	followLoss = 50
	followGain = 8
)

// found chooses what is taken.
func (m *maker) found() Found {
	cheapest := m.build(m.best)
	proof := m.proof(cheapest.Total)
	cheapest.Proof = proof
	taken := followed{m.best, m.total, cheapest.Kinds}
	for _, f := range m.front {
		if f.total <= m.total+m.total/followLoss && f.kinds+
			(cheapest.Kinds+followGain-1)/followGain <= cheapest.Kinds && f.kinds < taken.kinds {
			taken = f
		}
	}
	if taken.total == m.total && taken.kinds == cheapest.Kinds {
		return Found{Taken: cheapest}
	}
	s := m.build(taken.passes)
	s.Proof = m.proof(s.Total)
	return Found{Taken: s, Cheapest: cheapest}
}

// refuse says why there is no schedule.
func (m *maker) refuse() error {
	if m.mostHalts >= 0 && m.leastHalts < math.MaxInt {
		return &measure.FieldError{Field: field.MostHalts.Name, Value: strconv.Itoa(m.mostHalts), Want: "at least " +
			strconv.Itoa(m.leastHalts) + ", the fewest that were found"}
	}
	return &measure.FieldError{Field: field.GroupSizes.Name, Value: m.sizes(),
		Want: "other sizes, more packages or another finish: no schedule was found"}
}

func (p *problem) sizes() string {
	var list []int
	for size, ok := range p.allowed {
		if ok {
			list = append(list, size)
		}
	}
	return sizesText(list)
}
