package pencil

import (
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"millside/counter"
	"millside/counter/session"
)

// Mends notes a broken or a knotted end: that of a pass of the chain in hand that lies on the pegs, the so many-th from
// the foot, both counted from 1. It draws the knot into the end. Where there is a knot already it does nothing.
func (w *Warp) Mends(p *Pencil, what counter.What, pass, nth int) {
	w.t.Helper()
	end := p.chains[len(p.chains)-1][pass-1][nth-1]
	knot := inYarn{len(p.chains), pass, end.position}
	if _, twice := w.knots[knot]; twice {
		return
	}
	w.does(session.Mark{What: what, Pass: pass, Position: end.position})
	if w.last.Cue == session.CueRefused {
		w.t.Fatalf("pass %d position %d lies there and has a knot, but %q", pass, end.position, w.last.Said)
	}
	w.knots[knot] = what
}

// Width is how many ends lie in a pass of the chain in hand, counted from 1.
func (p *Pencil) Width(pass int) int { return len(p.chains[len(p.chains)-1][pass-1]) }

// RunsOut joins a new package to the yarn of the so many-th position that hangs at the warp, counted from 1.
func (w *Warp) RunsOut(p *Pencil, nth int) {
	w.t.Helper()
	hang := p.hanging()
	if len(hang) == 0 || w.s.Stage(w.clock) != session.Winding {
		return
	}
	pos := hang[(nth-1)%len(hang)]
	if w.does(session.NewPackage{Position: pos}); w.last.Cue == session.CueRefused {
		w.t.Fatalf("position %d ran out, but %q", pos, w.last.Said)
	}
	where := ""
	if len(w.plan.Chains) > 1 {
		where = "chain " + strconv.Itoa(len(p.chains)) + ", "
	}
	w.packages = append(w.packages, where+"position "+strconv.Itoa(pos)+", from pass "+strconv.Itoa(w.Laid()+1)+" on")
}

// handOver is the rows of the hand-over, by their names.
func (w *Warp) handOver() map[string][]string {
	all := map[string][]string{}
	for _, r := range counter.HandOver(w.s.State(), slices.Values(w.events)).Rows {
		all[r.Name] = append(all[r.Name], r.Value.String())
	}
	return all
}

// Check compares what was drawn with what was ordered, and all that the hand-over says of knots and packages with what
// was drawn. Told is given each end that it tells of by its number, and what it says of it; it may be nil.
func (w *Warp) Check(p *Pencil, told func(end int, words string)) {
	w.t.Helper()
	var picks []string
	if w.Picks {
		picks = w.Order
	}
	warp := p.warp(picks)
	var got []string
	for _, end := range warp {
		got = append(got, named(end.yarn))
	}
	if !slices.Equal(got, w.Order) {
		p.t.Fatalf("drawn:   %q\nordered: %q", got, w.Order)
	}
	for i, faults := range p.faults() {
		if wrong := w.s.State().Chains[i].WrongOpenings; len(faults) > 0 && len(wrong) == 0 {
			p.t.Fatalf("chain %d: neighbours on one side at passes %v, and nobody knows", i+1, faults)
		}
	}
	rows := w.handOver()
	w.checkPegs(p, warp, rows)
	w.checkMarks(p, warp, rows, told)
	if !slices.Equal(rows["new package"], w.packages) {
		w.t.Fatalf("packages put in %q, told %q", w.packages, rows["new package"])
	}
}

// checkPegs compares the ends that begin and finish at the pegs.
func (w *Warp) checkPegs(p *Pencil, warp []*drawnEnd, rows map[string][]string) {
	w.t.Helper()
	drawn := p.knots(warp)
	for _, name := range []string{"begin at near peg", "finish at near peg", "begin at far peg", "finish at far peg"} {
		var list []int
		for _, row := range rows[name] {
			_, numbers, _ := strings.Cut(row, ": ")
			list = p.positions(numbers)
		}
		if !slices.Equal(list, drawn[name]) {
			p.t.Fatalf("%s: drawn %v, told %v", name, drawn[name], list)
		}
	}
}

var markedEnd = regexp.MustCompile(`\bend (\d+)\b`)

// checkMarks compares the knots that were noted.
func (w *Warp) checkMarks(p *Pencil, warp []*drawnEnd, rows map[string][]string, told func(int, string)) {
	w.t.Helper()
	of := map[*drawnEnd]counter.What{}
	for i, chain := range p.chains {
		for k, pass := range chain {
			for _, end := range pass {
				if what, ok := w.knots[inYarn{i + 1, k + 1, end.position}]; ok {
					of[end] = what
				}
			}
		}
	}
	drawn, found := map[int]counter.What{}, map[int]counter.What{}
	for i, end := range warp {
		if what, ok := of[end]; ok {
			drawn[i+1] = what
		}
	}
	for _, what := range []counter.What{counter.Broken, counter.Knot} {
		for _, row := range rows[what.Words()] {
			m := markedEnd.FindStringSubmatch(row)
			if m == nil { // noted before the stripes were wound in another order, which has no end in that position
				continue
			}
			end, _ := strconv.Atoi(m[1])
			found[end] = what
			if told != nil {
				told(end, row)
			}
		}
	}
	if !maps.Equal(drawn, found) {
		w.t.Fatalf("knots drawn %v, told %v", drawn, found)
	}
}
