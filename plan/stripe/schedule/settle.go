package schedule

import (
	"math"
	"math/rand/v2"
	"slices"
)

// Parts of the looks of a search that go into one set-up for the whole warp.
const (
	settlePart   = 4
	settleStarts = 3
)

// settle looks for one set-up that winds the whole warp well without another thread: often that is the best
// there is where stripes repeat, and elsewhere a good start. It begins with the best of those in the contest.
func (t *trial) settle(looks int) {
	t.rank()
	var starts [][]uint8
	for _, e := range t.field {
		if set := t.oneSetUp(e.thr); set != nil && len(starts) < settleStarts {
			starts = append(starts, set)
		}
	}
	for k, set := range starts {
		t.settleFrom(set, (looks-*t.looked)/(len(starts)-k), uint64(k)+t.maker.lots)
	}
}

// oneSetUp is the set-up of a programme that has only one, else nil.
func (t *trial) oneSetUp(thr []uint8) []uint8 {
	set := thr[:t.positions]
	for i := t.positions; i < len(thr); i++ {
		if thr[i] != set[i%t.positions] {
			return nil
		}
	}
	return slices.Clone(set)
}

// settleFrom betters one set-up by small changes, as an annealer does, and enters the best.
func (t *trial) settleFrom(set []uint8, looks int, seed uint64) {
	lots := rand.New(rand.NewPCG(seed, 23))
	t.threadThroughout(set)
	_, _, total := t.best(t.lists)
	best, least := slices.Clone(set), total
	t.noteAlong()
	start := *t.looked
	was := slices.Clone(set)
	for done := 0; done < looks && !t.maker.over(); done = *t.looked - start {
		heat := 2 * minute * math.Pow(0.05, float64(done)/float64(looks))
		*t.looked++
		copy(was, set)
		t.alter(set, lots)
		if slices.Equal(was, set) || !t.holdsPackages(set) {
			copy(set, was)
			continue
		}
		now := t.tryThroughout(set, total+cost(4*heat))
		if now >= never || now > total && lots.Float64() >= math.Exp(float64(total-now)/heat) {
			copy(set, was)
			continue
		}
		t.noteAlong()
		if total = now; total < least {
			least = total
			copy(best, set)
		}
	}
	t.threadThroughout(best)
	t.enter()
}

// noteAlong notes the least cost with which each end is come to.
func (t *trial) noteAlong() {
	t.along = t.along[:0]
	for i := range len(t.ends) + 1 {
		t.along = append(t.along, t.cheapestAt(t.lists, i))
	}
}

// tryThroughout threads one set-up from the first end to the last and gives the cost; it gives up where that will
// hardly be within most.
func (t *trial) tryThroughout(set []uint8, most cost) cost {
	n := len(t.ends)
	for i := range n {
		copy(t.row(i), set)
	}
	clear(t.chg)
	t.threads = t.threadings(0, 1)
	for i := range t.lists {
		t.lists[i] = t.lists[i][:0]
	}
	t.lists[0] = append(t.lists[0], label{})
	spare, dear := most-t.along[n]-t.threads, 0
	for i := range n {
		now := t.cheapestAt(t.lists, i)
		if dear++; t.along[i] >= never || now-t.along[i] <= spare {
			dear = 0
		}
		if dear > t.maxSize {
			return never
		}
		for d := range t.dirs {
			t.push(t.lists[i*t.dirs+d], i, d, t.lists, 0)
		}
	}
	_, _, total := t.best(t.lists)
	return total
}

// alter changes one set-up a little.
func (t *trial) alter(set []uint8, lots *rand.Rand) {
	for ok := true; ok; ok = lots.IntN(3) == 0 {
		pos, other := lots.IntN(len(set)), lots.IntN(len(set))
		c := t.ends[lots.IntN(len(t.ends))]
		switch lots.IntN(4) {
		case 0:
			set[pos] = c
		case 1:
			set[pos], set[other] = set[other], set[pos]
		case 2:
			set[pos] = set[other]
		default: // one goes, the others close up, and another is put in
			if lots.IntN(2) == 0 {
				c = set[pos]
			}
			copy(set[pos:], set[pos+1:])
			copy(set[other+1:], set[other:])
			set[other] = c
		}
	}
}

// holdsPackages says whether the packages are enough for a set-up.
func (p *problem) holdsPackages(set []uint8) bool {
	if !p.anyScarce {
		return true
	}
	count := make([]int, p.colours+1)
	for _, c := range set {
		if count[c]++; c != 0 && count[c] > p.packages[c] {
			return false
		}
	}
	return true
}
