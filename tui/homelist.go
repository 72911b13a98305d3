package tui

import (
	"slices"
	"strings"

	"millside/counter/journal"
	"millside/plan/measure"
	"millside/tui/keys"

	tea "github.com/charmbracelet/bubbletea"
)

// part is a part of the list at home, with a heading of its own.
type part uint8

const (
	partHalfWound part = iota
	partWound
	partNotBegun
	partHalfFilled
	partBegin
	partFinished
	partPutAway
	partDeleted
	parts
)

var partNames = [parts]string{"half-wound", "wound, not finished", "not begun", "half-filled plans", "begin",
	"finished", "put away", "deleted"}

// part is where an entry stands in the list.
func (e entry) part() part {
	switch sum := e.summary; {
	case e.shelf == journal.PutAway:
		return partPutAway
	case e.shelf == journal.Deleted:
		return partDeleted
	case e.half != nil:
		return partHalfFilled
	case sum == nil:
		return partBegin
	case sum.Finished:
		return partFinished
	case sum.Err == nil && !sum.Begun:
		return partNotBegun
	case sum.Err == nil && sum.Wound:
		return partWound
	}
	return partHalfWound
}

// name is what an entry is called, key what tells it from all others.
func (e entry) name() string {
	switch {
	case e.summary != nil:
		return e.summary.Name
	case e.half != nil && e.half.Err == nil && e.half.Name() == "":
		return "no name yet"
	case e.half != nil && e.half.Err == nil:
		return e.half.Name()
	case e.half != nil:
		return "a plan that can't be read"
	}
	return e.word
}

func (e entry) key() string {
	switch {
	case e.summary != nil:
		return e.summary.Path
	case e.half != nil:
		return e.half.Path
	}
	return "begin: " + e.word
}

// shows says whether the filter lets an entry through.
func (m home) shows(e entry) bool {
	return strings.Contains(strings.ToLower(e.name()), strings.ToLower(m.filter))
}

// move goes through the list.
func (m home) move(msg tea.KeyMsg) (home, bool) {
	k := m.keys
	switch {
	case keys.Matches(msg, k.Up):
		return m.to(m.chosen - 1), true
	case keys.Matches(msg, k.Down):
		return m.to(m.chosen + 1), true
	case keys.Matches(msg, k.NextPage):
		return m.page(1), true
	case keys.Matches(msg, k.PrevPage):
		return m.page(-1), true
	case keys.Matches(msg, k.First):
		return m.to(0), true
	case keys.Matches(msg, k.Last):
		return m.to(m.lastWarp()), true
	}
	return m, false
}

// to chooses an entry by its place, the nearest one if there are not so many.
func (m home) to(i int) home {
	entries := m.entries()
	m.chosen = max(min(i, len(entries)-1), 0)
	if len(entries) > 0 {
		m.anchor = entries[m.chosen].key()
	}
	return m.scrolled()
}

// scrolled turns the list so far that the chosen entry is seen, and no further.
func (m home) scrolled() home {
	if m.h == 0 { // not shown yet
		return m
	}
	m.top = m.lay(m.w, m.h).from
	return m
}

// lastWarp is the place of the last record or half-filled plan, or of the last entry where there is none.
func (m home) lastWarp() int {
	entries := m.entries()
	for i, e := range slices.Backward(entries) {
		if e.word == "" {
			return i
		}
	}
	return len(entries) - 1
}

// page goes so many screenfuls of the list down, so that what stood last is still seen.
func (m home) page(by int) home {
	l := m.lay(m.w, m.h)
	rows := max(m.h-len(l.head)-len(l.foot)-2, 1)
	first := slices.Index(l.of, m.chosen)
	row := min(max(first+by*rows, 0), len(l.of)-1)
	for row > 0 && row < len(l.of)-1 && l.of[row] < 0 {
		row += by
	}
	next := m.chosen + by
	if row >= 0 && l.of[row] >= 0 && (l.of[row]-next)*by > 0 {
		next = l.of[row]
	}
	if row == 0 {
		next = 0
	}
	return m.to(next)
}

// filtered shows what a filter lets through. The warp that was chosen stays so; while the filter hides it, the first
// one that is shown is.
func (m home) filtered(filter string) home {
	m.filter = filter
	return m.choose(m.anchor)
}

// choose chooses the entry with a key, or the first, and keeps in mind which one is wanted.
func (m home) choose(key string) home {
	m.anchor = key
	m.chosen = max(slices.IndexFunc(m.entries(), func(e entry) bool { return e.key() == key }), 0)
	return m.scrolled()
}

// find takes a key while the filter is typed: letters are text, and the arrows go through what is left.
func (m home) find(msg tea.KeyMsg) (screen, tea.Cmd) {
	switch k := m.keys; {
	case (msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace) && !msg.Alt:
		return m.filtered(m.filter + measure.Clean(string(msg.Runes))), nil
	case msg.Type == tea.KeyBackspace:
		if r := []rune(m.filter); len(r) > 0 {
			return m.filtered(string(r[:len(r)-1])), nil
		}
	case keys.Matches(msg, k.Back):
		m.finding = false
		return m.filtered(""), nil
	case keys.Matches(msg, k.Open):
		if len(m.entries()) == 1 {
			return m.open()
		}
		m.finding = false
		return m.to(m.chosen), nil
	default:
		next, _ := m.move(msg)
		return next, nil
	}
	return m, nil
}

// mouse turns the list with the wheel, chooses with a click, and opens what is clicked again.
func (m home) mouse(msg tea.MouseMsg) (screen, tea.Cmd) {
	if m.busy || m.naming != nil || msg.Action != tea.MouseActionPress {
		return m, nil
	}
	switch msg.Button {
	case tea.MouseButtonWheelUp, tea.MouseButtonWheelDown:
		m.clicked, m.problem, m.said = "", "", ""
		if msg.Button == tea.MouseButtonWheelUp {
			return m.to(m.chosen - 1), nil
		}
		return m.to(m.chosen + 1), nil
	case tea.MouseButtonLeft:
		l := m.lay(m.w, m.h)
		row := msg.Y - len(l.head)
		if row < 0 || row >= len(l.ofShown) || msg.Y >= m.h-len(l.foot) || l.ofShown[row] < 0 {
			return m, nil
		}
		m.problem, m.said = "", ""
		m = m.to(l.ofShown[row])
		if m.clicked == m.anchor {
			m.clicked = ""
			return m.open()
		}
		m.clicked = m.anchor
	}
	return m, nil
}
