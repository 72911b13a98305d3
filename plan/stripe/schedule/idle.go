package schedule

// route is the best path of the programme in hand, pass by pass.
type route struct {
	firsts  []int    // of each pass, the first end; then the number of ends
	carried []uint64 // of each pass, positions
}

// findRoute looks up the route.
func (a *annealer) findRoute() {
	r := &a.route
	r.firsts, r.carried = r.firsts[:0], r.carried[:0]
	for _, ps := range a.passes() {
		r.firsts = append(r.firsts, ps.first)
		r.carried = append(r.carried, ps.carried)
	}
	r.firsts = append(r.firsts, len(a.ends))
}

// useIdle threads a position with another colour while it is parked anyway: from a pass after the one that carried it
// last to a pass before the one that carries it next, mostly for all of that time. On a broad ground with few ends of
// an accent that is what makes larger passes: the accent's position carries the ground until the accent comes again.
// Two threadings pay for that only if the ends of both fit the passes, which changes that know nothing of the passes
// seldom hit.
func (a *annealer) useIdle() bool {
	r := &a.route
	if len(r.carried) == 0 {
		return false
	}
	pos, k := a.lots.IntN(a.positions), a.lots.IntN(len(r.carried))
	if r.carried[k]>>pos&1 == 1 {
		return false
	}
	low, high := k, k+1
	for ; low > 0 && r.carried[low-1]>>pos&1 == 0; low-- {
	}
	for ; high < len(r.carried) && r.carried[high]>>pos&1 == 0; high++ {
	}
	switch a.lots.IntN(4) {
	case 0:
		low += a.lots.IntN(high - low)
	case 1:
		high -= a.lots.IntN(high - low)
	}
	from, to := r.firsts[low], r.firsts[high]
	c := a.ends[from+a.lots.IntN(to-from)]
	a.save(from, to)
	a.paint(pos, c)
	return string(a.thr[from*a.positions:to*a.positions]) != string(a.saved)
}
