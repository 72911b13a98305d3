package form

import (
	"context"
	"slices"
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/stripe"
	"millside/tui/internal/hand"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"
)

// Words that are also names of keys are text when their letters come in one read, and nobody is sent home.
func TestKeyNamesAreText(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	for _, word := range []string{"left", "esc", "up", "tab", "home", "ctrl+s", "enter", "delete"} {
		m, cmd := New(b.deps, plan.DefaultSpec()).Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(word)})
		for _, msg := range hand.Collect(cmd) {
			if _, left := msg.(BackMsg); left {
				t.Errorf("%q threw the plan away", word)
			}
		}
		if got := m.inputs[0].Value(); got != word {
			t.Errorf("%q became %q", word, got)
		}
	}
}

// The first letter typed takes the place of the value to start from; a key that moves keeps it.
func TestFirstLetterReplaces(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	at := func() Model {
		m := New(b.deps, hand.Towels())
		return m.focus(slices.IndexFunc(m.fields, func(f line) bool { return f.Name == "ends" }))
	}
	m := b.typed(at(), "480")
	if m.spec.Ends != 480 {
		t.Errorf("%d ends", m.spec.Ends)
	}
	m = b.typed(b.press(at(), "backspace"), "8")
	if m.spec.Ends != 398 {
		t.Errorf("%d ends", m.spec.Ends)
	}
	if m = b.typed(b.press(m, "tab", "shift+tab"), "0"); m.spec.Ends != 3980 {
		t.Errorf("%d ends: what was typed before is gone", m.spec.Ends)
	}
}

// A form that begins with stripes never waits for ever, whichever field is changed while they are worked out,
// and shows the passes of the text as it stands.
func TestStripesNeverHang(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	b.deps.Beside = nothingBeside
	starts := map[string]plan.Spec{"plain": plan.DefaultSpec(), "striped": plan.DefaultSpec()}
	s := starts["striped"]
	s.Stripes, s.Positions = "4 white, 2 red, 4 white", 6 // few, so that each search is short
	starts["striped"] = s
	fields := len(New(b.deps, s).fields)
	for name, spec := range starts {
		for i := range fields {
			m, first := New(b.deps, spec).Init()
			m = m.focus(i)
			changed, second := m.Update(hand.Key("right"))
			if len(changed.fields[i].options) == 0 {
				changed, second = changed.Update(hand.Letters("1")[0])
			}
			m = changed
			if m.at != i {
				t.Fatalf("%s: stands at %d, not %d", name, m.at, i)
			}
			queue := append(hand.Collect(second), hand.Collect(first)...)
			for len(queue) > 0 {
				var cmd tea.Cmd
				m, cmd = m.Update(queue[0])
				queue = append(slices.Clone(queue[1:]), hand.Collect(cmd)...)
			}
			if m.waits() || m.project == nil && len(m.problems) == 0 {
				t.Errorf("%s, %s changed: still waits", name, m.fields[i].Label)
			}
			if strings.Contains(m.View(120, 40), "working out the passes") {
				t.Errorf("%s, %s changed: says that it waits", name, m.fields[i].Label)
			}
		}
	}
}

// What was worked out for an earlier text is never shown for a new one, in whatever order the answers come.
func TestOutOfDateSchedule(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	spec := plan.DefaultSpec()
	spec.Stripes, spec.Positions = "8 white, 4 red", 8
	m, first := New(b.deps, spec).Init()
	i := slices.IndexFunc(m.fields, func(f line) bool { return f.Name == "stripes" })
	m = m.focus(i)
	m, second := m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(", 8 white")})
	for _, msg := range append(hand.Collect(second), hand.Collect(first)...) {
		m = b.send(m, msg)
	}
	if m.project == nil || m.spec.Ends != 20 || m.made.better != nil {
		t.Errorf("%d ends, project %v", m.spec.Ends, m.project != nil)
	}
}

func nothingBeside(context.Context, *stripe.Plan, map[int]string) ([]stripe.OtherPaddle, *stripe.Change) {
	return nil, nil
}
