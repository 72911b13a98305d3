package mill

import (
	"strings"
	"testing"
	"time"

	"github.com/muesli/termenv"

	"millside/counter/session"
	"millside/plan"
	"millside/plan/wind"
	"millside/tui/internal/hand"
	"millside/tui/look"
)

// instructed are the warps and passes whose instruction is looked for at every size.
func instructed(b *bench) map[string]Model {
	change := func(f func(*plan.Spec)) plan.Spec {
		s := hand.Towels()
		f(&s)
		return s
	}
	lefty := change(func(s *plan.Spec) { s.Hand, s.ReturnOrder = wind.LeftHanded, wind.MirroredOrder })
	odd := change(func(s *plan.Spec) { s.Ends, s.Group = 395, 9 })
	striped := b.until(b.winding(hand.Fade(), 0), session.Winding)
	return map[string]Model{
		"first":          b.winding(hand.Towels(), 0),
		"outward":        b.winding(hand.Towels(), 4),
		"return":         b.winding(hand.Towels(), 5),
		"last and short": b.winding(hand.Towels(), 39),
		"mirrored":       b.winding(change(func(s *plan.Spec) { s.ReturnOrder = wind.MirroredOrder }), 5),
		"left-handed":    b.winding(lefty, 5),
		"odd":            b.winding(odd, 6),
		"odd, last":      b.winding(odd, 43),
		"twist":          b.press(b.winding(hand.Towels(), 15), "w"),
		"twist, later":   b.press(b.winding(hand.Towels(), 16), "w"),
		"striped, first": striped,
		"striped":        b.winding(hand.Fade(), 5),
	}
}

// No instruction for the pass in hand is cut, replaced or hidden, at any size, whether there is a message or not; and a
// message is there at any size too.
func TestInstructionAtEverySize(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	for name, m := range instructed(b) {
		if stage := m.s.Stage(m.at); stage != session.Winding {
			t.Fatalf("%s: stage %d", name, stage)
		}
		refused := m
		refused.s, _ = m.s.Take(session.Redo{}, m.at.Add(10*time.Second))
		for _, far := range []bool{false, true} {
			m.far, refused.far = far, far
			for _, w := range []int{40, 41, 56, 60, 76, 80, 120, 170, 200, 300} {
				for _, h := range []int{12, 13, 14, 16, 18, 21, 24, 30, 40, 46, 60, 100} {
					instructs(t, name, m, hand.Size{W: w, H: h})
				}
				for _, h := range []int{12, 14, 18, 24, 46, 60} {
					instructs(t, name+", refused", refused, hand.Size{W: w, H: h})
				}
			}
		}
	}
}

// instructs looks for each part of the instruction on the screen.
func instructs(t *testing.T, name string, m Model, size hand.Size) {
	t.Helper()
	view := m.View(size.W, size.H)
	hand.Fits(t, view, size)
	flat, rows := hand.Flat(view), strings.Split(view, "\n")
	fail := func(what string) { t.Fatalf("%s at %s, far %v: %s is not there:\n%s", name, size, m.far, what, view) }
	in, _ := m.s.Instruction(m.at)
	for _, st := range stepsOf(in) {
		if strings.Contains(flat, st.words) || strings.Contains(flat, st.brief) {
			continue
		}
		for _, p := range st.phrases {
			if !drawn(m.Styles, p, rows) {
				fail(p)
			}
		}
	}
	if word := strings.ToUpper(in.Pass.Direction.String()); !strings.Contains(flat, word) &&
		!drawn(m.Styles, word, rows) {
		fail(word)
	}
	for _, item := range append(otherItems(in.Now), in.Reminders...) {
		short := item.Short
		if item.Kind == session.ItemTurn {
			short = m.s.State().TwistBrief()
		}
		if !strings.Contains(flat, item.Text) && !strings.Contains(flat, short) {
			fail(item.Text)
		}
	}
	if msg := m.message().Text; msg != "" && !strings.Contains(flat, msg[:min(len(msg), 20)]) {
		fail(msg)
	}
}

// drawn says whether a text stands on the screen at any size.
func drawn(s look.Styles, text string, rows []string) bool {
	for z := look.AsItIs; z < look.Blocks+8; z++ {
		if stands(s.Big(text, z), rows) {
			return true
		}
	}
	return false
}

// stands says whether rows stand one below the other on the screen, in the same columns.
func stands(big, rows []string) bool {
	for y := 0; y+len(big) <= len(rows); y++ {
		for x := strings.Index(rows[y], big[0]); x >= 0; {
			column := look.Wide(rows[y][:x])
			all := true
			for i, b := range big {
				all = all && strings.HasPrefix(from(rows[y+i], column), strings.TrimRight(b, " "))
			}
			if all {
				return true
			}
			next := strings.Index(rows[y][x+1:], big[0])
			if next < 0 {
				break
			}
			x += next + 1
		}
	}
	return false
}

// from is a row from a column on.
func from(row string, column int) string {
	rs := []rune(row)
	return string(rs[min(column, len(rs)):])
}

// A width is counted in cells, not in letters: sixty wide letters take 120.
func TestWideNameFits(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := hand.Towels()
	s.Name = strings.Repeat("織", 60)
	m := b.winding(s, 1)
	for _, page := range []Model{m, b.press(m, "p"), b.press(m, "?"), b.press(m, "space"), b.press(m, "n")} {
		for _, size := range append(hand.Sizes, hand.Extremes...) {
			hand.Fits(t, page.View(size.W, size.H), size)
		}
	}
}
