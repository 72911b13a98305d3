package schedule

import (
	"cmp"
	"slices"
)

// Heat of the search, in minutes: what a change may cost more and still be taken now and then.
const (
	hot  = 0.6 * minute
	warm = 0.15 * minute
	cold = 0.02 * minute

	minute = 60e9
)

// make looks for the best schedule and for the bound.
func (m *maker) make(effort int) {
	m.byHand()
	if !m.figure && m.small(effort) {
		return
	}
	m.findBound(m.rounds / 4)
	if len(m.ends) <= exactEnds && m.best != nil && !m.least && !m.figure {
		// A quick look first: most small warps are proved then.
		m.search(m.problem, m.looks/16)
		m.findBound(m.rounds / 2)
		m.prove(exactNodes / 6)
	}
	if m.least {
		return
	}
	t := m.startTwin()
	m.lookAround()
	m.take(t)
	if m.best == nil {
		return
	}
	m.findBound(m.rounds)
	m.prove(exactNodes * effort)
}

// lookAround searches for all that may be looked at. Where halts are limited, they are made dear until few enough are
// left.
func (m *maker) lookAround() {
	for _, factor := range []cost{1, 4, 16, 64} {
		q := *m.problem
		q.halt = max(q.halt, cost(minute/60)*min(factor-1, 1)) * factor
		m.search(&q, m.looked+(m.looks-m.looked)/2)
		if m.best != nil || m.over() {
			break
		}
	}
	if m.best != nil {
		m.finish()
	}
}

// byHand notes the ways of a sensible weaver.
func (m *maker) byHand() {
	m.note(m.bestSideBySide())
	m.note(m.swapped(m.maxSize))
	m.note(m.rough())
}

// search looks for schedules of a problem until so many looks have been had: the repeats that there are too
// many of are taken out, and a long warp is searched piece by piece.
func (m *maker) search(q *problem, looks int) {
	r := findRepeat(q.ends, keptRepeats)
	short := q
	if r.times > 0 {
		short = q.shorten(r, keptRepeats)
		share := float64(m.looks) / float64(looksFor(len(m.ends), 1))
		looks = min(looks, m.looked+int(share*float64(shortLooks*looksFor(len(short.ends), 1))))
	}
	if len(short.ends) > manyEnds {
		m.pieces(q, looks)
		return
	}
	t := m.newTrial(short, &m.looked)
	t.repeat = r
	t.seed()
	show := func(list []pass) {
		if r.times == 0 {
			m.note(list)
			return
		}
		m.stretch(q, short, list, r)
	}
	if t.rank(); len(t.field) > 0 {
		show(t.field[0].best)
	}
	if m.findBound(m.rounds / 4); m.least {
		return
	}
	t.settle(m.looked + (looks-m.looked)/settlePart)
	t.contest(looks, show)
}

const (
	keptRepeats = 4 // repeats that stay in a shortened warp
	shortLooks  = 3 // times the looks that its ends alone would have are enough for it
)

// stretch notes schedules of the whole warp that are made of one of the shortened warp.
func (m *maker) stretch(q, short *problem, list []pass, r repeat) {
	g := short.newProgramme(m.width, &m.looked)
	g.follow(list)
	whole := q.newProgramme(m.width, &m.looked)
	for _, c := range g.cycles(list, r, keptRepeats, 3) {
		whole.stretched(g, r, keptRepeats, c)
		m.note(whole.passes())
	}
}

// finish betters the best schedule of the whole warp.
func (m *maker) finish() {
	if len(m.ends) > 4*manyEnds || m.least || m.over() {
		return
	}
	g := m.newProgramme(m.width, &m.looked)
	g.follow(m.best)
	m.note(g.passes())
	a := newAnnealer(g, 9+m.lots)
	a.repeat = findRepeat(m.ends, keptRepeats)
	a.kept = a.repeat.times
	a.run(m.looks-m.looked, hot/2, cold, func(cost) bool {
		m.note(g.passes())
		return !m.over()
	})
}

// trial is a contest of programmes for one problem.
type trial struct {
	*programme
	maker  *maker
	repeat repeat
	field  []entrant
	along  []cost // the least cost to come to each end with the set-up in hand, see settle
}

// entrant is a programme in the contest.
type entrant struct {
	thr   []uint8
	total cost
	best  []pass
	seed  uint64
}

// newTrial makes a contest with nothing in it; looked counts what it looks at.
func (m *maker) newTrial(p *problem, looked *int) *trial {
	return &trial{programme: p.newProgramme(m.width, looked), maker: m}
}

// enter takes the programme in hand into the contest.
func (t *trial) enter() {
	if list := t.passes(); list != nil {
		t.field = append(t.field, entrant{slices.Clone(t.thr), t.value(list), list, uint64(len(t.field) + 1)})
	}
}

// seed fills the field: the ways of a sensible weaver, and winding all with one set-up.
func (t *trial) seed() {
	for _, list := range [][]pass{t.bestSideBySide(), t.swapped(t.maxSize), t.rough()} {
		if list != nil {
			t.follow(list)
			t.enter()
		}
	}
	for _, set := range t.windows(mostWindows) {
		if t.maker.over() || t.maker.figure && *t.looked > t.maker.looks/2 {
			return
		}
		t.threadThroughout(set)
		t.enter()
	}
}

// mostWindows is how many set-ups are tried for the whole warp.
const mostWindows = 32

// rank puts the best entrants first; of those that cost the same only one stays.
func (t *trial) rank() {
	slices.SortStableFunc(t.field, func(a, b entrant) int { return cmp.Compare(a.total, b.total) })
	t.field = slices.CompactFunc(t.field, func(a, b entrant) bool { return a.total == b.total })
}

// contest betters the entrants, in rounds: in each the better half goes on with twice the looks.
func (t *trial) contest(looks int, better func([]pass)) {
	t.rank()
	if len(t.field) == 0 {
		return
	}
	better(t.field[0].best)
	heats := []float64{hot, hot / 2, warm}
	for round, left := range []int{6, 3, 1} {
		t.field = t.field[:min(left, len(t.field))]
		share := (looks - *t.looked) / (len(heats) - round) / len(t.field)
		for k := range t.field {
			if t.maker.over() || t.maker.least {
				return
			}
			t.better(&t.field[k], share, heats[round])
		}
		t.rank()
		for k := range t.field {
			better(t.field[k].best)
		}
	}
}

// better betters one entrant with so many looks.
func (t *trial) better(e *entrant, looks int, heat float64) {
	copy(t.thr, e.thr)
	t.rework()
	a := newAnnealer(t.programme, e.seed+t.maker.lots)
	e.seed += 100
	if t.repeat.times > 0 {
		a.repeat, a.kept = t.repeat, keptRepeats
	}
	a.run(looks, heat, heat/20, func(cost) bool {
		list := t.passes()
		if c := t.value(list); c < e.total {
			e.total, e.best = c, list
			e.thr = append(e.thr[:0], t.thr...)
			if t.repeat.times == 0 && len(t.ends) == len(t.maker.ends) {
				t.maker.note(list)
			}
		}
		return !t.maker.over()
	})
}
