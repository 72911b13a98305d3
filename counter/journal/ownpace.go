package journal

import (
	"millside/counter"
	"millside/plan/times"
	"slices"
	"time"
)

// latestWarps is how many of the warps that were finished last make up the weaver's own pace: a hand gets
// quicker.
const latestWarps = 5

// OwnPace is the pace to reckon a new warp's time with: that of the five warps that were finished last, of
// those of which at least [counter.FewestTimed] passes were timed, else [times.PublishedPace]. Each is brought to the
// same number of turns first, so that long warps and short ones can be taken together. The list may be in any
// order. Warps of the names in except don't count, such as a practice warp that was wound without yarn.
func OwnPace(list []Summary, except ...string) times.Pace {
	type dated struct {
		last time.Time
		pace times.Pace
	}
	var all []dated
	for _, sum := range list {
		if sum.Err != nil || !sum.Finished || sum.Pace.Passes < counter.FewestTimed ||
			slices.Contains(except, sum.Name) {
			continue
		}
		if own := sum.Pace.ForPlan(sum.Spec.PassTurns()); own.Known() {
			all = append(all, dated{sum.Last, own})
		}
	}
	slices.SortStableFunc(all, func(a, b dated) int { return b.last.Compare(a.last) })
	var paces []times.Pace
	for _, d := range all[:min(len(all), latestWarps)] {
		paces = append(paces, d.pace)
	}
	if own := times.JoinPaces(paces...); own.Known() {
		return own
	}
	return times.PublishedPace()
}
