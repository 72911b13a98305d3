package schedule

import (
	"fmt"
	"time"
)

// Proof says how a schedule stands to the best that there can be by the same times and limits.
type Proof struct {
	// Least says that nothing costs less. Bound is then the schedule's own total.
	Least bool
	// Bound is a time below which no schedule can be, Gap the schedule's total less Bound: the most that a
	// better one could save. Both are 0 where no bound is known.
	Bound, Gap time.Duration
	// Why says it in words for the weaver, the gap in minutes, rounded up.
	Why string
}

// proof says how a schedule of that total stands.
func (m *maker) proof(total time.Duration) Proof {
	bound := min(duration(m.bound), total)
	if m.least && cost(total) == m.total {
		bound = total
	}
	f := Proof{Bound: bound, Gap: total - bound, Least: total == bound}
	minutes := (f.Gap + time.Minute - 1) / time.Minute
	switch {
	case f.Least:
		f.Why = "By these times and limits no schedule takes less: that is proved."
	default:
		f.Why = fmt.Sprintf("The best that was found; whatever else there is saves at most %d min (%s).", minutes,
			percent(f.Gap, total))
	}
	return f
}

// percent is a part of a whole in hundredths, rounded up.
func percent(part, whole time.Duration) string {
	if whole <= 0 {
		return "0 %"
	}
	return fmt.Sprintf("%d %%", (int64(part)*100+int64(whole)-1)/int64(whole))
}

// Limits of the proof.
const (
	manySteps      = 24_000_000  // entries of the bound's table of steps
	manyPrices     = 3_000_000   // packages, for each end
	boundWork      = 500_000_000 // steps of all rounds
	exactNodes     = 36_000
	exactEnds      = 150
	smallEnds      = 16
	exactPositions = 14 // with more there are too many ways to place a pass
	exactGapPart   = 8  // the exact search is tried where a better schedule could save so small a part
)

// findBound betters the bound with so many rounds.
func (m *maker) findBound(rounds int) {
	if m.least || m.best == nil || m.figure {
		return
	}
	m.bound = max(m.bound, m.simpleBound())
	if len(m.ends) > longBound {
		if rounds == m.rounds { // once, at the end
			m.bound = max(m.bound, m.boundPieces(m.pieceOfBound()))
		}
		m.bound = m.onGrid(m.bound)
		m.least = m.bound >= m.total
		return
	}
	work := len(m.ends) * m.maxSize * m.maxSize
	if work <= manySteps {
		b := m.newBounder()
		if len(b.levels)*len(m.ends) <= manyPrices {
			v := b.run(max(min(rounds, boundWork/work), 4), m.total, func() bool { return !m.over() })
			m.bound = max(m.bound, lower(v))
			m.bounder = b
		}
	}
	m.bound = m.onGrid(m.bound)
	m.least = m.bound >= m.total
}

// lower is a bound as a cost, with room for what the sums are rounded by.
func lower(v float64) cost { return max(0, cost(v*(1-1e-9))-1000) }

// onGrid rounds a bound up to the next cost that can be: all are sums of multiples of a few times.
func (m *maker) onGrid(c cost) cost {
	grid := cost(0)
	for _, x := range []cost{m.pass, m.halt, m.stint, m.thread, m.far} {
		for grid, x = x, grid; x != 0; grid, x = x, grid%x {
		}
	}
	if grid == 0 {
		return c
	}
	return (c + grid - 1) / grid * grid
}

// simpleBound counts passes, and for each colour a package that is threaded and tied on.
func (m *maker) simpleBound() cost {
	seen := make([]bool, m.colours+1)
	used := cost(0)
	for _, c := range m.ends {
		if !seen[c] {
			seen[c] = true
			used++
		}
	}
	return m.pass*cost(m.rest[0]) + used*(m.stint+m.thread)
}

// small solves a warp of few ends exactly, if it can; it says whether nothing is left to do.
func (m *maker) small(effort int) bool {
	if len(m.ends) > smallEnds || m.positions > exactPositions {
		return false
	}
	known := m.total
	if m.best == nil {
		known = never
	}
	b := m.newBounder()
	b.run(12, min(known, 1<<50), func() bool { return true })
	return m.exactly(b, known, exactNodes*effort)
}

// prove tries to find the least cost, or that it is found, where there is hope.
func (m *maker) prove(nodes int) {
	if m.least || m.bounder == nil || m.positions > exactPositions || m.over() ||
		m.total-m.bound > m.total/exactGapPart && len(m.ends) > exactEnds/2 || len(m.ends) > exactEnds {
		return
	}
	m.exactly(m.bounder, m.total, nodes)
}

// exactly runs the exact search; it says whether that came to an end.
func (m *maker) exactly(b *bounder, known cost, nodes int) bool {
	x := m.newExact(b.togo(), known)
	list, least, whole := x.run(nodes, m.over)
	if list != nil {
		m.note(list)
	}
	m.bound = max(m.bound, m.onGrid(min(least, m.total)))
	if m.least = m.best != nil && (whole || m.bound >= m.total); m.least {
		m.bound = m.total
	}
	return whole
}
