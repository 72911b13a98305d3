package mill

import (
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"millside/counter"
	"millside/counter/session"
)

// click is a click of the mouse: the pass key that no text field takes for its own.
var click = tea.KeyMsg{Type: tea.KeyPgDown}

// act takes one key, or keeps it until the disk has answered.
func (m Model) act(msg tea.KeyMsg) (Model, tea.Cmd) {
	if m.s.Waiting() {
		if len(m.queue) < queueLimit {
			m.queue = append(slices.Clone(m.queue), press{msg, m.at})
			return m, nil
		}
		return m.refuse("not counted: the disk is still writing")
	}
	m.word = session.Message{}
	switch m.over {
	case overPrompt:
		return m.actPrompt(msg)
	case overHelp:
		return m.actHelp(msg)
	}
	return m.actPage(msg)
}

// refuse does nothing, and says so with the sound of a refusal.
func (m Model) refuse(why string) (Model, tea.Cmd) {
	return m.Told(why), m.sound(session.CueRefused)
}

// actHelp is the list of keys: the pass key counts as it does on the page below, any other key goes back.
func (m Model) actHelp(msg tea.KeyMsg) (Model, tea.Cmd) {
	m.over = overNothing
	if key.Matches(msg, m.Keys.Laid) {
		return m.take(session.Press{})
	}
	return m, nil
}

// actPage is a key on a page of the conversation. What the session is not asked is the skin's own affair.
func (m Model) actPage(msg tea.KeyMsg) (Model, tea.Cmd) {
	k := m.Keys
	switch {
	case key.Matches(msg, k.Laid):
		return m.take(session.Press{})
	case key.Matches(msg, k.Leave):
		return m.take(session.Leave{})
	case key.Matches(msg, k.Far):
		m.far = !m.far
		return m, nil
	case key.Matches(msg, k.Help):
		m.over = overHelp
		return m, nil
	case key.Matches(msg, k.Settings):
		return m.openSettings()
	}
	switch m.s.Stage(m.at) {
	case session.Failed:
		if key.Matches(msg, k.Retry) {
			return m, reopenCmd(m.Store, m.rec, false)
		}
		if key.Matches(msg, k.Beside) {
			return m, besideCmd(m.rec)
		}
		return m, nil
	case session.OnlyLooking:
		return m.actLooking(msg)
	case session.Done:
		return m.actDone(msg)
	}
	if key.Matches(msg, k.Home) {
		m.far = false // a stray press does no more than that
		return m, nil
	}
	return m.actWinding(msg)
}

// actWinding is a key that means the same on all pages of a warp that is wound.
func (m Model) actWinding(msg tea.KeyMsg) (Model, tea.Cmd) {
	k := m.Keys
	switch {
	case key.Matches(msg, k.Recount):
		return m.ask(session.AskRecount{}), nil
	case key.Matches(msg, k.Note):
		return m.ask(session.AskNote{}), nil
	case key.Matches(msg, k.Broken):
		return m.ask(session.AskMark{What: counter.Broken}), nil
	case key.Matches(msg, k.Knot):
		return m.ask(session.AskMark{What: counter.Knot}), nil
	case key.Matches(msg, k.Package):
		return m.ask(session.AskPackage{}), nil
	}
	if in := m.intent(msg); in != nil {
		return m.take(in)
	}
	return m, nil
}

// intent is what a key means that asks for no text; nil where it means nothing.
func (m Model) intent(msg tea.KeyMsg) session.Intent {
	k := m.Keys
	for _, means := range []struct {
		binding key.Binding
		intent  session.Intent
	}{
		{k.Undo, session.TakeBack{}}, {k.Redo, session.Redo{}}, {k.Pause, session.Pause{}},
		{k.WrongTurn, session.WrongTurn{}}, {k.Righted, session.Righted{}},
		{k.Missed, session.Mark{What: counter.MissedOpening}}, {k.WrongPeg, session.Mark{What: counter.WrongPeg}},
		{k.Tie, session.TieMade{}}, {k.NoTie, session.TieOff{}}, {k.Withdraw, session.DropMark{}},
		{k.Yes, session.Answer{Says: session.Yes}}, {k.Other, session.Answer{Says: session.Other}},
		{k.Later, session.Answer{Says: session.Later}},
		{k.Foot, session.Foot{Position: m.s.State().Plan.Spec.Foot.Other()}},
	} {
		if key.Matches(msg, means.binding) {
			return means.intent
		}
	}
	return nil
}

// actLooking is a record that another window winds: it may be read, nothing else.
func (m Model) actLooking(msg tea.KeyMsg) (Model, tea.Cmd) {
	switch {
	case key.Matches(msg, m.Keys.Refresh):
		return m, reopenCmd(m.Store, m.rec, true)
	case key.Matches(msg, m.Keys.Home):
		return m, send(HomeMsg{})
	}
	return m, nil
}

// actDone is the page of a finished warp.
func (m Model) actDone(msg tea.KeyMsg) (Model, tea.Cmd) {
	switch {
	case key.Matches(msg, m.Keys.Home):
		return m, send(HomeMsg{})
	case key.Matches(msg, m.Keys.Reopen):
		return m.ask(session.AskReopen{}), nil
	}
	return m, nil
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

// ask opens a page that asks for a text.
func (m Model) ask(ask session.Ask) Model {
	m.over, m.prompt = overPrompt, newPrompt(m.Deps, ask, m.s)
	return m
}

// actPrompt is a key on a page that asks for a text. A pass key that a text has no use for, such as a
// clicker sends, counts the pass and leaves the page while nothing is typed; afterwards it is refused.
func (m Model) actPrompt(msg tea.KeyMsg) (Model, tea.Cmd) {
	if key.Matches(msg, m.Keys.Back) {
		m.over = overNothing
		return m, nil
	}
	if key.Matches(msg, m.Keys.Laid) && !m.prompt.takes(msg) {
		if m.prompt.touched {
			return m.refuse("not counted: finish this page first, or leave it with " + m.Keys.Back.Help().Key)
		}
		m.over = overNothing
		return m.take(session.Press{})
	}
	next, cmd := m.prompt.update(msg, m.s)
	m.prompt = next
	if in := m.prompt.answer(m.s); in != nil {
		return m.take(in)
	}
	return m, cmd
}
