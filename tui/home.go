package tui

import (
	"errors"
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"millside/counter/halfplan"
	"millside/counter/journal"
	"millside/plan"
	"millside/plan/measure"
	"millside/tui/form"
	"millside/tui/keys"
	"millside/tui/mill"
)

// home lists the records and the half-filled plans, each part of them apart, and what can be begun.
type home struct {
	deps
	listing
	at      time.Time // when the last message came
	chosen  int       // the entry that is chosen
	anchor  string    // the one that the weaver chose, also while the filter hides it
	clicked string    // the one that was clicked last, and nothing else since
	top     int       // the line of the list that stands at the top
	problem string
	said    string        // what was done last
	shelf   journal.Shelf // the shelf that is shown; none: the warps
	latest  journal.Shelf // the shelf to which something was moved last
	busy    bool          // something is being opened
	filter  string
	finding bool             // what is typed goes into the filter
	ground  *journal.Summary // the ground, while the second that goes with it is chosen
	naming  *textinput.Model // the new name of the chosen warp, or that of a copy, while it is typed
	copying bool             // it is that of a copy
	w, h    int              // of the terminal
}

// listing is what lies in a folder of records, or on a shelf of it.
type listing struct {
	list   []journal.Summary
	halves []halfplan.Plan
	err    error // why that isn't all
}

// listAll lists a folder or a shelf. What can't be listed keeps nothing else from being shown.
func listAll(s journal.Store) listing {
	list, err := s.List()
	return withHalves(s, list, err)
}

// withHalves adds the half-filled plans to the records.
func withHalves(s journal.Store, list []journal.Summary, err error) listing {
	plans, wrong := halves(s).List()
	return listing{list, plans, errors.Join(err, wrong)}
}

// entry is one line that can be chosen.
type entry struct {
	summary *journal.Summary // a record, or
	half    *halfplan.Plan   // a half-filled plan, or
	word    string           // something to begin
	cmd     tea.Cmd
	shelf   journal.Shelf
}

func newHome(d deps, l listing, now time.Time) home {
	m := home{deps: d, listing: l, at: now}
	if l.err != nil {
		m.problem = measure.Clean(l.err.Error())
	}
	return m.to(0)
}

// told shows one more thing that is wrong, until a key is pressed.
func (m home) told(problem string) home {
	m.problem = strings.TrimPrefix(m.problem+"; "+measure.Clean(problem), "; ")
	return m.scrolled()
}

func (m home) typing() bool { return m.finding || m.naming != nil }

// entries gives the lines in their order; where a filter is set, the records and plans whose names hold it.
func (m home) entries() []entry {
	var byPart [parts][]entry
	add := func(e entry) {
		if m.shows(e) {
			byPart[e.part()] = append(byPart[e.part()], e)
		}
	}
	for i := range m.list {
		add(entry{summary: &m.list[i], cmd: send(openMsg{m.list[i].Path}), shelf: m.shelf})
	}
	for i := range m.halves {
		add(entry{half: &m.halves[i], cmd: send(goOnMsg{m.halves[i]}), shelf: m.shelf})
	}
	if m.filter == "" && m.shelf == "" {
		byPart[partBegin] = []entry{
			{word: "new warp", cmd: send(goFormMsg{spec: plan.DefaultSpec()})},
			{word: "practice warp", cmd: send(form.BeginMsg{Spec: m.practice})},
			{word: "warp from a draft", cmd: send(goDraftMsg{})},
			{word: "warp from what I know", cmd: send(goKnownMsg{})},
		}
	}
	var all []entry
	for _, part := range byPart {
		all = append(all, part...)
	}
	return all
}

// current is the entry that is chosen; false where there is none.
func (m home) current() (entry, bool) {
	entries := m.entries()
	if m.chosen >= len(entries) {
		return entry{}, false
	}
	return entries[m.chosen], true
}

func (m home) update(msg tea.Msg, at time.Time) (screen, tea.Cmd) {
	m.at = at
	switch msg := msg.(type) {
	case form.FailedMsg:
		m.problem, m.busy = measure.Clean(msg.Err.Error()), false
		return m, nil
	case shelvedMsg:
		return m.shelved(msg)
	case tea.MouseMsg:
		return m.mouse(msg)
	case tea.KeyMsg:
		if m.busy {
			return m, nil
		}
		m.problem, m.said, m.clicked = "", "", ""
		switch {
		case m.naming != nil:
			return m.nameIt(msg)
		case m.finding:
			return m.find(msg)
		}
		return m.act(msg)
	}
	return m, nil
}

func (m home) act(msg tea.KeyMsg) (screen, tea.Cmd) {
	k := m.keys
	if next, ok := m.move(msg); ok {
		return next, nil
	}
	switch {
	case keys.Matches(msg, k.Together):
		return m.together()
	case m.ground != nil && keys.Matches(msg, k.Back):
		m.ground = nil
		return m.scrolled(), nil
	case keys.Matches(msg, k.Open):
		return m.open()
	case keys.Matches(msg, k.Filter):
		m.finding = true
	case keys.Matches(msg, k.Back):
		filtered := m.filter != ""
		m = m.filtered("")
		if m.shelf != "" && !filtered {
			return m, m.lookAt("")
		}
	case keys.Matches(msg, k.Shelves):
		return m.nextShelf()
	case keys.Matches(msg, k.Away):
		return m.shelve(journal.PutAway)
	case keys.Matches(msg, k.Delete):
		return m.shelve(journal.Deleted)
	case keys.Matches(msg, k.BringBack):
		return m.bringBack()
	case keys.Matches(msg, k.Copy):
		return m.copyPlan(), nil
	case keys.Matches(msg, k.Rename):
		return m.rename(), nil
	case keys.Matches(msg, k.Edit):
		return m.edit()
	case keys.Matches(msg, k.New):
		return m, send(goFormMsg{spec: plan.DefaultSpec()})
	case keys.Matches(msg, k.Draft):
		return m, send(goDraftMsg{})
	case keys.Matches(msg, k.Known):
		return m, send(goKnownMsg{})
	case keys.Matches(msg, k.Practice):
		m.busy = true
		return m, send(form.BeginMsg{Spec: m.practice})
	case keys.Matches(msg, k.Settings):
		return m, send(mill.SettingsMsg{})
	case keys.Matches(msg, k.Leave):
		return m, send(mill.LeaveMsg{})
	}
	return m, nil
}

// open does what the chosen entry is for.
func (m home) open() (screen, tea.Cmd) {
	if m.ground != nil {
		return m.together()
	}
	if m.shelf != "" {
		return m.bringBack()
	}
	e, ok := m.current()
	if !ok {
		return m, nil
	}
	if e.half != nil && e.half.Err != nil {
		m.problem = measure.Clean(e.half.Err.Error())
		return m, nil
	}
	m.problem, m.busy, m.finding = "", true, false
	return m, e.cmd
}
