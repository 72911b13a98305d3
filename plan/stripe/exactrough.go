package stripe

import (
	"slices"
)

// roughEnds is the most ends for which the exact search goes on roughly; in longer warps counting
// gives better bounds.
const roughEnds = 100

// runRough goes on from end i back to the first one with so many looks, and gives a bound for the
// whole warp.
func (x *exact) runRough(i int, best cost, looks int) cost {
	x.goRough()
	stop := x.looked + looks
	for ; i > 0; i-- {
		x.allow = max(0, stop-x.looked) / (2 * i)
		x.addRow(i)
	}
	x.least = append(x.least, slices.Repeat(x.rest[0][:], x.positions+1))
	x.free, x.best = 0, best-1
	x.stopAt = x.looked + looks/8
	if end, done := x.search(0, 0); done && end >= 0 {
		return x.nodes[end].guess
	}
	return x.atLeast()
}

// goRough gives exactness up: from here on least is only a bound, that which a search has come to
// when its looks are spent. Where the return order is the same the direction matters only for the
// finish, and is left out.
func (x *exact) goRough() {
	x.rough = true
	if x.mirrored || x.oneWay {
		return
	}
	p := *x.problem
	p.oneWay, p.atLease, p.w.Back = true, false, 0
	p.findRest()
	x.problem = &p
	for _, row := range x.least {
		for k := range row {
			row[k] = min(row[k&^1], row[k|1])
		}
	}
}

// atLeast is the least that a search that was not ended can come to.
func (x *exact) atLeast() cost {
	if len(x.open) == 0 {
		return x.best + 1
	}
	return min(x.best+1, x.open[0].guess)
}
