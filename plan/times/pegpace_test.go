package times

import (
	"testing"
	"time"
)

// Six halts that took nine minutes where the usual weights say six: every weight is half as long again, and a warp of
// 2 halts, 4 cuts, 6 ties and 1 package takes (2 x 0.5 + 4 x 0.2 + 6 x 0.3 + 1) x 1.5 = 6.9 min at the pegs.
func TestWithPegs(t *testing.T) {
	own := PegPace{Took: 9 * time.Minute, Usual: 6 * time.Minute, Halts: 6, Warps: 2}
	w := WorkSum{Halts: 2, Cuts: 4, Ties: 6, Threads: 1}
	if got, want := DefaultHandTimes().WithPegs(own).AtPegs(w), 414*time.Second; got != want {
		t.Errorf("%v at the pegs, want %v", got, want)
	}
	const source = "a practised hand's usual times; at the pegs your own over 6 halts of 2 warps"
	if got := (Pace{Pegs: own}).Source(); got != source {
		t.Errorf("%q", got)
	}
	given := DefaultHandTimes()
	given.Cut = time.Minute
	if got := given.WithPegs(own); got != given {
		t.Errorf("the weaver's own weights are changed: %+v", got)
	}
	for name, p := range map[string]PegPace{
		"nothing":       {},
		"too few":       {Took: time.Minute, Usual: time.Minute, Halts: FewestHalts - 1},
		"clock wrong":   {Took: 100 * time.Hour, Usual: time.Minute, Halts: 9},
		"no work at it": {Took: time.Second, Usual: time.Hour, Halts: 9},
	} {
		if got := DefaultHandTimes().WithPegs(p); got != DefaultHandTimes() ||
			(Pace{Pegs: p}).Source() != (Pace{}).Source() {
			t.Errorf("%s: %+v", name, got)
		}
	}
}
