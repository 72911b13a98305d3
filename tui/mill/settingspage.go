package mill

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"millside/tui/keys"
	"millside/tui/look"
)

// SettingsPage is the page on which a weaver presses the thing to be used.
type SettingsPage struct {
	styles   look.Styles
	keys     keys.Map
	settings Settings
	save     func(Settings) error
	said     string
	problem  string
}

// SettingsDoneMsg leaves the settings page. The settings have been written already.
type SettingsDoneMsg struct{ Settings Settings }

// keptMsg answers the command that wrote the settings.
type keptMsg struct{ err error }

// NewSettingsPage shows the settings, and keeps changed ones with save; nil keeps them for this run only.
func NewSettingsPage(styles look.Styles, k keys.Map, s Settings, save func(Settings) error) SettingsPage {
	return SettingsPage{styles: styles, keys: k, settings: s, save: save}
}

// Update takes a key, or hears whether the settings could be written.
func (m SettingsPage) Update(msg tea.Msg) (SettingsPage, tea.Cmd) {
	switch msg := msg.(type) {
	case keptMsg:
		if msg.err != nil {
			m.problem = "the settings could not be kept: " + msg.err.Error()
		}
	case tea.KeyMsg:
		m.said, m.problem = "", ""
		return m.act(msg)
	}
	return m, nil
}

func (m SettingsPage) act(press tea.KeyMsg) (SettingsPage, tea.Cmd) {
	switch k := m.keys; {
	case key.Matches(press, k.Back):
		return m, send(SettingsDoneMsg{m.settings})
	case key.Matches(press, k.Bell):
		m.settings.Bell = (m.settings.Bell + 1) % Bell(len(bellNames))
		return m.keep(fmt.Sprintf("the bell: %s", m.settings.Bell))
	case key.Matches(press, k.Forget):
		n := len(m.settings.Keys)
		if n == 0 {
			return m, nil
		}
		gone := m.settings.Keys[n-1]
		m.settings.Keys = slices.Clone(m.settings.Keys[:n-1])
		return m.keep(fmt.Sprintf("%q is forgotten", gone))
	}
	return m.bind(press)
}

// bind takes a key for "this pass is laid", unless it means something else already.
func (m SettingsPage) bind(press tea.KeyMsg) (SettingsPage, tea.Cmd) {
	name := press.String()
	switch {
	case key.Matches(press, m.keys.Laid) || slices.Contains(m.settings.Keys, name):
		m.said = fmt.Sprintf("%q works already", name)
	case m.keys.Reserved(press):
		m.problem = fmt.Sprintf("%q has another meaning while winding; press another key", name)
	case len(m.settings.Keys) >= maxKeys || len(name) > maxKeyName:
		m.problem = "no more keys can be kept; backspace forgets the last"
	default:
		m.settings.Keys = append(slices.Clone(m.settings.Keys), name)
		return m.keep(fmt.Sprintf("%q now means “this pass is laid”", name))
	}
	return m, nil
}

// keep is the command that writes the settings.
func (m SettingsPage) keep(said string) (SettingsPage, tea.Cmd) {
	m.said = said
	if m.save == nil {
		return m, nil
	}
	save, s := m.save, m.settings
	return m, func() tea.Msg { return keptMsg{save(s)} }
}

// View draws the page at exactly w by h cells.
func (m SettingsPage) View(w, h int) string {
	s := m.styles
	own := "none yet"
	if len(m.settings.Keys) > 0 {
		own = strings.Join(m.settings.Keys, "  ")
	}
	lines := []string{""}
	lines = append(lines, look.Filled([]string{"", "  SETTINGS", ""}, s.OutBand, w)...)
	lines = append(lines, "")
	lines = append(lines, look.Indent(look.Painted(look.Wrap("Press the thing that you want to use for “this pass is laid”: a key, a pedal, a clicker.", w-4), s.Strong), 2)...)
	lines = append(lines, "", look.Fit("  "+s.Dim.Render("works as it comes   ")+"space enter right down page-down, a mouse click", w),
		look.Fit("  "+s.Dim.Render("your own            ")+own, w), look.Fit("  "+s.Dim.Render("the bell            ")+m.settings.Bell.String(), w), "")
	if m.said != "" {
		lines = append(lines, s.Good.Render(look.Fit("  "+m.said, w)))
	}
	if m.problem != "" {
		lines = append(lines, look.Indent(look.Painted(look.Wrap("! "+m.problem, w-4), s.Alarm), 2)...)
	}
	k := m.keys
	return look.WithFoot(lines, []string{s.KeyLine(w, k.Any, k.Bell, k.Forget, k.Back)}, w, h)
}
