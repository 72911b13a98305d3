package tui

import (
	"errors"
	"fmt"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"millside/counter/journal"
	"millside/plan/measure"
)

// shelvedMsg is what lies in the folder or on a shelf after something was moved, or when it is looked at.
type shelvedMsg struct {
	listing
	shelf journal.Shelf // none: the folder itself
	to    journal.Shelf // where something was moved to
	said  string        // what was done
	wrong error         // why it wasn't
}

// on is the store of a shelf, or of the warps.
func (m home) on(shelf journal.Shelf) journal.Store {
	if shelf == "" {
		return m.store
	}
	return m.store.On(shelf)
}

// lookAt lists the folder or a shelf of it.
func (m home) lookAt(shelf journal.Shelf) tea.Cmd {
	return func() tea.Msg { return shelvedMsg{listing: listAll(m.on(shelf)), shelf: shelf} }
}

// nextShelf goes from the warps to the shelf that was used last, to the other, and round.
func (m home) nextShelf() (screen, tea.Cmd) {
	round := []journal.Shelf{"", journal.PutAway, journal.Deleted}
	if m.latest == journal.Deleted {
		round[1], round[2] = round[2], round[1]
	}
	for i, shelf := range round {
		if shelf == m.shelf {
			m.busy = true
			return m, m.lookAt(round[(i+1)%len(round)])
		}
	}
	return m, nil
}

// moving moves the chosen record or half-filled plan, and lists what is left.
func (m home) moving(to journal.Shelf, said string, record func(path string) (string, error)) (screen, tea.Cmd) {
	e, ok := m.current()
	if !ok || e.word != "" {
		m.problem = "choose a warp first"
		return m, nil
	}
	m.busy = true
	from := m.shelf
	return m, func() tea.Msg {
		var err error
		if e.half != nil {
			_, err = halves(m.on(from)).MoveTo(halves(m.on(to)), e.half.Path)
		} else {
			_, err = record(e.summary.Path)
		}
		return shelvedMsg{listing: listAll(m.on(from)), shelf: from, to: to,
			said: fmt.Sprintf("%s: %s", e.name(), said), wrong: err}
	}
}

func (m home) shelve(shelf journal.Shelf) (screen, tea.Cmd) {
	if m.shelf == shelf {
		return m.bringBack()
	}
	said := map[journal.Shelf]string{journal.PutAway: "put away", journal.Deleted: "deleted"}[shelf]
	return m.moving(shelf, said+"; tab shows it, and b there brings it back",
		func(path string) (string, error) { return m.store.Shelve(path, shelf) })
}

func (m home) bringBack() (screen, tea.Cmd) {
	if m.shelf == "" {
		return m.nextShelf()
	}
	return m.moving("", "back among the warps", m.store.BringBack)
}

// shelved shows what has come.
func (m home) shelved(msg shelvedMsg) (screen, tea.Cmd) {
	at := m.chosen
	if msg.shelf != m.shelf {
		at, m.filter, m.top = 0, "", 0
	}
	m.shelf, m.listing, m.busy, m.said, m.problem = msg.shelf, msg.listing, false, msg.said, ""
	if msg.to != "" && msg.wrong == nil {
		m.latest = msg.to
	}
	if err := errors.Join(msg.wrong, msg.err); err != nil {
		m.problem = measure.Clean(err.Error())
	}
	if msg.wrong != nil {
		m.said = ""
	}
	// What was chosen stays so, where it still is: a new name, or a new time, may have changed its place.
	is := func(e entry) bool { return e.key() == m.anchor }
	if i := slices.IndexFunc(m.entries(), is); i >= 0 && msg.to == "" {
		at = i
	}
	return m.to(at), nil
}
