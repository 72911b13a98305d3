package mill

import (
	"fmt"
	"slices"
	"strings"

	"millside/plan/measure"
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
// that begin with # are left out. The error is a [*measure.FieldError] that names the line.
func ParseSettings(text string) (Settings, error) {
	var s Settings
	if len(text) > maxSettings {
		return s, &measure.FieldError{Field: "settings", Value: fmt.Sprintf("%d bytes", len(text)), Want: fmt.Sprintf("at most %d", maxSettings)}
	}
	for i, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		name, value, _ := strings.Cut(line, ":")
		value = strings.TrimSpace(value)
		wrong := &measure.FieldError{Field: fmt.Sprintf("settings, line %d", i+1), Value: line}
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
