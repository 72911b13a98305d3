package schedule

import (
	"runtime"
	"sync"
)

// pieces searches a long warp piece by piece, and winds the whole as the pieces are threaded. The pieces know nothing
// of each other and each has its share of the looks, so that several are searched side by side, and the result is the
// same on any number of cores.
func (m *maker) pieces(q *problem, looks int) {
	n := len(q.ends)
	number := (n + manyEnds/2 - 1) / (manyEnds / 2)
	whole := q.newProgramme(m.width, &m.looked)
	share := (looks - n*whole.width*q.maxSize - m.looked) / number
	looked, threaded := make([]int, number), make([]bool, number)
	sideBySide(number, func(k int) {
		from, to := k*n/number, (k+1)*n/number
		piece := *q
		piece.ends, piece.atLease = q.ends[from:to], false
		threaded[k] = m.piece(&piece, whole.thr[from*q.positions:to*q.positions], share, &looked[k])
	})
	for k := range number {
		if m.looked += looked[k]; !threaded[k] {
			return
		}
	}
	whole.rework()
	m.note(whole.passes())
}

// piece searches one piece of a long warp until so many looks have been had, and notes how it is threaded. It says
// whether it can be wound.
func (m *maker) piece(q *problem, thr []uint8, looks int, looked *int) bool {
	q.findRest()
	if q.rest[0] >= noPasses {
		return false
	}
	t := m.newTrial(q, looked)
	t.seed()
	var best []pass
	least := never
	t.contest(looks, func(list []pass) {
		if c := q.cost(list); c < least {
			best, least = list, c
		}
	})
	if best == nil {
		return false
	}
	t.follow(best)
	copy(thr, t.thr)
	return true
}

// sideBySide does so many pieces of work, numbered from 0, on as many cores as there are.
func sideBySide(number int, do func(k int)) {
	var wait sync.WaitGroup
	work := make(chan int)
	for range min(number, runtime.GOMAXPROCS(0)) {
		wait.Go(func() {
			for k := range work {
				do(k)
			}
		})
	}
	for k := range number {
		work <- k
	}
	close(work)
	wait.Wait()
}
