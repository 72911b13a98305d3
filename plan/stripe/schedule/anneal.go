package schedule

import (
	"math"
	"math/rand/v2"
)

// annealer betters a programme by small changes of what is threaded where and while which ends are laid. A
// change that costs a little more is taken at times, ever more rarely, so that the search gets out of a
// corner. It draws by lot, always the same lots.
type annealer struct {
	*programme
	lots  *rand.Rand
	total cost
	// What was there before the change in hand.
	from, to    int      // rows that are changed, to exclusive
	saved       []uint8  // those rows
	savedChg    []uint64 // what changes at them and at the one behind them
	threadsWere cost
	count       []int  // of each colour, scratch
	borders     []int  // where a colour of the warp ends
	repeat      repeat // of the warp, if it has one
	kept        int    // how often it comes
	route       route  // of the programme in hand
}

func newAnnealer(g *programme, seed uint64) *annealer {
	a := &annealer{programme: g, lots: rand.New(rand.NewPCG(seed, 17)), count: make([]int, g.colours+1)}
	_, _, a.total = g.best(g.lists)
	for i := 1; i < len(g.ends); i++ {
		if g.ends[i] != g.ends[i-1] {
			a.borders = append(a.borders, i)
		}
	}
	a.findRoute()
	if g.pl.kept == nil {
		g.pl.remember()
	}
	return a
}

// run tries changes until so many labels were looked at, from a hot start to a cold end. better is told of
// every programme that is cheaper than all before.
func (a *annealer) run(looks int, hot, cold float64, better func(total cost) bool) {
	start := *a.looked
	least := a.total
	for done := 0; done < looks; done = *a.looked - start {
		heat := hot * math.Pow(cold/hot, float64(done)/float64(looks))
		*a.looked++ // a change that comes to nothing counts too
		if !a.change() {
			continue
		}
		// What the change may come to: drawn first, so that a change is given up as soon as it is seen to be dearer.
		most := a.total - cost(heat*math.Log(1-a.lots.Float64()))
		total, sync := a.try(most)
		if total > most {
			a.restore()
			continue
		}
		a.accept(total, sync)
		a.findRoute()
		if total < least {
			least = total
			if !better(total) {
				return
			}
		}
	}
}

// save notes the rows that a change is about to touch.
func (a *annealer) save(from, to int) {
	a.from, a.to, a.threadsWere = from, to, a.threads
	a.pl.from, a.pl.to = from, to
	a.saved = append(a.saved[:0], a.thr[from*a.positions:to*a.positions]...)
	a.savedChg = append(a.savedChg[:0], a.chg[from:to+1]...)
}

// restore undoes the change in hand.
func (a *annealer) restore() {
	copy(a.thr[a.from*a.positions:], a.saved)
	copy(a.chg[a.from:], a.savedChg)
	a.threads = a.threadsWere
}

// findChanges finds changes anew where rows were changed.
func (a *annealer) findChanges() {
	for i := a.from; i <= a.to && i < len(a.ends); i++ {
		a.findChange(i)
	}
}

// try works out the paths anew from where rows were changed until they run as before. It gives the total and
// the end from which on the paths are as before. It gives up where that will hardly be within most: where the
// ends cost too much more than before, one after the other, which what comes later seldom makes good.
func (a *annealer) try(most cost) (total cost, sync int) {
	n := len(a.ends)
	if !a.enough() {
		return never, n + 1
	}
	a.threads -= a.threadings(a.from, a.to+1)
	a.findChanges()
	a.threads += a.threadings(a.from, a.to+1)
	a.begin()
	same, empty, dear, shift := 0, 0, 0, cost(0)
	spare := most - a.total - a.threads + a.threadsWere + a.halt
	for i := a.from; i < n; i++ {
		a.clearTrial(i + a.maxSize)
		by, ok := a.asBefore(i, shift)
		switch {
		case i <= a.to || !ok:
			same = 0
		case same > 0 && by == shift:
			same++
		default:
			same, shift = 1, by
		}
		if same > a.maxSize {
			return a.total + shift + a.threads - a.threadsWere, i + 1 - same
		}
		if dear++; !a.dearer(i, spare) {
			dear = 0
		}
		if dear > a.maxSize && (i > a.to || a.dearer(i, spare+minute)) {
			return never, n + 1
		}
		empty++
		for d := range a.dirs {
			if from := a.trial[i*a.dirs+d]; len(from) > 0 {
				empty = 0
				a.push(from, i, d, a.trial, a.from)
			}
		}
		if empty > a.maxSize {
			return never, n + 1
		}
	}
	_, _, total = a.best(a.trial)
	return total, n + 1
}

// dearer says whether an end that is tried costs so much more than before, or can't be come to.
func (a *annealer) dearer(i int, by cost) bool {
	was := a.cheapestAt(a.lists, i)
	return was < never && a.cheapestAt(a.trial, i)-was > by
}

// begin fills the lists to try with what the passes before the change lead to.
func (a *annealer) begin() {
	for i := a.from; i < a.from+a.maxSize; i++ {
		a.clearTrial(i)
	}
	if a.from == 0 {
		a.trial[0] = append(a.trial[0], label{})
	}
	for i := max(0, a.from-a.maxSize); i < a.from; i++ {
		for d := range a.dirs {
			a.push(a.lists[i*a.dirs+d], i, d, a.trial, a.from)
		}
	}
}

func (a *annealer) clearTrial(i int) {
	if i > len(a.ends) {
		return
	}
	for d := range a.dirs {
		a.trial[i*a.dirs+d] = a.trial[i*a.dirs+d][:0]
	}
}

// asBefore says whether the labels of an end that is tried are those there were, all dearer by the same. Of
// ends without labels the answer is yes, by as much as is given.
func (a *annealer) asBefore(i int, by cost) (cost, bool) {
	first := true
	for d := range a.dirs {
		now, was := a.trial[i*a.dirs+d], a.lists[i*a.dirs+d]
		if len(now) != len(was) {
			return 0, false
		}
		for k := range now {
			n, w := &now[k], &was[k]
			if first {
				by, first = n.cost-w.cost, false
			}
			if n.stay != w.stay || n.set != w.set || n.from != w.from || n.size != w.size || n.forced != w.forced ||
				n.cost-w.cost != by {
				return 0, false
			}
		}
	}
	return by, true
}

// accept keeps the change in hand.
func (a *annealer) accept(total cost, sync int) {
	n := len(a.ends)
	to := min(sync, n+1)
	for i := a.from * a.dirs; i < to*a.dirs; i++ {
		a.lists[i], a.trial[i] = a.trial[i], a.lists[i]
	}
	shift := total - a.total - a.threads + a.threadsWere
	if shift != 0 {
		for i := to * a.dirs; i < len(a.lists); i++ {
			for k := range a.lists[i] {
				a.lists[i][k].cost += shift
			}
		}
	}
	a.total = total
}

// enough says whether the packages are enough in the rows that were changed.
func (a *annealer) enough() bool {
	if !a.anyScarce {
		return true
	}
	for i := a.from; i < a.to; i++ {
		if i > a.from && string(a.row(i)) == string(a.row(i-1)) {
			continue
		}
		clear(a.count)
		for _, c := range a.row(i) {
			if a.count[c]++; c != 0 && a.count[c] > a.packages[c] {
				return false
			}
		}
	}
	return true
}
