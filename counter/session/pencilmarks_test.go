package session

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"millside/counter"
	"millside/plan"
	"millside/plan/stripe/schedule"
	"millside/plan/wind"
)

var markedEnd = regexp.MustCompile(`\bend (\d+)\b`)

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

// inYarn is where a knot is in the yarn: a pass that is taken off and laid anew lays it once more.
type inYarn struct{ chain, pass, position int }

// mends notes a broken or knotted end of a pass that lies on the pegs, and draws the knot into it.
func (w drawnWarp) mends(rt *rapid.T, p *pencil, knots map[inYarn]counter.What) {
	w.t.Helper()
	chain := p.chains[len(p.chains)-1]
	pass := rapid.IntRange(1, len(chain)).Draw(rt, "pass")
	end := rapid.SampledFrom(chain[pass-1]).Draw(rt, "end")
	knot := inYarn{len(p.chains), pass, end.position}
	if _, twice := knots[knot]; twice {
		return
	}
	what := rapid.SampledFrom([]counter.What{counter.Broken, counter.Knot}).Draw(rt, "what")
	w.does(Mark{What: what, Pass: pass, Position: end.position})
	if w.last.Cue == CueRefused {
		w.t.Fatalf("pass %d position %d lies there and has a knot, but %q", pass, end.position, w.last.Said)
	}
	knots[knot] = what
}

// runsOut joins a new package to the yarn of a position that hangs at the warp.
func (w drawnWarp) runsOut(rt *rapid.T, p *pencil) {
	w.t.Helper()
	if hang := p.hanging(); len(hang) > 0 && w.stage() == Winding {
		pos := rapid.SampledFrom(hang).Draw(rt, "ran out")
		if w.does(NewPackage{Position: pos}); w.last.Cue == CueRefused {
			w.t.Fatalf("position %d ran out, but %q", pos, w.last.Said)
		}
	}
}

// finds compares the knots in the ends with those that the hand-over tells.
func (w drawnWarp) finds(p *pencil, knots map[inYarn]counter.What) {
	w.t.Helper()
	var picks []string
	if w.byChain {
		picks = w.order
	}
	of := map[*drawnEnd]counter.What{}
	for i, chain := range p.chains {
		for k, pass := range chain {
			for _, end := range pass {
				if what, ok := knots[inYarn{i + 1, k + 1, end.position}]; ok {
					of[end] = what
				}
			}
		}
	}
	drawn, told := map[int]counter.What{}, map[int]counter.What{}
	for i, end := range p.warp(picks) {
		if what, ok := of[end]; ok {
			drawn[i+1] = what
		}
	}
	for _, r := range counter.HandOver(w.s.State(), slices.Values(w.events)).Rows {
		for _, what := range []counter.What{counter.Broken, counter.Knot} {
			if m := markedEnd.FindStringSubmatch(r.Value.String()); m != nil && r.Name == what.Words() {
				end, _ := strconv.Atoi(m[1])
				told[end] = what
			}
		}
	}
	if !maps.Equal(drawn, told) {
		w.t.Fatalf("knots drawn %v, told %v", drawn, told)
	}
}

// Stripes of any kind, with ends that break, packages that run out and passes taken back: the colours come out
// as ordered, and each mended end has the number that the hand-over tells.
func TestPencilMends(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		text, way := drawnText(rt), rapid.SampledFrom(allWays).Draw(rt, "way")
		foot := wind.FootPosition(rapid.IntRange(0, 1).Draw(rt, "foot"))
		w, ok := newDrawnWarp(t, text, way, func(s *plan.Spec) {
			s.Positions, s.Foot = rapid.IntRange(3, 9).Draw(rt, "positions"), foot
			s.ChainEnds = rapid.SampledFrom([]int{0, 0, 20}).Draw(rt, "chain")
			s.ReturnOrder = wind.ReturnOrder(rapid.IntRange(0, 1).Draw(rt, "planned"))
		})
		if !ok {
			rt.Skip("not this way")
		}
		p := newPencil(t, rapid.Bool().Draw(rt, "mirrored"), foot == wind.FootLast)
		knots, left := map[inYarn]counter.What{}, 20
		w.follow(p, func() bool {
			switch happens := rapid.IntRange(0, 19).Draw(rt, "happens"); {
			case happens < 3:
				w.mends(rt, p, knots)
			case happens == 3:
				w.runsOut(rt, p)
			case happens == 4 && left > 0:
				left--
				return true
			}
			return false
		})
		w.check(p)
		w.finds(p, knots)
	})
}

// Stripes in several chains whose first one lies end by end don't show their order there: it is asked on a later
// chain, and whatever lies there is taken for an answer.
func TestPencilOrderOfLaterChain(t *testing.T) {
	seen := 0
	for red := 3; red <= 27; red += 3 {
		for _, mirrored := range []bool{false, true} {
			text := fmt.Sprintf("%d red, 8 white, 8 navy", red)
			w, ok := newDrawnWarp(t, text, schedule.SideBySide, func(s *plan.Spec) {
				s.Positions, s.ChainEnds = 7, max(red, 10)
			})
			if !ok || len(w.plan.Chains) == 1 {
				continue
			}
			seen++
			p := newPencil(t, mirrored, false)
			w.follow(p, never)
			w.check(p)
		}
	}
	if seen == 0 {
		t.Error("no such warp")
	}
}
