package tui

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"millside/counter/journal"
	"millside/plan/measure"
)

// shelvedMsg is what lies in the folder or on a shelf after a record was moved, or when it is looked at.
type shelvedMsg struct {
	shelf journal.Shelf // none: the folder itself
	list  []journal.Summary
	said  string // what was done
	err   error
}

// onShow is the store of what home shows.
func (m home) onShow() journal.Store {
	if m.shelf == "" {
		return m.store
	}
	return m.store.On(m.shelf)
}

// lookAt lists the folder or a shelf of it.
func (m home) lookAt(shelf journal.Shelf) tea.Cmd {
	m.shelf = shelf
	return func() tea.Msg {
		list, err := m.onShow().List()
		return shelvedMsg{shelf: shelf, list: list, err: err}
	}
}

// nextShelf goes from the warps to those that are put away, to those that are deleted, and round.
func (m home) nextShelf() (screen, tea.Cmd) {
	next := map[journal.Shelf]journal.Shelf{"": journal.PutAway, journal.PutAway: journal.Deleted}[m.shelf]
	m.busy = true
	return m, m.lookAt(next)
}

// moving moves the chosen record and lists what is left.
func (m home) moving(said string, move func(path string) (string, error)) (screen, tea.Cmd) {
	entries := m.entries()
	if m.chosen >= len(entries) || entries[m.chosen].summary == nil {
		m.problem = "choose a warp first"
		return m, nil
	}
	sum := entries[m.chosen].summary
	m.busy, m.problem = true, ""
	return m, func() tea.Msg {
		_, err := move(sum.Path)
		list, wrong := m.onShow().List()
		if err == nil {
			err = wrong
		}
		return shelvedMsg{shelf: m.shelf, list: list, said: fmt.Sprintf("%s: %s", sum.Name, said), err: err}
	}
}

func (m home) shelve(shelf journal.Shelf) (screen, tea.Cmd) {
	if m.shelf == shelf {
		return m.bringBack()
	}
	said := map[journal.Shelf]string{journal.PutAway: "put away", journal.Deleted: "deleted"}[shelf]
	return m.moving(said+"; tab shows it, and b there brings it back",
		func(path string) (string, error) { return m.store.Shelve(path, shelf) })
}

func (m home) bringBack() (screen, tea.Cmd) {
	if m.shelf == "" {
		return m.nextShelf()
	}
	return m.moving("back among the warps", m.store.BringBack)
}

// shelved shows what has come.
func (m home) shelved(msg shelvedMsg) (screen, tea.Cmd) {
	if msg.shelf != m.shelf {
		m.chosen, m.filter = 0, ""
	}
	m.shelf, m.list, m.busy, m.problem, m.said = msg.shelf, msg.list, false, "", msg.said
	if msg.err != nil {
		m.problem, m.said = measure.Clean(msg.err.Error()), ""
	}
	return m.by(0), nil
}
