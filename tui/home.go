package tui

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"millside/counter"
	"millside/counter/journal"
	"millside/plan"
	"millside/plan/measure"
	"millside/tui/form"
	"millside/tui/look"
	"millside/tui/mill"
)

// home lists the records: half-wound warps first, then what can be begun, then finished ones.
type home struct {
	deps
	at      time.Time // when the last message came
	list    []journal.Summary
	chosen  int
	problem string
	busy    bool // something is being opened
}

// entry is one line that can be chosen.
type entry struct {
	summary *journal.Summary // a record, or
	word    string           // something to begin
	cmd     tea.Cmd
}

func newHome(d deps, list []journal.Summary, err error, now time.Time) home {
	m := home{deps: d, list: list, at: now}
	if err != nil {
		m.problem = measure.Clean(err.Error())
	}
	return m
}

func (m home) typing() bool { return false }

// entries gives the lines in their order.
func (m home) entries() []entry {
	var open, begin, finished []entry
	for i := range m.list {
		e := entry{summary: &m.list[i], cmd: send(openMsg{m.list[i].Path})}
		if m.list[i].Finished {
			finished = append(finished, e)
		} else {
			open = append(open, e)
		}
	}
	begin = []entry{
		{word: "new warp", cmd: send(goFormMsg{plan.DefaultSpec()})},
		{word: "practice warp", cmd: send(form.BeginMsg{Spec: m.practice})},
	}
	return append(append(open, begin...), finished...)
}

func (m home) update(msg tea.Msg, at time.Time) (screen, tea.Cmd) {
	m.at = at
	switch msg := msg.(type) {
	case form.FailedMsg:
		m.problem, m.busy = measure.Clean(msg.Err.Error()), false
		return m, nil
	case tea.KeyMsg:
		if m.busy {
			return m, nil
		}
		return m.act(msg)
	}
	return m, nil
}

func (m home) act(msg tea.KeyMsg) (screen, tea.Cmd) {
	entries := m.entries()
	k := m.keys
	switch {
	case key.Matches(msg, k.Up):
		m.chosen = max(m.chosen-1, 0)
	case key.Matches(msg, k.Down):
		m.chosen = min(m.chosen+1, len(entries)-1)
	case key.Matches(msg, k.Open):
		m.problem, m.busy = "", true
		return m, entries[m.chosen].cmd
	case key.Matches(msg, k.Copy):
		return m.copyPlan(entries[m.chosen])
	case key.Matches(msg, k.New):
		return m, send(goFormMsg{plan.DefaultSpec()})
	case key.Matches(msg, k.Practice):
		m.busy = true
		return m, send(form.BeginMsg{Spec: m.practice})
	case key.Matches(msg, k.Settings):
		return m, send(mill.SettingsMsg{})
	case key.Matches(msg, k.Leave):
		return m, send(mill.LeaveMsg{})
	}
	return m, nil
}

// copyPlan opens the form with the plan of a record, to wind the same warp again or a changed one.
func (m home) copyPlan(e entry) (screen, tea.Cmd) {
	if e.summary == nil || e.summary.Err != nil {
		m.problem = "choose a warp to copy its plan"
		return m, nil
	}
	return m, send(goFormMsg{e.summary.Spec})
}

func (m home) view(w, h int) string {
	s, k := m.styles, m.keys
	lines := []string{"", "  " + s.Title.Render("MILLSIDE") +
		s.Dim.Render(look.Fit("   the count at the warping mill", max(w-12, 0))), ""}
	body, cursor := m.body(w)
	foot := []string{"", s.KeyLine(w, k.Up, k.Open, k.New, k.Copy, k.Practice, k.Settings, k.Leave)}
	if m.problem != "" {
		foot = append(look.Painted(look.Wrap("! "+m.problem, w-2), s.Alarm), foot...)
	}
	room := max(h-len(lines)-len(foot), 1)
	from := min(max(cursor-room/2, 0), max(len(body)-room, 0))
	return look.WithFoot(append(lines, body[from:]...), foot, w, h)
}

// body draws the list, and says on which line the chosen entry stands.
func (m home) body(w int) (lines []string, cursor int) {
	heading := ""
	for i, e := range m.entries() {
		if t := e.heading(); t != heading {
			if heading != "" {
				lines = append(lines, "")
			}
			heading = t
			lines = append(lines, "  "+m.styles.Dim.Render(t))
		}
		if i == m.chosen {
			cursor = len(lines)
		}
		lines = append(lines, m.entryLines(e, i == m.chosen, w)...)
	}
	return lines, cursor
}

// heading is the title over an entry's part of the list.
func (e entry) heading() string {
	switch {
	case e.summary == nil:
		return "begin"
	case e.summary.Finished:
		return "finished"
	default:
		return "half-wound"
	}
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
