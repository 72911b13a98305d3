package tui

import (
	"io"
	"os"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/counter"
	"millside/counter/journal"
	"millside/counter/session"
	"millside/plan"
	"millside/tui/internal/hand"
	"millside/tui/keys"
	"millside/tui/look"
	"millside/tui/mill"
)

// Screens show local times; the tests see one place only.
func TestMain(m *testing.M) {
	time.Local = time.UTC
	os.Exit(m.Run())
}

// bench is what a test of the whole program stands on.
type bench struct {
	t     *testing.T
	deps  deps
	clock *hand.Clock
	heard []session.Cue
}

func newBench(t *testing.T, profile termenv.Profile) *bench {
	t.Helper()
	b := &bench{t: t, clock: hand.NewClock()}
	practice := plan.DefaultSpec()
	practice.Name = "Practice warp"
	b.deps = deps{store: journal.Store{Dir: t.TempDir(), FS: journal.OS()}, styles: look.NewStyles(io.Discard, profile),
		keys: keys.Default(), sound: func(c session.Cue) { b.heard = append(b.heard, c) }, practice: practice}
	return b
}

// app is the program at home with nothing wound yet.
func (b *bench) app() app {
	a := newApp(b.deps, b.clock.T)
	a.screen = newHome(b.deps, listing{}, b.clock.T)
	return a
}

// winding is the program at a record with so many passes laid.
func (b *bench) winding(spec plan.Spec, laid int) app {
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
	a := b.app()
	a.screen = winding{mill.New(a.forMill(), rec, b.clock.T)}
	var m tea.Model = a
	for len(rec.Events()) == 0 || rec.State().Laid() < laid {
		if laid == 0 {
			return a
		}
		m = drive(b, m, hand.Key("space"))
	}
	return m.(app)
}

// drive runs the whole program's model, with every command to its end; each message comes three seconds
// after the one before.
func drive(b *bench, m tea.Model, msgs ...tea.Msg) tea.Model {
	stamped := stamp(b.clock.Now)
	for _, msg := range msgs {
		b.clock.Wait(3 * time.Second)
		var cmd tea.Cmd
		m, cmd = m.Update(stamped(m, msg))
		m = drive(b, m, hand.Collect(cmd)...)
	}
	return m
}

// state is what the record says that is being wound.
func state(t *testing.T, m tea.Model) counter.State {
	t.Helper()
	w, ok := m.(app).screen.(winding)
	if !ok {
		t.Fatalf("%T is shown:\n%s", m.(app).screen, m.View())
	}
	return w.Record().State()
}
