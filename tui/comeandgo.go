package tui

import (
	"errors"
	"fmt"
	"io/fs"

	tea "github.com/charmbracelet/bubbletea"

	"millside/counter/halfplan"
	"millside/counter/journal"
	"millside/plan"
	"millside/plan/measure"
	"millside/tui/form"
	"millside/tui/mill"
)

// showHome shows what was listed, with what was left chosen.
func (a app) showHome(msg listedMsg) app {
	h := newHome(a.deps, msg.listing, a.now)
	h.w, h.h, h.said = a.w, a.h, msg.said
	a.screen = h.choose(msg.at)
	return a
}

// plan shows a form.
func (a app) plan(m form.Model, half halfplan.Plan) (tea.Model, tea.Cmd) {
	next, cmd := m.Init()
	a.screen = newPlanning(a.deps, next, half)
	return a, cmd
}

// homeCmd lets go of what is shown, keeping what is half-filled, and lists what there is.
func (a app) homeCmd() tea.Cmd {
	return func() tea.Msg {
		var msg listedMsg
		err := a.keepForm()
		if p, ok := a.planning(); ok {
			if msg.at = p.left(); p.changes > 0 {
				msg.said = "the plan is kept as it is, half-filled"
			}
		}
		if w, ok := a.screen.(winding); ok {
			msg.at = w.Record().Path()
		}
		a.close()
		msg.listing = listAll(a.store)
		msg.err = errors.Join(err, msg.err)
		return msg
	}
}

// planning is the form, if one is shown or lies under a question or the list of its keys.
func (a app) planning() (planning, bool) {
	s := a.screen
	switch over := s.(type) {
	case alonePage:
		s = over.under
	case keysPage:
		s = over.under
	}
	p, ok := s.(planning)
	return p, ok
}

// keepForm keeps what is filled in and isn't kept yet.
func (a app) keepForm() error {
	if p, ok := a.planning(); ok {
		return p.keep()
	}
	return nil
}

// opening opens a record of a store to wind it, or to look at it if another window winds it.
func opening(path string) func(journal.Store) tea.Cmd {
	return func(s journal.Store) tea.Cmd {
		return func() tea.Msg {
			rec, err := mill.Open(s, path, false)
			if errors.Is(err, journal.ErrLocked) {
				rec, err = mill.Open(s, path, true)
			}
			if err != nil {
				return form.FailedMsg{Err: err}
			}
			return openedMsg{rec: rec}
		}
	}
}

// beginning makes the record of a new warp in a store. What is half-filled is kept until then, and goes.
func (a app) beginning(spec plan.Spec) func(journal.Store) tea.Cmd {
	p, planned := a.planning()
	return func(s journal.Store) tea.Cmd {
		return func() tea.Msg {
			if planned {
				_ = p.keep() // what counts now is the record
			}
			rec, err := p.record(s, spec)
			if err != nil {
				return form.FailedMsg{Err: err}
			}
			msg := openedMsg{rec: rec}
			if planned {
				if err := p.done(); err != nil {
					msg.problem = measure.Clean(err.Error())
				}
			}
			return msg
		}
	}
}

// record is the record of a new warp, or of the one whose plan the form changes. Where that can't be any more, the key
// pressed again makes a new warp.
func (s planning) record(store journal.Store, spec plan.Spec) (*journal.Record, error) {
	p, err := plan.New(spec)
	if err != nil {
		return nil, err
	}
	of := s.changing()
	if of == "" {
		rec, err := store.Create(p)
		if err != nil {
			return nil, fmt.Errorf("making the record: %w", err)
		}
		return rec, nil
	}
	rec, err := store.Replan(ofPath(store, of), p)
	if errors.Is(err, journal.ErrBegun) || errors.Is(err, fs.ErrNotExist) {
		s.forget()
		err = fmt.Errorf("%w; %w", err, errStays)
	}
	return rec, err
}
