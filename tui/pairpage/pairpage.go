// Package pairpage is the page of two warps that go through one raddle and one reed: what is said of both is filled in,
// and where the ends of both lie stands beside. What it gives is a [KeepMsg].
package pairpage

import (
	"errors"

	tea "github.com/charmbracelet/bubbletea"

	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/pair"
	"millside/plan/project"
	"millside/tui/asking"
	"millside/tui/keys"
	"millside/tui/look"
)

// Deps is what the page may use.
type Deps struct {
	Styles look.Styles
	Keys   keys.Map
}

// Messages from the page to whoever shows it.
type (
	// BackMsg leaves the page; nothing is kept.
	BackMsg struct{}
	// KeepMsg asks for what was said of both to be kept in their records.
	KeepMsg struct{ Said map[*field.Field]string }
)

// Model is the page.
type Model struct {
	Deps
	warps   [2]*project.Project
	lines   asking.Lines
	joint   *pair.Joint
	err     error
	problem string
	scroll  int
}

// New begins with a ground and a second, and with what was kept of both.
func New(d Deps, warps [2]*project.Project, said map[*field.Field]string) Model {
	m := Model{Deps: d, warps: warps, lines: asking.New(d.Styles, d.Keys, pair.Fields())}
	for f, text := range said {
		m.lines = m.lines.With(f, text)
	}
	return m.joined()
}

// Told shows what went wrong.
func (m Model) Told(problem string) Model {
	m.problem = problem
	return m
}

// joined works out where the ends of both lie.
func (m Model) joined() Model {
	var ask pair.Ask
	var errs []error
	for f, text := range m.lines.All() {
		errs = append(errs, ask.Take(f, text))
	}
	m.joint, m.scroll = nil, 0
	if m.err = errors.Join(errs...); m.err == nil {
		m.joint, m.err = pair.New(m.warps[pair.Ground], m.warps[pair.Second], ask)
	}
	if m.err != nil {
		m.joint = nil
	}
	return m
}

// Update takes a key.
func (m Model) Update(msg tea.Msg) (Model, tea.Cmd) {
	pressed, ok := msg.(tea.KeyMsg)
	if !ok {
		return m, nil
	}
	k := m.Keys
	m.problem = ""
	switch {
	case keys.Matches(pressed, k.Back):
		return m, send(BackMsg{})
	case keys.Matches(pressed, k.Begin):
		return m.keep()
	case keys.Matches(pressed, k.Rest), keys.Matches(pressed, k.NextPage):
		m.scroll++
		return m, nil
	case keys.Matches(pressed, k.PrevPage):
		m.scroll--
		return m, nil
	}
	next, changed := m.lines.Press(pressed)
	if m.lines = next; changed {
		m = m.joined()
	}
	return m, nil
}

// keep gives what was said, or goes to what is wrong first.
func (m Model) keep() (Model, tea.Cmd) {
	if m.err == nil {
		return m, send(KeepMsg{m.lines.Said()})
	}
	m.problem = "these can't be one cloth yet: see what it wants"
	for _, fe := range measure.FieldErrors(m.err) {
		if next, ok := m.lines.To(fe.Field); ok {
			m.lines = next
			break
		}
	}
	return m, nil
}

func send(msg tea.Msg) tea.Cmd { return func() tea.Msg { return msg } }
