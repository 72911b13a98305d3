package tui

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/plan"
)

// Any key can be taken for "this pass is laid", but for one that means something else; it works at once.
func TestOwnKey(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	var kept Settings
	b.deps.prefs, b.deps.savePrefs = &Settings{}, func(s Settings) error { kept = s; return nil }
	s := b.press(b.winding(towels(), 4), "s")
	s = b.send(s, tea.KeyMsg{Type: tea.KeyF5})
	s = b.press(s, "q")
	if !strings.Contains(s.view(80, 24), `"q" has another meaning`) || !reflect.DeepEqual(kept.Keys, []string{"f5"}) {
		t.Fatalf("kept %v:\n%s", kept.Keys, s.view(80, 24))
	}
	s = b.press(s, "esc")
	b.clock.wait(3e9)
	if s = b.send(s, tea.KeyMsg{Type: tea.KeyF5}); laid(t, s) != 5 {
		t.Fatalf("%d passes, want 5", laid(t, s))
	}
	s = b.press(s, "s", "backspace", "tab", "tab")
	if len(kept.Keys) != 0 || kept.Bell != BellOff {
		t.Errorf("kept %+v", kept)
	}
	b.bells = 0
	s = b.press(s, "esc")
	for range 5 {
		s = b.press(s, "space") // pass 10 brings a count tie
	}
	if laid(t, s) != 10 || b.bells != 0 {
		t.Errorf("%d passes, %d bells with the bell off", laid(t, s), b.bells)
	}
}

func TestSettingsThatCantBeKept(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	b.deps.prefs, b.deps.savePrefs = &Settings{}, func(Settings) error { return errors.New("no space left on device") }
	s := b.press(b.winding(towels(), 4), "s", "tab")
	if !strings.Contains(s.view(80, 24), "could not be kept") {
		t.Errorf("nothing is said:\n%s", s.view(80, 24))
	}
}

func TestSettingsText(t *testing.T) {
	for _, s := range []Settings{{}, {Keys: []string{"f5", ".", "ctrl+n", "#"}, Bell: BellAlways}, {Bell: BellOff}} {
		if back, err := ParseSettings(s.String()); err != nil || !reflect.DeepEqual(back, s) {
			t.Errorf("%q is read as %+v, %v", s.String(), back, err)
		}
	}
	for _, text := range []string{"bell: loud", "key:", "key: a\nkey: a", "colour: red", "key: " + strings.Repeat("x", 41), strings.Repeat("#", 5000)} {
		_, err := ParseSettings(text)
		var fe *plan.FieldError
		if !errors.As(err, &fe) {
			t.Errorf("%.20q was taken: %v", text, err)
		}
	}
}

// The next step is told to whoever listens, after every pass and when a press was ignored.
func TestSpoken(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	var heard []string
	b.deps.say = func(text string) { heard = append(heard, text) }
	s := b.press(b.winding(towels(), 9), "space", "space")
	b.send(s, keyMsg("space"))
	if len(heard) != 3 {
		t.Fatalf("heard %q", heard)
	}
	for i, want := range []string{"Pass 11 of 40, outward. 100 ends stand.", "Count tie at the counting cross round groups 1 to 10, 100 ends so far; not the one just laid", "One press ignored"} {
		if !strings.HasPrefix(heard[i], want) {
			t.Errorf("heard %q, want %q first", heard[i], want)
		}
	}
}

// What is at hand can be taken over with one key, round after the last.
func TestAtHand(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	small, large := plan.Mill{Circumference: 2 * plan.Metre, PegStep: 50 * plan.Centimetre}, plan.Mill{Circumference: 4 * plan.Yard, PegStep: plan.Yard}
	b.deps.atHand = plan.AtHand{Mills: []plan.NamedMill{{Name: "table mill", Mill: small}, {Name: "floor mill", Mill: large}}}
	s := b.press(newForm(b.deps, towels()), "pgup", "pgup", "pgup", "pgup")
	if !strings.Contains(s.view(120, 40), "2 at hand") {
		t.Fatalf("not offered:\n%s", s.view(120, 40))
	}
	for _, want := range []plan.Mill{small, large, small} {
		s = b.send(s, tea.KeyMsg{Type: tea.KeyCtrlN})
		if got := s.(form).spec.Mill; got != want {
			t.Errorf("mill %+v, want %+v", got, want)
		}
	}
}

// The settings page may be asked for while a line is on its way to the disk, and keys after it are for
// that page.
func TestSettingsWhileSaving(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	b.deps.prefs = &Settings{}
	b.clock.wait(5e9)
	next, write := b.winding(towels(), 4).update(keyMsg("space"))
	for _, k := range []string{"s", "tab"} {
		next, _ = next.update(keyMsg(k))
	}
	for _, msg := range collect(write) {
		next = b.send(next, msg)
	}
	if _, ok := next.(settings); !ok || b.deps.prefs.Bell != BellAlways {
		t.Fatalf("%T, bell %s", next, b.deps.prefs.Bell)
	}
	if next = b.press(next, "esc"); laid(t, next) != 5 {
		t.Errorf("%d passes, want 5", laid(t, next))
	}
}
