package tui

import (
	"errors"
	"maps"
	"sync"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"millside/counter/halfplan"
	"millside/counter/journal"
	"millside/plan/measure"
	"millside/tui/form"
)

// planning is the form. What is filled in is kept on the way, so that neither leaving nor a crash loses it: after a
// quiet moment, on leaving a field, and on leaving the form.
type planning struct {
	form.Model
	deps
	keeper  *keeper // nil keeps nothing
	changes int     // how often something was changed
	touched time.Time
}

// quiet is how long nothing has to be typed until what stands in the form is kept.
const quiet = time.Second

// quietMsg says that nothing was typed for a while after so many changes, unless there are more by now.
type quietMsg struct{ changes int }

// notKeptMsg says that what is filled in could not be kept.
type notKeptMsg struct{ err error }

// keeper keeps the plan that is being filled in, in one file. Its methods may be called from several goroutines.
type keeper struct {
	mu    sync.Mutex
	store halfplan.Store
	path  string // "" until it is kept
	of    string // the record whose plan is being changed
	kept  int    // the changes that are on the disk
	made  bool   // the warp is made: there is nothing to keep any more
}

// halves is where half-filled plans of a folder of records are kept.
func halves(s journal.Store) halfplan.Store { return halfplan.In(s.Dir, s.FS) }

// newPlanning is a form whose plan is kept, in the file of a half-filled one or in a new one.
func newPlanning(d deps, m form.Model, half halfplan.Plan) planning {
	if half.Of != "" {
		m.Of = m.Filled().Spec.Name
	}
	return planning{Model: m, deps: d, keeper: &keeper{store: halves(d.store), path: half.Path, of: half.Of}}
}

func (s planning) typing() bool         { return true }
func (s planning) view(w, h int) string { return s.View(w, h) }

func (s planning) update(msg tea.Msg, at time.Time) (screen, tea.Cmd) {
	switch msg := msg.(type) {
	case quietMsg:
		if msg.changes != s.changes {
			return s, nil
		}
		return s, s.keepCmd()
	case notKeptMsg:
		s.Model = s.Told(measure.Clean(msg.err.Error()))
		return s, nil
	}
	if _, failed := msg.(form.FailedMsg); failed && s.changing() == "" {
		s.Of = ""
	}
	was := s.Filled()
	next, cmd := s.Update(msg)
	s.Model = next
	is := s.Filled()
	if !maps.Equal(was.Texts, is.Texts) {
		s.changes++
		s.touched = at
		return s, tea.Batch(cmd, s.whenQuiet())
	}
	if was.At != is.At {
		return s, tea.Batch(cmd, s.keepCmd())
	}
	return s, cmd
}

// whenQuiet waits for a quiet moment.
func (s planning) whenQuiet() tea.Cmd {
	if s.tick == nil || s.keeper == nil {
		return nil
	}
	n := s.changes
	return s.tick(quiet, func(time.Time) tea.Msg { return quietMsg{n} })
}

// keepCmd keeps what stands in the form.
func (s planning) keepCmd() tea.Cmd {
	return func() tea.Msg {
		if err := s.keep(); err != nil {
			return notKeptMsg{err}
		}
		return nil
	}
}

// keep keeps what stands in the form, if it isn't kept yet.
func (s planning) keep() error {
	k := s.keeper
	if k == nil {
		return nil
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.made || s.changes <= k.kept {
		return nil
	}
	f := s.Filled()
	path, err := k.store.Keep(halfplan.Plan{Path: k.path, Kept: s.touched, Of: k.of, At: f.At, Texts: f.Texts,
		Spec: f.Spec})
	k.path = path
	if err == nil {
		k.kept = s.changes
	}
	return err
}

// done lets go of what was kept: the warp is made.
func (s planning) done() error {
	k := s.keeper
	if k == nil {
		return nil
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	k.made = true
	if k.path == "" {
		return nil
	}
	if err := k.store.Remove(k.path); err != nil {
		return errors.Join(errors.New("the warp is made, and its half-filled plan could not be taken away"), err)
	}
	return nil
}

// left is the path of the half-filled plan that leaving the form leaves, "" for none.
func (s planning) left() string {
	if s.keeper == nil {
		return ""
	}
	s.keeper.mu.Lock()
	defer s.keeper.mu.Unlock()
	return s.keeper.path
}

// changing is the record whose plan the form changes, "" for none.
func (s planning) changing() string {
	if s.keeper == nil {
		return ""
	}
	s.keeper.mu.Lock()
	defer s.keeper.mu.Unlock()
	return s.keeper.of
}

// forget makes it the plan of a new warp.
func (s planning) forget() {
	s.keeper.mu.Lock()
	defer s.keeper.mu.Unlock()
	s.keeper.of = ""
}
