package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/tui/internal/hand"
)

// A warp is put away or deleted with one key and brought back with another; one that is being wound stays.
func TestShelvesAtHome(t *testing.T) {
	for _, key := range []string{"w", "d"} {
		b := newBench(t, termenv.Ascii)
		first := b.winding(hand.Towels(), 4)
		list, err := b.deps.store.List()
		if err != nil {
			t.Fatal(err)
		}
		a := b.app()
		a.screen = newHome(b.deps, listing{list: list}, b.clock.T)
		m := drive(b, a, hand.Key(key))
		if v := m.View(); !strings.Contains(v, "being wound in another window") ||
			!strings.Contains(v, "half-wound (1)") {
			t.Fatalf("%s, while it is wound:\n%s", key, v)
		}
		first.close()
		m = drive(b, m, hand.Key(key))
		if v := m.View(); strings.Contains(v, "half-wound") || !strings.Contains(v, "tab shows it") {
			t.Fatalf("%s:\n%s", key, v)
		}
		m = drive(b, m, hand.Key("tab")) // the shelf that was used last comes first
		if v := m.View(); !strings.Contains(v, "(1)") || !strings.Contains(v, "Kitchen towels") {
			t.Fatalf("%s, the shelf:\n%s", key, v)
		}
		m = drive(b, m, hand.Key("b"))
		if v := m.View(); !strings.Contains(v, "back among the warps") || !strings.Contains(v, "none") {
			t.Fatalf("%s, brought back:\n%s", key, v)
		}
		m = drive(b, m, hand.Key("esc"))
		if v := m.View(); !strings.Contains(v, "half-wound (1)") {
			t.Fatalf("%s, at home again:\n%s", key, v)
		}
		m = drive(b, m, hand.Key("enter"))
		if state(t, m).Laid() != 4 {
			t.Errorf("%d passes", state(t, m).Laid())
		}
		m.(app).close()
	}
}

// What was wrong with the last action goes with the next one, be it a key, a click or the wheel.
func TestOldProblemGoes(t *testing.T) {
	for name, next := range map[string]tea.Msg{
		"a key":   hand.Key("down"),
		"a click": tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonLeft, Y: 5},
		"a wheel": tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonWheelDown},
	} {
		b := newBench(t, termenv.Ascii)
		m := drive(b, homeApp(b), hand.Key("e"))
		const problem = "is begun, so its plan stays"
		if !strings.Contains(m.View(), problem) {
			t.Fatalf("no problem is told:\n%s", m.View())
		}
		if m = drive(b, m, next); strings.Contains(m.View(), problem) {
			t.Errorf("after %s the old problem is still told:\n%s", name, m.View())
		}
	}
}
