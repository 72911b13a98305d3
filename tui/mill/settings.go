package mill

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"millside/counter/session"
	"millside/plan/measure"
	"millside/plan/textfile"
)

// Settings is what a weaver sets once for all warps.
type Settings struct {
	// Keys are keys of the weaver's own for "this pass is laid", as the terminal names them.
	Keys []string
	// Off are the cues that are not to be heard.
	Off []session.Cue
	// Units are the units that a new warp begins with, "imperial" or "metric", and Sign the decimal sign that
	// numbers are shown with, "point" or "comma". Empty leaves both to the system's locale.
	Units, Sign string
	// LocaleUnits and LocaleComma are what the locale says; they aren't kept.
	LocaleUnits measure.LengthUnitSystem
	LocaleComma bool
}

// The lines of the settings for units and numbers, and what they may say.
const (
	unitsLine, signLine = "units", "decimal sign"
)

var (
	unitsWords = []string{measure.Imperial.String(), measure.Metric.String()}
	signWords  = []string{"point", "comma"}
)

// Cues are the cues that can be heard, in the order of the settings.
func Cues() []session.Cue {
	return []session.Cue{session.CueOutward, session.CueReturn, session.CueRefused, session.CueLook, session.CueStop,
		session.CueLastPass, session.CueConfirmed}
}

// Rhythm is how a cue sounds on a terminal's bell, which knows one tone only: it rings once, and once more
// after each of the times. Two rhythms differ in the number of rings or, plainly, in the gaps.
func Rhythm(c session.Cue) []time.Duration {
	const short, long = 200 * time.Millisecond, 700 * time.Millisecond
	switch c {
	case session.CueReturn:
		return []time.Duration{short}
	case session.CueRefused:
		return []time.Duration{short, short, short}
	case session.CueLook:
		return []time.Duration{short, long}
	case session.CueStop:
		return []time.Duration{long, long, long}
	case session.CueLastPass:
		return []time.Duration{short, long, short}
	case session.CueConfirmed:
		return []time.Duration{long}
	}
	return nil
}

// Silent says whether a cue is not to be heard.
func (s Settings) Silent(c session.Cue) bool { return slices.Contains(s.Off, c) }

// toggled turns a cue on or off.
func (s Settings) toggled(c session.Cue) Settings {
	if i := slices.Index(s.Off, c); i >= 0 {
		s.Off = slices.Delete(slices.Clone(s.Off), i, i+1)
		return s
	}
	s.Off = append(slices.Clone(s.Off), c)
	return s
}

// Limits of a settings file.
const (
	maxSettings = 4096 // bytes
	maxKeys     = 20
	maxKeyName  = 40
)

// ParseSettings reads a settings file: lines such as "silent: return laid" and "key: f5", written as the
// file of things at hand is (see [textfile.Lines]). The lines "bell: warnings", "bell: always" and "bell:
// off" of earlier files are read too. The error joins a [*measure.FieldError] for each line that won't do, with its
// place; what could be read comes beside it.
func ParseSettings(text string) (Settings, error) {
	var s Settings
	if len(text) > maxSettings {
		return s, &measure.FieldError{Field: "settings", Value: fmt.Sprintf("%d bytes", len(text)),
			Want: fmt.Sprintf("at most %d", maxSettings)}
	}
	text, err := textfile.Decode(text)
	if err != nil {
		return s, measure.InField(err, "settings")
	}
	var errs []error
	for number, line := range textfile.Lines(text) {
		if !s.read(line) {
			place := textfile.Place(number, textfile.Column(textfile.RawLine(text, number), "", line))
			errs = append(errs, &measure.FieldError{Field: "settings, " + place, Value: line,
				Want: "silent: and the name of a sound, or key: and the name of a key, each once; units: imperial or " +
					"metric; decimal sign: point or comma"})
		}
	}
	return s, errors.Join(errs...)
}

// Into writes the settings into the text that keeps them, so that remarks survive, and lines that couldn't be read
// too: they are the weaver's, and told again at the next start.
func (s Settings) Into(text string) string {
	text, err := textfile.Decode(text)
	if err != nil || strings.TrimSpace(text) == "" {
		return s.String()
	}
	want, has := s.lines(), map[string]bool{}
	text = textfile.Renew(text, func(words string) bool {
		var one Settings
		if !one.read(words) {
			return true
		}
		name, value, _ := textfile.Cut(words)
		line := name + ": " + value
		keep := slices.Contains(want, line) && !has[line]
		has[line] = true
		return keep
	}, nil)
	return textfile.Renew(text, func(string) bool { return true },
		slices.DeleteFunc(want, func(line string) bool { return has[line] }))
}

// read takes one line; false if it won't do.
func (s *Settings) read(line string) bool {
	name, value, _ := textfile.Cut(line)
	switch name {
	case "key":
		if value == "" || len(value) > maxKeyName || len(s.Keys) >= maxKeys || slices.Contains(s.Keys, value) {
			return false
		}
		s.Keys = append(s.Keys, value)
		return true
	case "silent":
		i := slices.IndexFunc(Cues(), func(c session.Cue) bool { return c.String() == value })
		if i < 0 || s.Silent(Cues()[i]) {
			return false
		}
		s.Off = append(s.Off, Cues()[i])
		return true
	case "bell":
		return s.readBell(value)
	case unitsLine:
		return readWord(&s.Units, value, unitsWords)
	case signLine:
		return readWord(&s.Sign, value, signWords)
	}
	return false
}

// readWord takes one of some words, once.
func readWord(to *string, value string, words []string) bool {
	if *to != "" || !slices.Contains(words, value) {
		return false
	}
	*to = value
	return true
}

// readBell takes the one line about the bell that earlier files have.
func (s *Settings) readBell(value string) bool {
	if len(s.Off) > 0 {
		return false
	}
	switch value {
	case "always":
	case "warnings":
		s.Off = []session.Cue{session.CueOutward, session.CueReturn, session.CueConfirmed}
	case "off":
		s.Off = Cues()
	default:
		return false
	}
	return true
}

// String writes the settings as ParseSettings reads them.
func (s Settings) String() string {
	var b strings.Builder
	b.WriteString("# Millside's settings. A key here means \"this pass is laid\"; a silent sound is not heard.\n")
	for _, line := range s.lines() {
		b.WriteString(line + "\n")
	}
	return b.String()
}

// lines are the settings line by line.
func (s Settings) lines() []string {
	var list []string
	for _, c := range s.Off {
		list = append(list, fmt.Sprintf("silent: %s", c))
	}
	for _, k := range s.Keys {
		list = append(list, "key: "+k)
	}
	if s.Units != "" {
		list = append(list, unitsLine+": "+s.Units)
	}
	if s.Sign != "" {
		list = append(list, signLine+": "+s.Sign)
	}
	return list
}

// units are the units that a new warp begins with.
func (s Settings) units() string {
	if s.Units != "" {
		return s.Units
	}
	return s.LocaleUnits.String()
}

// sign is the decimal sign that numbers are shown with.
func (s Settings) sign() string {
	if s.Sign != "" {
		return s.Sign
	}
	if s.LocaleComma {
		return signWords[1]
	}
	return signWords[0]
}

// NewUnits are the units that a new warp begins with.
func (s Settings) NewUnits() measure.LengthUnitSystem {
	if s.units() == measure.Metric.String() {
		return measure.Metric
	}
	return measure.Imperial
}

// Comma says that numbers are shown with a decimal comma.
func (s Settings) Comma() bool { return s.sign() == signWords[1] }
