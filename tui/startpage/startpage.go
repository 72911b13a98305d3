// Package startpage is the page on which a weaver types what is known of a warp; the one thing that is found from it
// stands beside. What it gives is a [MadeMsg].
package startpage

import (
	"context"
	"errors"
	"slices"

	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"millside/plan"
	"millside/plan/athand"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/start"
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

// textLimit is the longest text of a line, in characters.
const textLimit = 400

// line is one thing that may be known. One with words is chosen, any other typed.
type line struct {
	of   *field.Field
	text textinput.Model
	word int
}

// Model is the page.
type Model struct {
	Deps
	spec    plan.Spec
	lines   []line
	at      int
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
	m := Model{Deps: d, spec: spec}
	for _, f := range []*field.Field{field.Find, field.Ends, field.Length, field.FinishedWidth, field.ReedSpan,
		field.SettOf, field.FinishedSett, field.FinishedLength, field.Pieces, field.YarnOf, field.OnHand,
		field.StripesOf, field.Fibre, field.ShrinkageWidth, field.DrawIn, field.ShrinkageLength, field.TakeUp,
		field.LoomWaste, field.Group} {
		m.lines = append(m.lines, line{of: f, text: look.NewInput(d.Styles, "", textLimit)})
	}
	m.lines[0].text.Focus()
	return m
}

// value is the text of a line as its field reads it; "" where nothing is said.
func (l line) value() string {
	if len(l.of.Words) > 0 {
		if l.word == 0 {
			return ""
		}
		return l.of.Words[l.word]
	}
	return l.text.Value()
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
	k, l := m.Keys, m.lines[m.at]
	m.problem = ""
	switch {
	case keys.Matches(msg, k.Back):
		m.end()
		return m, send(BackMsg{})
	case keys.Matches(msg, k.Begin):
		return m.done()
	case keys.Matches(msg, k.Rest):
		m.scroll++
	case keys.Matches(msg, k.PrevField):
		return m.to(m.at - 1), nil
	case keys.Matches(msg, k.NextField):
		return m.to(m.at + 1), nil
	case len(l.of.Words) > 0:
		n := len(l.of.Words)
		switch {
		case keys.Matches(msg, k.Right):
			l.word = (l.word + 1) % n
		case keys.Matches(msg, k.Left):
			l.word = (l.word + n - 1) % n
		}
		return m.changed(l)
	default:
		l.text, _ = look.TypeInto(l.text, msg)
		return m.changed(l)
	}
	return m, nil
}

// end ends a search that goes on.
func (m Model) end() {
	if m.stop != nil {
		m.stop()
	}
}

// to goes to a line.
func (m Model) to(i int) Model {
	m.lines = slices.Clone(m.lines)
	m.lines[m.at].text.Blur()
	m.at = (i + len(m.lines)) % len(m.lines)
	m.lines[m.at].text.Focus()
	return m
}

// changed takes the line that is filled in, and asks anew where it says another thing.
func (m Model) changed(l line) (Model, tea.Cmd) {
	same := l.value() == m.lines[m.at].value()
	m.lines = slices.Clone(m.lines)
	m.lines[m.at] = l
	if same {
		return m, nil
	}
	return m.ask()
}

// ask has the answer worked out beside the keys: that of a striped warp takes a while.
func (m Model) ask() (Model, tea.Cmd) {
	m.end()
	m.asked++
	m.result, m.err, m.waits, m.scroll, m.stop = nil, nil, false, 0, nil
	known := start.Known{Spec: m.spec}
	var errs []error
	empty := true
	for _, l := range m.lines {
		errs = append(errs, known.Take(l.of, l.value()))
		empty = empty && l.value() == ""
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
func (m Model) said(f *field.Field) bool {
	return slices.ContainsFunc(m.lines, func(l line) bool { return l.of == f && l.value() != "" })
}

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
			return m.to(slices.IndexFunc(m.lines, func(l line) bool { return l.of == unclear.Give[0] })), nil
		}
		for _, fe := range measure.FieldErrors(m.err) {
			if i := slices.IndexFunc(m.lines, func(l line) bool { return l.of.Name == fe.Field }); i >= 0 {
				return m.to(i), nil
			}
		}
	}
	return m, nil
}

func send(msg tea.Msg) tea.Cmd { return func() tea.Msg { return msg } }
