package tui

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"millside/plan"
)

// Bell says when the terminal's bell rings.
type Bell uint8

// The three ways.
const (
	BellWarnings Bell = iota // before a tie, a change, the last pass; at the end; when nothing was saved
	BellAlways               // after every pass as well
	BellOff
)

var bellNames = []string{"warnings", "always", "off"}

// String gives the name that a settings file uses.
func (b Bell) String() string { return bellNames[min(int(b), len(bellNames)-1)] }

// Settings is what a weaver sets once for all warps.
type Settings struct {
	// Keys are keys of the weaver's own for "this pass is laid", as the terminal names them.
	Keys []string
	// Bell says when the bell rings.
	Bell Bell
}

// Limits of a settings file.
const (
	maxSettings = 4096 // bytes
	maxKeys     = 20
	maxKeyName  = 40
)

// ParseSettings reads a settings file: lines such as "bell: warnings" and "key: f5"; empty lines and those
// that begin with # are left out. The error is a [*plan.FieldError] that names the line.
func ParseSettings(text string) (Settings, error) {
	var s Settings
	if len(text) > maxSettings {
		return s, &plan.FieldError{Field: "settings", Value: fmt.Sprintf("%d bytes", len(text)), Want: fmt.Sprintf("at most %d", maxSettings)}
	}
	for i, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		name, value, _ := strings.Cut(line, ":")
		value = strings.TrimSpace(value)
		wrong := &plan.FieldError{Field: fmt.Sprintf("settings, line %d", i+1), Value: line}
		switch {
		case strings.TrimSpace(name) == "bell" && slices.Contains(bellNames, value):
			s.Bell = Bell(slices.Index(bellNames, value))
		case strings.TrimSpace(name) == "key" && value != "" && len(value) <= maxKeyName && len(s.Keys) < maxKeys && !slices.Contains(s.Keys, value):
			s.Keys = append(s.Keys, value)
		default:
			wrong.Want = "bell: warnings, always or off; or key: and the name of a key, each once"
			return Settings{}, wrong
		}
	}
	return s, nil
}

// String writes the settings as ParseSettings reads them.
func (s Settings) String() string {
	var b strings.Builder
	b.WriteString("# Millside's settings. A key here means \"this pass is laid\".\n")
	fmt.Fprintf(&b, "bell: %s\n", s.Bell)
	for _, k := range s.Keys {
		fmt.Fprintf(&b, "key: %s\n", k)
	}
	return b.String()
}

// forward says whether a key means "this is done, go on": one of those that clickers and pedals send, or
// one of the weaver's own.
func (d deps) forward(msg tea.KeyMsg) bool {
	return key.Matches(msg, d.keys.Laid) || d.prefs != nil && slices.Contains(d.prefs.Keys, msg.String())
}

// settings is the page on which a weaver presses the thing to be used.
type settings struct {
	deps
	back    screen
	said    string
	problem string
}

func (m settings) typing() bool { return false }

func (m settings) update(msg tea.Msg) (screen, tea.Cmd) {
	press, ok := msg.(tea.KeyMsg)
	if !ok {
		return m, nil
	}
	m.said, m.problem = "", ""
	switch k := m.keys; {
	case key.Matches(press, k.Back):
		return m.back, nil
	case press.String() == "tab":
		m.prefs.Bell = (m.prefs.Bell + 1) % Bell(len(bellNames))
		return m.keep(fmt.Sprintf("the bell: %s", m.prefs.Bell)), nil
	case press.String() == "backspace":
		if n := len(m.prefs.Keys); n > 0 {
			gone := m.prefs.Keys[n-1]
			m.prefs.Keys = slices.Clone(m.prefs.Keys[:n-1])
			return m.keep(fmt.Sprintf("%q is forgotten", gone)), nil
		}
		return m, nil
	}
	return m.bind(press), nil
}

// bind takes a key for "this pass is laid", unless it means something else already.
func (m settings) bind(press tea.KeyMsg) screen {
	name := press.String()
	switch {
	case m.forward(press):
		m.said = fmt.Sprintf("%q works already", name)
	case m.keys.reserved(press):
		m.problem = fmt.Sprintf("%q has another meaning while winding; press another key", name)
	case len(m.prefs.Keys) >= maxKeys || len(name) > maxKeyName:
		m.problem = "no more keys can be kept; backspace forgets the last"
	default:
		m.prefs.Keys = append(slices.Clone(m.prefs.Keys), name)
		return m.keep(fmt.Sprintf("%q now means “this pass is laid”", name))
	}
	return m
}

// keep writes the settings.
func (m settings) keep(said string) screen {
	m.said = said
	if m.savePrefs != nil {
		if err := m.savePrefs(*m.prefs); err != nil {
			m.problem = "the settings could not be kept: " + err.Error()
		}
	}
	return m
}

// reserved says whether a key has another meaning on the winding screen.
func (k keyMap) reserved(msg tea.KeyMsg) bool {
	return key.Matches(msg, k.Undo, k.Pause, k.Recount, k.Note, k.Far, k.Help, k.Leave, k.Back, k.Stop, k.Other, k.Retry,
		k.Broken, k.Knot, k.Cone, k.WrongTurn, k.Missed, k.WrongPeg, k.Tie, k.Withdraw, k.Settings) || msg.String() == "ctrl+z"
}

func (m settings) view(w, h int) string {
	s := m.styles
	own := "none yet"
	if len(m.prefs.Keys) > 0 {
		own = strings.Join(m.prefs.Keys, "  ")
	}
	lines := []string{""}
	lines = append(lines, filled([]string{"", "  SETTINGS", ""}, s.outBand, w)...)
	lines = append(lines, "")
	lines = append(lines, indent(painted(wrap("Press the thing that you want to use for “this pass is laid”: a key, a pedal, a clicker.", w-4), s.strong), 2)...)
	lines = append(lines, "", fit("  "+s.dim.Render("works as it comes   ")+"space enter right down page-down, a mouse click", w),
		fit("  "+s.dim.Render("your own            ")+own, w), fit("  "+s.dim.Render("the bell            ")+m.prefs.Bell.String(), w), "")
	if m.said != "" {
		lines = append(lines, s.good.Render(fit("  "+m.said, w)))
	}
	if m.problem != "" {
		lines = append(lines, indent(painted(wrap("! "+m.problem, w-4), s.alarm), 2)...)
	}
	return withFoot(lines, []string{s.keyLine(w, bind("any key", "use it", "x"), bind("tab", "bell", "tab"), bind("backspace", "forget the last", "backspace"), m.keys.Back)}, w, h)
}
