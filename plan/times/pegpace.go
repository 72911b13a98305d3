package times

import (
	"fmt"
	"time"

	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// PegPace is how the weaver's own work at the pegs compares with the usual weights. What was timed is a whole halt,
// from the pass laid to the work confirmed: it shows neither a cut apart from a tie nor either apart from the halt
// itself. So one factor is learned for all of them, Took over Usual. The zero value means that nothing is known.
type PegPace struct {
	// Took is how long the timed halts took in all, Usual what [DefaultHandTimes] make of the same work.
	Took, Usual time.Duration
	// Halts is how many halts were timed, and Warps in how many warps.
	Halts, Warps int
}

// FewestHalts is how many halts must have been timed before they count for anything: our own choice, no source.
const FewestHalts = 4

// mostFactor bounds a factor that can be right, as it seems to us: beyond it a clock was wrong, or something else was
// done.
const mostFactor = 10

// Known says whether enough halts were timed, and whether they can be right.
func (p PegPace) Known() bool {
	return p.Halts >= FewestHalts && p.Took > 0 && p.Usual > 0 && p.Took/mostFactor <= p.Usual &&
		p.Usual/mostFactor <= p.Took
}

// Join is the pace over the halts of both.
func (p PegPace) Join(q PegPace) PegPace {
	return PegPace{p.Took + q.Took, p.Usual + q.Usual, p.Halts + q.Halts, p.Warps + q.Warps}
}

// source says whose halts they are; empty where none are known.
func (p PegPace) source() string {
	if !p.Known() {
		return ""
	}
	return fmt.Sprintf("; at the pegs your own over %s of %s", measure.Counted(p.Halts, "halt", "halts"),
		measure.Counted(max(p.Warps, 1), "warp", "warps"))
}

// WithPegs are the weights for a halt and what is done there, each by the factor that the pace has learned, rounded to
// the nearest nanosecond. Weights that the weaver has given stay as they are.
func (t HandTimes) WithPegs(p PegPace) HandTimes {
	usual := DefaultHandTimes()
	if !p.Known() || t.Halt != usual.Halt || t.Cut != usual.Cut || t.Tie != usual.Tie || t.Thread != usual.Thread {
		return t
	}
	factor := ratio.Quo(ratio.Of(p.Took), ratio.Of(p.Usual))
	for _, d := range []*time.Duration{&t.Halt, &t.Cut, &t.Tie, &t.Thread} {
		*d = roundedPass(ratio.Mul(ratio.Of(*d), factor))
	}
	return t
}
