package mill

import (
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
	"pgregory.net/rapid"

	"millside/counter/journal"
	"millside/plan"
	"millside/plan/frame"
	"millside/plan/times"
	"millside/plan/wind"
	"millside/tui/internal/hand"
)

// anyKey draws a key: mostly one that means something, at times any sign at all.
func anyKey(rt *rapid.T) string {
	if rapid.IntRange(0, 9).Draw(rt, "odd key") == 0 {
		return rapid.StringN(1, 3, -1).Draw(rt, "typed")
	}
	return rapid.SampledFrom([]string{"space", "space", "space", "enter", "tab", "esc", "backspace", "pgdown", "up",
		"y", "o", "l",
		"u", "r", "p", "c", "n", "b", "k", "a", "w", "e", "m", "g", "t", "x", "d", "v", "f", "?", "4", "9",
		"織"}).Draw(rt, "key")
}

// anySpec draws a small warp of any kind that the screens draw in their own way.
func anySpec(rt *rapid.T) plan.Spec {
	if rapid.IntRange(0, 3).Draw(rt, "striped") == 0 {
		return hand.Fade()
	}
	s := hand.Towels()
	s.Group = rapid.IntRange(1, 12).Draw(rt, "group")
	s.Ends = rapid.IntRange(1, 60).Draw(rt, "ends")
	s.TieEvery = rapid.SampledFrom([]int{0, 20}).Draw(rt, "ties")
	s.ReturnOrder = wind.ReturnOrder(rapid.IntRange(0, 1).Draw(rt, "order"))
	s.Hand = wind.Hand(rapid.IntRange(0, 1).Draw(rt, "hand"))
	s.Guard = times.Guard(rapid.SampledFrom([]time.Duration{0, 2 * time.Second}).Draw(rt, "guard"))
	if chain := rapid.IntRange(0, 40).Draw(rt, "chain"); chain >= s.Group {
		s.ChainEnds = chain
	}
	if rapid.IntRange(0, 3).Draw(rt, "board") == 0 {
		s.Board = frame.Board{s.Length, s.Length}
	}
	return s
}

// Whatever is pressed, on whatever warp, the page has as many lines as the window and none is wider, whatever the
// window's size; nothing panics.
func TestNothingPanics(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		b := newBench(t, termenv.ANSI)
		p, err := plan.New(anySpec(rt))
		if err != nil {
			rt.Skip(err)
		}
		rec, err := b.deps.Store.Create(p)
		if err != nil {
			rt.Fatal(err)
		}
		defer func() { _ = rec.Close() }()
		m := New(b.deps, rec, b.clock.T)
		for range rapid.IntRange(1, 25).Draw(rt, "keys") {
			b.clock.Wait(rapid.SampledFrom([]time.Duration{33 * time.Millisecond, 3 * time.Second, 3 * time.Second,
				11 * time.Minute}).
				Draw(rt, "gap"))
			m = b.send(m, hand.Key(anyKey(rt)))
			within(rt, m, rapid.IntRange(1, 220).Draw(rt, "wide"), rapid.IntRange(1, 70).Draw(rt, "high"))
		}
		again, err := journal.OpenReadOnly(journal.OS(), m.rec.Path())
		if err != nil {
			rt.Fatal(err)
		}
		defer func() { _ = again.Close() }()
		if got, shown := again.State().Laid(), m.s.State().Laid(); got != shown {
			rt.Fatalf("opened again it has %d passes, the screen shows %d", got, shown)
		}
	})
}

// within fails where a frame isn't exactly h lines high, or has a line of more than w cells.
func within(rt *rapid.T, m Model, w, h int) {
	view := m.View(w, h)
	lines := strings.Split(view, "\n")
	if len(lines) != h {
		rt.Fatalf("%d lines in a window of %d by %d:\n%s", len(lines), w, h, view)
	}
	for _, l := range lines {
		if n := lipgloss.Width(l); n > w {
			rt.Fatalf("a line of %d cells in a window of %d by %d:\n%s", n, w, h, view)
		}
	}
}
