package pencil

import (
	"fmt"
	"strconv"
	"strings"

	"millside/counter/session"
)

// step does a finishing step.
func (p *Pencil) step(said string) {
	p.t.Helper()
	if m := fastenStep.FindStringSubmatch(said); m != nil {
		if (m[1] == "far") != p.far || m[2] != strconv.Itoa(len(p.tied)) {
			p.t.Fatalf("at the far peg: %v, %v hang at the warp: %q", p.far, p.hanging(), said)
		}
	}
	if strings.Contains(said, "Tie the loop at the near end peg") {
		p.tails(said, false)
	} else if strings.Contains(said, "Tie the loop at the far end peg") {
		p.tails(said, true)
	}
	if strings.Contains(said, "Cut between the peg and the paddle") {
		for _, pos := range p.hanging() {
			p.cut(pos)
		}
	}
}

// tails compares the tails at a peg, but those of the last group, with what the step says is to be knotted.
func (p *Pencil) tails(said string, far bool) {
	p.t.Helper()
	begin, finish := 0, 0
	chain := p.chains[len(p.chains)-1]
	for k, pass := range chain {
		for _, end := range pass {
			if far && end.beginFar || !far && end.beginsNear {
				begin++
			}
			if k < len(chain)-1 && (far && end.finishFar || !far && end.finishNear) {
				finish++
			}
		}
	}
	m := looseWords.FindStringSubmatch(said)
	if m == nil {
		m = []string{"", "", ""}
	}
	if got, want := fmt.Sprint(number(m[1]), number(m[2])), fmt.Sprint(begin, finish); got != want {
		p.t.Fatalf("%s tied on and cut off on the way are drawn at the far peg: %v, but %q", want, far, said)
	}
}

func number(text string) int {
	n, _ := strconv.Atoi(text)
	return n
}

// nextChain begins with the next one, at the lease.
func (p *Pencil) nextChain() {
	p.chains = append(p.chains, nil)
	p.far = false
}

// looks answers the question about the lease by what lies there.
func (p *Pencil) looks(q session.Question) session.Says {
	p.t.Helper()
	chain := p.chains[len(p.chains)-1]
	before, last := chain[q.Pass-2], chain[q.Pass-1]
	if !q.Foot {
		if before[len(before)-1].overA != last[0].overA {
			return session.Yes
		}
		return session.Other
	}
	var pos int
	var where string
	if _, err := fmt.Sscanf(q.Short, "Does position %d lie at the %s", &pos, &where); err != nil {
		p.t.Fatalf("%q: %v", q.Short, err)
	}
	if (where == "foot") == (last[0].position == pos) {
		return session.Yes
	}
	return session.Other
}

// knots are the numbers of the ends that begin or finish at a peg, by the names of the hand-over; they are those
// of the ends in the order of the warp.
func (p *Pencil) knots(warp []*drawnEnd) map[string][]int {
	all := map[string][]int{}
	for i, end := range warp {
		for name, is := range map[string]bool{"begin at near peg": end.beginsNear, "finish at near peg": end.finishNear,
			"begin at far peg": end.beginFar, "finish at far peg": end.finishFar} {
			if is {
				all[name] = append(all[name], i+1)
			}
		}
	}
	return all
}

// warp is all ends in the order of the leases, those of a chain after those of the one before; where the order list of
// the colours is given, the next one of each colour is picked from its lease.
func (p *Pencil) warp(order []string) []*drawnEnd {
	p.t.Helper()
	var all []*drawnEnd
	byYarn := map[string][]*drawnEnd{}
	for _, chain := range p.chains {
		for _, pass := range chain {
			all = append(all, pass...)
		}
	}
	if order == nil {
		return all
	}
	for _, end := range all {
		byYarn[named(end.yarn)] = append(byYarn[named(end.yarn)], end)
	}
	var picked []*drawnEnd
	for i, yarn := range order {
		if len(byYarn[yarn]) == 0 {
			p.t.Fatalf("end %d: no %s is left on the leases", i+1, yarn)
		}
		picked, byYarn[yarn] = append(picked, byYarn[yarn][0]), byYarn[yarn][1:]
	}
	return picked
}

// faults are the passes of each chain before which two neighbours lie on the same side of lease peg A.
func (p *Pencil) faults() [][]int {
	var all [][]int
	for _, chain := range p.chains {
		var faults []int
		var before *drawnEnd
		for k, pass := range chain {
			for i, end := range pass {
				if before != nil && before.overA == end.overA {
					if i > 0 {
						p.t.Fatalf("two neighbours of pass %d lie on the same side of the lease peg", k+1)
					}
					faults = append(faults, k+1)
				}
				before = end
			}
		}
		all = append(all, faults)
	}
	return all
}
