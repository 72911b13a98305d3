package counter

import (
	"iter"
	"slices"

	"millside/plan"
	"millside/plan/times"
)

// PegPace is how long the halts of a warp took, beside what the usual weights make of them: each from the pass laid
// before it to the work confirmed, with nothing between the two but marks and notes. Those that took over five times
// the middling one, by the usual weights, are breaks that nobody noted, and are left out, and so is one in which the
// clock was set back, or one of more than an hour.
func PegPace(p *plan.Plan, events iter.Seq[Event]) times.PegPace {
	var all []times.PegPace
	var before Event
	for e := range events {
		switch e.Kind {
		case WorkDone:
			if halt, ok := haltTaken(p, before, e); ok {
				all = append(all, halt)
			}
			before = Event{}
		case Laid:
			before = e
		case Undone, Redone, Recounted, Paused, Resumed, Ticked, Unticked, Finished, Reopened, Renamed, Joined,
			WorkUndone, LeaseSeen:
			before = Event{}
		}
	}
	return joinHalts(all)
}

// haltTaken is one halt: the work confirmed right after the pass before it was laid.
func haltTaken(p *plan.Plan, laid, done Event) (times.PegPace, bool) {
	if laid.Kind != Laid || laid.Chain != done.Chain || laid.Pass+1 != done.Pass || !done.At.After(laid.At) ||
		!told(laid.At) || !told(done.At) || done.Chain < 1 || done.Chain > len(p.Chains) ||
		done.Pass > len(p.Chains[done.Chain-1].Passes) {
		return times.PegPace{}, false
	}
	w := p.WorkBefore(done.Chain, done.Pass)
	if !w.Halt() {
		return times.PegPace{}, false
	}
	usual := times.DefaultHandTimes().AtPegs(times.WorkSum{Halts: 1, Cuts: w.Cut.Count(), Ties: w.Tie.Count(),
		Threads: w.Threaded().Count()})
	return times.PegPace{Took: done.At.Sub(laid.At), Usual: usual, Halts: 1}, true
}

// joinHalts joins the halts of a warp but for breaks.
func joinHalts(all []times.PegPace) times.PegPace {
	if len(all) == 0 {
		return times.PegPace{}
	}
	share := func(h times.PegPace) float64 { return float64(h.Took) / float64(h.Usual) }
	slices.SortFunc(all, func(a, b times.PegPace) int {
		switch d := share(a) - share(b); {
		case d < 0:
			return -1
		case d > 0:
			return 1
		}
		return 0
	})
	limit, most := paceBreak*share(all[(len(all)-1)/2]), times.LongestHandTime
	sum := times.PegPace{Warps: 1}
	for _, h := range all {
		if share(h) <= limit && h.Took <= most {
			sum = sum.Join(h)
		}
	}
	if sum.Halts == 0 {
		return times.PegPace{}
	}
	return sum
}
