package tui

import (
	"fmt"
	"strings"

	"millside/counter/journal"
	"millside/plan/measure"
	"millside/tui/keys"
	"millside/tui/look"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// part is a part of the list at home, with a heading of its own.
type part uint8

const (
	partHalfWound part = iota
	partNotBegun
	partBegin
	partFinished
	partPutAway
	partDeleted
	parts
)

var partNames = [parts]string{"half-wound", "not begun", "begin", "finished", "put away", "deleted"}

// part is where an entry stands in the list.
func (e entry) part() part {
	switch sum := e.summary; {
	case sum == nil:
		return partBegin
	case e.shelf == journal.PutAway:
		return partPutAway
	case e.shelf == journal.Deleted:
		return partDeleted
	case sum.Finished:
		return partFinished
	case sum.Err == nil && sum.Laid == 0 && sum.Started.IsZero():
		return partNotBegun
	}
	return partHalfWound
}

// shows says whether the filter lets an entry through.
func (m home) shows(e entry) bool {
	return strings.Contains(strings.ToLower(e.summary.Name), strings.ToLower(m.filter))
}

// move goes through the list.
func (m home) move(msg tea.KeyMsg) (home, bool) {
	k := m.keys
	switch {
	case keys.Matches(msg, k.Up):
		return m.by(-1), true
	case keys.Matches(msg, k.Down):
		return m.by(1), true
	case keys.Matches(msg, k.NextPage):
		return m.by(m.page()), true
	case keys.Matches(msg, k.PrevPage):
		return m.by(-m.page()), true
	case keys.Matches(msg, k.First):
		return m.by(-m.chosen), true
	case keys.Matches(msg, k.Last):
		return m.by(len(m.entries())), true
	}
	return m, false
}

// by goes so many entries down, and stops at the ends.
func (m home) by(n int) home {
	m.chosen = max(min(m.chosen+n, len(m.entries())-1), 0)
	return m
}

// page is how many records of two lines fit on the screen; one less, so that one stays in sight.
func (m home) page() int {
	l := m.lay(m.w, m.h)
	return max((m.h-len(l.head)-len(l.foot))/2-1, 1)
}

// open does what the chosen entry is for.
func (m home) open() (screen, tea.Cmd) {
	if m.shelf != "" {
		return m.bringBack()
	}
	entries := m.entries()
	if m.chosen >= len(entries) {
		return m, nil
	}
	m.problem, m.busy, m.finding = "", true, false
	return m, entries[m.chosen].cmd
}

// find takes a key while the filter is typed: letters are text, and the arrows go through what is left.
func (m home) find(msg tea.KeyMsg) (screen, tea.Cmd) {
	switch k := m.keys; {
	case (msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace) && !msg.Alt:
		m.filter, m.chosen = m.filter+measure.Clean(string(msg.Runes)), 0
	case msg.Type == tea.KeyBackspace:
		if r := []rune(m.filter); len(r) > 0 {
			m.filter, m.chosen = string(r[:len(r)-1]), 0
		}
	case keys.Matches(msg, k.Back):
		m.filter, m.finding, m.chosen = "", false, 0
	case keys.Matches(msg, k.Open):
		if len(m.entries()) == 1 {
			return m.open()
		}
		m.finding = false
	default:
		next, _ := m.move(msg)
		return next, nil
	}
	return m, nil
}

// mouse turns the list with the wheel, chooses with a click, and opens what is clicked again.
func (m home) mouse(msg tea.MouseMsg) (screen, tea.Cmd) {
	if m.busy || msg.Action != tea.MouseActionPress {
		return m, nil
	}
	switch msg.Button {
	case tea.MouseButtonWheelUp:
		return m.by(-1), nil
	case tea.MouseButtonWheelDown:
		return m.by(1), nil
	case tea.MouseButtonLeft:
		l := m.lay(m.w, m.h)
		row := msg.Y - len(l.head) + l.from
		if row < l.from || row >= len(l.of) || msg.Y >= m.h-len(l.foot) || l.of[row] < 0 {
			return m, nil
		}
		if m.chosen == l.of[row] {
			return m.open()
		}
		m.chosen = l.of[row]
	}
	return m, nil
}

// laid is the page: what stands above the list, the list from a line on, with the entry that each line belongs to
// (-1: none), and what stands below.
type laid struct {
	head, body, foot []string
	of               []int
	from             int
}

func (m home) lay(w, h int) laid {
	s := m.styles
	l := laid{head: []string{"", "  " + s.Title.Render("MILLSIDE") +
		s.Dim.Render(look.Fit("   the count at the warping mill", max(w-12, 0))), ""}}
	if m.finding || m.filter != "" {
		text := "  names with: " + m.filter
		if m.finding {
			text += "_"
		}
		l.head[2] = look.Fit(text, w)
		l.head = append(l.head, "")
	}
	cursor := 0
	l.body, l.of, cursor = m.body(w)
	l.foot = []string{"", s.KeyLine(w, m.footKeys()...)}
	if m.problem != "" {
		l.foot = append(look.Painted(look.Wrap("! "+m.problem, w-2), s.Alarm), l.foot...)
	}
	if m.said != "" {
		l.foot = append(look.Wrap("  "+m.said, w-2), l.foot...)
	}
	room := max(h-len(l.head)-len(l.foot), 1)
	l.from = min(max(cursor-room/2, 0), max(len(l.body)-room, 0))
	return l
}

// footKeys are the keys that work.
func (m home) footKeys() []key.Binding {
	k := m.keys
	if m.finding {
		return []key.Binding{keys.As(k.Open, "done"), keys.As(k.Back, "all warps")}
	}
	line := []key.Binding{k.Open, k.Filter, k.New, k.Copy, k.Leave, k.Away, k.Delete, k.Shelves, k.Settings,
		k.Practice, k.Up}
	if m.shelf != "" {
		return []key.Binding{k.Up, keys.As(k.Open, "bring back"), k.Filter, keys.As(k.Shelves, "next list"),
			keys.As(k.Back, "warps"), k.Leave}
	}
	if m.filter != "" {
		line = append([]key.Binding{keys.As(k.Back, "all warps")}, line...)
	}
	return line
}

// body draws the list, and says which entry each line belongs to and on which line the chosen one stands.
func (m home) body(w int) (lines []string, of []int, cursor int) {
	entries := m.entries()
	var count [parts]int
	for _, e := range entries {
		count[e.part()]++
	}
	for i, e := range entries {
		if i == 0 || entries[i-1].part() != e.part() {
			if i > 0 {
				lines, of = append(lines, ""), append(of, -1)
			}
			heading := partNames[e.part()]
			if e.summary != nil {
				heading += fmt.Sprintf(" (%d)", count[e.part()])
			}
			lines, of = append(lines, "  "+m.styles.Dim.Render(heading)), append(of, -1)
		}
		if i == m.chosen {
			cursor = len(lines)
		}
		for _, l := range m.entryLines(e, i == m.chosen, w) {
			lines, of = append(lines, l), append(of, i)
		}
	}
	if len(entries) == 0 {
		text := "no warp has that in its name"
		if m.filter == "" {
			text = map[journal.Shelf]string{journal.PutAway: "put away: none",
				journal.Deleted: "deleted: none"}[m.shelf]
		}
		lines, of = []string{"    " + text}, []int{-1}
	}
	return lines, of, cursor
}
