package tui

import (
	"io"
	"testing"

	"github.com/muesli/termenv"

	"millside/counter"
	"millside/plan"
)

// benchWinding is a winding screen on a real record.
func benchWinding(b *testing.B, spec plan.Spec) winding {
	b.Helper()
	p, err := plan.New(spec)
	if err != nil {
		b.Fatal(err)
	}
	rec, err := counter.Create(counter.OS(), b.TempDir()+"/w.millside", p)
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { _ = rec.Close() })
	return newWinding(deps{now: (&hand{}).now, styles: newStyles(io.Discard, termenv.ANSI), keys: defaultKeys()}, rec)
}

// BenchmarkFrame is one picture of the screen at the mill.
func BenchmarkFrame(b *testing.B) {
	m := benchWinding(b, towels())
	for _, size := range goldenSizes {
		b.Run(sizeName(size.w, size.h), func(b *testing.B) {
			for b.Loop() {
				_ = m.view(size.w, size.h)
			}
		})
	}
}

// BenchmarkPress is a key press from the program's side: the guard, one line written and synced, the
// new state, and the picture.
func BenchmarkPress(b *testing.B) {
	spec := towels()
	spec.Ends, spec.Group, spec.GuardMillis, spec.TieEvery = plan.MaxEnds, 1, 0, 0
	var s screen = benchWinding(b, spec)
	for b.Loop() {
		next, cmd := s.update(keyMsg("space"))
		for _, msg := range collect(cmd) {
			next, _ = next.update(msg)
		}
		s = next
		_ = s.view(80, 24)
	}
}
