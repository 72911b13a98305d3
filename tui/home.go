package tui

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"millside/counter"
	"millside/plan"
)

// home lists the records: half-wound warps first, then what can be begun, then finished ones.
type home struct {
	deps
	list    []counter.Summary
	at      int
	problem string
	busy    bool // something is being opened
}

// entry is one line that can be chosen.
type entry struct {
	summary *counter.Summary // a record, or
	word    string           // something to begin
	cmd     tea.Cmd
}

func newHome(d deps, list []counter.Summary, err error) home {
	m := home{deps: d, list: list}
	if err != nil {
		m.problem = plan.Clean(err.Error())
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
		{word: "practice warp", cmd: send(beginMsg{m.practice})},
	}
	return append(append(open, begin...), finished...)
}

func (m home) update(msg tea.Msg) (screen, tea.Cmd) {
	switch msg := msg.(type) {
	case failedMsg:
		m.problem, m.busy = plan.Clean(msg.err.Error()), false
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
		m.at = max(m.at-1, 0)
	case key.Matches(msg, k.Down):
		m.at = min(m.at+1, len(entries)-1)
	case key.Matches(msg, k.Open):
		m.problem, m.busy = "", true
		return m, entries[m.at].cmd
	case key.Matches(msg, k.Copy):
		return m.copyPlan(entries[m.at])
	case key.Matches(msg, k.New):
		return m, send(goFormMsg{plan.DefaultSpec()})
	case key.Matches(msg, k.Practice):
		m.busy = true
		return m, send(beginMsg{m.practice})
	case key.Matches(msg, k.Settings) && m.prefs != nil:
		return settings{deps: m.deps, back: m}, nil
	case key.Matches(msg, k.Leave):
		return m, send(leaveMsg{})
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
	lines := []string{"", "  " + s.title.Render("MILLSIDE") + s.dim.Render(fit("   the count at the warping mill", max(w-12, 0))), ""}
	body, cursor := m.body(w)
	foot := []string{"", s.keyLine(w, k.Up, k.Open, k.New, k.Copy, k.Practice, k.Settings, k.Leave)}
	if m.problem != "" {
		foot = append(painted(wrap("! "+m.problem, w-2), s.alarm), foot...)
	}
	room := max(h-len(lines)-len(foot), 1)
	from := min(max(cursor-room/2, 0), max(len(body)-room, 0))
	return withFoot(append(lines, body[from:]...), foot, w, h)
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
			lines = append(lines, "  "+m.styles.dim.Render(t))
		}
		if i == m.at {
			cursor = len(lines)
		}
		lines = append(lines, m.entryLines(e, i == m.at, w)...)
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
	mark, style := "    ", s.plain
	if chosen {
		mark, style = "  ▸ ", s.strong
	}
	if e.summary == nil {
		return []string{mark + style.Render(e.word)}
	}
	sum := e.summary
	if sum.Err != nil {
		return []string{fit(mark+style.Render(sum.Name)+"  "+s.alarm.Render(damageText(sum.Err)), w)}
	}
	if sum.Finished {
		return []string{fit(mark+style.Render(pad(sum.Name, 28))+"  "+s.dim.Render(fmt.Sprintf("%d ends, %s%s", sum.Ends, when(sum.Last, m.now()), paceText(sum.Pace))), w)}
	}
	far, touched := fmt.Sprintf("%d of %d passes", sum.Laid, sum.Passes), when(sum.Last, m.now())
	if w >= 76 {
		far, touched = far+fmt.Sprintf(", %d of %d ends", sum.Standing, sum.Ends), "last touched "+touched
	}
	if sum.Wound {
		far = fmt.Sprintf("%d ends wound, finishing", sum.Standing)
	}
	return []string{
		fit(mark+style.Render(sum.Name), w),
		fit("      "+s.bar(sum.Laid, sum.Passes, 12)+"  "+far+s.dim.Render("  "+touched), w),
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
	var d *counter.DamageError
	if errors.As(err, &d) {
		return fmt.Sprintf("damaged at line %d: millside salvage saves what is sound", d.Line)
	}
	return strings.TrimSpace(plan.Clean(err.Error()))
}

func isLocked(err error) bool { return errors.Is(err, counter.ErrLocked) }
