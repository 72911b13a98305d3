// Package hand is what the tests of the screens share: keys as a terminal sends them, commands run to their
// end, sizes of terminals, and the warps that are planned and wound.
package hand

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"millside/plan/measure"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"millside/plan"
)

// Clock is a clock that the test moves.
type Clock struct{ T time.Time }

// NewClock begins on a morning in March.
func NewClock() *Clock { return &Clock{time.Date(2026, 3, 14, 9, 30, 0, 0, time.UTC)} }

// Now is the time that the test has set.
func (c *Clock) Now() time.Time { return c.T }

// Wait moves the clock.
func (c *Clock) Wait(d time.Duration) { c.T = c.T.Add(d) }

// Size is the size of a terminal in cells.
type Size struct{ W, H int }

// String gives a size as terminals are named, such as 80x24.
func (s Size) String() string { return fmt.Sprintf("%dx%d", s.W, s.H) }

// Sizes are those at which the screens are looked at, Extremes the smallest and the largest laid out for.
var (
	Sizes    = []Size{{60, 18}, {80, 24}, {120, 40}, {200, 60}}
	Extremes = []Size{{40, 12}, {300, 100}}
)

// Collect runs a command and gives its messages.
func Collect(cmd tea.Cmd) []tea.Msg {
	if cmd == nil {
		return nil
	}
	switch msg := cmd().(type) {
	case nil:
		return nil
	case tea.BatchMsg:
		var all []tea.Msg
		for _, c := range msg {
			all = append(all, Collect(c)...)
		}
		return all
	default:
		return []tea.Msg{msg}
	}
}

// Key is a key as Bubble Tea reports it, by its name.
func Key(name string) tea.KeyMsg {
	named := map[string]tea.KeyType{
		"space": tea.KeySpace, "enter": tea.KeyEnter, "right": tea.KeyRight, "left": tea.KeyLeft, "down": tea.KeyDown,
		"up": tea.KeyUp, "pgdown": tea.KeyPgDown, "pgup": tea.KeyPgUp, "esc": tea.KeyEsc, "tab": tea.KeyTab,
		"shift+tab": tea.KeyShiftTab, "backspace": tea.KeyBackspace, "ctrl+s": tea.KeyCtrlS, "ctrl+g": tea.KeyCtrlG,
		"ctrl+u": tea.KeyCtrlU, "ctrl+c": tea.KeyCtrlC, "ctrl+z": tea.KeyCtrlZ, "ctrl+n": tea.KeyCtrlN,
		"ctrl+l": tea.KeyCtrlL, "ctrl+o": tea.KeyCtrlO, "ctrl+r": tea.KeyCtrlR, "ctrl+t": tea.KeyCtrlT, "f5": tea.KeyF5,
	}
	if t, ok := named[name]; ok {
		if t == tea.KeySpace {
			return tea.KeyMsg{Type: t, Runes: []rune{' '}}
		}
		return tea.KeyMsg{Type: t}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}

// Letters are the keys that write a text, one by one.
func Letters(text string) []tea.KeyMsg {
	var out []tea.KeyMsg
	for _, r := range text {
		out = append(out, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
	}
	return out
}

// Fits fails when a view is not exactly h lines high, or is wider than w.
func Fits(t testing.TB, view string, size Size) {
	t.Helper()
	lines := strings.Split(view, "\n")
	if len(lines) != size.H {
		t.Fatalf("%d lines at %s", len(lines), size)
	}
	for i, l := range lines {
		if lipgloss.Width(l) > size.W {
			t.Fatalf("line %d is %d wide at %s: %q", i, lipgloss.Width(l), size, l)
		}
	}
}

var colours = regexp.MustCompile("\x1b\\[[0-9;]*m")

// Bare is a view without its colours.
func Bare(view string) string { return colours.ReplaceAllString(view, "") }

// Flat is a view as one line of words, without colours and the blanks between them.
func Flat(view string) string { return strings.Join(strings.Fields(Bare(view)), " ") }

// Towels is the warp that most tests wind: 396 ends by ten, the last pass of six.
func Towels() plan.Spec {
	s := plan.DefaultSpec()
	s.Name, s.Ends, s.Length = "Kitchen towels, undyed", 396, 7*measure.Yard
	s.Mill.Rise = 3 * measure.Inch
	return s
}

// Read puts values written as text where they belong.
func Read(t testing.TB, values map[interface{ UnmarshalText([]byte) error }]string) {
	t.Helper()
	for v, text := range values {
		if err := v.UnmarshalText([]byte(text)); err != nil {
			t.Fatal(err)
		}
	}
}

//go:embed schedules.json
var schedules []byte

// scheduled is what the search adds to a spec with stripes. It is kept in schedules.json by the name of the warp, since
// a screen may show any good schedule and the search takes seconds; -update searches anew.
type scheduled struct {
	Stripes         string
	Ends, Group     int
	Schedule, Other *plan.Schedule
}

// striped is the spec of a striped warp before it is cut into passes.
func striped(name, stripes string, positions int) plan.Spec {
	s := Towels()
	s.Name, s.Positions, s.Group, s.Stripes = name, positions, 1, stripes
	return s
}

// Striped makes the spec of a striped warp.
func Striped(name, stripes string, positions int) func() plan.Spec {
	return sync.OnceValue(func() plan.Spec {
		var kept map[string]scheduled
		if err := json.Unmarshal(schedules, &kept); err != nil {
			panic(err)
		}
		s, found := striped(name, stripes, positions), kept[name]
		s.Stripes, s.Ends, s.Group = found.Stripes, found.Ends, found.Group
		s.Schedule, s.Other = found.Schedule, found.Other
		return s
	})
}

const (
	plaid = "6 cream, 3 times (8 moss, 2 ochre, 14 cream, 3 plum, 1 ochre), 16 sky where " +
		"cream is #f2ead7, moss is #5b7a3a, ochre is #d9962b, plum is #6a2c55, sky is #4f8fc0"
	fade = "20 cream, 20 moss, 18 ochre, 24 plum where " +
		"cream is #f2ead7, moss is #5b7a3a, ochre is #d9962b, plum is #6a2c55"
)

// Plaid needs no change of the paddle, Fade some.
var (
	Plaid = Striped("Plaid scarf", plaid, 10)
	Fade  = Striped("Fading runner", fade, 6)
)
