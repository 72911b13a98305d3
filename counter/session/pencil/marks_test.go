package pencil

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"millside/counter"
	"millside/plan"
	"millside/plan/stripe/schedule"
	"millside/plan/wind"
)

// drawnText is a few stripes of up to four colours, as a weaver writes them.
func drawnText(rt *rapid.T) string {
	colours := []string{"white", "navy", "red", "green"}[:rapid.IntRange(2, 4).Draw(rt, "colours")]
	var parts []string
	for range rapid.IntRange(2, 6).Draw(rt, "stripes") {
		parts = append(parts, fmt.Sprintf("%d %s", rapid.IntRange(1, 9).Draw(rt, "ends"),
			rapid.SampledFrom(colours).Draw(rt, "colour")))
	}
	text := strings.Join(parts, ", ")
	switch rapid.IntRange(0, 3).Draw(rt, "form") {
	case 0:
		return "mirror (" + text + ")"
	case 1:
		return "2 times (" + text + ")"
	}
	return text
}

// mends notes a broken or knotted end of a pass that lies on the pegs.
func mends(rt *rapid.T, w *Warp, p *Pencil) {
	pass := rapid.IntRange(1, w.Laid()).Draw(rt, "pass")
	what := rapid.SampledFrom([]counter.What{counter.Broken, counter.Knot}).Draw(rt, "what")
	w.Mends(p, what, pass, rapid.IntRange(1, p.Width(pass)).Draw(rt, "end"))
}

// Stripes of any kind, with ends that break, packages that run out and passes taken back: the colours come out
// as ordered, and each mended end has the number that the hand-over tells.
func TestPencilMends(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		text, way := drawnText(rt), rapid.SampledFrom(allWays).Draw(rt, "way")
		foot := wind.FootPosition(rapid.IntRange(0, 1).Draw(rt, "foot"))
		w, ok := planned(t, text, way, func(s *plan.Spec) {
			s.Positions, s.Foot = rapid.IntRange(3, 9).Draw(rt, "positions"), foot
			s.ChainEnds = rapid.SampledFrom([]int{0, 0, 20}).Draw(rt, "chain")
			s.ReturnOrder = wind.ReturnOrder(rapid.IntRange(0, 1).Draw(rt, "planned"))
		})
		if !ok {
			rt.Skip("not this way")
		}
		p := New(t, rapid.Bool().Draw(rt, "mirrored"), foot == wind.FootLast)
		left := 20
		w.Follow(p, func() bool {
			switch happens := rapid.IntRange(0, 19).Draw(rt, "happens"); {
			case happens < 3:
				mends(rt, w, p)
			case happens == 3:
				w.RunsOut(p, rapid.IntRange(1, 9).Draw(rt, "ran out"))
			case happens == 4 && left > 0:
				left--
				return true
			}
			return false
		})
		w.Check(p, nil)
	})
}

// Stripes in several chains whose first one lies end by end don't show their order there: it is asked on a later
// chain, and whatever lies there is taken for an answer.
func TestPencilOrderOfLaterChain(t *testing.T) {
	seen := 0
	for red := 3; red <= 27; red += 3 {
		for _, mirrored := range []bool{false, true} {
			text := fmt.Sprintf("%d red, 8 white, 8 navy", red)
			w, ok := planned(t, text, schedule.SideBySide, func(s *plan.Spec) {
				s.Positions, s.ChainEnds = 7, max(red, 10)
			})
			if !ok || len(w.plan.Chains) == 1 {
				continue
			}
			seen++
			p := New(t, mirrored, false)
			w.Follow(p, never)
			w.Check(p, nil)
		}
	}
	if seen == 0 {
		t.Error("no such warp")
	}
}

// Where the chain that is off the mill would have been wound otherwise in the order that is seen, the stripes can't
// follow it: the hands are told how to lay the return passes of the chain in hand instead.
func TestPencilIsToldTheOtherWay(t *testing.T) {
	told := 0
	for navy := 1; navy <= 6; navy++ {
		text := fmt.Sprintf("%d navy, 7 white, 5 navy, 3 white", navy)
		for _, mirrored := range []bool{false, true} {
			w, ok := planned(t, text, schedule.Searched, func(s *plan.Spec) { s.Positions, s.ChainEnds = 6, 10 })
			if !ok {
				t.Fatal(text)
			}
			p := New(t, mirrored, false)
			w.Follow(p, never)
			w.Check(p, nil)
			if w.told {
				told++
			}
		}
	}
	if told == 0 {
		t.Error("no such warp")
	}
}
