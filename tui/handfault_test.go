package tui

import (
	"strings"
	"testing"

	"millside/plan"
	"millside/tui/internal/hand"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"
)

// What can't be used of the file of things at hand stands on the first screen, home or the form, with its place and
// what would do; without control sequences, and whole at each size.
func TestBrokenAtHandFileIsTold(t *testing.T) {
	const fault = "line 2, column 9, peg step: \"18\" won't do; give a number and a unit; left out"
	told, spec := "at-hand.txt: "+fault+"\x1b[31m", plan.DefaultSpec()
	for name, o := range map[string]Options{"home": {HandFault: told}, "form": {HandFault: told, Spec: &spec}} {
		for _, size := range [][2]int{{60, 18}, {80, 24}, {120, 40}, {200, 60}} {
			b := newBench(t, termenv.Ascii)
			var m tea.Model = newApp(b.deps, b.clock.T).started(o)
			m = drive(b, m, tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			said := strings.Join(strings.Fields(m.View()), " ")
			if !strings.Contains(said, fault) {
				t.Errorf("%s at %v:\n%s", name, size, m.View())
			}
			if strings.Contains(m.View(), "\x1b[31m") {
				t.Errorf("%s at %v: a control sequence", name, size)
			}
			if name == "home" {
				m = drive(b, m, hand.Key("down"))
				if strings.Contains(m.View(), "peg step") {
					t.Errorf("%s at %v: it still stands there", name, size)
				}
			}
		}
	}
}
