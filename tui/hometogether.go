package tui

import (
	"fmt"
	"path/filepath"
	"slices"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"millside/counter/journal"
	"millside/plan"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/pair"
	"millside/plan/project"
	"millside/plan/times"
	"millside/tui/pairpage"
)

// goTogetherMsg asks for the page of a ground and a second, with what was kept of both.
type goTogetherMsg struct {
	warps [2]journal.Summary
	said  map[*field.Field]string
}

// together takes the chosen warp as the ground, and the next one that is chosen as the second. A warp whose record
// names the one that it goes with is shown with that at once.
func (m home) together() (screen, tea.Cmd) {
	sum, m := m.chosenRecord("that goes together with another")
	switch {
	case sum == nil:
		return m, nil
	case m.ground == nil && sum.Spec.GoesWith != "":
		return m.keptTogether(*sum)
	case m.ground == nil:
		m.ground = sum
		return m.scrolled(), nil
	case m.ground.Path == sum.Path:
		m.problem = "that is the ground itself: choose the warp that goes with it"
		return m, nil
	}
	ground := *m.ground
	m.ground = nil
	return m, send(goTogetherMsg{warps: [2]journal.Summary{ground, *sum}})
}

// keptTogether shows a warp with the one that its record names, or takes it as the ground where that isn't in the list.
func (m home) keptTogether(sum journal.Summary) (screen, tea.Cmd) {
	kept, err := pair.ParseKept(sum.Spec.GoesWith)
	at := slices.IndexFunc(m.list, func(s journal.Summary) bool {
		return filepath.Base(s.Path) == kept.File && s.Err == nil
	})
	if err != nil || at < 0 {
		m.ground = &sum
		m.problem = "the record of " + measure.Clean(kept.Name) + ", with which it goes, isn't here: choose another"
		return m.scrolled(), nil
	}
	msg := goTogetherMsg{said: kept.Said}
	msg.warps[kept.With], msg.warps[kept.With.Other()] = m.list[at], sum
	return m, send(msg)
}

// groundLine says which warp is the ground while its second is chosen.
func (m home) groundLine() string {
	return fmt.Sprintf("%s is the ground: choose the second and press %s", m.ground.Name, m.keys.Together.Help().Key)
}

// together is the page of two warps, and where their records lie.
type together struct {
	pairpage.Model
	deps
	paths [2]string
}

// openTogether shows the page of two warps.
func (a app) openTogether(msg goTogetherMsg) (tea.Model, tea.Cmd) {
	t := together{deps: a.deps}
	var warps [2]*project.Project
	for w, sum := range msg.warps {
		p, err := plan.New(sum.Spec)
		if err == nil {
			warps[w], err = project.Of(p, times.Pace{})
		}
		if err != nil {
			if h, ok := a.screen.(home); ok {
				a.screen = h.told(err.Error())
			}
			return a, nil
		}
		t.paths[w] = sum.Path
	}
	t.Model = pairpage.New(pairpage.Deps{Styles: a.styles, Keys: a.keys}, warps, msg.said)
	a.screen = t
	return a, nil
}

// notJoinedMsg says why what was said of two warps couldn't be kept.
type notJoinedMsg struct{ err error }

func (t together) update(msg tea.Msg, at time.Time) (screen, tea.Cmd) {
	switch msg := msg.(type) {
	case pairpage.KeepMsg:
		return t, func() tea.Msg {
			if err := t.store.KeepTogether(t.paths[pair.Ground], t.paths[pair.Second], msg.Said, at); err != nil {
				return notJoinedMsg{err}
			}
			return listedMsg{listing: listAll(t.store), at: t.paths[pair.Ground],
				said: "both records know now that they go together"}
		}
	case notJoinedMsg:
		t.Model = t.Told(measure.Clean(msg.err.Error()))
		return t, nil
	}
	next, cmd := t.Update(msg)
	t.Model = next
	return t, cmd
}
func (t together) view(w, h int) string { return t.View(w, h) }
func (together) typing() bool           { return true }
