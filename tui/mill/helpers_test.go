package mill

import (
	"io"
	"os"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/counter"
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
	bells int
}

func newBench(t *testing.T, profile termenv.Profile) *bench {
	t.Helper()
	b := &bench{t: t, clock: hand.NewClock()}
	b.deps = Deps{Store: counter.Store{Dir: t.TempDir(), FS: counter.OS()}, Styles: look.NewStyles(io.Discard, profile),
		Keys: keys.Default(), Bell: func() { b.bells++ }}
	return b
}

// winding makes a record with so many passes laid.
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
	for i := range laid {
		b.append(rec, counter.Event{Kind: counter.Laid, Pass: i + 1, Chain: 1})
		if i == 1 {
			b.append(rec, counter.Event{Kind: counter.LeaseSeen, Order: spec.ReturnOrder})
		}
	}
	m := New(b.deps, rec, b.clock.T)
	m.mode = m.restingMode()
	return m
}

func (b *bench) append(rec *counter.Record, e counter.Event) {
	b.t.Helper()
	e.At = b.clock.T
	b.clock.Wait(30 * time.Second)
	if _, err := rec.Append(e); err != nil {
		b.t.Fatal(err)
	}
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
