package tui

import (
	"fmt"
	"io"
	"os"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"millside/counter"
	"millside/plan"
)

// Screens show local times; the tests see one place only.
func TestMain(m *testing.M) {
	time.Local = time.UTC
	os.Exit(m.Run())
}

// hand is a clock that the test moves.
type hand struct{ t time.Time }

func (c *hand) now() time.Time { return c.t }

func (c *hand) wait(d time.Duration) { c.t = c.t.Add(d) }

// bench is what a test of the screens stands on.
type bench struct {
	t     *testing.T
	deps  deps
	clock *hand
	bells int
}

func newBench(t *testing.T, profile termenv.Profile) *bench {
	t.Helper()
	b := &bench{t: t, clock: &hand{time.Date(2026, 3, 14, 9, 30, 0, 0, time.UTC)}}
	practice := plan.DefaultSpec()
	practice.Name = "Practice warp"
	b.deps = deps{
		store: counter.Store{Dir: t.TempDir(), FS: counter.OS()}, now: b.clock.now,
		styles: newStyles(io.Discard, profile), keys: defaultKeys(), bell: func() { b.bells++ }, practice: practice,
	}
	return b
}

// towels is the warp that most tests wind: 396 ends by ten, the last pass of six.
func towels() plan.Spec {
	s := plan.DefaultSpec()
	s.Name, s.Ends, s.Length = "Kitchen towels, undyed", 396, 7*plan.Yard
	s.Mill.Rise = 3 * plan.Inch
	return s
}

// winding makes a record with so many passes laid.
func (b *bench) winding(spec plan.Spec, laid int) winding {
	b.t.Helper()
	p, err := plan.New(spec)
	if err != nil {
		b.t.Fatal(err)
	}
	rec, err := b.deps.store.Create(p)
	if err != nil {
		b.t.Fatal(err)
	}
	b.t.Cleanup(func() { _ = rec.Close() })
	for i := range laid {
		b.append(rec, counter.Event{Kind: counter.Laid, Pass: i + 1, Chain: 1})
		if i == 1 {
			b.append(rec, counter.Event{Kind: counter.LeaseSeen, Order: spec.ReturnOrder})
		}
	}
	m := newWinding(b.deps, rec)
	m.mode = m.restingMode()
	return m
}

func (b *bench) append(rec *counter.Record, e counter.Event) {
	b.t.Helper()
	e.At = b.clock.now()
	b.clock.wait(30 * time.Second)
	if _, err := rec.Append(e); err != nil {
		b.t.Fatal(err)
	}
}

// press sends keys one by one, each followed by what its commands bring, three seconds apart.
func (b *bench) press(s screen, keys ...string) screen {
	b.t.Helper()
	for _, k := range keys {
		b.clock.wait(3 * time.Second)
		s = b.send(s, keyMsg(k))
	}
	return s
}

// send gives a screen one message and runs the commands that follow, to their end.
func (b *bench) send(s screen, msg tea.Msg) screen {
	b.t.Helper()
	next, cmd := s.update(msg)
	for _, m := range collect(cmd) {
		next = b.send(next, m)
	}
	return next
}

// collect runs a command and gives its messages.
func collect(cmd tea.Cmd) []tea.Msg {
	if cmd == nil {
		return nil
	}
	switch msg := cmd().(type) {
	case nil:
		return nil
	case tea.BatchMsg:
		var all []tea.Msg
		for _, c := range msg {
			all = append(all, collect(c)...)
		}
		return all
	default:
		return []tea.Msg{msg}
	}
}

func keyMsg(k string) tea.KeyMsg {
	named := map[string]tea.KeyType{
		"space": tea.KeySpace, "enter": tea.KeyEnter, "right": tea.KeyRight, "left": tea.KeyLeft, "down": tea.KeyDown,
		"up": tea.KeyUp, "pgdown": tea.KeyPgDown, "pgup": tea.KeyPgUp, "esc": tea.KeyEsc, "tab": tea.KeyTab,
		"shift+tab": tea.KeyShiftTab, "backspace": tea.KeyBackspace, "ctrl+s": tea.KeyCtrlS, "ctrl+g": tea.KeyCtrlG,
		"ctrl+u": tea.KeyCtrlU, "ctrl+c": tea.KeyCtrlC, "ctrl+z": tea.KeyCtrlZ,
	}
	if t, ok := named[k]; ok {
		if t == tea.KeySpace {
			return tea.KeyMsg{Type: t, Runes: []rune{' '}}
		}
		return tea.KeyMsg{Type: t}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(k)}
}

// typed sends text as single keys.
func (b *bench) typed(s screen, text string) screen {
	b.t.Helper()
	for _, r := range text {
		s = b.send(s, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
	}
	return s
}

// fits fails when a view is not exactly h lines high, or is wider than w.
func fits(t *testing.T, view string, w, h int) {
	t.Helper()
	lines := strings.Split(view, "\n")
	if len(lines) != h {
		t.Fatalf("%d lines at %dx%d", len(lines), w, h)
	}
	for i, l := range lines {
		if lipgloss.Width(l) > w {
			t.Fatalf("line %d is %d wide at %dx%d: %q", i, lipgloss.Width(l), w, h, l)
		}
	}
}

func sizeName(w, h int) string { return fmt.Sprintf("%dx%d", w, h) }
