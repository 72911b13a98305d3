package tui

import (
	"errors"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"millside/counter/disk"
	"millside/counter/journal"
	"millside/counter/session"
	"millside/tui/form"
	"millside/tui/look"
)

// alonePage asks whether to go on where the folder of the records knows no locks. A pass key answers nothing.
type alonePage struct {
	deps
	under screen // what Esc goes back to
	// open tries again what failed, in a store that needs no locks.
	open    func(journal.Store) tea.Cmd
	problem string
}

// noLocksMsg says that a record couldn't be locked where there are no locks, and how to open it all the same.
type noLocksMsg struct{ open func(journal.Store) tea.Cmd }

// orAlone runs an opening, and asks where there are no locks.
func orAlone(s journal.Store, open func(journal.Store) tea.Cmd) tea.Cmd {
	try := open(s)
	return func() tea.Msg {
		msg := try()
		if failed, ok := msg.(form.FailedMsg); ok && errors.Is(failed.Err, disk.ErrNoLocks) {
			return noLocksMsg{open}
		}
		return msg
	}
}

// alone is the same folder for a winder who goes on without a lock where there are none.
func alone(s journal.Store) journal.Store {
	s.FS = disk.WithoutLocks(s.FS)
	return s
}

// askAlone lays the question over the screen, with a sound.
func (a app) askAlone(msg noLocksMsg) (tea.Model, tea.Cmd) {
	a.screen = alonePage{deps: a.deps, under: a.screen, open: msg.open}
	return a, a.ring(session.CueLook)
}

// ring plays a cue, if there is somebody to hear it.
func (d deps) ring(c session.Cue) tea.Cmd {
	if d.sound == nil || d.settings.Silent(c) {
		return nil
	}
	return func() tea.Msg { d.sound(c); return nil }
}

func (alonePage) typing() bool { return false }

func (m alonePage) update(msg tea.Msg, at time.Time) (screen, tea.Cmd) {
	pressed, ok := msg.(tea.KeyMsg)
	if !ok {
		if failed, ok := msg.(form.FailedMsg); ok {
			return m.back(failed, at)
		}
		if mouse, ok := msg.(tea.MouseMsg); ok && mouse.Action == tea.MouseActionPress {
			return m.refuse()
		}
		return m, nil
	}
	switch k := m.keys; {
	case key.Matches(pressed, k.Alone):
		m.problem = ""
		return m, m.open(alone(m.store))
	case key.Matches(pressed, k.Back), key.Matches(pressed, k.Leave):
		return m.back(form.FailedMsg{Err: errors.New("not opened: the folder knows no locks")}, at)
	}
	return m.refuse()
}

// refuse is any other key: it neither counts nor answers.
func (m alonePage) refuse() (screen, tea.Cmd) {
	m.problem = "nothing is counted here: press " + m.keys.Alone.Help().Key + " or " + m.keys.Back.Help().Key
	return m, m.ring(session.CueRefused)
}

// back shows what was there before, and tells it why nothing was opened.
func (m alonePage) back(why form.FailedMsg, at time.Time) (screen, tea.Cmd) {
	return m.under.update(why, at)
}

func (m alonePage) view(w, h int) string {
	s, ask := m.styles, session.AskAlone()
	lines := []string{"", "  " + s.Warn.Render(" "+look.Fit(ask.Title, max(w-6, 0))+" ")}
	for _, text := range ask.Words {
		lines = append(lines, "")
		for _, line := range look.Wrap(text, max(w-4, 1)) {
			lines = append(lines, "  "+line)
		}
	}
	foot := []string{"", s.KeyLine(w, m.keys.Alone, m.keys.Back)}
	if m.problem != "" {
		foot[0] = "  " + s.Alarm.Render(look.Fit(m.problem, max(w-4, 0)))
	}
	return look.WithFoot(lines, foot, w, h)
}
