package counter_test

import (
	"maps"
	"slices"

	"pgregory.net/rapid"

	"millside/counter"
	"millside/counter/internal/countertest"
	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/wind"
)

// drawHistory draws a list of legal events, and the model after them.
func drawHistory(t *rapid.T, p *plan.Plan) ([]counter.Event, *model) {
	m := newModel(p)
	var events []counter.Event
	for range rapid.IntRange(0, 60).Draw(t, "draws") {
		if e := m.draw(t); m.allows(e) {
			m.take(e)
			events = append(events, e)
		}
	}
	return events, m
}

// draw draws an event that makes some sense after what the model has.
func (m *model) draw(t *rapid.T) counter.Event {
	var marks []int
	for _, i := range m.incidents {
		marks = append(marks, i.line)
	}
	return countertest.DrawEvent(t, m.plan, m.chain, m.laid[m.chain-1], marks)
}

// model says again, in the plainest way, what a half-wound warp is and what may follow.
type model struct {
	plan                        *plan.Plan
	laid                        []int
	ticked                      []map[finishing.StepID]bool
	chain                       int
	paused, leaseSeen, finished bool
	order                       wind.ReturnOrder
	foot                        wind.FootPosition
	notes, recounts             int
	events                      int
	incidents                   []modelIncident
	wrong                       map[[2]int]int // line by chain and pass
	surplus                     []int          // of each chain
	ties                        [][2]int
	tieLines                    map[int][2]int // chain and pass by line
	waved                       [][2]int
	worked                      map[[2]int]bool
	leaseLeft                   int
	reopened                    int
	name                        string
	renames                     int
	joins                       int
	with                        string
	backs                       []model // what was taken back, the latest last; the models as they were before
}

// copied is a model that shares nothing with this one.
func (m *model) copied() model {
	c := *m
	c.laid, c.surplus = slices.Clone(m.laid), slices.Clone(m.surplus)
	c.ties, c.waved = slices.Clone(m.ties), slices.Clone(m.waved)
	c.wrong, c.tieLines, c.worked = maps.Clone(m.wrong), maps.Clone(m.tieLines), maps.Clone(m.worked)
	return c
}

type modelIncident struct {
	line, chain, pass, position int
	withdrawn, undone           bool
}

func newModel(p *plan.Plan) *model {
	m := &model{plan: p, laid: make([]int, len(p.Chains)), chain: 1, order: p.Spec.ReturnOrder, name: p.Spec.Name,
		wrong: map[[2]int]int{}, tieLines: map[int][2]int{}, worked: map[[2]int]bool{},
		surplus: make([]int, len(p.Chains))}
	for range p.Chains {
		m.ticked = append(m.ticked, map[finishing.StepID]bool{})
	}
	return m
}

func (m *model) total(chain int) int { return len(m.plan.Chains[chain-1].Passes) }

func (m *model) isStep(e counter.Event) bool {
	steps := finishing.Steps(m.plan, m.plan.Chains[e.Chain-1])
	return slices.ContainsFunc(steps, func(s finishing.Step) bool { return s.ID == e.Step })
}

func (m *model) done(chain int) bool {
	return m.laid[chain-1] == m.total(chain) &&
		len(m.ticked[chain-1]) == len(finishing.Steps(m.plan, m.plan.Chains[chain-1]))
}

func (m *model) allows(e counter.Event) bool {
	text := e.Text == "a knot" || e.Text == "counted" || e.Text == "ü \" \\ #"
	if e.Kind == counter.Renamed || e.Kind == counter.Joined {
		return text
	}
	if m.finished {
		return e.Kind == counter.Reopened && slices.Contains([]string{"a knot", "counted", "ü \" \\ #"}, e.Text)
	}
	switch e.Kind {
	case counter.Laid, counter.Undone, counter.Redone, counter.WorkDone, counter.WorkUndone, counter.Ticked,
		counter.Unticked, counter.Paused, counter.Finished:
		if m.paused {
			return false
		}
	}
	here := e.Chain == m.chain
	untouched := len(m.ticked[m.chain-1]) == 0
	now := m.laid[m.chain-1]
	switch e.Kind {
	case counter.Laid:
		return here && e.Pass == now+1 && e.Pass <= m.total(m.chain)
	case counter.Undone:
		return here && e.Pass == now && now > 0 && untouched
	case counter.Recounted:
		return here && e.Pass >= 0 && e.Pass <= m.total(m.chain) && text && untouched
	case counter.Paused, counter.Resumed:
		return true
	case counter.Noted:
		return e.Chain >= 1 && e.Chain <= len(m.laid) && e.Pass >= 0 && e.Pass <= m.total(e.Chain) && text
	case counter.LeaseSeen:
		return e.Order <= 1
	case counter.FootSeen:
		return e.Foot <= 1
	case counter.Ticked:
		return here && now == m.total(m.chain) && m.isStep(e) && !m.ticked[m.chain-1][e.Step]
	case counter.Unticked:
		before := e.Chain == m.chain-1 && e.Chain >= 1 && now == 0
		return (here || before) && m.ticked[e.Chain-1][e.Step]
	case counter.Finished:
		return m.chain == len(m.laid) && m.done(m.chain)
	case counter.Incident:
		return (text || e.Text == "") && m.allowsIncident(e)
	case counter.Withdrawn:
		if tie, ok := m.tieLines[e.Line]; ok && tie[0] == m.chain {
			return true
		}
		if _, ok := m.turnOf(e.Line); ok {
			return m.surplus[m.chain-1] != 0
		}
		return slices.ContainsFunc(m.incidents, func(i modelIncident) bool { return i.line == e.Line && !i.withdrawn })
	case counter.WrongTurn:
		return here && now > 0 && e.Pass == now && untouched && m.wrong[[2]int{e.Chain, e.Pass}] == 0
	case counter.Righted:
		return m.surplus[m.chain-1] != 0 && untouched
	case counter.TieMade, counter.TieWaved:
		above := func(at [2]int) bool { return at[0] == e.Chain && at[1] >= e.Pass }
		if len(m.ties) > 0 && above(m.ties[len(m.ties)-1]) {
			return false
		}
		return here && e.Pass >= 1 && e.Pass <= now && untouched
	case counter.WorkDone:
		return here && e.Pass == now+1 && e.Pass <= m.total(m.chain)
	case counter.WorkUndone:
		return here && e.Pass == now+1 && m.worked[[2]int{e.Chain, e.Pass}]
	case counter.LeaseLeft:
		return here && now > 0 && e.Pass == now && !m.leaseSeen
	case counter.Redone:
		return here && len(m.backs) > 0 && m.backPass() == e.Pass
	}
	return false
}

// backPass is the pass that was taken back last, or the one before which the work was.
func (m *model) backPass() int {
	last := m.backs[len(m.backs)-1]
	if len(last.worked) > len(m.worked) {
		return m.laid[m.chain-1] + 1
	}
	return last.laid[m.chain-1]
}

// turnOf is the pass after which the wrong turn of a line was made.
func (m *model) turnOf(line int) (int, bool) {
	for at, l := range m.wrong {
		if at[0] == m.chain && l == line {
			return at[1], true
		}
	}
	return 0, false
}

func (m *model) allowsIncident(e counter.Event) bool {
	if e.Chain < 1 || e.Chain > m.chain || e.Pass < 1 || e.Pass > m.total(e.Chain) || e.Pass > m.laid[e.Chain-1]+1 {
		return false
	}
	ends := m.plan.Chains[e.Chain-1].Passes[e.Pass-1].Ends()
	place := !e.HasPlace || e.Place >= 0 && e.Place <= 5*measure.Yard
	switch e.What {
	case counter.Broken, counter.Knot:
		return place && e.Position >= 1 && e.Position <= ends
	case counter.MissedOpening, counter.WrongPeg:
		return place && e.Position == 0
	}
	return false
}

// turn is the half turn that the plan has after a pass: design.md, rule 2.
func (m *model) turn(pass int) int {
	if (pass%2 == 1) == (m.plan.Spec.Hand == wind.RightHanded) {
		return -1
	}
	return 1
}

// lowered forgets what belonged to passes that are not laid any more.
func (m *model) lowered(chain int) {
	for i := range m.incidents {
		if in := &m.incidents[i]; in.chain == chain && in.pass > m.laid[chain-1] {
			in.undone = true
		}
	}
	for at := range m.wrong {
		if at[0] == chain && at[1] > m.laid[chain-1] {
			delete(m.wrong, at)
		}
	}
	above := func(at [2]int) bool { return at[0] == chain && at[1] > m.laid[chain-1] }
	m.ties, m.waved = slices.DeleteFunc(m.ties, above), slices.DeleteFunc(m.waved, above)
	maps.DeleteFunc(m.tieLines, func(_ int, at [2]int) bool { return above(at) })
	if chain == 1 && m.laid[0] < m.leaseLeft {
		m.leaseLeft = 0
	}
}

// takeBack takes back the last pass or the work after it, which can be brought back, or brings it back.
func (m *model) takeBack(e counter.Event) {
	if e.Kind == counter.Redone {
		last := m.backs[len(m.backs)-1]
		m.backs = m.backs[:len(m.backs)-1]
		m.laid, m.surplus, m.wrong, m.worked = last.laid, last.surplus, last.wrong, last.worked
		m.ties, m.tieLines, m.waved, m.leaseLeft = last.ties, last.tieLines, last.waved, last.leaseLeft
		m.raised(e.Chain)
		return
	}
	m.backs = append(m.backs, m.copied())
	if e.Kind == counter.WorkUndone {
		delete(m.worked, [2]int{e.Chain, e.Pass})
		return
	}
	if m.wrong[[2]int{e.Chain, e.Pass}] != 0 {
		m.surplus[e.Chain-1] += 2 * m.turn(e.Pass)
	}
	m.laid[e.Chain-1]--
	m.lowered(e.Chain)
}

// raised brings back the incidents of passes that are laid again.
func (m *model) raised(chain int) {
	for i := range m.incidents {
		if in := &m.incidents[i]; in.chain == chain && in.pass <= m.laid[chain-1] {
			in.undone = false
		}
	}
}

func (m *model) take(e counter.Event) {
	switch e.Kind {
	case counter.Laid, counter.Recounted:
		down := e.Pass < m.laid[e.Chain-1]
		if m.laid[e.Chain-1] = e.Pass; down {
			m.lowered(e.Chain)
		}
		m.raised(e.Chain)
	case counter.Undone, counter.WorkUndone, counter.Redone:
		m.takeBack(e)
	case counter.Paused, counter.Resumed:
		m.paused = e.Kind == counter.Paused
	case counter.LeaseSeen:
		m.leaseSeen, m.order = true, e.Order
	case counter.FootSeen:
		m.foot = e.Foot
	case counter.Ticked:
		m.ticked[e.Chain-1][e.Step] = true
	case counter.Unticked:
		delete(m.ticked[e.Chain-1], e.Step)
	case counter.Finished:
		m.finished = true
	case counter.Incident:
		m.incidents = append(m.incidents,
			modelIncident{line: m.events + 2, chain: e.Chain, pass: e.Pass, position: e.Position})
	case counter.Withdrawn:
		m.withdraw(e.Line)
	case counter.WrongTurn:
		m.wrong[[2]int{e.Chain, e.Pass}] = m.events + 2
		m.surplus[e.Chain-1] -= 2 * m.turn(e.Pass)
	case counter.Righted:
		m.surplus[m.chain-1] = 0
	case counter.TieMade:
		m.ties = append(m.ties, [2]int{e.Chain, e.Pass})
		m.tieLines[m.events+2] = [2]int{e.Chain, e.Pass}
	case counter.TieWaved:
		m.waved = append(m.waved, [2]int{e.Chain, e.Pass})
	case counter.WorkDone:
		m.worked[[2]int{e.Chain, e.Pass}] = true
		maps.DeleteFunc(m.worked, func(at [2]int, _ bool) bool { return at[0] == e.Chain && at[1] > e.Pass })
	case counter.LeaseLeft:
		m.leaseLeft = e.Pass
	case counter.Renamed:
		m.name = e.Text
		m.renames++
	case counter.Joined:
		m.with = e.Text
		m.joins++
	case counter.Reopened:
		m.finished = false
		m.reopened++
	}
	if !slices.Contains([]counter.Kind{counter.Undone, counter.WorkUndone, counter.Redone, counter.Noted,
		counter.Paused, counter.Resumed, counter.Incident, counter.NewCone, counter.Renamed, counter.Joined}, e.Kind) {
		m.backs = nil
	}
	m.events++
	if e.Kind == counter.Noted {
		m.notes++
	}
	if e.Kind == counter.Recounted {
		m.recounts++
	}
	m.chain = 1
	for m.chain < len(m.laid) && m.done(m.chain) {
		m.chain++
	}
}

// withdraw takes a mark back.
func (m *model) withdraw(line int) {
	if tie, ok := m.tieLines[line]; ok {
		delete(m.tieLines, line)
		m.ties = slices.DeleteFunc(m.ties, func(at [2]int) bool { return at == tie })
		return
	}
	if pass, ok := m.turnOf(line); ok {
		delete(m.wrong, [2]int{m.chain, pass})
		m.surplus[m.chain-1] += 2 * m.turn(pass)
		return
	}
	i := slices.IndexFunc(m.incidents, func(i modelIncident) bool { return i.line == line })
	m.incidents[i].withdrawn = true
}
