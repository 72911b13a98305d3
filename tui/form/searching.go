package form

import (
	"context"
	"slices"

	"millside/plan"
	"millside/plan/measure"
	"millside/plan/stripe"

	tea "github.com/charmbracelet/bubbletea"
)

// stripesMsg brings a schedule, or why there is none.
type stripesMsg struct {
	run  int
	key  stripeKey
	made *stripe.Plan
	err  error
	// better looks for a better one; nil where this is the last.
	better tea.Cmd
}

// schedules are the last ones that were worked out to the end, so that going back to a way to wind, or undoing what was
// typed, shows its schedule at once.
type schedules []stripesMsg

// mostKnown is how many are kept: one for each way to wind, and as many again.
const mostKnown = 12

// with is the list with one more, the last one first.
func (list schedules) with(msg stripesMsg) schedules {
	next := append(schedules{msg}, slices.DeleteFunc(slices.Clone(list), func(s stripesMsg) bool {
		return s.key == msg.key
	})...)
	return next[:min(len(next), mostKnown)]
}

// of is the schedule for a key; false where it isn't known.
func (list schedules) of(key stripeKey) (stripesMsg, bool) {
	i := slices.IndexFunc(list, func(s stripesMsg) bool { return s.key == key })
	if i < 0 {
		return stripesMsg{}, false
	}
	return list[i], true
}

// waits says whether the schedule of the stripes is still to come; for a paddle that can't be there is none.
func (m Model) waits() bool {
	return !plain(m.spec) && m.problems["stripes"] == "" && m.made.key != m.key() &&
		m.spec.Positions >= 1 && m.spec.Positions <= measure.MaxPositions
}

// schedule is the command that works out the schedule, if one is wanted that is neither there nor on its way: a
// good one at once, then the best that is found. What was being worked out for an earlier text is given up:
// nobody waits for it any more.
func (m Model) schedule() (Model, tea.Cmd) {
	key := m.key()
	if m.beside.key != key {
		m = m.leaveBesides()
	}
	if m.asked == key {
		return m, nil
	}
	m = m.giveUp()
	if !m.waits() {
		return m, nil
	}
	if msg, ok := m.known.of(key); ok {
		m.made = msg
		return m.compute().lookBeside()
	}
	ctx, stop := context.WithCancel(context.Background())
	m.run++
	m.asked, m.stop = key, stop
	run, spec, colours := m.run, m.spec, m.order.Colours
	search := func(quick bool) (*stripe.Plan, error) {
		ask, err := stripe.AskOf(spec, colours)
		if err != nil {
			return nil, err
		}
		ask.Limits.Quick = quick
		return m.Search(ctx, spec, ask)
	}
	best := func() tea.Msg {
		defer stop()
		made, err := search(false)
		return stripesMsg{run: run, key: key, made: made, err: err}
	}
	return m, func() tea.Msg {
		made, err := search(true)
		if err != nil {
			return best()
		}
		return stripesMsg{run: run, key: key, made: made, better: best}
	}
}

// Search cuts the stripes of a spec into passes, until ctx ends.
func Search(ctx context.Context, spec plan.Spec, ask stripe.Ask) (*stripe.Plan, error) {
	return stripe.ForPlan(ctx, spec, ask, nil)
}

// giveUp ends the work on a schedule that nobody waits for.
func (m Model) giveUp() Model {
	if m.stop != nil {
		m.stop()
	}
	m.asked, m.stop = stripeKey{}, nil
	return m
}

// scheduled takes a schedule that has come. One that was worked out for another text, or given up halfway, is let
// go: what is shown is always that of the text as it stands.
func (m Model) scheduled(msg stripesMsg) (Model, tea.Cmd) {
	if msg.run != m.run || m.asked != msg.key {
		return m.schedule()
	}
	m.made = msg
	if msg.better != nil {
		return m.compute(), msg.better
	}
	m.asked, m.stop, m.known = stripeKey{}, nil, m.known.with(msg)
	m, cmd := m.compute().schedule()
	m, more := m.lookBeside()
	return m, tea.Batch(cmd, more)
}
