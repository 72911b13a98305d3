package schedule

import (
	"cmp"
	"slices"
)

// repeat is a stretch of the warp that repeats: ends[i] is ends[i+period] from start on, for times periods
// and perhaps a part of one.
type repeat struct {
	start, period, times int
}

// mostPeriod is the longest repeat that is looked for, in ends.
const mostPeriod = 1000

// findRepeat looks for the stretch that leaves the fewest ends if all but kept of its repeats are taken out.
func findRepeat(ends []uint8, kept int) (best repeat) {
	n, saves := len(ends), 0
	for period := 1; period <= min(mostPeriod, n/(kept+1)); period++ {
		same := 0
		for i := period; i <= n; i++ {
			if i < n && ends[i] == ends[i-period] {
				same++
				continue
			}
			if r := (repeat{i - same - period, period, same/period + 1}); (r.times-kept)*period > saves &&
				r.times > kept {
				best, saves = r, (r.times-kept)*period
			}
			same = 0
		}
	}
	return best
}

// shorten takes all but some of the repeats out of the warp. What is done once, at the start and at the end,
// counts for less beside them, as it does in the whole warp.
func (p *problem) shorten(r repeat, kept int) *problem {
	q := *p
	cut := r.start + kept*r.period
	q.ends = slices.Concat(p.ends[:cut], p.ends[r.start+r.times*r.period:])
	q.findRest()
	times := cost(len(p.ends) / len(q.ends))
	q.first, q.far = p.first/times, p.far/times
	return &q
}

// cycle is a part of a shortened schedule that can be wound again and again: it begins and ends between two
// passes, and is some repeats long.
type cycle struct {
	from, to int // ends
	rate     float64
}

// cycles finds where passes come round to the same: the same positions carried and threaded after some
// repeats. The cheapest for each end come first, at most most of them.
func (g *programme) cycles(list []pass, r repeat, kept, most int) []cycle {
	type place struct {
		end    int
		set    uint64
		number int
		cost   cost
	}
	var seen []place
	var found []cycle
	p := g.problem
	costs := p.prefixCosts(list)
	for k := 1; k < len(list); k++ {
		end := list[k].first
		if end < r.start || end > r.start+kept*r.period {
			continue
		}
		now := place{end, list[k-1].carried, k, costs[k]}
		for _, was := range seen {
			if (end-was.end)%r.period != 0 || was.set != now.set || g.dirs == 2 && (k-was.number)%2 == 1 {
				continue
			}
			if string(g.row(end)) != string(g.row(was.end)) {
				continue
			}
			found = append(found, cycle{was.end, end, float64(now.cost-was.cost) / float64(end-was.end)})
		}
		seen = append(seen, now)
	}
	slices.SortStableFunc(found, func(a, b cycle) int { return cmp.Compare(a.rate, b.rate) })
	if len(found) == 0 { // where nothing comes round, the last repeats but one
		middle := r.start + kept*r.period/2
		found = append(found, cycle{from: middle - r.period, to: middle}, cycle{from: middle - 2*r.period, to: middle})
		found = slices.DeleteFunc(found, func(c cycle) bool { return c.from < 0 })
	}
	return found[:min(most, len(found))]
}

// prefixCosts is what has been done before each pass, and after the last one.
func (p *problem) prefixCosts(list []pass) []cost {
	costs := make([]cost, len(list)+1)
	h := hands{problem: p, set: make([]uint8, p.positions)}
	if p.anyScarce {
		h.findUses(list)
	}
	before := uint64(0)
	for i, ps := range list {
		changed := h.take(ps, i)
		c := p.pass + p.stint*cost(count(ps.carried&^(before&^changed))) + p.thread*cost(count(changed))
		if i > 0 && (before != ps.carried || changed != 0) {
			c += p.halt
		}
		before = ps.carried
		costs[i+1] = costs[i] + c
	}
	return costs
}

// stretched threads the programme of a whole warp as that of the shortened one does, and the repeats that
// were taken out as one of its cycles.
func (g *programme) stretched(short *programme, r repeat, kept int, c cycle) {
	gone := (r.times - kept) * r.period
	for i := range g.ends {
		from := i
		switch {
		case i >= c.to+gone:
			from = i - gone
		case i >= c.to:
			from = c.from + (i-c.from)%(c.to-c.from)
		}
		copy(g.row(i), short.row(from))
	}
	g.rework()
}
