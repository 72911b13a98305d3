package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"millside/tui/mill"
	"millside/tui/startpage"
)

// screen is one screenful with its own keys. The rooms know nothing of one another: what one asks of
// another is a message to the root.
type screen interface {
	// update takes a message, and the time at which it came.
	update(msg tea.Msg, at time.Time) (screen, tea.Cmd)
	view(w, h int) string
	// typing says that letters are text for a field, and not keys.
	typing() bool
}

type winding struct{ mill.Model }

func (s winding) update(msg tea.Msg, at time.Time) (screen, tea.Cmd) {
	next, cmd := s.Update(msg, at)
	return winding{next}, cmd
}
func (s winding) view(w, h int) string { return s.View(w, h) }
func (s winding) typing() bool         { return s.Typing() }

type setting struct{ mill.SettingsPage }

func (s setting) update(msg tea.Msg, _ time.Time) (screen, tea.Cmd) {
	next, cmd := s.Update(msg)
	return setting{next}, cmd
}
func (s setting) view(w, h int) string { return s.View(w, h) }
func (setting) typing() bool           { return false }

// goKnownMsg asks for the page on which a plan starts from what is known.
type goKnownMsg struct{}

// starting is that page.
type starting struct{ startpage.Model }

func (s starting) update(msg tea.Msg, _ time.Time) (screen, tea.Cmd) {
	next, cmd := s.Update(msg)
	return starting{next}, cmd
}
func (s starting) view(w, h int) string { return s.View(w, h) }
func (starting) typing() bool           { return true }
