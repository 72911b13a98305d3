package mill

import (
	"errors"
	"math/big"
	"reflect"
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/counter/session"
	"millside/plan/figure"
	"millside/plan/measure"
	"millside/tui/internal/hand"
)

func TestSettingsText(t *testing.T) {
	for _, s := range []Settings{{}, {Keys: []string{"f5", ".", "ctrl+n", "#"}, Off: []session.Cue{session.CueReturn}},
		{Off: Cues()},
		{Units: "metric", Sign: "comma"}} {
		if back, err := ParseSettings(s.String()); err != nil || !reflect.DeepEqual(back, s) {
			t.Errorf("%q is read as %+v, %v", s.String(), back, err)
		}
	}
	for _, text := range []string{"silent=stop # the bell wakes the cat\r\nkey\t=\tf5",
		"\xFF\xFEk\x00e\x00y\x00:\x00f\x005\x00\r\x00\n\x00s\x00i\x00l\x00e\x00n\x00t\x00:\x00s\x00t\x00o\x00p\x00"} {
		if s, err := ParseSettings(text); err != nil ||
			!reflect.DeepEqual(s, Settings{Keys: []string{"f5"}, Off: []session.Cue{session.CueStop}}) {
			t.Errorf("%q is read as %+v, %v", text, s, err)
		}
	}
	for _, text := range []string{"bell: loud", "key:", "key: a\nkey: a", "colour: red", "key: " +
		strings.Repeat("x", 41), strings.Repeat("#", 5000),
		"silent: thunder", "units: feet", "units: metric\nunits: metric", "decimal sign: ,",
		"silent: stop\nsilent: stop"} {
		_, err := ParseSettings(text)
		var fe *measure.FieldError
		if !errors.As(err, &fe) {
			t.Errorf("%.20q was taken: %v", text, err)
		}
	}
}

// What a weaver wrote into the settings stays there when the program writes them: remarks, empty lines, and what it
// couldn't read.
func TestSettingsKeepRemarks(t *testing.T) {
	old := "# mine\r\n\r\nsilent = stop   # the bell wakes the cat\r\nkey: f5\r\ncolour: red\r\nkey: f6\r\n"
	s, err := ParseSettings(old)
	if list := measure.FieldErrors(err); len(list) != 1 || list[0].Field != "settings, line 5, column 1" {
		t.Errorf("the faults are %v", err)
	}
	if !reflect.DeepEqual(s, Settings{Keys: []string{"f5", "f6"}, Off: []session.Cue{session.CueStop}}) {
		t.Errorf("it is read as %+v", s)
	}
	s.Keys, s.Off = []string{"f6", "f7"}, append(s.Off, session.CueReturn)
	want := "# mine\n\nsilent = stop   # the bell wakes the cat\ncolour: red\nkey: f6\nsilent: return laid\nkey: f7\n"
	if got := s.Into(old); got != want {
		t.Errorf("it is written as %q, not %q", got, want)
	}
	if got := s.Into(""); got != s.String() {
		t.Errorf("a new file is %q", got)
	}
	stop := Settings{Off: []session.Cue{session.CueStop}}
	if got := stop.Into("bell: off\n# quiet\n"); got != "# quiet\nsilent: stop\n" {
		t.Errorf("an earlier file becomes %q", got)
	}
}

// Files of earlier versions keep their meaning.
func TestSettingsOfEarlierFiles(t *testing.T) {
	for text, heard := range map[string]int{"bell: always": 7, "bell: warnings\nkey: f5": 4, "bell: off": 0} {
		s, err := ParseSettings(text)
		if n := len(Cues()) - len(s.Off); err != nil || n != heard {
			t.Errorf("%q: %d cues are heard, want %d; %v", text, n, heard, err)
		}
	}
}

// Two rhythms can be told apart: they differ in the number of rings, or in a gap that is three times as long.
func TestRhythmsDiffer(t *testing.T) {
	for i, a := range Cues() {
		for _, b := range Cues()[:i] {
			ra, rb := Rhythm(a), Rhythm(b)
			differ := len(ra) != len(rb)
			for j := range min(len(ra), len(rb)) {
				differ = differ || max(ra[j], rb[j]) >= 3*min(ra[j], rb[j])
			}
			if !differ {
				t.Errorf("%s and %s sound alike", a, b)
			}
		}
	}
}

// The next step is told to whoever listens, after every pass and when a press was refused.
func TestSpoken(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	var heard []string
	b.deps.Say = func(text string) { heard = append(heard, text) }
	m := b.winding(hand.Towels(), 9)
	heard = nil
	m = b.press(m, "space", "space")
	b.send(m, hand.Key("space"))
	if len(heard) != 3 {
		t.Fatalf("heard %q", heard)
	}
	for i, want := range []string{"Outward 11: A holes up, over 1, counterclockwise.", "Count tie, 100 ends.",
		"Ignored, too soon."} {
		if !strings.HasPrefix(heard[i], want) {
			t.Errorf("heard %q, want %q first", heard[i], want)
		}
	}
}

// The units and the decimal sign stand behind the sounds: they begin as the locale has them, and what is chosen is
// kept.
func TestUnitsOnTheSettingsPage(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	var kept Settings
	save := func(s Settings) error { kept = s; return nil }
	page := NewSettingsPage(b.deps.Styles, b.deps.Keys, Settings{LocaleUnits: measure.Metric}, save, nil)
	if !strings.Contains(page.View(80, 24), "units            metric") {
		t.Errorf("the locale's units don't show:\n%s", page.View(80, 24))
	}
	press := func(names ...string) {
		for _, name := range names {
			var cmd tea.Cmd
			if page, cmd = page.Update(hand.Key(name)); cmd == nil {
				continue
			}
			if batch, ok := cmd().(tea.BatchMsg); ok {
				for _, c := range batch {
					c()
				}
			}
		}
	}
	press(slices.Repeat([]string{"down"}, len(Cues()))...)
	press("x")
	if kept.Units != "imperial" || kept.NewUnits() != measure.Imperial {
		t.Errorf("kept %+v", kept)
	}
	press("down", "x")
	defer figure.WriteComma(false)
	if kept.Sign != "comma" || !kept.Comma() || figure.New(big.NewRat(5, 2), 1, "yd").String() != "2,5 yd" {
		t.Errorf("kept %+v, and 2.5 yd is %s", kept, figure.New(big.NewRat(5, 2), 1, "yd"))
	}
	press("x", "up", "x")
	if kept.Sign != "point" || kept.Units != "metric" {
		t.Errorf("kept %+v", kept)
	}
}
