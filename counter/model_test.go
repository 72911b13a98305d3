package counter

import (
	"fmt"
	"slices"

	"pgregory.net/rapid"

	"millside/plan"
)

// drawPlan draws a small warp of one to several chains.
func drawPlan(t *rapid.T) *plan.Plan {
	spec := plan.DefaultSpec()
	spec.Ends = rapid.IntRange(1, 24).Draw(t, "ends")
	spec.Group = rapid.IntRange(1, 6).Draw(t, "group")
	if chain := rapid.IntRange(0, 12).Draw(t, "chain"); chain >= spec.Group {
		spec.ChainEnds = chain
	}
	spec.ReturnOrder = plan.ReturnOrder(rapid.IntRange(0, 1).Draw(t, "order"))
	p, err := plan.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// drawEvent draws any event that makes some sense for a plan, legal or not, and rather often legal.
func drawEvent(t *rapid.T, m *model) Event {
	kinds := []Kind{Laid, Laid, Laid, Laid, Laid, Undone, Recounted, Paused, Resumed, Noted, LeaseSeen, Ticked, Ticked, Ticked, Unticked, Finished, "dropped"}
	e := Event{
		At:    at(rapid.IntRange(-5, 100).Draw(t, "at")),
		Kind:  rapid.SampledFrom(kinds).Draw(t, "kind"),
		Chain: m.chain + rapid.SampledFrom([]int{0, 0, 0, 0, 0, 0, -1, 1}).Draw(t, "chain"),
		Text:  rapid.SampledFrom([]string{"a knot", "counted", "ü \" \\ #", "", " ", "two\nlines"}).Draw(t, "text"),
		Order: plan.ReturnOrder(rapid.IntRange(0, 2).Draw(t, "order seen")),
	}
	e.Pass = m.laid[m.chain-1] + rapid.SampledFrom([]int{1, 1, 0, 0, -1, 2}).Draw(t, "pass")
	steps := []plan.StepID{"no-step"}
	for _, step := range m.plan.Finishing(m.plan.Chains[m.chain-1]) {
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
	ticked                      []map[plan.StepID]bool
	chain                       int
	paused, leaseSeen, finished bool
	order                       plan.ReturnOrder
	notes, recounts             int
}

func newModel(p *plan.Plan) *model {
	m := &model{plan: p, laid: make([]int, len(p.Chains)), chain: 1, order: p.Spec.ReturnOrder}
	for range p.Chains {
		m.ticked = append(m.ticked, map[plan.StepID]bool{})
	}
	return m
}

func (m *model) total(chain int) int { return len(m.plan.Chains[chain-1].Passes) }

func (m *model) isStep(e Event) bool {
	steps := m.plan.Finishing(m.plan.Chains[e.Chain-1])
	return slices.ContainsFunc(steps, func(s plan.Step) bool { return s.ID == e.Step })
}

func (m *model) done(chain int) bool {
	return m.laid[chain-1] == m.total(chain) && len(m.ticked[chain-1]) == len(m.plan.Finishing(m.plan.Chains[chain-1]))
}

func (m *model) allows(e Event) bool {
	if m.finished || (m.paused && e.Kind != Resumed && e.Kind != Noted && e.Kind != Recounted) {
		return false
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
	case Ticked:
		return here && now == m.total(m.chain) && m.isStep(e) && !m.ticked[m.chain-1][e.Step]
	case Unticked:
		before := e.Chain == m.chain-1 && e.Chain >= 1 && now == 0
		return (here || before) && m.ticked[e.Chain-1][e.Step]
	case Finished:
		return m.chain == len(m.laid) && m.done(m.chain)
	}
	return false
}

func (m *model) take(e Event) {
	switch e.Kind {
	case Laid, Recounted:
		m.laid[e.Chain-1] = e.Pass
	case Undone:
		m.laid[e.Chain-1]--
	case Paused, Resumed:
		m.paused = e.Kind == Paused
	case LeaseSeen:
		m.leaseSeen, m.order = true, e.Order
	case Ticked:
		m.ticked[e.Chain-1][e.Step] = true
	case Unticked:
		delete(m.ticked[e.Chain-1], e.Step)
	case Finished:
		m.finished = true
	}
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

// differs says where a state is not as the model has it.
func (m *model) differs(s State) string {
	for i, c := range s.Chains {
		if c.Laid != m.laid[i] {
			return fmt.Sprintf("chain %d: %d laid, want %d", i+1, c.Laid, m.laid[i])
		}
		if len(c.Ticked) != len(m.ticked[i]) {
			return fmt.Sprintf("chain %d: %v ticked, want %v", i+1, c.Ticked, m.ticked[i])
		}
		for id := range m.ticked[i] {
			if !c.Has(id) {
				return fmt.Sprintf("chain %d: %s not ticked", i+1, id)
			}
		}
	}
	got := fmt.Sprint(s.Chain, s.Paused, s.LeaseSeen, s.Finished, s.Plan.Spec.ReturnOrder, len(s.Notes), len(s.Recounts))
	want := fmt.Sprint(m.chain, m.paused, m.leaseSeen, m.finished, m.order, m.notes, m.recounts)
	if got != want {
		return got + ", want " + want
	}
	return ""
}
