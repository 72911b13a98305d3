package mill

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"millside/counter"
	"millside/plan"
	"millside/tui/keys"
	"millside/tui/look"
)

// Deps is what the screen at the mill may use.
type Deps struct {
	Store  counter.Store
	Styles look.Styles
	Keys   keys.Map
	// Settings are the weaver's own.
	Settings Settings
	// Bell rings the terminal's bell; nil doesn't.
	Bell func()
	// Say is told each step as a line of plain text; nil for no one. It returns at once.
	Say func(string)
}

// Messages from the mill to whoever shows it.
type (
	// HomeMsg leaves the record for the list of warps.
	HomeMsg struct{}
	// LeaveMsg leaves the program.
	LeaveMsg struct{}
	// SettingsMsg asks for the settings page. The keys came after the one that asked, and are for that page.
	SettingsMsg struct{ Keys []tea.KeyMsg }
)

func send(m tea.Msg) tea.Cmd { return func() tea.Msg { return m } }

// ring is the command that rings the terminal's bell.
func (d Deps) ring() tea.Cmd {
	if d.Bell == nil || d.Settings.Bell == BellOff {
		return nil
	}
	return func() tea.Msg { d.Bell(); return nil }
}

// forward says whether a key means "this is done, go on": one of those that clickers and pedals send, or
// one of the weaver's own.
func (d Deps) forward(msg tea.KeyMsg) bool {
	return key.Matches(msg, d.Keys.Laid) || slices.Contains(d.Settings.Keys, msg.String())
}

// press is a key, and when it came.
type press struct {
	key tea.KeyMsg
	at  time.Time
}

// mode is what the winding screen shows.
type mode uint8

const (
	modeWind   mode = iota // pass after pass
	modeResume             // what must be seen on the mill before going on
	modePaused
	modeLease  // is the return order as the plan says?
	modeChange // the paddle is threaded or changed before the next pass
	modePrompt // a question: a note, a recount, a broken end
	modeHelp
	modeFinish // after the last pass
	modeDone   // the record is closed
	modeBroken // the record can't be written
)

// Model walks through a half-wound warp. What it shows is a function of its state and mode; every
// change goes through the record first.
type Model struct {
	Deps
	at     time.Time // when the message came that is being answered
	rec    *counter.Record
	st     counter.State
	mode   mode
	far    bool          // the far view
	guard  counter.Guard // for passes, and for the first press after one
	steps  counter.Guard // for finishing steps: some are ticked off together
	busy   bool          // a line is on its way to the disk
	queue  []press       // presses that wait for the disk
	flash  string        // what just happened
	ignore string        // why the last press was not counted
	broken error
	prompt prompt
	back   mode // where a prompt came from
	reck   reckoning
	// threaded is what is in each position of the paddle, as far as is known; nil before the first pass of
	// all and in a plain warp.
	threaded plan.SetUp
	leave    bool // leave as soon as the line is on the disk
}

// stepGuard is the longest time that must go between two finishing steps: enough to tell a second press
// from a key held down.
const stepGuard = 600 * time.Millisecond

// longBreak is how long the mill may stand before the next press brings up what must be seen on it.
const longBreak = 15 * time.Minute

// queueLimit bounds the presses that wait for the disk.
const queueLimit = 32

// New shows a record, opened for winding or only to look, at the time now.
func New(d Deps, rec *counter.Record, now time.Time) Model {
	m := Model{Deps: d, rec: rec, st: rec.State(), at: now}
	shortest := time.Duration(m.st.Plan.Spec.GuardMillis) * time.Millisecond
	m.guard, m.steps = counter.NewGuard(shortest), counter.NewGuard(min(shortest, stepGuard))
	m.reck = m.reckon()
	m.threaded = lastSetUp(m.st)
	m.mode = m.restingMode()
	if m.st.Events > 0 && !m.st.Finished && !rec.ReadOnly() {
		m.mode = modeResume
	}
	if torn := rec.Torn(); torn != "" {
		m.flash = torn
	}
	return m
}

// restingMode is the mode that belongs to the state when nothing is being asked.
func (m Model) restingMode() mode {
	switch {
	case m.st.Finished:
		return modeDone
	case m.st.Paused && !m.rec.ReadOnly():
		return modePaused
	case m.asksLease():
		return modeLease
	case m.st.Wound():
		return modeFinish
	case m.asksChange():
		return modeChange
	default:
		return modeWind
	}
}

// asksLease says whether the weaver should look at the lease now.
func (m Model) asksLease() bool {
	if m.st.LeaseSeen || m.rec.ReadOnly() {
		return false
	}
	for _, t := range m.st.Plan.After(m.st.Current(), m.st.Laid()) {
		if t.Kind == plan.CheckLease {
			return true
		}
	}
	return false
}

// Record is the record that is shown.
func (m Model) Record() *counter.Record { return m.rec }

// Typing says that letters are text for a field, and not keys.
func (m Model) Typing() bool { return m.mode == modePrompt }

// savedMsg answers a command that wrote one event.
type savedMsg struct {
	event counter.Event
	state counter.State
	err   error
}

// save writes an event. Until the answer comes nothing else is counted; keys wait in a queue.
func (m Model) save(e counter.Event) (Model, tea.Cmd) {
	e.At = m.at
	if e.Chain == 0 {
		e.Chain = m.st.Chain
	}
	m.busy = true
	rec := m.rec
	return m, func() tea.Msg {
		st, err := rec.Append(e)
		return savedMsg{event: e, state: st, err: err}
	}
}

// Update takes a message, and the time at which it came.
func (m Model) Update(msg tea.Msg, at time.Time) (Model, tea.Cmd) {
	m.at = at
	switch msg := msg.(type) {
	case savedMsg:
		return m.saved(msg)
	case reopenedMsg:
		return m.reopened(msg)
	case tea.ResumeMsg:
		if m.mode == modeWind && m.st.Events > 0 {
			m.mode = modeResume
		}
		return m, tea.ClearScreen
	case tea.MouseMsg:
		if msg.Action != tea.MouseActionPress || msg.Button != tea.MouseButtonLeft {
			return m, nil
		}
		return m.act(tea.KeyMsg{Type: tea.KeyEnter})
	case tea.KeyMsg:
		return m.act(msg)
	}
	if m.Typing() {
		next, cmd := m.prompt.update(msg, m.st)
		m.prompt = next
		return m, cmd
	}
	return m, nil
}

// act takes one key, or keeps it until the disk has answered.
func (m Model) act(msg tea.KeyMsg) (Model, tea.Cmd) {
	if m.busy {
		if len(m.queue) < queueLimit {
			m.queue = append(m.queue[:len(m.queue):len(m.queue)], press{msg, m.at})
		}
		return m, nil
	}
	if m.rec.ReadOnly() {
		return m.actLooking(msg)
	}
	switch m.mode {
	case modeWind:
		return m.actWind(msg)
	case modePaused, modeResume:
		return m.actResting(msg)
	case modeLease:
		return m.actLease(msg)
	case modeChange:
		return m.actChange(msg)
	case modePrompt:
		return m.actPrompt(msg)
	case modeFinish:
		return m.actFinish(msg)
	case modeBroken:
		return m.actBroken(msg)
	case modeHelp:
		m.mode = m.restingMode()
		return m, nil
	default:
		return m.actDone(msg)
	}
}

func (m Model) actWind(msg tea.KeyMsg) (Model, tea.Cmd) {
	k := m.Keys
	switch {
	case m.forward(msg):
		return m.layPass()
	case key.Matches(msg, k.Undo):
		return m.undo()
	case key.Matches(msg, k.Pause):
		return m.save(counter.Event{Kind: counter.Paused})
	case key.Matches(msg, k.Recount):
		return m.ask(m.recountPrompt()), nil
	case key.Matches(msg, k.Note):
		return m.ask(newPrompt(m.Deps, noteQuestion{})), nil
	case key.Matches(msg, k.Far):
		m.far = !m.far
		return m, nil
	case key.Matches(msg, k.Back):
		m.far = false
		return m, nil
	case key.Matches(msg, k.Help):
		m.mode = modeHelp
		return m, nil
	case key.Matches(msg, k.Settings):
		return m.openSettings()
	case key.Matches(msg, k.Leave):
		return m.leaveNow()
	}
	return m.actTrouble(msg)
}

// layPass counts a pass, unless the press came faster than a hand can wind.
func (m Model) layPass() (Model, tea.Cmd) {
	if m.st.Laid() > 0 && m.st.NeedsLook(m.at, longBreak) {
		m.guard = m.guard.Counted(m.at)
		m.mode = modeResume
		return m, nil
	}
	guard, counts := m.guard.Press(m.at)
	m.guard = guard
	if !counts {
		m.ignore = fmt.Sprintf("one press ignored: sooner than %s after the last", seconds(m.st.Plan.Spec.GuardMillis))
		return m, m.speak()
	}
	next, ok := m.st.NextPass()
	if !ok {
		return m, nil
	}
	return m.save(counter.Event{Kind: counter.Laid, Pass: next.Number})
}

// openSettings asks for the settings page; what waits for the disk is that page's affair from then on.
func (m Model) openSettings() (Model, tea.Cmd) {
	var rest []tea.KeyMsg
	for _, p := range m.queue {
		rest = append(rest, p.key)
	}
	m.queue = nil
	return m, send(SettingsMsg{Keys: rest})
}

// WithSettings takes over changed settings.
func (m Model) WithSettings(s Settings) Model {
	m.Settings = s
	return m
}

// seconds writes thousandths of a second in seconds.
func seconds(millis int) string {
	return (time.Duration(millis) * time.Millisecond).String()
}

// confirms says whether a press on a page that is no pass may go through: a key still held down from
// the last pass, or from the last step, may not.
func (m *Model) confirms() bool {
	passes, afterPass := m.guard.Press(m.at)
	steps, afterStep := m.steps.Press(m.at)
	ok := afterPass
	if m.mode == modeFinish && len(m.st.Chains[m.st.Chain-1].Ticked) > 0 {
		ok = afterStep
	}
	m.guard, m.steps = passes, steps
	if !ok {
		m.ignore = "one press ignored: it came too soon after the last"
	}
	return ok
}

func (m Model) undo() (Model, tea.Cmd) {
	if m.st.Laid() == 0 {
		m.flash = "nothing to undo: no pass is laid"
		return m, nil
	}
	return m.save(counter.Event{Kind: counter.Undone, Pass: m.st.Laid()})
}

// actResting is the pause and the page shown on coming back. The next press counts no pass.
func (m Model) actResting(msg tea.KeyMsg) (Model, tea.Cmd) {
	k := m.Keys
	switch {
	case m.forward(msg):
		m.guard = m.guard.Counted(m.at)
		return m.save(counter.Event{Kind: counter.Resumed})
	case key.Matches(msg, k.Recount):
		return m.ask(m.recountPrompt()), nil
	case key.Matches(msg, k.Note):
		return m.ask(newPrompt(m.Deps, noteQuestion{})), nil
	case key.Matches(msg, k.Leave):
		return m.leaveNow()
	}
	return m, nil
}

// actLease asks once, after the first return pass, how the group lies.
func (m Model) actLease(msg tea.KeyMsg) (Model, tea.Cmd) {
	k, order := m.Keys, m.st.Plan.Spec.ReturnOrder
	switch {
	case m.forward(msg):
		if !m.confirms() {
			return m, nil
		}
		return m.save(counter.Event{Kind: counter.LeaseSeen, Order: order})
	case key.Matches(msg, k.Other):
		m.guard = m.guard.Counted(m.at)
		return m.save(counter.Event{Kind: counter.LeaseSeen, Order: order.Other()})
	case key.Matches(msg, k.Undo):
		return m.undo()
	case key.Matches(msg, k.Leave):
		return m.leaveNow()
	}
	return m, nil
}

// recountPrompt asks for what lies on the pegs; the number of passes begins with what is believed.
func (m Model) recountPrompt() prompt {
	return newPrompt(m.Deps, recountQuestion{}, "", "", "", "", fmt.Sprint(m.st.Laid()), "counted on the pegs")
}

// ask opens a prompt, and remembers the page to go back to.
func (m Model) ask(p prompt) Model {
	m.back, m.mode, m.prompt = m.mode, modePrompt, p
	return m
}

func (m Model) actPrompt(msg tea.KeyMsg) (Model, tea.Cmd) {
	if key.Matches(msg, m.Keys.Back) {
		m.mode = m.back
		return m, nil
	}
	next, cmd := m.prompt.update(msg, m.st)
	m.prompt = next
	if event, ok := m.prompt.answer(m.st); ok {
		return m.save(event)
	}
	return m, cmd
}

func (m Model) actFinish(msg tea.KeyMsg) (Model, tea.Cmd) {
	k := m.Keys
	switch {
	case m.forward(msg):
		if !m.confirms() {
			return m, nil
		}
		if step, ok := m.st.NextStep(); ok {
			return m.save(counter.Event{Kind: counter.Ticked, Step: step.ID})
		}
		return m.save(counter.Event{Kind: counter.Finished})
	case key.Matches(msg, k.Untick):
		return m.untick()
	case key.Matches(msg, k.Note):
		return m.ask(newPrompt(m.Deps, noteQuestion{})), nil
	case key.Matches(msg, k.Broken):
		return m.askEnd(counter.Broken), nil
	case key.Matches(msg, k.Knot):
		return m.askEnd(counter.Knot), nil
	case key.Matches(msg, k.Leave):
		return m.leaveNow()
	}
	return m, nil
}

// untick takes back the last finishing step, or the last pass where no step is ticked yet.
func (m Model) untick() (Model, tea.Cmd) {
	ticked := m.st.Chains[m.st.Chain-1].Ticked
	if len(ticked) == 0 {
		return m.undo()
	}
	return m.save(counter.Event{Kind: counter.Unticked, Step: ticked[len(ticked)-1]})
}

func (m Model) actDone(msg tea.KeyMsg) (Model, tea.Cmd) {
	switch {
	case key.Matches(msg, m.Keys.Leave):
		return m, send(LeaveMsg{})
	case key.Matches(msg, m.Keys.Home):
		return m, send(HomeMsg{})
	}
	return m, nil
}

// actLooking is a record that another window winds: it may be read, nothing else.
func (m Model) actLooking(msg tea.KeyMsg) (Model, tea.Cmd) {
	k := m.Keys
	switch {
	case key.Matches(msg, k.Refresh):
		return m, reopenCmd(m.Store, m.rec, true)
	case key.Matches(msg, k.Far):
		m.far = !m.far
	case key.Matches(msg, k.Back):
		return m, send(HomeMsg{})
	case key.Matches(msg, k.Leave):
		return m, send(LeaveMsg{})
	}
	return m, nil
}

// actBroken is a record that could not be written: the count has not moved, and can't move until the
// file has been read again.
func (m Model) actBroken(msg tea.KeyMsg) (Model, tea.Cmd) {
	switch {
	case key.Matches(msg, m.Keys.Retry):
		return m, reopenCmd(m.Store, m.rec, false)
	case key.Matches(msg, m.Keys.Leave):
		return m, send(LeaveMsg{})
	}
	return m, nil
}

// leaveNow pauses the warp and leaves. A warp that stands still already is left as it is.
func (m Model) leaveNow() (Model, tea.Cmd) {
	if m.st.Paused || m.st.Finished || m.st.Events == 0 || m.mode == modeResume {
		return m, send(LeaveMsg{})
	}
	m.leave = true
	return m.save(counter.Event{Kind: counter.Paused})
}

// saved takes the disk's answer.
func (m Model) saved(msg savedMsg) (Model, tea.Cmd) {
	m.busy = false
	if msg.err != nil {
		return m.notSaved(msg.err)
	}
	before, old := m.mode, m.st
	m.st, m.ignore, m.flash = msg.state, "", said(msg.event, old, msg.state)
	m.reck = m.reckon()
	m.mode = m.restingMode()
	if before == modePrompt && m.back == modeResume {
		m.mode = modeResume // the mill has still to be looked at
	}
	cmd := m.bellFor(msg.event, before)
	if m.leave {
		return m, send(LeaveMsg{})
	}
	return m.drain(tea.Batch(cmd, m.speak()))
}

// notSaved shows why an event was not taken. One that doesn't fit is only said; a record that can't be
// written stops everything.
func (m Model) notSaved(err error) (Model, tea.Cmd) {
	m.queue = nil
	switch {
	case m.leave:
		return m, send(LeaveMsg{})
	case m.Typing():
		m.prompt.problem = err.Error()
		if !errors.Is(err, counter.ErrBroken) {
			return m, nil
		}
	case !errors.Is(err, counter.ErrBroken):
		m.ignore = "not counted: " + err.Error()
		return m, m.ring()
	}
	m.mode, m.broken = modeBroken, err
	return m, m.ring()
}

// drain acts on the presses that waited for the disk. One that opens another screen hands it the rest.
func (m Model) drain(cmd tea.Cmd) (Model, tea.Cmd) {
	cmds := []tea.Cmd{cmd}
	for len(m.queue) > 0 && !m.busy {
		next := m.queue[0]
		m.queue = m.queue[1:]
		m.at = next.at
		var c tea.Cmd
		m, c = m.act(next.key)
		cmds = append(cmds, c)
	}
	return m, tea.Batch(cmds...)
}

// bellFor rings when the last pass comes up, and when the winding has to stop.
func (m Model) bellFor(e counter.Event, before mode) tea.Cmd {
	if e.Kind != counter.Laid {
		return nil
	}
	if m.Settings.Bell == BellAlways {
		return m.ring()
	}
	if m.mode == modeFinish && before != modeFinish {
		return m.ring()
	}
	for _, t := range m.due() {
		if t.Kind == plan.LastPassIsNext || t.Kind == plan.CountTie || t.Kind == plan.ChangeSetUp {
			return m.ring()
		}
	}
	return nil
}

// due lists what has to be done now, before the next pass.
func (m Model) due() []plan.Task {
	c, laid := m.st.Current(), m.st.Laid()
	return append(m.st.Plan.After(c, laid), m.st.Plan.Before(c, laid+1)...)
}

// dueNow is what is due and has no page of its own that was gone through already.
func (m Model) dueNow() []plan.Task {
	if !m.st.Plan.Striped() {
		return m.due()
	}
	return slices.DeleteFunc(m.due(), func(t plan.Task) bool { return t.Kind == plan.ThreadPaddle || t.Kind == plan.ChangeSetUp })
}

// coming lists what will have to be done after the pass that is being laid.
func (m Model) coming() []plan.Task {
	c, laid := m.st.Current(), m.st.Laid()
	return append(m.st.Plan.After(c, laid+1), m.st.Plan.Before(c, laid+2)...)
}

// said puts an event into words.
func said(e counter.Event, before, after counter.State) string {
	switch e.Kind {
	case counter.Undone:
		return fmt.Sprintf("pass %d taken back", e.Pass)
	case counter.Recounted:
		return fmt.Sprintf("the count is set to %d passes", e.Pass)
	case counter.Noted:
		return "note kept"
	case counter.LeaseSeen:
		return saidOrder(before, after)
	case counter.Unticked:
		return "step taken back"
	default:
		return saidTrouble(e, after)
	}
}

// saidOrder says what a look at the lease changed. Where the order is another than planned, the pass
// just laid may have had the wrong opening first.
func saidOrder(before, after counter.State) string {
	if before.Plan.Spec.ReturnOrder == after.Plan.Spec.ReturnOrder {
		return "the lease is as planned"
	}
	if after.Plan.Striped() && after.Laid() < before.Laid() {
		return fmt.Sprintf("the plan follows the %s order: take off what lies beyond pass %d and wind it anew", after.Plan.Spec.ReturnOrder, after.Laid())
	}
	was, is := before.Current().Passes[1].FirstOpening, after.Current().Passes[1].FirstOpening
	text := fmt.Sprintf("return order is now %s", after.Plan.Spec.ReturnOrder)
	if was != is && after.Laid() == 2 {
		return text + "; pass 2 had the other opening first: undo it (u) and lay it again"
	}
	return text
}

// reopenedMsg answers a command that read the record anew.
type reopenedMsg struct {
	rec *counter.Record
	err error
}

func reopenCmd(s counter.Store, old *counter.Record, look bool) tea.Cmd {
	return func() tea.Msg {
		if look {
			_ = old.Close()
			rec, err := Open(s, old.Path(), true)
			return reopenedMsg{rec, err}
		}
		rec, err := old.Reopen()
		return reopenedMsg{rec, err}
	}
}

func (m Model) reopened(msg reopenedMsg) (Model, tea.Cmd) {
	if msg.err != nil {
		m.mode, m.broken = modeBroken, msg.err
		return m, nil
	}
	far := m.far
	next := New(m.Deps, msg.rec, m.at)
	next.far = far
	return next, nil
}

// Open opens a record for winding, or only to look.
func Open(s counter.Store, path string, look bool) (*counter.Record, error) {
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
