package mill

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/muesli/termenv"

	"millside/counter/session"
	"millside/plan"
	"millside/plan/wind"
	"millside/tui/internal/hand"
	"millside/tui/keys"
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
		"left out":       b.until(b.winding(change(func(s *plan.Spec) { s.Ends = 37 }), 3), session.Winding),
		"mirrored, last": b.winding(change(func(s *plan.Spec) { s.Ends, s.ReturnOrder = 40, wind.MirroredOrder }), 3),
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
	widths := []int{40, 41, 56, 60, 76, 80, 120, 170, 200, 300}
	if testing.Short() {
		widths = []int{40, 60, 80, 300}
	}
	for name, m := range instructed(b) {
		if stage := m.s.Stage(m.at); stage != session.Winding {
			t.Fatalf("%s: stage %d", name, stage)
		}
		refused := m
		refused.s, _ = m.s.Take(session.Redo{}, m.at.Add(10*time.Second))
		for _, far := range []bool{false, true} {
			m.far, refused.far = far, far
			for _, w := range widths {
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
		if allDrawn(m.Styles, st.phrases, rows) || st.head != "" &&
			allDrawn(m.Styles, append([]string{st.head}, st.tail...), rows) {
			continue
		}
		fail(strings.Join(st.phrases, ", "))
	}
	if word := strings.ToUpper(in.Pass.Direction.String()); !strings.Contains(flat, word) &&
		!drawn(m.Styles, word, rows) {
		fail(word)
	}
	if last := lastWords(in); !strings.Contains(flat, last) {
		fail(last)
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

func allDrawn(s look.Styles, phrases []string, rows []string) bool {
	return !slices.ContainsFunc(phrases, func(p string) bool { return !drawn(s, p, rows) })
}

// drawn says whether a text stands on the screen at any size.
func drawn(s look.Styles, text string, rows []string) bool {
	for z := look.AsItIs; z < look.Blocks+8; z++ {
		if z >= look.Blocks && !look.Known(text) { // a rune that is drawn as a blank isn't there
			return false
		}
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

// The ordinary pass is drawn in block letters in the smallest window that a weaver uses, its turn too, also
// where the group is flicked round the peg, a count tie is due or the pass is the last one.
func TestTurnIsLargeInASmallWindow(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	mirrored := hand.Towels()
	mirrored.ReturnOrder = wind.MirroredOrder
	short := hand.Towels()
	short.Ends = 37
	for name, m := range map[string]Model{
		"outward": b.winding(hand.Towels(), 4), "return": b.winding(hand.Towels(), 5),
		"mirrored": b.winding(mirrored, 5),
		"tie":      b.winding(hand.Towels(), 11), "last": b.winding(hand.Towels(), 39),
		"left out": b.until(b.winding(short, 3), session.Winding),
	} {
		in, _ := m.s.Instruction(m.at)
		rows := strings.Split(m.View(60, 18), "\n")
		for _, st := range stepsOf(in) {
			phrases := st.phrases
			if st.turn != 0 {
				phrases = []string{st.head}
			}
			for _, p := range phrases {
				if !st.loose && !stands(m.Styles.Big(p, look.Blocks), rows) {
					t.Errorf("%s: %s is not drawn in block letters:\n%s", name, p, strings.Join(rows, "\n"))
				}
			}
		}
	}
}

// What a page is about, and what has to be done, is drawn in block letters in a small window too; the page of keys
// leaves none out.
func TestPagesAreLargeInASmallWindow(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	short := hand.Towels()
	short.Ends = 37
	for name, page := range map[string]struct {
		m     Model
		large string
	}{
		"question":  {b.until(b.winding(hand.Towels(), 0), session.AtQuestion), "LEASE"},
		"stop":      {b.until(b.winding(short, 2), session.AtPeg), "CUT OFF 8 TO 10"},
		"finishing": {b.winding(hand.Towels(), 40), "NEAR END PEG"},
		"rest":      {b.press(b.winding(hand.Towels(), 5), "p"), "PAUSED"},
	} {
		view := page.m.View(60, 18)
		if rows := strings.Split(view, "\n"); !stands(page.m.Styles.Big(page.large, look.Blocks), rows) {
			t.Errorf("%s: %s is not drawn in block letters:\n%s", name, page.large, view)
		}
	}
	help := b.press(b.winding(hand.Towels(), 5), "?").View(60, 18)
	for _, k := range keys.Default().MillKeys() {
		if !strings.Contains(help, k.Help().Desc) {
			t.Errorf("%q is left out:\n%s", k.Help().Desc, help)
		}
	}
}

// No line of keys is cut in a window of the usual sizes: a key that isn't shown is a way back that isn't known.
func TestNoLineOfKeysIsCut(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	for _, page := range pages {
		p := page.make(b)
		for _, size := range hand.Sizes {
			rows := strings.Split(p.View(size.W, size.H), "\n")
			if last := rows[len(rows)-1]; strings.Contains(last, "…") {
				t.Errorf("%s at %s: %s", page.name, size, last)
			}
		}
	}
}

// The last pass draws nothing smaller than the pass before, in windows of the usual sizes.
func TestLastPassIsAsLarge(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	short := hand.Towels()
	short.Ends = 37
	before, last := b.winding(short, 2), b.until(b.winding(short, 3), session.Winding)
	for _, size := range hand.Sizes {
		steps := func(m Model) (z look.Size) {
			rows := strings.Split(m.View(size.W, size.H), "\n")
			for z = look.Blocks + 6; z > look.AsItIs && !drawnAt(m, z, rows); z-- {
				continue
			}
			return z
		}
		if was, is := steps(before), steps(last); is < was {
			t.Errorf("%s: the lease is drawn in size %d on the last pass, in %d before:\n%s", size, is, was,
				last.View(size.W, size.H))
		}
	}
}

// drawnAt says whether the counting cross of the pass in hand is drawn at a size.
func drawnAt(m Model, z look.Size, rows []string) bool {
	in, _ := m.s.Instruction(m.at)
	return stands(m.Styles.Big(fmt.Sprintf("OVER %d", in.Over), z), rows)
}

// The far view shows the keys that work on it, and nothing is smaller for it.
func TestFarViewShowsItsKeys(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	for name, m := range instructed(b) {
		m.far = true
		for _, size := range append(hand.Sizes, hand.Extremes...) {
			if view := m.View(size.W, size.H); m.message().Text == "" && !strings.Contains(hand.Flat(view), "near") {
				t.Errorf("%s at %s shows no keys:\n%s", name, size, view)
			}
		}
	}
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
