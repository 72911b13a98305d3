package mill

import (
	"fmt"
	"time"

	"millside/plan"
	"millside/plan/sheet"

	tea "github.com/charmbracelet/bubbletea"

	"millside/counter"
	"millside/counter/journal"
	"millside/counter/session"
	"millside/tui/keys"
	"millside/tui/look"
)

// Deps is what the screen at the mill may use.
type Deps struct {
	Store  journal.Store
	Styles look.Styles
	Keys   keys.Map
	// Settings are the weaver's own.
	Settings Settings
	// Sound lets a cue be heard; it returns at once. Nil doesn't.
	Sound func(session.Cue)
	// Say is told each step in few words; nil for no one. It returns at once.
	Say func(string)
	// Tick gives a message after a time, as [tea.Tick] does; nil never does.
	Tick func(time.Duration, func(time.Time) tea.Msg) tea.Cmd
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

// over is what lies over the page of the conversation.
type over uint8

const (
	overNothing over = iota
	overHelp         // the list of keys
	overPrompt       // a page that asks for a text
)

// press is a key, and when it came.
type press struct {
	key tea.KeyMsg
	at  time.Time
}

// queueLimit bounds the keys that wait for the disk.
const queueLimit = 32

// Model is the skin of a [session.Session] on a full screen: it turns keys into intents, gives the record
// what the session wants written, and draws the session's page.
type Model struct {
	Deps
	at     time.Time // when the message came that is being answered
	rec    *journal.Record
	s      session.Session
	queue  []press // keys that wait for the disk
	writes int     // how many events were handed to the disk
	over   over
	far    bool // the far view
	prompt prompt
	// word is what the skin itself has to say, until the next key; the session's own message otherwise.
	word session.Message
	// runs are the stripes of the plan that they were made for; they are made anew only for another plan.
	of   *plan.Plan
	runs []plan.EndRun
	// handOver is what the loom must know, once the warp is finished.
	handOver sheet.Part
}

// New shows a record, opened for winding or only to look, at the time now.
func New(d Deps, rec *journal.Record, now time.Time) Model {
	m := Model{Deps: d, rec: rec, at: now}
	m.Keys = d.Keys.WithOwn(d.Settings.Keys)
	m.s = session.New(session.Opening{State: rec.State(), All: rec.All(), Torn: rec.Torn(), Lost: rec.Lost().Lines,
		OnlyLooking: rec.ReadOnly()})
	return m.followed()
}

// Init says where the winding stands.
func (m Model) Init() tea.Cmd { return m.heard(m.s.Begin(m.at)) }

// Record is the record that is shown.
func (m Model) Record() *journal.Record { return m.rec }

// Typing says that letters are text for a field, and not keys.
func (m Model) Typing() bool { return m.over == overPrompt }

// WithSettings takes over changed settings.
func (m Model) WithSettings(s Settings, k keys.Map) Model {
	m.Settings, m.Keys = s, k.WithOwn(s.Keys)
	return m
}

// Told shows a word of the program's own until the next key.
func (m Model) Told(text string) Model {
	m.word = session.Message{Text: text, Level: session.Alarm}
	return m
}

// followed works out what is dear and follows from the record: the stripes, and once the warp is finished the
// hand-over.
func (m Model) followed() Model {
	st := m.s.State()
	if st.Plan != m.of {
		m.of, m.runs = st.Plan, nil
		if st.Plan.Striped() {
			m.runs = st.Plan.EndRuns()
		}
	}
	if st.Finished && len(m.handOver.Rows) == 0 {
		m.handOver = m.rec.HandOver()
	}
	return m
}

// savedMsg answers the command that wrote one event.
type savedMsg struct {
	event counter.Event
	state counter.State
	err   error
	took  time.Duration
}

// savingMsg comes a while after an event was handed to the disk: the nth.
type savingMsg struct{ n int }

// Update takes a message, and the time at which it came.
func (m Model) Update(msg tea.Msg, at time.Time) (Model, tea.Cmd) {
	m.at = at
	switch msg := msg.(type) {
	case savedMsg:
		return m.saved(msg)
	case savingMsg:
		if saving, ok := m.s.Saving(m.at, m.at.Add(session.SavingAfter)); ok && msg.n == m.writes {
			m.word = saving
		}
		return m, nil
	case reopenedMsg:
		return m.reopened(msg)
	case tea.ResumeMsg:
		next, cmd := m.take(session.LookAgain{})
		return next, tea.Batch(tea.ClearScreen, cmd)
	case tea.MouseMsg:
		if msg.Action != tea.MouseActionPress || msg.Button != tea.MouseButtonLeft {
			return m, nil
		}
		return m.act(click)
	case tea.KeyMsg:
		return m.act(msg)
	}
	if m.Typing() {
		next, cmd := m.prompt.update(msg, m.s)
		m.prompt = next
		return m, cmd
	}
	return m, nil
}

// take hands an intent to the session, with the time at which its key came.
func (m Model) take(in session.Intent) (Model, tea.Cmd) {
	next, reply := m.s.Take(in, m.at)
	m.s = next
	if reply.Writes() {
		rec, e := m.rec, reply.Event
		m.writes++
		n := m.writes
		write := func() tea.Msg {
			began := time.Now()
			st, err := rec.Append(e)
			return savedMsg{event: e, state: st, err: err, took: time.Since(began)}
		}
		if m.Tick == nil {
			return m, write
		}
		return m, tea.Batch(write, m.Tick(session.SavingAfter, func(time.Time) tea.Msg { return savingMsg{n} }))
	}
	if m.over == overPrompt && reply.Cue == session.CueRefused {
		m.prompt.problem = m.s.Message().Text
	}
	return m, m.heard(reply)
}

// heard lets the winder hear a reply, and leaves where it says so.
func (m Model) heard(r session.Reply) tea.Cmd {
	cmds := []tea.Cmd{m.sound(r.Cue)}
	if m.Say != nil && r.Short != "" {
		say, text := m.Say, r.Short
		cmds = append(cmds, func() tea.Msg { say(text); return nil })
	}
	if r.Over {
		cmds = append(cmds, send(LeaveMsg{}))
	}
	return tea.Batch(cmds...)
}

func (m Model) sound(c session.Cue) tea.Cmd {
	if m.Sound == nil || c == session.CueNone || m.Settings.Silent(c) {
		return nil
	}
	sound := m.Sound
	return func() tea.Msg { sound(c); return nil }
}

// saved takes the disk's answer.
func (m Model) saved(msg savedMsg) (Model, tea.Cmd) {
	m.word = session.Message{}
	if msg.err != nil {
		next, reply := m.s.NotSaved(msg.err)
		m.s, m.queue = next, nil
		switch {
		case m.s.Err() != nil:
			m.over = overNothing
		case m.over == overPrompt:
			m.prompt.problem = m.s.Message().Text
		}
		return m, m.heard(reply)
	}
	next, reply := m.s.Saved(msg.event, msg.state)
	m.s = next.Slow(msg.took)
	if m.over == overPrompt {
		m.over = overNothing
	}
	m = m.followed()
	if reply.Over {
		return m, m.heard(reply)
	}
	return m.drain(m.heard(reply))
}

// drain acts on the keys that waited for the disk.
func (m Model) drain(cmd tea.Cmd) (Model, tea.Cmd) {
	cmds := []tea.Cmd{cmd}
	for len(m.queue) > 0 && !m.s.Waiting() {
		next := m.queue[0]
		m.queue = m.queue[1:]
		m.at = next.at
		var c tea.Cmd
		m, c = m.act(next.key)
		cmds = append(cmds, c)
	}
	return m, tea.Batch(cmds...)
}

// reopenedMsg answers a command that read the record anew.
type reopenedMsg struct {
	rec *journal.Record
	err error
}

func reopenCmd(s journal.Store, old *journal.Record, readOnly bool) tea.Cmd {
	return func() tea.Msg {
		if readOnly {
			_ = old.Close()
			rec, err := Open(s, old.Path(), true)
			return reopenedMsg{rec, err}
		}
		rec, err := old.Reopen()
		return reopenedMsg{rec, err}
	}
}

// besideCmd saves what was counted as a new record.
func besideCmd(old *journal.Record) tea.Cmd {
	return func() tea.Msg {
		rec, err := old.SaveBeside()
		if err == nil {
			_ = old.Close() // it takes nothing more
		}
		return reopenedMsg{rec, err}
	}
}

// NotSaved says why the record can't be written; nil if it can be.
func (m Model) NotSaved() error { return m.s.Err() }

func (m Model) reopened(msg reopenedMsg) (Model, tea.Cmd) {
	if msg.err != nil && m.s.Err() != nil {
		next, reply := m.s.StillFailed(msg.err)
		m.s = next
		return m, m.heard(reply)
	}
	if msg.err != nil {
		return m.Told(msg.err.Error()), m.sound(session.CueRefused)
	}
	next := New(m.Deps, msg.rec, m.at).WithSettings(m.Settings, m.Deps.Keys)
	next.far = m.far
	return next, next.Init()
}

// Open opens a record for winding, or to be read only.
func Open(s journal.Store, path string, readOnly bool) (*journal.Record, error) {
	open := journal.Open
	if readOnly {
		open = journal.OpenReadOnly
	}
	rec, err := open(s.FS, path)
	if err != nil {
		return nil, fmt.Errorf("opening the record: %w", err)
	}
	return rec, nil
}
