package mill

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"millside/counter/session"
	"millside/plan/figure"
	"millside/tui/keys"
	"millside/tui/look"
)

// SettingsPage is the page for keys and sounds. A key is taken only after it was asked for, shown and
// confirmed: a stray press changes nothing.
type SettingsPage struct {
	styles   look.Styles
	keys     keys.Map
	settings Settings
	save     func(Settings) error
	sound    func(session.Cue)
	step     binding
	pressed  tea.KeyMsg // the key that waits to be confirmed
	at       int        // the line that is chosen: a sound, or behind them the units and the decimal sign
	said     string
	problem  string
}

// binding is how far the taking of a key has come.
type binding uint8

const (
	bindingNone binding = iota
	bindingAsks         // the next key is shown
	bindingShown
)

// SettingsDoneMsg leaves the settings page. The settings are on their way to the disk already.
type SettingsDoneMsg struct{ Settings Settings }

// KeptMsg answers the command that wrote the settings.
type KeptMsg struct{ Err error }

// Problem says why the settings could not be kept; empty if they could.
func (m KeptMsg) Problem() string {
	if m.Err == nil {
		return ""
	}
	return "the settings could not be kept: " + m.Err.Error()
}

// NewSettingsPage shows the settings, and keeps changed ones with save; nil keeps them for this run only.
// The sounds can be tried with sound; nil is silent.
func NewSettingsPage(styles look.Styles, k keys.Map, s Settings, save func(Settings) error,
	sound func(session.Cue)) SettingsPage {
	return SettingsPage{styles: styles, keys: k, settings: s, save: save, sound: sound}
}

// Update takes a key, or hears whether the settings could be written.
func (m SettingsPage) Update(msg tea.Msg) (SettingsPage, tea.Cmd) {
	switch msg := msg.(type) {
	case KeptMsg:
		m.problem = msg.Problem()
	case tea.MouseMsg:
		if msg.Action == tea.MouseActionPress && msg.Button == tea.MouseButtonLeft {
			return m.refuse()
		}
	case tea.KeyMsg:
		m.said, m.problem = "", ""
		switch m.step {
		case bindingAsks:
			return m.show(msg), nil
		case bindingShown:
			return m.confirm(msg)
		}
		return m.act(msg)
	}
	return m, nil
}

func (m SettingsPage) act(msg tea.KeyMsg) (SettingsPage, tea.Cmd) {
	n := len(Cues()) + 2
	switch k := m.keys; {
	case key.Matches(msg, k.Back):
		return m, send(SettingsDoneMsg{m.settings})
	case key.Matches(msg, k.Add):
		if len(m.settings.Keys) >= maxKeys {
			m.problem = "no more keys can be kept: forget one first"
			return m, nil
		}
		m.step = bindingAsks
	case key.Matches(msg, k.PrevSound):
		m.at = (m.at + n - 1) % n
	case key.Matches(msg, k.NextSound):
		m.at = (m.at + 1) % n
	case key.Matches(msg, k.Sound):
		return m.toggle()
	case key.Matches(msg, k.Forget):
		return m.forget()
	case key.Matches(msg, k.Laid) || slices.Contains(m.settings.Keys, msg.String()):
		return m.refuse()
	}
	return m, nil
}

// refuse is a pass key on this page.
func (m SettingsPage) refuse() (SettingsPage, tea.Cmd) {
	m.problem = "not counted: leave the settings first, with " + m.keys.Back.Help().Key
	return m, m.play(session.CueRefused)
}

func (m SettingsPage) play(c session.Cue) tea.Cmd {
	if m.sound == nil || m.settings.Silent(c) {
		return nil
	}
	sound := m.sound
	return func() tea.Msg { sound(c); return nil }
}

// toggle turns the chosen sound on or off, and lets it be heard where it is on.
func (m SettingsPage) toggle() (SettingsPage, tea.Cmd) {
	switch m.at - len(Cues()) {
	case 0:
		m.settings.Units = other(m.settings.units(), unitsWords)
		return m.keep("a new warp begins in " + m.settings.Units + " units")
	case 1:
		m.settings.Sign = other(m.settings.sign(), signWords)
		comma := m.settings.Comma()
		next, cmd := m.keep("numbers are shown with a decimal " + m.settings.Sign)
		return next, tea.Batch(cmd, func() tea.Msg { figure.WriteComma(comma); return nil })
	}
	c := Cues()[m.at]
	m.settings = m.settings.toggled(c)
	word := "on"
	if m.settings.Silent(c) {
		word = "off"
	}
	next, cmd := m.keep(fmt.Sprintf("the sound “%s” is %s", c, word))
	return next, tea.Batch(cmd, m.play(c))
}

// other is the other of two words.
func other(word string, words []string) string {
	if word == words[0] {
		return words[1]
	}
	return words[0]
}

func (m SettingsPage) forget() (SettingsPage, tea.Cmd) {
	n := len(m.settings.Keys)
	if n == 0 {
		m.said = "there is no key of your own to forget"
		return m, nil
	}
	gone := m.settings.Keys[n-1]
	m.settings.Keys = slices.Clone(m.settings.Keys[:n-1])
	return m.keep(fmt.Sprintf("%q is forgotten", gone))
}

// show shows the key that was pressed, unless it can't be taken.
func (m SettingsPage) show(msg tea.KeyMsg) SettingsPage {
	m.step = bindingNone
	name := msg.String()
	switch {
	case key.Matches(msg, m.keys.Laid) || slices.Contains(m.settings.Keys, name):
		m.said = fmt.Sprintf("%q works already", shown(name))
	case !m.keys.MayBeOwn(msg):
		m.problem = fmt.Sprintf("%q must keep its meaning: %s", shown(name), m.keys.Meaning(msg))
	case len(name) > maxKeyName || strings.TrimSpace(name) == "":
		m.problem = "this key has no name that could be kept"
	default:
		m.step, m.pressed = bindingShown, msg
	}
	return m
}

// shown is a key's name as a person reads it.
func shown(name string) string {
	if name == " " {
		return "space"
	}
	return name
}

// confirm takes the key that is shown, or gives it up.
func (m SettingsPage) confirm(msg tea.KeyMsg) (SettingsPage, tea.Cmd) {
	m.step = bindingNone
	name := m.pressed.String()
	if !key.Matches(msg, m.keys.Confirm) {
		m.said = fmt.Sprintf("%q was not taken", shown(name))
		return m, nil
	}
	m.settings.Keys = append(slices.Clone(m.settings.Keys), name)
	return m.keep(fmt.Sprintf("%q now means “this pass is laid”", shown(name)))
}

// keep is the command that writes the settings.
func (m SettingsPage) keep(said string) (SettingsPage, tea.Cmd) {
	m.said = said
	if m.save == nil {
		return m, nil
	}
	save, s := m.save, m.settings
	return m, func() tea.Msg { return KeptMsg{save(s)} }
}

// View draws the page at exactly w by h cells.
func (m SettingsPage) View(w, h int) string {
	s, k := m.styles, m.keys
	title, line := "SETTINGS", []key.Binding{k.Add, k.NextSound, k.Sound, k.Forget, k.Back}
	if w < roomForKeys {
		line = []key.Binding{keys.As(k.Add, "add"), keys.As(k.Forget, "forget"), k.NextSound,
			keys.As(k.Sound, "on/off"), k.Back}
	}
	switch m.step {
	case bindingAsks:
		title, line = "PRESS THE KEY, THE PEDAL OR THE CLICKER", nil
	case bindingShown:
		title, line = fmt.Sprintf("%q WAS PRESSED", shown(m.pressed.String())),
			[]key.Binding{k.Confirm, keys.As(k.Back, "give it up")}
	}
	lines := []string{s.OutBand.Render(look.Pad("  "+title, w)), ""}
	lines = append(lines, m.keyLines(w)...)
	lines = append(lines, m.soundLines(w)...)
	foot := []string{look.Fit("  "+s.Good.Render(m.said), w)}
	if m.problem != "" {
		foot = look.Indent(look.Painted(look.Wrap("! "+m.problem, w-4), s.Alarm), 2)
	}
	if line != nil {
		foot = append(foot, s.KeyLine(w, line...))
	}
	return look.WithFoot(lines, foot, w, h)
}

// keyLines are the keys, and where one is being taken what it would lose.
func (m SettingsPage) keyLines(w int) []string {
	s := m.styles
	switch m.step {
	case bindingAsks:
		return append(look.Indent(look.Wrap("The next key that comes is shown here, and nothing is changed yet.", w-4),
			2), "")
	case bindingShown:
		text := fmt.Sprintf("Use %q for “this pass is laid”?", shown(m.pressed.String()))
		if loses := m.keys.Meaning(m.pressed); loses != "" {
			text += fmt.Sprintf(" At the mill it would then no longer mean “%s”.", loses)
		}
		return append(look.Indent(look.Painted(look.Wrap(text, w-4), s.Strong), 2), "")
	}
	own := "none yet"
	if len(m.settings.Keys) > 0 {
		own = strings.Join(m.settings.Keys, "  ")
	}
	row := func(name, text string) []string {
		return look.Beside([]string{"  " + s.Dim.Render(name)}, look.Wrap(text, w-22), 20, 1)
	}
	out := row("this pass is laid", keys.Names(m.keys.Laid)+", a click of the mouse")
	return append(append(out, row("your own", own)...), "")
}

// soundLines are the sounds, each on or off.
func (m SettingsPage) soundLines(w int) []string {
	s := m.styles
	out := []string{look.Fit("  "+s.Dim.Render("sounds, each by its rhythm"), w)}
	for i, c := range Cues() {
		mark, style, on := "    ", s.Plain, "on "
		if i == m.at {
			mark, style = "  ▸ ", s.Strong
		}
		if m.settings.Silent(c) {
			on = "off"
		}
		out = append(out, look.Fit(mark+style.Render(look.Pad(c.String(), 16))+" "+on+"   "+s.Dim.Render(rhythmText(c)),
			w))
	}
	for i, line := range [][2]string{{unitsLine, m.settings.units()}, {signLine, m.settings.sign()}} {
		mark, style := "    ", s.Plain
		if m.at == len(Cues())+i {
			mark, style = "  ▸ ", s.Strong
		}
		out = append(out, look.Fit(mark+style.Render(look.Pad(line[0], 16))+" "+line[1], w))
	}
	return out
}

// rhythmText writes a rhythm as dots, near or far from one another.
func rhythmText(c session.Cue) string {
	text := "•"
	for _, gap := range Rhythm(c) {
		if gap.Milliseconds() > 400 {
			text += "    "
		}
		text += " •"
	}
	return text
}
