package tui

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"millside/counter"
	"millside/plan"
)

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

// winding walks through a half-wound warp. What it shows is a function of its state and mode; every
// change goes through the record first.
type winding struct {
	deps
	rec    *counter.Record
	st     counter.State
	mode   mode
	far    bool          // the far view
	guard  counter.Guard // for passes, and for the first press after one
	steps  counter.Guard // for finishing steps: some are ticked off together
	busy   bool          // a line is on its way to the disk
	queue  []tea.KeyMsg  // presses that wait for the disk
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

func newWinding(d deps, rec *counter.Record) winding {
	m := winding{deps: d, rec: rec, st: rec.State()}
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
func (m winding) restingMode() mode {
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
func (m winding) asksLease() bool {
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

func (m winding) typing() bool { return m.mode == modePrompt }

// savedMsg answers a command that wrote one event.
type savedMsg struct {
	event counter.Event
	state counter.State
	err   error
}

// save writes an event. Until the answer comes nothing else is counted; keys wait in a queue.
func (m winding) save(e counter.Event) (winding, tea.Cmd) {
	e.At = m.now()
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

func (m winding) update(msg tea.Msg) (screen, tea.Cmd) {
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
	if m.typing() {
		next, cmd := m.prompt.update(msg, m.st)
		m.prompt = next
		return m, cmd
	}
	return m, nil
}

// act takes one key, or keeps it until the disk has answered.
func (m winding) act(msg tea.KeyMsg) (screen, tea.Cmd) {
	if m.busy {
		if len(m.queue) < queueLimit {
			m.queue = append(m.queue[:len(m.queue):len(m.queue)], msg)
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

func (m winding) actWind(msg tea.KeyMsg) (screen, tea.Cmd) {
	k := m.keys
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
		return m.ask(newPrompt(m.deps, noteQuestion{})), nil
	case key.Matches(msg, k.Far):
		m.far = !m.far
		return m, nil
	case key.Matches(msg, k.Back):
		m.far = false
		return m, nil
	case key.Matches(msg, k.Help):
		m.mode = modeHelp
		return m, nil
	case key.Matches(msg, k.Settings) && m.prefs != nil:
		return m.settings(), nil
	case key.Matches(msg, k.Leave):
		return m.leaveNow()
	}
	return m.actTrouble(msg)
}

// layPass counts a pass, unless the press came faster than a hand can wind.
func (m winding) layPass() (screen, tea.Cmd) {
	if m.st.Laid() > 0 && m.st.NeedsLook(m.now(), longBreak) {
		m.guard = m.guard.Counted(m.now())
		m.mode = modeResume
		return m, nil
	}
	guard, counts := m.guard.Press(m.now())
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

// settings opens the settings page; what waits for the disk is that page's affair from then on.
func (m winding) settings() screen {
	back := m
	back.queue = nil
	return settings{deps: m.deps, back: back}
}

// seconds writes thousandths of a second in seconds.
func seconds(millis int) string {
	return (time.Duration(millis) * time.Millisecond).String()
}

// confirms says whether a press on a page that is no pass may go through: a key still held down from
// the last pass, or from the last step, may not.
func (m *winding) confirms() bool {
	passes, afterPass := m.guard.Press(m.now())
	steps, afterStep := m.steps.Press(m.now())
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

func (m winding) undo() (screen, tea.Cmd) {
	if m.st.Laid() == 0 {
		m.flash = "nothing to undo: no pass is laid"
		return m, nil
	}
	return m.save(counter.Event{Kind: counter.Undone, Pass: m.st.Laid()})
}

// actResting is the pause and the page shown on coming back. The next press counts no pass.
func (m winding) actResting(msg tea.KeyMsg) (screen, tea.Cmd) {
	k := m.keys
	switch {
	case m.forward(msg):
		m.guard = m.guard.Counted(m.now())
		return m.save(counter.Event{Kind: counter.Resumed})
	case key.Matches(msg, k.Recount):
		return m.ask(m.recountPrompt()), nil
	case key.Matches(msg, k.Note):
		return m.ask(newPrompt(m.deps, noteQuestion{})), nil
	case key.Matches(msg, k.Leave):
		return m.leaveNow()
	}
	return m, nil
}

// actLease asks once, after the first return pass, how the group lies.
func (m winding) actLease(msg tea.KeyMsg) (screen, tea.Cmd) {
	k, order := m.keys, m.st.Plan.Spec.ReturnOrder
	switch {
	case m.forward(msg):
		if !m.confirms() {
			return m, nil
		}
		return m.save(counter.Event{Kind: counter.LeaseSeen, Order: order})
	case key.Matches(msg, k.Other):
		m.guard = m.guard.Counted(m.now())
		return m.save(counter.Event{Kind: counter.LeaseSeen, Order: order.Other()})
	case key.Matches(msg, k.Undo):
		return m.undo()
	case key.Matches(msg, k.Leave):
		return m.leaveNow()
	}
	return m, nil
}

// recountPrompt asks for what lies on the pegs; the number of passes begins with what is believed.
func (m winding) recountPrompt() prompt {
	return newPrompt(m.deps, recountQuestion{}, "", "", "", "", fmt.Sprint(m.st.Laid()), "counted on the pegs")
}

// ask opens a prompt, and remembers the page to go back to.
func (m winding) ask(p prompt) winding {
	m.back, m.mode, m.prompt = m.mode, modePrompt, p
	return m
}

func (m winding) actPrompt(msg tea.KeyMsg) (screen, tea.Cmd) {
	if key.Matches(msg, m.keys.Back) {
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

func (m winding) actFinish(msg tea.KeyMsg) (screen, tea.Cmd) {
	k := m.keys
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
		return m.ask(newPrompt(m.deps, noteQuestion{})), nil
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
func (m winding) untick() (screen, tea.Cmd) {
	ticked := m.st.Chains[m.st.Chain-1].Ticked
	if len(ticked) == 0 {
		return m.undo()
	}
	return m.save(counter.Event{Kind: counter.Unticked, Step: ticked[len(ticked)-1]})
}

func (m winding) actDone(msg tea.KeyMsg) (screen, tea.Cmd) {
	switch {
	case key.Matches(msg, m.keys.Leave):
		return m, send(leaveMsg{})
	case key.Matches(msg, m.keys.Home):
		return m, send(goHomeMsg{})
	}
	return m, nil
}

// actLooking is a record that another window winds: it may be read, nothing else.
func (m winding) actLooking(msg tea.KeyMsg) (screen, tea.Cmd) {
	k := m.keys
	switch {
	case key.Matches(msg, k.Refresh):
		return m, reopenCmd(m.store, m.rec, true)
	case key.Matches(msg, k.Far):
		m.far = !m.far
	case key.Matches(msg, k.Back):
		return m, send(goHomeMsg{})
	case key.Matches(msg, k.Leave):
		return m, send(leaveMsg{})
	}
	return m, nil
}

// actBroken is a record that could not be written: the count has not moved, and can't move until the
// file has been read again.
func (m winding) actBroken(msg tea.KeyMsg) (screen, tea.Cmd) {
	switch {
	case key.Matches(msg, m.keys.Retry):
		return m, reopenCmd(m.store, m.rec, false)
	case key.Matches(msg, m.keys.Leave):
		return m, send(leaveMsg{})
	}
	return m, nil
}

// leaveNow pauses the warp and leaves. A warp that stands still already is left as it is.
func (m winding) leaveNow() (screen, tea.Cmd) {
	if m.st.Paused || m.st.Finished || m.st.Events == 0 || m.mode == modeResume {
		return m, send(leaveMsg{})
	}
	m.leave = true
	return m.save(counter.Event{Kind: counter.Paused})
}

// saved takes the disk's answer.
func (m winding) saved(msg savedMsg) (screen, tea.Cmd) {
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
		return m, send(leaveMsg{})
	}
	return m.drain(tea.Batch(cmd, m.speak()))
}

// notSaved shows why an event was not taken. One that doesn't fit is only said; a record that can't be
// written stops everything.
func (m winding) notSaved(err error) (screen, tea.Cmd) {
	m.queue = nil
	switch {
	case m.leave:
		return m, send(leaveMsg{})
	case m.typing():
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
func (m winding) drain(cmd tea.Cmd) (screen, tea.Cmd) {
	cmds := []tea.Cmd{cmd}
	for len(m.queue) > 0 && !m.busy {
		msg, rest := m.queue[0], m.queue[1:]
		m.queue = rest
		next, c := m.act(msg)
		cmds = append(cmds, c)
		same, ok := next.(winding)
		if !ok {
			for _, key := range rest {
				next, c = next.update(key)
				cmds = append(cmds, c)
			}
			return next, tea.Batch(cmds...)
		}
		m = same
	}
	return m, tea.Batch(cmds...)
}

// bellFor rings when the last pass comes up, and when the winding has to stop.
func (m winding) bellFor(e counter.Event, before mode) tea.Cmd {
	if e.Kind != counter.Laid {
		return nil
	}
	if m.prefs != nil && m.prefs.Bell == BellAlways {
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
func (m winding) due() []plan.Task {
	c, laid := m.st.Current(), m.st.Laid()
	return append(m.st.Plan.After(c, laid), m.st.Plan.Before(c, laid+1)...)
}

// dueNow is what is due and has no page of its own that was gone through already.
func (m winding) dueNow() []plan.Task {
	if !m.st.Plan.Striped() {
		return m.due()
	}
	return slices.DeleteFunc(m.due(), func(t plan.Task) bool { return t.Kind == plan.ThreadPaddle || t.Kind == plan.ChangeSetUp })
}

// coming lists what will have to be done after the pass that is being laid.
func (m winding) coming() []plan.Task {
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
			rec, err := openRecord(s, old.Path(), true)
			return reopenedMsg{rec, err}
		}
		rec, err := old.Reopen()
		return reopenedMsg{rec, err}
	}
}

func (m winding) reopened(msg reopenedMsg) (screen, tea.Cmd) {
	if msg.err != nil {
		m.mode, m.broken = modeBroken, msg.err
		return m, nil
	}
	far := m.far
	next := newWinding(m.deps, msg.rec)
	next.far = far
	return next, nil
}
