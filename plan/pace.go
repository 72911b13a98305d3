package plan

import (
	"fmt"
	"slices"
	"time"

	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// Pace is how long a pass takes, with its spread. The zero value means that no pace is known.
type Pace struct {
	// Low, Middle and High are the time of a quick, a middling and a slow pass: above nothing, at most a
	// day, in that order.
	Low, Middle, High time.Duration
	// Passes is how many passes were timed for it, 0 for a published range.
	Passes int
}

// PublishedPace is the range to go by until the weaver's own passes have been timed: a practised hand
// needs 20 to 25 minutes for 40 passes of ten ends, so 30 to 37.5 s a pass (common practice, no
// source).
func PublishedPace() Pace {
	return Pace{Low: 30 * time.Second, Middle: 33_750 * time.Millisecond, High: 37_500 * time.Millisecond}
}

const longestPass = 24 * time.Hour

// PaceOf is the pace of timed passes, breaks left out: the median and the quartiles, each one of the
// times themselves (the nearest rank, the lower one of two). There is at least one; each is above
// nothing and at most a day. The error is a [*measure.FieldError].
func PaceOf(passes []time.Duration) (Pace, error) {
	if len(passes) == 0 {
		return Pace{}, &measure.FieldError{Field: "timed passes", Value: "0", Want: "at least one"}
	}
	for _, d := range passes {
		if d <= 0 || d > longestPass {
			return Pace{}, &measure.FieldError{Field: "timed pass", Value: d.String(), Want: "above nothing, at most a day"}
		}
	}
	sorted := slices.Sorted(slices.Values(passes))
	rank := func(quarters int) time.Duration { return sorted[(len(sorted)*quarters+3)/4-1] }
	return Pace{Low: rank(1), Middle: rank(2), High: rank(3), Passes: len(passes)}, nil
}

// Known says whether the times are in their range and in order; the zero Pace isn't known.
func (p Pace) Known() bool {
	return p.Low > 0 && p.Low <= p.Middle && p.Middle <= p.High && p.High <= longestPass
}

// orPublished is the pace, or the published range where none is known or where it is out of order.
func (p Pace) orPublished() Pace {
	if !p.Known() {
		return PublishedPace()
	}
	return p
}

// Source says whose pace it is: "a practised hand's usual range", "your own pace over 39 passes".
func (p Pace) Source() string {
	if p = p.orPublished(); p.Passes > 0 {
		return "your own pace over " + measure.Counted(p.Passes, "pass", "passes")
	}
	return "a practised hand's usual range"
}

// TimeSpan is how long something takes.
type TimeSpan struct {
	Low, Middle, High time.Duration
	// How says how it was reached.
	How measure.How
}

// For is the time for so many passes, 0 to [measure.MaxEnds]; a number outside is held to it. A pace that isn't
// known, or that is out of order, is the published range.
func (p Pace) For(passes int) TimeSpan {
	p = p.orPublished()
	n := time.Duration(min(max(passes, 0), measure.MaxEnds))
	s := TimeSpan{Low: n * p.Low, Middle: n * p.Middle, High: n * p.High}
	s.How = measure.How{Formula: "passes x seconds a pass, " + p.Source(), WithNumbers: fmt.Sprintf("%d x %s to %s s = %s", n, seconds(p.Low), seconds(p.High), s)}
	return s
}

// seconds writes a time in seconds with at most one decimal, rounded to the nearest.
func seconds(d time.Duration) string {
	return ratio.Decimal(ratio.Quo(ratio.Of(d), ratio.Of(time.Second)), 1)
}

// String gives the span in whole minutes, each rounded up: "20 to 25 min", "1 h 50 min to 2 h 5 min".
func (s TimeSpan) String() string {
	low, high := minutes(s.Low), minutes(s.High)
	switch {
	case low == high:
		return hours(low)
	case low < 60 && high < 60:
		return fmt.Sprintf("%d to %d min", low, high)
	default:
		return hours(low) + " to " + hours(high)
	}
}

// minutes rounds a time up to whole minutes.
func minutes(d time.Duration) int {
	n := int(d / time.Minute)
	if d%time.Minute > 0 {
		n++
	}
	return n
}

func hours(minutes int) string {
	switch {
	case minutes < 60:
		return fmt.Sprintf("%d min", minutes)
	case minutes%60 == 0:
		return fmt.Sprintf("%d h", minutes/60)
	default:
		return fmt.Sprintf("%d h %d min", minutes/60, minutes%60)
	}
}
