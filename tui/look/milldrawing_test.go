package look

import (
	"strings"
	"testing"

	"github.com/charmbracelet/lipgloss"

	"millside/plan"
	"millside/plan/frame"
	"millside/plan/measure"
	"millside/plan/wind"
)

// drawnMill is the drawing of a pass without styles.
func drawnMill(t *testing.T, s plan.Spec, pass, w, h int) string {
	t.Helper()
	p, err := plan.New(s)
	if err != nil {
		t.Fatal(err)
	}
	rows := DrawMill(p, p.Chains[0].Passes[pass-1], w, h).Lines(func(Ink) Style { return styled(lipgloss.NewStyle()) })
	if len(rows) != h {
		t.Errorf("%d rows of %d", len(rows), h)
	}
	for _, r := range rows {
		if Wide(r) > w {
			t.Errorf("a row of %d cells, %d have room", Wide(r), w)
		}
	}
	return strings.Join(rows, "\n")
}

// The mill shows every turn with how far the guide string goes, the pegs of both ends, the way of the pass and where it
// is heading; in ASCII too. Two yards round, 5 yards are two and a half turns (common practice, no source): the far end
// peg stands at the end of the front of turn 3.
func TestMillDrawing(t *testing.T) {
	for _, hand := range []wind.Hand{wind.RightHanded, wind.LeftHanded} {
		s := plan.DefaultSpec()
		s.Hand = hand
		out, back := drawnMill(t, s, 1, 80, 14), drawnMill(t, s, 2, 80, 14)
		for _, want := range []string{"turn 1", "turn 2", "turn 3", "2 yd", "4 yd", "guide string: 2.5 turns, 5 yd"} {
			if !strings.Contains(out, want) || !strings.Contains(back, want) {
				t.Errorf("%s: %q is missing:\n%s\n%s", hand, want, out, back)
			}
		}
		if n := strings.Count(out, "●"); n != 2 {
			t.Errorf("%d end pegs:\n%s", n, out)
		}
		if !strings.Contains(out, "heading here: the counting cross") ||
			!strings.Contains(back, "heading here: the lease") {
			t.Errorf("where it is heading:\n%s\n%s", out, back)
		}
		front, behind := "▶", "◀"
		if hand == wind.LeftHanded {
			front, behind = behind, front
		}
		if strings.Count(out, front) != 3 || strings.Count(out, behind) != 2 || strings.Count(back, front) != 2 ||
			strings.Count(back, behind) != 3 {
			t.Errorf("the way:\n%s\n%s", out, back)
		}
		if ascii := ASCII(out); strings.ContainsFunc(ascii, func(r rune) bool { return r > 126 || r == '?' }) {
			t.Errorf("not in ASCII:\n%s", ascii)
		}
	}
}

// A warp of many turns leaves turns in the middle out, and says how many; no size makes it stick out.
func TestMillDrawingAtAnySize(t *testing.T) {
	s := plan.DefaultSpec()
	s.Length = 30 * measure.Yard // 15 turns
	if out := drawnMill(t, s, 1, 60, 16); !strings.Contains(out, "5 turns more") || !strings.Contains(out, "turn 15") {
		t.Errorf("15 turns:\n%s", out)
	}
	s.Length = 5 * measure.Yard // two and a half: the smallest drawing leaves none out
	out := drawnMill(t, s, 1, MillWidth, MillHeight)
	if strings.Contains(out, "more") || !strings.Contains(out, "turn 3") {
		t.Errorf("two turns and a half:\n%s", out)
	}
	for _, yards := range []int{1, 2, 3, 5, 8, 13, 30} {
		s.Length = measure.Length(yards) * measure.Yard
		for h := MillHeight; h < 34; h++ {
			for _, w := range []int{MillWidth, 50, 90} {
				drawnMill(t, s, 1+h%2, w, h)
			}
		}
	}
}

// The board shows a peg at the end of each distance, and each distance.
func TestBoardDrawing(t *testing.T) {
	s := plan.DefaultSpec()
	s.Board = frame.Board{36 * measure.Inch, 30 * measure.Inch, 36 * measure.Inch, 36 * measure.Inch, 42 * measure.Inch}
	for _, pass := range []int{1, 2} {
		out := drawnMill(t, s, pass, 70, 14)
		if n := strings.Count(out, "●"); n != 6 {
			t.Errorf("%d pegs:\n%s", n, out)
		}
		for i, d := range []string{"36 in", "30 in", "42 in"} {
			if n := strings.Count(out, d); n != []int{3, 1, 1}[i] {
				t.Errorf("%q is there %d times:\n%s", d, n, out)
			}
		}
		want := "heading here: " + []string{"the counting cross", "the lease"}[pass-1]
		if !strings.Contains(out, want) {
			t.Errorf("%q is missing:\n%s", want, out)
		}
	}
	for h := MillHeight; h < 30; h++ {
		drawnMill(t, s, 1+h%2, MillWidth, h)
	}
	many := plan.DefaultSpec()
	for range 40 {
		many.Board = append(many.Board, 20*measure.Inch)
	}
	many.Length = 20 * measure.Yard
	if out := drawnMill(t, many, 1, 60, 12); !strings.Contains(out, "28 distances more") {
		t.Errorf("36 distances:\n%s", out)
	}
}
