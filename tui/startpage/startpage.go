// Package startpage is the page on which a weaver types what is known of a warp; the one thing that is found from it
// stands beside. What it gives is a [MadeMsg].
package startpage

import (
	"context"
	"errors"

	tea "github.com/charmbracelet/bubbletea"

	"millside/plan"
	"millside/plan/athand"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/start"
	"millside/tui/asking"
	"millside/tui/keys"
	"millside/tui/look"
)

// Deps is what the page may use.
type Deps struct {
	Styles look.Styles
	Keys   keys.Map
	// AtHand is what the weaver has at hand: what there is only one of is assumed.
	AtHand athand.AtHand
}

// Messages from the page to whoever shows it.
type (
	// BackMsg leaves the page without a warp.
	BackMsg struct{}
	// MadeMsg gives the warp that was found, and what it takes because there is only one of it at hand.
	MadeMsg struct {
		Spec    plan.Spec
		Assumed []athand.Assumed
	}
)

// solvedMsg is what was found of a question, by its number.
type solvedMsg struct {
	asked  int
	result *start.Result
	err    error
}

// Model is the page.
type Model struct {
	Deps
	spec    plan.Spec
	lines   asking.Lines
	asked   int                // the number of the question last asked
	stop    context.CancelFunc // ends the search for it
	waits   bool
	result  *start.Result
	assumed []athand.Assumed // what the answer takes because there is only one of it at hand
	err     error
	problem string
	scroll  int
}

// New begins with nothing known; spec is what a new plan begins with.
func New(d Deps, spec plan.Spec) Model {
	return Model{Deps: d, spec: spec, lines: asking.New(d.Styles, d.Keys, []*field.Field{
		field.Find, field.Ends, field.Length, field.FinishedWidth, field.ReedSpan,
		field.SettOf, field.Reed, field.FinishedSett, field.FinishedLength, field.Pieces, field.YarnOf, field.OnHand,
		field.StripesOf, field.Fibre, field.ShrinkageWidth, field.DrawIn, field.ShrinkageLength, field.TakeUp,
		field.LoomWaste, field.Group})}
}

// Update takes a key, or an answer.
func (m Model) Update(msg tea.Msg) (Model, tea.Cmd) {
	switch msg := msg.(type) {
	case solvedMsg:
		if msg.asked == m.asked {
			m.waits, m.result, m.err = false, msg.result, msg.err
		}
	case tea.KeyMsg:
		return m.press(msg)
	}
	return m, nil
}

func (m Model) press(msg tea.KeyMsg) (Model, tea.Cmd) {
	k := m.Keys
	m.problem = ""
	switch {
	case keys.Matches(msg, k.Back):
		m.end()
		return m, send(BackMsg{})
	case keys.Matches(msg, k.Begin):
		return m.done()
	case keys.Matches(msg, k.Rest):
		m.scroll++
		return m, nil
	}
	next, changed := m.lines.Press(msg)
	if m.lines = next; changed {
		return m.ask()
	}
	return m, nil
}

// Again asks anew for the answer to what is typed: leaving the page ended the search for it.
func (m Model) Again() (Model, tea.Cmd) { return m.ask() }

// end ends a search that goes on.
func (m Model) end() {
	if m.stop != nil {
		m.stop()
	}
}

// ask has the answer worked out beside the keys: that of a striped warp takes a while.
func (m Model) ask() (Model, tea.Cmd) {
	m.end()
	m.asked++
	m.result, m.err, m.waits, m.scroll, m.stop = nil, nil, false, 0, nil
	known := start.Known{Spec: m.spec}
	var errs []error
	empty := true
	for f, text := range m.lines.All() {
		if r, err := m.AtHand.FindReed(text); f == field.Reed && err == nil {
			text = r.Reed.String()
		}
		errs, empty = append(errs, known.Take(f, text)), false
	}
	if m.err = errors.Join(errs...); m.err != nil || empty {
		return m, nil
	}
	known.Spec, m.assumed = m.AtHand.Assume(known.Spec, m.said)
	ctx, stop := context.WithCancel(context.Background())
	m.stop, m.waits = stop, true
	asked := m.asked
	return m, func() tea.Msg {
		r, err := start.Solve(ctx, known)
		return solvedMsg{asked, r, err}
	}
}

// said says whether something stands in the line of a field.
func (m Model) said(f *field.Field) bool { return m.lines.Said()[f] != "" }

// done gives the warp, or says what is wanted first.
func (m Model) done() (Model, tea.Cmd) {
	switch {
	case m.waits:
		m.problem = "the answer is being worked out; press again when it stands there"
	case m.result != nil:
		return m, send(MadeMsg{m.result.Spec, m.assumed})
	case m.err == nil:
		m.problem = "type what you know first"
	default:
		m.problem = "there is no answer yet: see what it wants"
		var unclear *start.UnclearError
		if errors.As(m.err, &unclear) {
			m.lines, _ = m.lines.To(unclear.Give[0].Name)
			return m, nil
		}
		for _, fe := range measure.FieldErrors(m.err) {
			if next, ok := m.lines.To(fe.Field); ok {
				m.lines = next
				return m, nil
			}
		}
	}
	return m, nil
}

func send(msg tea.Msg) tea.Cmd { return func() tea.Msg { return msg } }
