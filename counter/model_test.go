package counter

import (
	"maps"
	"slices"

	"pgregory.net/rapid"

	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/wind"
)

// drawPlan draws a small warp of one to several chains.
func drawPlan(t *rapid.T) *plan.Plan {
	spec := plan.DefaultSpec()
	spec.Ends = rapid.IntRange(1, 24).Draw(t, "ends")
	spec.Group = rapid.IntRange(1, 6).Draw(t, "group")
	if chain := rapid.IntRange(0, 12).Draw(t, "chain"); chain >= spec.Group {
		spec.ChainEnds = chain
	}
	spec.ReturnOrder = wind.ReturnOrder(rapid.IntRange(0, 1).Draw(t, "order"))
	spec.Hand = wind.Hand(rapid.IntRange(0, 1).Draw(t, "hand"))
	p, err := plan.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// drawEvent draws any event that makes some sense for a plan, legal or not, and rather often legal.
func drawEvent(t *rapid.T, m *model) Event {
	kinds := []Kind{Laid, Laid, Laid, Laid, Laid, Undone, Recounted, Paused, Resumed, Noted, LeaseSeen, Ticked, Ticked, Ticked, Unticked, Finished, "dropped",
		Incident, Incident, Withdrawn, WrongTurn, WrongTurn, Righted, TieMade, TieWaved, Redone, Redone, WorkDone, WorkUndone,
		LeaseLeft, Reopened, FootSeen}
	e := Event{
		At:    at(rapid.IntRange(-5, 100).Draw(t, "at")),
		Kind:  rapid.SampledFrom(kinds).Draw(t, "kind"),
		Chain: m.chain + rapid.SampledFrom([]int{0, 0, 0, 0, 0, 0, -1, 1}).Draw(t, "chain"),
		Text:  rapid.SampledFrom([]string{"a knot", "counted", "ü \" \\ #", "", " ", "two\nlines"}).Draw(t, "text"),
		Order: wind.ReturnOrder(rapid.IntRange(0, 2).Draw(t, "order seen")),
	}
	e.Foot = wind.FootPosition(rapid.IntRange(0, 2).Draw(t, "foot"))
	e.Pass = m.laid[m.chain-1] + rapid.SampledFrom([]int{1, 1, 0, 0, -1, 2}).Draw(t, "pass")
	e.Position = rapid.IntRange(-1, 7).Draw(t, "position")
	e.What = rapid.SampledFrom([]What{Broken, Knot, Knot, MissedOpening, WrongPeg, "mouse"}).Draw(t, "what")
	if e.HasPlace = rapid.Bool().Draw(t, "has place"); e.HasPlace {
		e.Place = measure.Yard * measure.Length(rapid.IntRange(-1, 6).Draw(t, "place")) // the warp has five
	}
	if e.Kind == Withdrawn && len(m.incidents) > 0 {
		e.Line = m.incidents[rapid.IntRange(0, len(m.incidents)-1).Draw(t, "which")].line
	} else {
		e.Line = rapid.IntRange(-1, 60).Draw(t, "line")
	}
	steps := []finishing.StepID{"no-step"}
	for _, step := range finishing.Steps(m.plan, m.plan.Chains[m.chain-1]) {
		steps = append(steps, step.ID)
	}
	e.Step = rapid.SampledFrom(steps).Draw(t, "step")
	return e
}

// drawHistory draws a list of legal events, and the model after them.
func drawHistory(t *rapid.T, p *plan.Plan) ([]Event, *model) {
	m := newModel(p)
	var events []Event
	for range rapid.IntRange(0, 60).Draw(t, "draws") {
		if e := drawEvent(t, m); m.allows(e) {
			m.take(e)
			events = append(events, e)
		}
	}
	return events, m
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
	m := &model{plan: p, laid: make([]int, len(p.Chains)), chain: 1, order: p.Spec.ReturnOrder,
		wrong: map[[2]int]int{}, tieLines: map[int][2]int{}, worked: map[[2]int]bool{}, surplus: make([]int, len(p.Chains))}
	for range p.Chains {
		m.ticked = append(m.ticked, map[finishing.StepID]bool{})
	}
	return m
}

func (m *model) total(chain int) int { return len(m.plan.Chains[chain-1].Passes) }

func (m *model) isStep(e Event) bool {
	steps := finishing.Steps(m.plan, m.plan.Chains[e.Chain-1])
	return slices.ContainsFunc(steps, func(s finishing.Step) bool { return s.ID == e.Step })
}

func (m *model) done(chain int) bool {
	return m.laid[chain-1] == m.total(chain) && len(m.ticked[chain-1]) == len(finishing.Steps(m.plan, m.plan.Chains[chain-1]))
}

func (m *model) allows(e Event) bool {
	if m.finished {
		return e.Kind == Reopened && slices.Contains([]string{"a knot", "counted", "ü \" \\ #"}, e.Text)
	}
	switch e.Kind {
	case Laid, Undone, Redone, WorkDone, WorkUndone, Ticked, Unticked, Paused, Finished:
		if m.paused {
			return false
		}
	}
	text := e.Text == "a knot" || e.Text == "counted" || e.Text == "ü \" \\ #"
	here := e.Chain == m.chain
	untouched := len(m.ticked[m.chain-1]) == 0
	now := m.laid[m.chain-1]
	switch e.Kind {
	case Laid:
		return here && e.Pass == now+1 && e.Pass <= m.total(m.chain)
	case Undone:
		return here && e.Pass == now && now > 0 && untouched
	case Recounted:
		return here && e.Pass >= 0 && e.Pass <= m.total(m.chain) && text && untouched
	case Paused, Resumed:
		return true
	case Noted:
		return e.Chain >= 1 && e.Chain <= len(m.laid) && e.Pass >= 0 && e.Pass <= m.total(e.Chain) && text
	case LeaseSeen:
		return e.Order <= 1
	case FootSeen:
		return e.Foot <= 1
	case Ticked:
		return here && now == m.total(m.chain) && m.isStep(e) && !m.ticked[m.chain-1][e.Step]
	case Unticked:
		before := e.Chain == m.chain-1 && e.Chain >= 1 && now == 0
		return (here || before) && m.ticked[e.Chain-1][e.Step]
	case Finished:
		return m.chain == len(m.laid) && m.done(m.chain)
	case Incident:
		return (text || e.Text == "") && m.allowsIncident(e)
	case Withdrawn:
		if tie, ok := m.tieLines[e.Line]; ok && tie[0] == m.chain {
			return true
		}
		if _, ok := m.turnOf(e.Line); ok {
			return m.surplus[m.chain-1] != 0
		}
		return slices.ContainsFunc(m.incidents, func(i modelIncident) bool { return i.line == e.Line && !i.withdrawn })
	case WrongTurn:
		return here && now > 0 && e.Pass == now && untouched && m.wrong[[2]int{e.Chain, e.Pass}] == 0
	case Righted:
		return m.surplus[m.chain-1] != 0 && untouched
	case TieMade, TieWaved:
		above := func(at [2]int) bool { return at[0] == e.Chain && at[1] >= e.Pass }
		if len(m.ties) > 0 && above(m.ties[len(m.ties)-1]) {
			return false
		}
		return here && e.Pass >= 1 && e.Pass <= now && untouched
	case WorkDone:
		return here && e.Pass == now+1 && e.Pass <= m.total(m.chain)
	case WorkUndone:
		return here && e.Pass == now+1 && m.worked[[2]int{e.Chain, e.Pass}]
	case LeaseLeft:
		return here && now > 0 && e.Pass == now && !m.leaseSeen
	case Redone:
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

func (m *model) allowsIncident(e Event) bool {
	if e.Chain < 1 || e.Chain > m.chain || e.Pass < 1 || e.Pass > m.total(e.Chain) || e.Pass > m.laid[e.Chain-1]+1 {
		return false
	}
	ends := m.plan.Chains[e.Chain-1].Passes[e.Pass-1].Ends()
	place := !e.HasPlace || e.Place >= 0 && e.Place <= 5*measure.Yard
	switch e.What {
	case Broken, Knot:
		return place && e.Position >= 1 && e.Position <= ends
	case MissedOpening, WrongPeg:
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
func (m *model) takeBack(e Event) {
	if e.Kind == Redone {
		last := m.backs[len(m.backs)-1]
		m.backs = m.backs[:len(m.backs)-1]
		m.laid, m.surplus, m.wrong, m.worked = last.laid, last.surplus, last.wrong, last.worked
		m.ties, m.tieLines, m.waved, m.leaseLeft = last.ties, last.tieLines, last.waved, last.leaseLeft
		m.raised(e.Chain)
		return
	}
	m.backs = append(m.backs, m.copied())
	if e.Kind == WorkUndone {
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

func (m *model) take(e Event) {
	switch e.Kind {
	case Laid, Recounted:
		down := e.Pass < m.laid[e.Chain-1]
		if m.laid[e.Chain-1] = e.Pass; down {
			m.lowered(e.Chain)
		}
		m.raised(e.Chain)
	case Undone, WorkUndone, Redone:
		m.takeBack(e)
	case Paused, Resumed:
		m.paused = e.Kind == Paused
	case LeaseSeen:
		m.leaseSeen, m.order = true, e.Order
	case FootSeen:
		m.foot = e.Foot
	case Ticked:
		m.ticked[e.Chain-1][e.Step] = true
	case Unticked:
		delete(m.ticked[e.Chain-1], e.Step)
	case Finished:
		m.finished = true
	case Incident:
		m.incidents = append(m.incidents, modelIncident{line: m.events + 2, chain: e.Chain, pass: e.Pass, position: e.Position})
	case Withdrawn:
		m.withdraw(e.Line)
	case WrongTurn:
		m.wrong[[2]int{e.Chain, e.Pass}] = m.events + 2
		m.surplus[e.Chain-1] -= 2 * m.turn(e.Pass)
	case Righted:
		m.surplus[m.chain-1] = 0
	case TieMade:
		m.ties = append(m.ties, [2]int{e.Chain, e.Pass})
		m.tieLines[m.events+2] = [2]int{e.Chain, e.Pass}
	case TieWaved:
		m.waved = append(m.waved, [2]int{e.Chain, e.Pass})
	case WorkDone:
		m.worked[[2]int{e.Chain, e.Pass}] = true
		maps.DeleteFunc(m.worked, func(at [2]int, _ bool) bool { return at[0] == e.Chain && at[1] > e.Pass })
	case LeaseLeft:
		m.leaseLeft = e.Pass
	case Reopened:
		m.finished = false
		m.reopened++
	}
	if !slices.Contains([]Kind{Undone, WorkUndone, Redone, Noted, Paused, Resumed, Incident, NewCone}, e.Kind) {
		m.backs = nil
	}
	m.events++
	if e.Kind == Noted {
		m.notes++
	}
	if e.Kind == Recounted {
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
