package counter

import (
	"fmt"
	"iter"
	"math"
	"math/big"
	"slices"
	"time"

	"millside/plan/times"
)

// paceOf is how many of the latest passes make up the pace.
const paceOf = 20

// paceBreak is how many times longer than the median an interval may be before it counts as a break that
// nobody noted.
const paceBreak = 5

// PaceResult is how long a pass takes. The zero value says that too little is known.
type PaceResult struct {
	// PerPass is the median time from one pass laid to the next. Low and High are the quartiles: the
	// medians of the lower and of the upper half, where the middle one of an odd number belongs to
	// neither. A median between two values is their mean, cut down to whole nanoseconds.
	PerPass, Low, High time.Duration
	// Passes is the number of intervals that these are taken from.
	Passes int
}

// String is the pace in whole seconds, each rounded to the nearest: "34 s a pass, mostly 30 to 38 s".
func (r PaceResult) String() string {
	seconds := func(d time.Duration) int { return int(d.Round(time.Second) / time.Second) }
	text := fmt.Sprintf("%d s a pass", seconds(r.PerPass))
	if low, high := seconds(r.Low), seconds(r.High); low != high {
		text += fmt.Sprintf(", mostly %d to %d s", low, high)
	}
	return text
}

// ForPlan is the pace as package plan reckons with it: that of a pass with so many turns of the mill, made
// one of [times.PaceTurns]. It isn't known where nothing was timed.
func (r PaceResult) ForPlan(turns *big.Rat) times.Pace { return r.Timed().From(turns) }

// Timed is the pace as it was timed, whatever the turns; not known where nothing was.
func (r PaceResult) Timed() times.Pace {
	return times.Pace{Low: r.Low, Middle: r.PerPass, High: r.High, Passes: r.Passes, Warps: 1}
}

// FewestTimed is how many passes must be timed before they are called a pace.
const FewestTimed = 4

// Pace is the pace of the latest passes of a chain, counted from 1, or of the whole warp for chain 0. It
// looks at no more than the latest 20 intervals from one pass laid to the next, and leaves breaks out: an
// interval with a pause, a correction of the count, work at a peg or a finishing step in it, one over five times the
// median, and one in which the clock was set back. A break or a knot that is noted belongs to the work
// and stays in.
func Pace(events iter.Seq[Event], chain int) PaceResult { return paceSeen(events, chain, paceOf) }

// paceSeen is the pace over at most so many of the latest intervals of a chain, or of all.
func paceSeen(events iter.Seq[Event], chain, most int) PaceResult {
	t := intervals{chain: chain, most: most}
	for e := range events {
		t.take(&e)
	}
	return paceResult(t.all)
}

// PaceOverall is the pace over all passes of a warp, with breaks left out as in [Pace].
func PaceOverall(events iter.Seq[Event]) PaceResult { return paceSeen(events, 0, math.MaxInt) }

// intervals are the latest plain intervals from one pass laid to the next, at most so many, of a chain or, for
// chain 0, of all.
type intervals struct {
	chain, most int
	all         []time.Duration
	before      Event // the pass laid before, if nothing but winding came since; its Kind is empty if there is none
}

func (t *intervals) take(e *Event) {
	switch e.Kind {
	case Laid:
		if t.chain != 0 && e.Chain != t.chain {
			t.before = Event{}
			return
		}
		if t.before.Kind == Laid && t.before.Chain == e.Chain && e.At.After(t.before.At) && told(e.At) &&
			told(t.before.At) {
			if len(t.all) >= t.most {
				t.all = t.all[1:]
			}
			t.all = append(t.all, e.At.Sub(t.before.At))
		}
		t.before = *e
	case Undone, Redone, Recounted, Paused, Resumed, Ticked, Unticked, Finished, Reopened, Renamed, Joined,
		WorkDone, WorkUndone:
		t.before = Event{}
	}
}

// told says whether a clock can be right that tells this time: one that was never set says 1970 or some other year of
// its own, and a span from there is absurd.
func told(t time.Time) bool { return t.Year() >= 2000 && t.Year() < 2200 }

func paceResult(all []time.Duration) PaceResult {
	if len(all) == 0 {
		return PaceResult{}
	}
	slices.Sort(all)
	if limit := median(all); limit <= math.MaxInt64/paceBreak {
		n, _ := slices.BinarySearch(all, paceBreak*limit+1) // the first that is over the limit
		all = all[:n]
	}
	half := len(all) / 2
	low, high := all[:half], all[len(all)-half:]
	if half == 0 {
		low, high = all, all
	}
	return PaceResult{PerPass: median(all), Low: median(low), High: median(high), Passes: len(all)}
}

// median is the middle one of a sorted list that is not empty, or the mean of the two in the middle.
func median(sorted []time.Duration) time.Duration {
	n := len(sorted)
	a, b := sorted[(n-1)/2], sorted[n/2]
	return a + (b-a)/2
}

// Left is a time that is still to come, with its spread.
type Left struct {
	// Likely is the time if every pass takes the median, Low and High if every one takes a quartile.
	Likely, Low, High time.Duration
}

// Remaining is the time that so many passes take at this pace, 0 or more; nothing where the pace is not
// known. A time of more than 292 years, which a clock set wrong can lead to, is cut down to that.
func (r PaceResult) Remaining(passes int) Left {
	return Left{Likely: timesOver(r.PerPass, passes), Low: timesOver(r.Low, passes), High: timesOver(r.High, passes)}
}

// timesOver multiplies without running over.
func timesOver(d time.Duration, n int) time.Duration {
	if n <= 0 || d <= 0 {
		return 0
	}
	if d > math.MaxInt64/time.Duration(n) {
		return math.MaxInt64
	}
	return d * time.Duration(n)
}
