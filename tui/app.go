package tui

import (
	"fmt"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"millside/counter"
	"millside/plan"
)

// deps is what every screen may use: looks, keys, the clock, the records.
type deps struct {
	store    counter.Store
	now      counter.Clock
	styles   styles
	keys     keyMap
	bell     func()
	practice plan.Spec
	atHand   plan.AtHand
	pace     plan.Pace // the weaver's own, or zero for the published range
	say      func(string)
	// prefs is shared by all screens: a change on the settings page holds for them all.
	prefs     *Settings
	savePrefs func(Settings) error
}

// ring is the command that rings the terminal's bell.
func (d deps) ring() tea.Cmd {
	if d.bell == nil || d.prefs != nil && d.prefs.Bell == BellOff {
		return nil
	}
	return func() tea.Msg { d.bell(); return nil }
}

// screen is one screenful with its own keys.
type screen interface {
	update(tea.Msg) (screen, tea.Cmd)
	view(w, h int) string
	// typing says that letters are text for a field, and not keys.
	typing() bool
}

// Messages between screens.
type (
	goHomeMsg struct{}
	goFormMsg struct{ spec plan.Spec }
	openMsg   struct{ path string } // wind a record, or look at it if that can't be
	beginMsg  struct{ spec plan.Spec }
	openedMsg struct{ rec *counter.Record }
	listedMsg struct {
		list []counter.Summary
		err  error
	}
	failedMsg struct{ err error }
	leaveMsg  struct{} // quit the program
)

func send(m tea.Msg) tea.Cmd { return func() tea.Msg { return m } }

// app is the root model: the size of the terminal and the screen that is shown.
type app struct {
	deps
	w, h        int
	screen      screen
	interrupted bool
}

func newApp(d deps) app { return app{deps: d, w: 80, h: 24} }

// firstScreen chooses what is shown at the start.
func (a app) firstScreen(o Options) screen {
	switch {
	case o.Record != nil:
		return newWinding(a.deps, o.Record)
	case o.Spec != nil:
		return newForm(a.deps, *o.Spec)
	default:
		return newHome(a.deps, o.List, o.ListErr)
	}
}

// Init asks for the schedule of a form that begins with stripes; every other first screen is ready.
func (a app) Init() tea.Cmd {
	if f, ok := a.screen.(form); ok {
		_, cmd := f.schedule()
		return cmd
	}
	return nil
}

// Update handles what concerns the whole program and hands the rest to the screen.
func (a app) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		a.w, a.h = max(msg.Width, 1), max(msg.Height, 1)
		return a, nil
	case tea.KeyMsg:
		return a.press(msg)
	case goHomeMsg:
		return a, a.homeCmd()
	case listedMsg:
		a.screen = newHome(a.deps, msg.list, msg.err)
		return a, nil
	case goFormMsg:
		next, cmd := newForm(a.deps, msg.spec).schedule()
		a.screen = next
		return a, cmd
	case openMsg:
		return a, openCmd(a.store, msg.path)
	case beginMsg:
		return a, beginCmd(a.store, msg.spec)
	case openedMsg:
		if _, winds := a.screen.(winding); winds {
			return a, closeCmd(msg.rec) // the key that opened it was pressed twice
		}
		a.screen = newWinding(a.deps, msg.rec)
		return a, nil
	case leaveMsg:
		return a, tea.Quit
	}
	return a.pass(msg)
}

// press hands a key to the screen. Runes typed in one read arrive as one message: they are handed on
// one by one, but for a field that takes text. What was pasted is never a key press.
func (a app) press(msg tea.KeyMsg) (tea.Model, tea.Cmd) {
	switch {
	case key.Matches(msg, a.keys.Stop):
		a.interrupted = true
		return a, tea.Quit
	case msg.String() == "ctrl+z":
		return a, tea.Suspend
	case a.screen.typing():
		return a.pass(msg)
	case msg.Paste:
		return a, nil
	case len(msg.Runes) <= 1:
		return a.pass(msg)
	}
	var cmds []tea.Cmd
	for _, r := range msg.Runes {
		next, cmd := a.pass(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}, Alt: msg.Alt})
		a = next.(app)
		cmds = append(cmds, cmd)
	}
	return a, tea.Batch(cmds...)
}

func (a app) pass(msg tea.Msg) (tea.Model, tea.Cmd) {
	next, cmd := a.screen.update(msg)
	a.screen = next
	return a, cmd
}

// View draws the screen at exactly the terminal's size.
func (a app) View() string { return a.screen.view(a.w, a.h) }

// homeCmd lets go of the record and lists what there is.
func (a app) homeCmd() tea.Cmd {
	return func() tea.Msg {
		a.close()
		list, err := a.store.List()
		return listedMsg{list, err}
	}
}

// close lets go of the record that is being wound, if one is.
func (a app) close() {
	top := a.screen
	if s, ok := top.(settings); ok {
		top = s.back
	}
	if w, ok := top.(winding); ok {
		_ = w.rec.Close() // every event is already synced; there is nothing left to lose
	}
}

func closeCmd(rec *counter.Record) tea.Cmd {
	return func() tea.Msg { _ = rec.Close(); return nil }
}

// openRecord opens a record for winding, or only to look.
func openRecord(s counter.Store, path string, look bool) (*counter.Record, error) {
	open := counter.Open
	if look {
		open = counter.Look
	}
	rec, err := open(s.FS, path)
	if err != nil {
		return nil, fmt.Errorf("opening the record: %w", err)
	}
	return rec, nil
}

func openCmd(s counter.Store, path string) tea.Cmd {
	return func() tea.Msg {
		rec, err := openRecord(s, path, false)
		if isLocked(err) {
			rec, err = openRecord(s, path, true)
		}
		if err != nil {
			return failedMsg{err}
		}
		return openedMsg{rec}
	}
}

func beginCmd(s counter.Store, spec plan.Spec) tea.Cmd {
	return func() tea.Msg {
		p, err := plan.New(spec)
		if err != nil {
			return failedMsg{err}
		}
		rec, err := s.Create(p)
		if err != nil {
			return failedMsg{fmt.Errorf("making the record: %w", err)}
		}
		return openedMsg{rec}
	}
}
