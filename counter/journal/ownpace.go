package journal

import (
	"millside/counter"
	"millside/plan/times"
	"slices"
)

// latestWarps is how many of the warps that were finished last make up the weaver's own pace: a hand gets
// quicker.
const latestWarps = 5

// OwnPace is the pace to reckon a new warp's time with: that of the five warps that were finished last, of
// those of which at least [counter.FewestTimed] passes were timed, else [times.PublishedPace]. Each is brought to the
// same number of turns first, so that long warps and short ones can be taken together. The list may be in any
// order. Warps of the names in except don't count, such as a practice warp that was wound without yarn.
//
// The work at the pegs is learned in the same way, from the five warps finished last of which at least
// [times.FewestHalts] halts were timed.
func OwnPace(list []Summary, except ...string) times.Pace {
	list = slices.DeleteFunc(slices.Clone(list), func(sum Summary) bool {
		return sum.Err != nil || !sum.Finished || slices.Contains(except, sum.Name)
	})
	slices.SortStableFunc(list, func(a, b Summary) int { return b.Last.Compare(a.Last) })
	var paces []times.Pace
	var pegs times.PegPace
	warps := 0
	for _, sum := range list {
		if sum.Pegs.Known() && warps < latestWarps {
			pegs, warps = pegs.Join(sum.Pegs), warps+1
		}
		if sum.Pace.Passes < counter.FewestTimed || len(paces) >= latestWarps {
			continue
		}
		if own := sum.Pace.ForPlan(sum.Spec.PassTurns()); own.Known() {
			paces = append(paces, own)
		}
	}
	own := times.JoinPaces(paces...)
	if !own.Known() {
		own = times.PublishedPace()
	}
	own.Pegs = pegs
	return own
}
