package mill

import (
	"io"
	"os"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/counter/journal"
	"millside/counter/session"
	"millside/plan"
	"millside/tui/internal/hand"
	"millside/tui/keys"
	"millside/tui/look"
)

// Screens show local times; the tests see one place only.
func TestMain(m *testing.M) {
	time.Local = time.UTC
	os.Exit(m.Run())
}

// bench is what a test of the screens stands on.
type bench struct {
	t     *testing.T
	deps  Deps
	clock *hand.Clock
	heard []session.Cue
}

func newBench(t *testing.T, profile termenv.Profile) *bench {
	t.Helper()
	b := &bench{t: t, clock: hand.NewClock()}
	b.deps = Deps{Store: journal.Store{Dir: t.TempDir(), FS: journal.OS()}, Styles: look.NewStyles(io.Discard, profile),
		Keys: keys.Default(), Sound: func(c session.Cue) { b.heard = append(b.heard, c) }}
	return b
}

// winding winds a warp so far, half a minute a pass, and through whatever is asked there.
func (b *bench) winding(spec plan.Spec, laid int) Model {
	b.t.Helper()
	p, err := plan.New(spec)
	if err != nil {
		b.t.Fatal(err)
	}
	rec, err := b.deps.Store.Create(p)
	if err != nil {
		b.t.Fatal(err)
	}
	b.t.Cleanup(func() { _ = rec.Close() })
	m := New(b.deps, rec, b.clock.T)
	for laid > 0 {
		stage := m.s.Stage(m.at)
		if m.s.State().Laid() == laid && stage != session.AtQuestion && stage != session.AtPeg {
			break
		}
		b.clock.Wait(27 * time.Second)
		if stage == session.AtQuestion {
			m = b.press(m, "y")
			continue
		}
		m = b.press(m, "space")
	}
	b.clock.Wait(27 * time.Second)
	return m
}

// again closes the record and opens it anew, as after a crash.
func (b *bench) again(m Model) Model {
	b.t.Helper()
	if err := m.rec.Close(); err != nil {
		b.t.Fatal(err)
	}
	rec, err := journal.Open(journal.OS(), m.rec.Path())
	if err != nil {
		b.t.Fatal(err)
	}
	b.t.Cleanup(func() { _ = rec.Close() })
	return New(b.deps, rec, b.clock.T)
}

// until winds on until a page comes up.
func (b *bench) until(m Model, want session.Stage) Model {
	b.t.Helper()
	for range 80 {
		switch stage := m.s.Stage(m.at); stage {
		case want:
			return m
		case session.AtQuestion:
			m = b.press(m, "y")
		default:
			m = b.press(m, "space")
		}
	}
	b.t.Fatal("the page never came")
	return Model{}
}

// press sends keys one by one, each followed by what its commands bring, three seconds apart.
func (b *bench) press(m Model, names ...string) Model {
	b.t.Helper()
	for _, k := range names {
		b.clock.Wait(3 * time.Second)
		m = b.send(m, hand.Key(k))
	}
	return m
}

// send gives a screen one message and runs the commands that follow, to their end.
func (b *bench) send(m Model, msg tea.Msg) Model {
	b.t.Helper()
	next, cmd := m.Update(msg, b.clock.T)
	for _, msg := range hand.Collect(cmd) {
		next = b.send(next, msg)
	}
	return next
}

// typed sends text as single keys.
func (b *bench) typed(m Model, text string) Model {
	b.t.Helper()
	for _, k := range hand.Letters(text) {
		m = b.send(m, k)
	}
	return m
}
