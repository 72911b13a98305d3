package times

import (
	"fmt"
	"math/big"
	"time"

	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// Pace is how long a pass of three and a half turns takes ([PaceTurns]), with its spread; [Pace.At] scales it to
// other turns. The zero value means that no pace is known.
type Pace struct {
	// Low, Middle and High are the time of a quick, a middling and a slow pass: above nothing, at most a
	// day, in that order.
	Low, Middle, High time.Duration
	// Passes is how many passes were timed for it, 0 for a published range, and Warps in how many warps.
	Passes, Warps int
	// Pegs is how long the work at the pegs takes.
	Pegs PegPace
}

// PaceTurns is the turns of the mill that a [Pace] is given for: those of the warp of which a published time
// is known, 7 yards on a mill of two.
func PaceTurns() *big.Rat { return big.NewRat(7, 2) }

// PublishedPace is the range to go by until the weaver's own passes have been timed: a practised hand
// needs 20 to 25 minutes for 40 passes of ten ends, so 30 to 37.5 s a pass (common practice, no
// source). In the middle stands what [DefaultHandTimes] make of it.
func PublishedPace() Pace {
	return Pace{Low: 30 * time.Second, Middle: DefaultHandTimes().PassTime(PaceTurns()),
		High: 37_500 * time.Millisecond}
}

const longestPass = 24 * time.Hour

// Known says whether the times are in their range and in order; the zero Pace isn't known.
func (p Pace) Known() bool {
	return p.Low > 0 && p.Low <= p.Middle && p.Middle <= p.High && p.High <= longestPass
}

// Timed says whether the pace is one that was timed, not the published range.
func (p Pace) Timed() bool { return p.orPublished().Passes > 0 }

// orPublished is the pace, or the published range where none is known or where it is out of order.
func (p Pace) orPublished() Pace {
	if !p.Known() {
		published := PublishedPace()
		published.Pegs = p.Pegs
		return published
	}
	return p
}

// At is the pace of a pass with so many turns of the mill. It grows by the usual share of handling and
// turns: a hand that is a tenth quicker than [DefaultHandTimes] at three and a half turns is taken to be a
// tenth quicker at any. A pace that isn't known is the published range.
func (p Pace) At(turns *big.Rat) Pace { return p.orPublished().scaled(PaceTurns(), turns) }

// From is the pace that was timed with so many turns of the mill, as one of [PaceTurns]. A pace that isn't
// known stays so.
func (p Pace) From(turns *big.Rat) Pace {
	if !p.Known() {
		return Pace{}
	}
	return p.scaled(turns, PaceTurns())
}

func (p Pace) scaled(from, to *big.Rat) Pace {
	usual := DefaultHandTimes()
	share := ratio.Quo(ratio.Of(usual.PassTime(to)), ratio.Of(usual.PassTime(from)))
	for _, d := range []*time.Duration{&p.Low, &p.Middle, &p.High} {
		*d = max(roundedPass(ratio.Mul(ratio.Of(*d), share)), 1)
	}
	return p
}

// JoinPaces is the pace over several warps: the mean of their times, each weighed by its timed passes and cut
// down to a nanosecond. Those that aren't known or have no timed passes are left out; it is the zero value
// where none is left.
func JoinPaces(paces ...Pace) Pace {
	var all Pace
	var sums [3]big.Int
	for _, p := range paces {
		if !p.Known() || p.Passes < 1 {
			continue
		}
		for i, d := range []time.Duration{p.Low, p.Middle, p.High} {
			sums[i].Add(&sums[i], new(big.Int).Mul(big.NewInt(int64(d)), big.NewInt(int64(p.Passes))))
		}
		all.Passes += p.Passes
		all.Warps += max(p.Warps, 1)
	}
	if all.Passes == 0 {
		return Pace{}
	}
	for i, d := range []*time.Duration{&all.Low, &all.Middle, &all.High} {
		*d = time.Duration(sums[i].Quo(&sums[i], big.NewInt(int64(all.Passes))).Int64())
	}
	return all
}

// Source says whose pace it is: "a practised hand's usual times", "your own pace over 39 passes of 1 warp".
func (p Pace) Source() string {
	if p = p.orPublished(); p.Passes > 0 {
		return fmt.Sprintf("your own pace over %s of %s", measure.Counted(p.Passes, "pass", "passes"),
			measure.Counted(max(p.Warps, 1), "warp", "warps")) + p.Pegs.source()
	}
	return "a practised hand's usual times" + p.Pegs.source()
}
