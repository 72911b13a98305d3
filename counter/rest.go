package counter

import "time"

// What counts as a rest for the hands: our own choice, no source. A shorter pause is a look at the yarn;
// a longer time without anything noted is more than a slow pass.
const (
	restPause = 2 * time.Minute
	restGap   = 10 * time.Minute
)

// Away is how long ago the last event was. It is nothing if there was none, or if the clock was set back
// since.
func (s State) Away(now time.Time) time.Duration {
	if s.Events == 0 {
		return 0
	}
	return max(now.Sub(s.Last), 0)
}

// NeedsLook says whether the winder should look at what stands on the mill before going on: the warp is
// begun and not finished, and nothing happened for longer than the given time. After a clock that was set
// back nobody knows how long it was, so then it is true as well.
func (s State) NeedsLook(now time.Time, after time.Duration) bool {
	return s.Events > 0 && !s.Finished && (now.Before(s.Last) || s.Away(now) > after)
}

// RestDue says whether the winder has gone on for as long as the plan's RestMinutes without a rest: a
// pause of two minutes or more, or ten minutes in which nothing was noted. It is false where the plan
// asks for no rests, during a pause, and once the warp is finished. The events are those that led to the
// state. Time in which the clock was set back is not counted.
func (s State) RestDue(events []Event, now time.Time) bool {
	if !s.valid() || s.Plan.Spec.RestMinutes <= 0 || s.Paused || s.Finished {
		return false
	}
	wanted := time.Duration(s.Plan.Spec.RestMinutes) * time.Minute
	var wound time.Duration // since the event that is looked at
	later, goneOn := now, time.Time{}
	for i := len(events) - 1; i >= 0; i-- {
		e := &events[i]
		gap := later.Sub(e.At)
		if gap >= restGap {
			return false
		}
		switch e.Kind {
		case Resumed:
			goneOn = e.At
		case Paused:
			if !goneOn.IsZero() && goneOn.Sub(e.At) >= restPause {
				return false
			}
		}
		if wound += max(gap, 0); wound >= wanted {
			return true
		}
		later = e.At
	}
	return false
}
