package mill

import (
	"io"
	"testing"

	"github.com/muesli/termenv"

	"millside/counter/journal"
	"millside/plan"
	"millside/plan/measure"
	"millside/tui/internal/hand"
	"millside/tui/keys"
	"millside/tui/look"
)

// benchWinding is a winding screen on a real record.
func benchWinding(b *testing.B, spec plan.Spec) Model {
	b.Helper()
	p, err := plan.New(spec)
	if err != nil {
		b.Fatal(err)
	}
	rec, err := journal.Create(journal.OS(), b.TempDir()+"/w.millside", p)
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { _ = rec.Close() })
	return New(Deps{Styles: look.NewStyles(io.Discard, termenv.ANSI), Keys: keys.Default()}, rec, hand.NewClock().T)
}

// BenchmarkFrame is one picture of the screen at the mill.
func BenchmarkFrame(b *testing.B) {
	m := benchWinding(b, hand.Towels())
	for _, size := range hand.Sizes {
		b.Run(size.String(), func(b *testing.B) {
			for b.Loop() {
				_ = m.View(size.W, size.H)
			}
		})
	}
}

// BenchmarkPress is a key press from the program's side: the guard, one line written and synced, the
// new state, and the picture.
func BenchmarkPress(b *testing.B) {
	spec := hand.Towels()
	spec.Ends, spec.Group, spec.Guard, spec.TieEvery = measure.MaxEnds, 1, 0, 0
	m := benchWinding(b, spec)
	now := hand.NewClock().T
	for b.Loop() {
		next, cmd := m.Update(hand.Key("space"), now)
		for _, msg := range hand.Collect(cmd) {
			next, _ = next.Update(msg, now)
		}
		m = next
		_ = m.View(80, 24)
	}
}
