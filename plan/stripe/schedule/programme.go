package schedule

import (
	"math/bits"
	"slices"
)

// programme says what is threaded in each position while each end is laid, and holds the shortest paths
// through the passes that it allows. A pass is laid with what is threaded at its first end.
//
// A path goes from end to end, a label for each way to have come there that is worth keeping: what the last
// pass carried, and the cost so far. Threading costs the same for all paths of a programme; it is added at
// the end.
type programme struct {
	*problem
	dirs    int       // 1 where the direction of a pass doesn't matter, else 2
	width   int       // labels kept for an end and a direction
	thr     []uint8   // what is threaded: thr[i*positions+pos] for end i
	chg     []uint64  // positions that change between the ends i-1 and i
	lists   [][]label // of end i and direction d: lists[i*dirs+d]
	trial   [][]label // the same, for a change that is tried
	threads cost      // what threading costs
	looked  *int      // what was looked at: a size of pass for each label gone on from
	pl      placer
}

// label is a way to have laid the ends up to some end.
type label struct {
	stay   uint64 // carried and threaded still as the next pass may want it
	set    uint64 // carried by the last pass
	cost   cost
	from   int32 // the label that it goes on from
	size   uint8 // ends of the last pass
	forced bool  // a carried position gets another colour here, so that the mill halts
}

// newProgramme makes a programme in which nothing is threaded yet.
func (p *problem) newProgramme(width int, looked *int) *programme {
	n := len(p.ends)
	g := &programme{problem: p, dirs: 1, width: width, looked: looked}
	if p.mirrored || p.atLease {
		g.dirs = 2
	}
	g.thr = make([]uint8, n*p.positions)
	g.chg = make([]uint64, n+1)
	g.lists = make([][]label, (n+1)*g.dirs)
	g.trial = make([][]label, (n+1)*g.dirs)
	g.pl = placer{positions: p.positions, dirs: g.dirs, ends: n}
	return g
}

// row is what is threaded while end i is laid.
func (g *programme) row(i int) []uint8 { return g.thr[i*g.positions : (i+1)*g.positions] }

// follow threads what a list of passes needs, each position as soon as its colour before is done with.
func (g *programme) follow(passes []pass) {
	h := hands{problem: g.problem, set: make([]uint8, g.positions)}
	if g.anyScarce {
		h.findUses(passes)
	}
	for i, ps := range passes {
		h.take(ps, i)
		for e := ps.first; e < ps.first+ps.size; e++ {
			copy(g.row(e), h.set)
		}
	}
	if !g.anyScarce {
		g.fillBack()
	}
	g.rework()
}

// fillBack threads empty positions with what they get first.
func (g *programme) fillBack() {
	for pos := range g.positions {
		c := uint8(0)
		for i := len(g.ends) - 1; i >= 0; i-- {
			if at := &g.thr[i*g.positions+pos]; *at != 0 {
				c = *at
			} else {
				*at = c
			}
		}
	}
}

// rework finds changes, threadings and paths anew.
func (g *programme) rework() {
	n := len(g.ends)
	for i := range n {
		g.findChange(i)
	}
	g.threads = g.threadings(0, n)
	for i := range g.lists {
		g.lists[i] = g.lists[i][:0]
	}
	g.lists[0] = append(g.lists[0], label{})
	for i := range n {
		for d := range g.dirs {
			g.push(g.lists[i*g.dirs+d], i, d, g.lists, 0)
		}
	}
}

// findChange fills in chg[i].
func (g *programme) findChange(i int) {
	g.chg[i] = 0
	if i == 0 || i >= len(g.ends) {
		return
	}
	before, now := g.row(i-1), g.row(i)
	changed := uint64(0)
	for pos, c := range now[:len(before)] {
		if c != before[pos] {
			changed |= 1 << pos
		}
	}
	g.chg[i] = changed
}

// threadings is what it costs to thread packages at the ends from a to before b.
func (g *programme) threadings(a, b int) cost {
	sum := cost(0)
	for i := a; i < b && i < len(g.ends); i++ {
		now := g.row(i)
		if i == 0 {
			for _, c := range now {
				if c != 0 {
					sum += g.first
				}
			}
			continue
		}
		for rest := g.chg[i]; rest != 0; rest &= rest - 1 {
			if now[bits.TrailingZeros64(rest)] != 0 {
				sum += g.thread
			}
		}
	}
	return sum
}

// push goes on from the labels of end i and direction d: it puts the labels that they lead to into lists, for
// ends from low on.
func (g *programme) push(from []label, i, d int, lists [][]label, low int) {
	if len(from) == 0 {
		return
	}
	w := g.pl.paddle(g, i, d)
	longest := w.longest
	if longest == 0 || i+longest < low {
		return
	}
	next := 0
	if g.dirs == 2 {
		next = 1 - d
	}
	least := from[0].cost
	for k := range from {
		least = min(least, from[k].cost)
	}
	changes := g.chg[i+1 : i+longest+1]
	for at := range from {
		l := &from[at]
		*g.looked += longest * (1 + (g.positions-1)/16)
		most := g.pl.most(w, l.stay)
		changed := uint64(0)
		for k, set := range most {
			changed |= changes[k]
			size := k + 1
			j := i + size
			if !g.allowed[size] || j < low {
				continue
			}
			list := &lists[j*g.dirs+next]
			if set != 0 {
				g.lay(list, l, at, size, set, changed, i)
			}
			// A way that doesn't depend on the label.
			if lowest := w.lowest[k]; l.cost <= least && lowest != set {
				g.lay(list, l, at, size, lowest, changed, i)
			}
		}
	}
}

// lay takes the label of a pass from end i on into a list.
func (g *programme) lay(list *[]label, l *label, at, size int, set, changed uint64, i int) {
	c := l.cost + g.pass + g.stint*cost(bits.OnesCount64(set&^l.stay))
	if i > 0 && (l.forced || set != l.stay) {
		c += g.halt
	}
	stay := set &^ changed
	g.keep(list, label{stay: stay, set: set, cost: c, from: int32(at), size: uint8(size), forced: stay != set})
}

// keep takes a label into a list unless another makes it superfluous, and drops those that it makes so.
func (g *programme) keep(list *[]label, l label) {
	all := *list
	worst, dearest := -1, cost(-1)
	for k := range all {
		a := &all[k]
		if a.cost >= dearest {
			worst, dearest = k, a.cost
		}
		if a.cost <= l.cost && g.covers(a, &l) {
			return
		}
	}
	switch {
	case l.cost <= dearest: // else it makes none superfluous
		kept := all[:0]
		for k := range all {
			if all[k].cost < l.cost || !g.covers(&l, &all[k]) {
				kept = append(kept, all[k])
			}
		}
		if len(kept) >= g.width {
			if dearest > l.cost {
				all[worst] = l
			}
			return
		}
		*list = append(kept, l)
	case len(all) < g.width:
		*list = append(all, l)
	}
}

// covers says whether all that can be done from b can be done from a at no greater cost.
func (g *programme) covers(a, b *label) bool {
	spare := b.cost - a.cost
	if spare < 0 {
		return false
	}
	if !b.forced && (a.stay != b.stay || a.forced) {
		spare -= g.halt
	}
	return spare >= 0 && spare >= g.stint*cost(bits.OnesCount64(b.stay&^a.stay))
}

// cheapestAt is the least cost with which an end is come to, without the threading; never if it isn't.
func (g *programme) cheapestAt(lists [][]label, i int) cost {
	least := never
	for _, list := range lists[i*g.dirs : (i+1)*g.dirs] {
		for k := range list {
			least = min(least, list[k].cost)
		}
	}
	return least
}

// best is the cheapest label that lays all ends, its direction and its cost with the threading; -1 if there
// is none.
func (g *programme) best(lists [][]label) (at, d int, total cost) {
	n := len(g.ends)
	at, total = -1, never
	for dir := range g.dirs {
		if dir == 1 && g.atLease {
			continue
		}
		for k, l := range lists[n*g.dirs+dir] {
			c := l.cost
			if dir == 1 {
				c += g.far
			}
			if c < total {
				at, d, total = k, dir, c
			}
		}
	}
	return at, d, total + g.threads
}

// passes are those of the best path.
func (g *programme) passes() []pass {
	at, d, _ := g.best(g.lists)
	if at < 0 {
		return nil
	}
	var list []pass
	for i := len(g.ends); i > 0; {
		l := g.lists[i*g.dirs+d][at]
		i -= int(l.size)
		if at = int(l.from); g.dirs == 2 {
			d = 1 - d
		}
		list = append(list, pass{i, int(l.size), l.set})
	}
	slices.Reverse(list)
	return list
}
