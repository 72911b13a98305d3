package tui

import (
	"errors"
	"fmt"
	"path/filepath"

	tea "github.com/charmbracelet/bubbletea"

	"millside/counter/journal"
	"millside/plan/measure"
	"millside/tui/keys"
	"millside/tui/look"
)

// nameRoom is how many letters the field of a name takes: more than a name may have, so that a longer one is refused
// in words.
const nameRoom = 4 * measure.MaxName

// chosenRecord is the record that is chosen, among the warps and sound; else home says what to choose first.
func (m home) chosenRecord(why string) (*journal.Summary, home) {
	e, ok := m.current()
	if !ok || e.summary == nil || e.summary.Err != nil || m.shelf != "" {
		m.problem = "choose a warp " + why
		return nil, m
	}
	return e.summary, m
}

// copyPlan asks for the name of a new warp with the plan of the chosen one, and proposes one that is free.
func (m home) copyPlan() home {
	sum, m := m.chosenRecord("to copy its plan")
	if sum == nil {
		return m
	}
	return m.ask(journal.CopyName(sum.Spec.Name, m.list), true)
}

// copied opens the form with the plan of the chosen record and a name of its own, to wind the same warp again or a
// changed one.
func (m home) copied(name string) (screen, tea.Cmd) {
	sum, m := m.chosenRecord("to copy its plan")
	m.naming = nil
	if sum == nil {
		return m.scrolled(), nil
	}
	spec := sum.Spec
	spec.Name, spec.GoesWith = name, ""
	m.busy = true
	return m.scrolled(), send(goFormMsg{spec: spec})
}

// edit opens the form with the plan of a warp that isn't begun, to put the changed one in its place.
func (m home) edit() (screen, tea.Cmd) {
	sum, m := m.chosenRecord("whose plan is to be changed")
	switch {
	case sum == nil:
		return m, nil
	case sum.Begun:
		m.problem = fmt.Sprintf("%s is begun, so its plan stays; %s copies it to a new warp", sum.Name,
			m.keys.Copy.Help().Key)
		return m, nil
	}
	return m, send(goFormMsg{spec: sum.Spec, of: sum.Path})
}

// rename asks for the new name of the chosen warp.
func (m home) rename() home {
	sum, m := m.chosenRecord("to give it another name")
	if sum == nil {
		return m
	}
	return m.ask(sum.Name, false)
}

// ask asks for a name: that of the chosen warp, or of a copy of it.
func (m home) ask(name string, copying bool) home {
	in := look.NewInput(m.styles, name, nameRoom)
	in.Focus()
	m.naming, m.copying = &in, copying
	return m.scrolled()
}

// nameIt takes a key while the new name is typed.
func (m home) nameIt(msg tea.KeyMsg) (screen, tea.Cmd) {
	switch k := m.keys; {
	case keys.Matches(msg, k.Back):
		m.naming = nil
		return m.scrolled(), nil
	case keys.Matches(msg, k.Keep):
		return m.named()
	}
	in, _ := look.TypeInto(*m.naming, msg)
	m.naming = &in
	return m, nil
}

// named keeps the new name, or makes the copy that has it.
func (m home) named() (screen, tea.Cmd) {
	name := m.naming.Value()
	if err := measure.CheckName(name); err != nil {
		m.problem = err.Error()
		return m, nil
	}
	if m.copying {
		return m.copied(name)
	}
	sum, m := m.chosenRecord("to give it another name")
	m.naming = nil
	if sum == nil || sum.Name == name {
		return m.scrolled(), nil
	}
	m.busy = true
	path, was, at := sum.Path, sum.Name, m.at
	return m, func() tea.Msg {
		err := m.store.Rename(path, name, at)
		return shelvedMsg{listing: listAll(m.store), said: fmt.Sprintf("%s is called %s now", was, name), wrong: err}
	}
}

// nameLine is the field of the new name.
func (m home) nameLine(w int) string {
	what := "  new name: "
	if m.copying {
		what = "  name of the copy: "
	}
	return look.Fit(what+look.InputView(*m.naming, max(w-len(what)-2, 4)), w)
}

// ofPath is the path of the record whose plan a half-filled one changes: kept by its file's name where it stands in the
// folder, and by its path elsewhere.
func ofPath(s journal.Store, of string) string {
	if of == "" || filepath.Base(of) != of {
		return of
	}
	return filepath.Join(s.Dir, of)
}

// ofName is what is kept of a path.
func ofName(s journal.Store, path string) string {
	if filepath.Dir(path) == filepath.Clean(s.Dir) {
		return filepath.Base(path)
	}
	return path
}

// errStays is added where a plan can't take the place of the one that it was to change.
var errStays = errors.New("pressed again, the key makes a new warp of this plan")
