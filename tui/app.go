package tui

import (
	"maps"
	"reflect"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"millside/counter"
	"millside/counter/halfplan"
	"millside/counter/journal"
	"millside/counter/session"
	"millside/plan"
	"millside/plan/athand"
	fields "millside/plan/entry"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/times"
	"millside/tui/draftpage"
	"millside/tui/form"
	"millside/tui/keys"
	"millside/tui/look"
	"millside/tui/mill"
	"millside/tui/pairpage"
	"millside/tui/startpage"
)

// deps is what the screens may use: looks, keys, the records.
type deps struct {
	store    journal.Store
	styles   look.Styles
	keys     keys.Map
	sound    func(session.Cue)
	practice plan.Spec
	atHand   athand.AtHand
	pace     times.Pace // the weaver's own, or zero for the published range
	say      func(string)
	tick     func(time.Duration, func(time.Time) tea.Msg) tea.Cmd // nil gives no message
	settings mill.Settings
	save     func(mill.Settings) error
}

// forForm is what a form may use, and what its plan takes because there is only one of it at hand.
func (d deps) forForm(assumed ...athand.Assumed) form.Deps {
	return form.Deps{Styles: d.styles, Keys: d.keys, AtHand: d.atHand, Assumed: assumed, Pace: d.pace}
}

func (d deps) forMill() mill.Deps {
	return mill.Deps{Store: d.store, Styles: d.styles, Keys: d.keys, Settings: d.settings, Sound: d.sound, Say: d.say,
		Tick: d.tick}
}

// Messages from home, and answers of commands.
type (
	goFormMsg struct {
		spec plan.Spec
		of   string // the path of the record whose plan this changes; "" for a new warp
	}
	goOnMsg   struct{ half halfplan.Plan } // fill in a half-filled plan further
	openMsg   struct{ path string }        // wind a record, or look at it if that can't be
	openedMsg struct {
		rec     *journal.Record
		problem string // what else went wrong
	}
	listedMsg struct {
		listing
		at   string // the entry to choose
		said string
	}
)

func send(m tea.Msg) tea.Cmd { return func() tea.Msg { return m } }

// app is the root model: the size of the terminal and the screen that is shown.
type app struct {
	deps
	w, h        int
	now         time.Time // when the message came that is being answered
	screen      screen
	under       screen           // what the settings page goes back to
	known       *startpage.Model // the page of what is known as it was left; nil where it wasn't shown yet
	interrupted bool
	first       tea.Cmd // what the first screen begins with
}

func newApp(d deps, now time.Time) app { return app{deps: d, w: 80, h: 24, now: now} }

// started is the program at its first screen. A form keeps in mind what it has asked for, so it is asked here
// and not in Init, which can't change the model.
func (a app) started(o Options) app {
	a.screen = a.firstScreen(o)
	if h, ok := a.screen.(home); ok && o.HandFault != "" {
		a.screen = h.told(o.HandFault)
	}
	if s, ok := a.screen.(planning); ok {
		s.Model, a.first = s.Init()
		if o.Edits == "" && !maps.Equal(s.Filled().Texts, a.newForm().Filled().Texts) {
			s.changes, s.touched = 1, a.now // what the command line gave is worth keeping too
		}
		if o.HandFault != "" {
			s.Model = s.Told(measure.Clean(o.HandFault))
		}
		a.screen = s
	}
	return a
}

// newSpec is what a new warp begins with.
func (a app) newSpec() plan.Spec { return fields.NewSpec(a.settings.NewUnits()) }

// fromKnown shows the page that finds a warp from what is known, with what was typed there before.
func (a app) fromKnown() (tea.Model, tea.Cmd) {
	if a.known == nil {
		d := startpage.Deps{Styles: a.styles, Keys: a.keys, AtHand: a.atHand}
		m := startpage.New(d, a.newSpec())
		a.known = &m
	}
	m, cmd := a.known.Again()
	a.screen = starting{m}
	return a, cmd
}

// leftKnown keeps what was typed on the page of what is known, if that is shown.
func (a app) leftKnown() app {
	if s, ok := a.screen.(starting); ok {
		a.known = &s.Model
	}
	return a
}

// newForm is the form of a new warp.
func (a app) newForm() form.Model {
	spec, assumed := a.atHand.Assume(a.newSpec(), func(*field.Field) bool { return false })
	return form.New(a.forForm(assumed...), spec)
}

// firstScreen chooses what is shown at the start.
func (a app) firstScreen(o Options) screen {
	switch {
	case o.Record != nil:
		return winding{mill.New(a.forMill(), o.Record, a.now)}
	case o.NoLocks != "":
		return alonePage{deps: a.deps, under: newHome(a.deps, withHalves(a.store, o.List, o.ListErr), a.now),
			open: opening(o.NoLocks)}
	case o.Spec != nil:
		m := form.New(a.forForm(o.Assumed...), *o.Spec)
		return newPlanning(a.deps, m, halfplan.Plan{Of: ofName(a.store, o.Edits)})
	default:
		return newHome(a.deps, withHalves(a.store, o.List, o.ListErr), a.now)
	}
}

// Init does what the first screen begins with, and lets a warp say where it stands.
func (a app) Init() tea.Cmd {
	if s, ok := a.screen.(winding); ok {
		return s.Init()
	}
	return a.first
}

// timed is a message with the time at which it came.
type timed struct {
	msg tea.Msg
	at  time.Time
}

// stamp gives the clock a way in: what the program's own model is told carries its time, so that neither
// Update nor View ever asks for it. What Bubble Tea itself must see goes by as it is.
func stamp(now counter.Clock) func(tea.Model, tea.Msg) tea.Msg {
	return func(_ tea.Model, msg tea.Msg) tea.Msg {
		switch msg.(type) {
		case tea.KeyMsg, tea.MouseMsg, tea.ResumeMsg, listedMsg, openedMsg:
			return timed{msg, now()}
		}
		return msg
	}
}

// Update handles what concerns the whole program and hands the rest to the screen.
func (a app) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	if t, ok := msg.(timed); ok {
		a.now, msg = t.at, t.msg
	}
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		a.w, a.h = max(msg.Width, 1), max(msg.Height, 1)
		return a, nil
	case tea.KeyMsg:
		return a.press(msg)
	case mill.HomeMsg, form.BackMsg, draftpage.BackMsg, startpage.BackMsg, pairpage.BackMsg:
		return a.leftKnown(), a.homeCmd()
	case listedMsg:
		return a.showHome(msg), nil
	case goFormMsg:
		if msg.of == "" && reflect.DeepEqual(msg.spec, plan.DefaultSpec()) { // none that was planned before
			return a.plan(a.newForm(), halfplan.Plan{})
		}
		return a.plan(form.New(a.forForm(), msg.spec), halfplan.Plan{Of: ofName(a.store, msg.of)})
	case goOnMsg:
		h := msg.half
		return a.plan(form.Refilled(a.forForm(), form.Filled{Spec: h.Spec, At: h.At, Texts: h.Texts}), h)
	case goDraftMsg:
		return a.openDraft()
	case draftpage.MadeMsg:
		return a.planDraft(msg)
	case form.KnownMsg:
		if err := a.keepForm(); err != nil {
			return a.pass(form.FailedMsg{Err: err})
		}
		return a.fromKnown()
	case goKnownMsg:
		return a.fromKnown()
	case goTogetherMsg:
		return a.openTogether(msg)
	case startpage.MadeMsg:
		return a.leftKnown().planNew(msg.Spec, msg.Assumed)
	case openMsg:
		return a, orAlone(a.store, opening(msg.path))
	case form.BeginMsg:
		return a, orAlone(a.store, a.beginning(msg.Spec))
	case noLocksMsg:
		return a.askAlone(msg)
	case openedMsg:
		if _, winds := a.screen.(winding); winds {
			return a, closeCmd(msg.rec) // the key that opened it was pressed twice
		}
		if _, asked := a.screen.(alonePage); asked {
			a.store = alone(a.store)
		}
		w := mill.New(a.forMill(), msg.rec, a.now)
		if msg.problem != "" {
			w = w.Told(msg.problem)
		}
		a.screen = winding{w}
		return a, w.Init()
	case mill.SettingsMsg:
		return a.openSettings(msg)
	case mill.SettingsDoneMsg:
		return a.closeSettings(msg)
	case mill.KeptMsg:
		return a.kept(msg)
	case mill.LeaveMsg:
		return a, tea.Quit
	}
	return a.pass(msg)
}

// openSettings lays the settings page over the screen.
func (a app) openSettings(msg mill.SettingsMsg) (tea.Model, tea.Cmd) {
	a.under = a.screen
	a.screen = setting{mill.NewSettingsPage(a.styles, a.keys, a.settings, a.save, a.sound)}
	var cmds []tea.Cmd
	for _, k := range msg.Keys {
		next, cmd := a.screen.update(k, a.now)
		a.screen = next
		cmds = append(cmds, cmd)
	}
	return a, tea.Batch(cmds...)
}

func (a app) closeSettings(msg mill.SettingsDoneMsg) (tea.Model, tea.Cmd) {
	a.settings = msg.Settings
	a.screen, a.under = a.under, nil
	switch s := a.screen.(type) {
	case winding:
		a.screen = winding{s.WithSettings(a.settings, a.keys)}
	case home:
		s.deps = a.deps
		a.screen = s
	}
	return a, nil
}

// kept hears whether the settings could be written, on whichever screen that is.
func (a app) kept(msg mill.KeptMsg) (tea.Model, tea.Cmd) {
	if w, ok := a.screen.(winding); ok && msg.Problem() != "" {
		a.screen = winding{w.Told(msg.Problem())}
		return a, nil
	}
	return a.pass(msg)
}

// press hands a key to the screen. Runes typed in one read arrive as one message: they are handed on
// one by one, but for a field that takes text. What was pasted is never a key press.
func (a app) press(msg tea.KeyMsg) (tea.Model, tea.Cmd) {
	switch {
	case keys.Matches(msg, a.keys.Stop):
		a.interrupted = true
		return a, tea.Quit
	case keys.Matches(msg, a.keys.Suspend):
		return a, tea.Suspend
	}
	if s, ok := a.listsKeys(msg); ok {
		a.screen = keysPage{a.deps, s}
		return a, nil
	}
	switch {
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
	if s, ok := a.screen.(home); ok { // a page of the list, and what is clicked, depend on the size
		s.w, s.h = a.w, a.h
		a.screen = s
	}
	if s, ok := a.screen.(planning); ok { // where the cursor goes in a text that is wrapped
		s.Model = s.Sized(a.w)
		a.screen = s
	}
	next, cmd := a.screen.update(msg, a.now)
	a.screen = next
	return a, cmd
}

// View draws the screen at exactly the terminal's size.
func (a app) View() string {
	view := a.screen.view(a.w, a.h)
	if a.styles.ASCII {
		return look.ASCII(view)
	}
	return view
}

// close lets go of the record that is being wound, if one is.
func (a app) close() {
	for _, s := range []screen{a.screen, a.under} {
		if w, ok := s.(winding); ok {
			_ = w.Record().Close() // every event is already synced; there is nothing left to lose
		}
	}
}

func closeCmd(rec *journal.Record) tea.Cmd {
	return func() tea.Msg { _ = rec.Close(); return nil }
}
