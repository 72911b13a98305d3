package tui

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"millside/counter"
	"millside/counter/journal"
	"millside/plan"
	"millside/plan/measure"
	"millside/tui/form"
	"millside/tui/keys"
	"millside/tui/look"
	"millside/tui/mill"
)

// home lists the records: half-wound warps first, then those not begun, then what can be begun, then finished ones.
type home struct {
	deps
	at      time.Time // when the last message came
	list    []journal.Summary
	chosen  int
	problem string
	said    string        // what was done last
	shelf   journal.Shelf // the shelf that is shown; none: the warps
	busy    bool          // something is being opened
	filter  string
	finding bool // what is typed goes into the filter
	w, h    int  // of the terminal
}

// entry is one line that can be chosen.
type entry struct {
	summary *journal.Summary // a record, or
	word    string           // something to begin
	cmd     tea.Cmd
	shelf   journal.Shelf
}

func newHome(d deps, list []journal.Summary, err error, now time.Time) home {
	m := home{deps: d, list: list, at: now}
	if err != nil {
		m.problem = measure.Clean(err.Error())
	}
	return m
}

func (m home) typing() bool { return m.finding }

// entries gives the lines in their order; where a filter is set, the records whose names hold it.
func (m home) entries() []entry {
	var byPart [parts][]entry
	for i := range m.list {
		e := entry{summary: &m.list[i], cmd: send(openMsg{m.list[i].Path}), shelf: m.shelf}
		if m.shows(e) {
			byPart[e.part()] = append(byPart[e.part()], e)
		}
	}
	if m.filter == "" && m.shelf == "" {
		byPart[partBegin] = []entry{
			{word: "new warp", cmd: send(goFormMsg{plan.DefaultSpec()})},
			{word: "practice warp", cmd: send(form.BeginMsg{Spec: m.practice})},
		}
	}
	return slices.Concat(byPart[:]...)
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
		switch {
		case m.busy:
			return m, nil
		case m.typing():
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
	case keys.Matches(msg, k.Open):
		return m.open()
	case keys.Matches(msg, k.Filter):
		m.finding = true
	case keys.Matches(msg, k.Back):
		m.filter, m.chosen = "", 0
		if m.shelf != "" {
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
		return m.copyPlan(m.entries())
	case keys.Matches(msg, k.New):
		return m, send(goFormMsg{plan.DefaultSpec()})
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

// copyPlan opens the form with the plan of a record, to wind the same warp again or a changed one.
func (m home) copyPlan(entries []entry) (screen, tea.Cmd) {
	if m.chosen >= len(entries) || entries[m.chosen].summary == nil || entries[m.chosen].summary.Err != nil {
		m.problem = "choose a warp to copy its plan"
		return m, nil
	}
	return m, send(goFormMsg{entries[m.chosen].summary.Spec})
}

func (m home) view(w, h int) string {
	l := m.lay(w, h)
	return look.WithFoot(append(l.head, l.body[l.from:]...), l.foot, w, h)
}

func (m home) entryLines(e entry, chosen bool, w int) []string {
	s := m.styles
	mark, style := "    ", s.Plain
	if chosen {
		mark, style = "  ▸ ", s.Strong
	}
	if e.summary == nil {
		return []string{mark + style.Render(e.word)}
	}
	sum := e.summary
	if sum.Err != nil {
		return []string{look.Fit(mark+style.Render(sum.Name)+"  "+s.Alarm.Render(damageText(sum.Err)), w)}
	}
	if sum.Finished {
		return []string{look.Fit(mark+style.Render(look.Pad(sum.Name, 28))+"  "+
			s.Dim.Render(fmt.Sprintf("%d ends, %s%s", sum.Ends, look.When(sum.Last, m.at), paceText(sum.Pace))), w)}
	}
	far, touched := fmt.Sprintf("%d of %d passes", sum.Laid, sum.Passes), look.When(sum.Last, m.at)
	if w >= 76 {
		far, touched = far+fmt.Sprintf(", %d of %d ends", sum.Standing, sum.Ends), "last touched "+touched
	}
	if sum.Wound {
		far = fmt.Sprintf("%d ends wound, finishing", sum.Standing)
	}
	return []string{
		look.Fit(mark+style.Render(sum.Name), w),
		look.Fit("      "+s.Bar(sum.Laid, sum.Passes, 12)+"  "+far+s.Dim.Render("  "+touched), w),
	}
}

// paceText is the pace of a finished warp; empty where it isn't known.
func paceText(p counter.PaceResult) string {
	if p.Passes == 0 {
		return ""
	}
	return fmt.Sprintf(", %s a pass", p.PerPass.Round(time.Second))
}

// damageText says in a line what is wrong with a record, and what can be done.
func damageText(err error) string {
	var d *journal.DamageError
	if errors.As(err, &d) {
		return fmt.Sprintf("damaged at line %d: millside salvage saves what is sound", d.Line)
	}
	return strings.TrimSpace(measure.Clean(err.Error()))
}
