package tui

import (
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"millside/tui/keys"
	"millside/tui/look"
)

// keyed is a screen whose keys can be listed on a page of their own.
type keyed interface {
	screen
	// AllKeys are the keys that work on it, in the words of that page.
	AllKeys() []key.Binding
	// ListKey is the key that shows them: another one while letters are text.
	ListKey() key.Binding
}

// keysPage lists the keys of the screen that it lies over; any key goes back to that.
type keysPage struct {
	deps
	under keyed
}

// listsKeys says whether a key asks for the list of keys.
func (a app) listsKeys(msg tea.KeyMsg) (keyed, bool) {
	s, ok := a.screen.(keyed)
	return s, ok && !msg.Paste && keys.Matches(msg, s.ListKey(), a.keys.AllKeysTyping)
}

func (keysPage) typing() bool { return false }

// update hands what isn't pressed on: what has been worked out belongs to the screen below.
func (m keysPage) update(msg tea.Msg, at time.Time) (screen, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.KeyMsg:
		return m.under, nil
	case tea.MouseMsg:
		if msg.Action == tea.MouseActionPress {
			return m.under, nil
		}
		return m, nil
	}
	next, cmd := m.under.update(msg, at)
	if k, ok := next.(keyed); ok {
		m.under = k
		return m, cmd
	}
	return next, cmd
}

func (m keysPage) view(w, h int) string {
	s := m.styles
	lines := []string{"", "  " + s.Title.Render("All keys of this page"), ""}
	foot := []string{"", s.KeyLine(w, m.keys.AnyBack)}
	list := append(m.under.AllKeys(), m.keys.Stop, m.keys.Suspend)
	name := func(b key.Binding, _ bool) string { return b.Help().Key }
	room := max(h-len(lines)-len(foot), 1)
	return look.WithFoot(append(lines, s.KeyTable(w, room, name, list)...), foot, w, h)
}
