package counter

import (
	"slices"
	"time"
)

// What counts as a rest for the hands: our own choice, no source. A shorter pause is a look at the yarn;
// a longer time without anything noted is more than a slow pass.
const (
	restPause = 2 * time.Minute
	restGap   = 10 * time.Minute
)

// Away is how long ago the last event was. It is nothing if there was none, or if the clock was set back
// since.
func (s State) Away(now time.Time) time.Duration {
	if !s.Begun() {
		return 0
	}
	return max(now.Sub(s.Last), 0)
}

// NeedsLook says whether the winder should look at what stands on the mill before going on: the warp is
// begun and not finished, and nothing happened for longer than the given time. After a clock that was set
// back nobody knows how long it was, so then it is true as well.
func (s State) NeedsLook(now time.Time, after time.Duration) bool {
	return s.Begun() && !s.Finished && (now.Before(s.Last) || s.Away(now) > after)
}

// RestDue says whether the winder has gone on for as long as the plan's RestMinutes without a rest: a
// pause of two minutes or more, or ten minutes in which nothing was noted. It is false where the plan
// asks for no rests, during a pause, and once the warp is finished. The events are those that led to the
// state. Time in which the clock was set back is not counted.
func (s State) RestDue(events []Event, now time.Time) bool {
	var w winding
	for i := range events {
		w.take(&events[i])
	}
	return s.restDue(w, now)
}

func (s State) restDue(w winding, now time.Time) bool {
	if !s.valid() || s.Plan.Spec.RestMinutes <= 0 || s.Paused || s.Finished || !s.Begun() {
		return false
	}
	gap := now.Sub(w.last)
	return gap < restGap && w.wound+max(gap, 0) >= time.Duration(s.Plan.Spec.RestMinutes)*time.Minute
}

// winding is how long the winder has gone on without a rest.
type winding struct {
	wound        time.Duration
	last, paused time.Time // the last event; the pause that has not been ended, zero if there is none
}

func (w *winding) take(e *Event) {
	if e.Kind.aside() { // not done at the mill
		return
	}
	if !w.last.IsZero() {
		if gap := e.At.Sub(w.last); gap >= restGap {
			w.wound = 0
		} else {
			w.wound += max(gap, 0)
		}
	}
	w.last = e.At
	switch e.Kind {
	case Paused:
		w.paused = e.At
	case Resumed:
		if !w.paused.IsZero() && e.At.Sub(w.paused) >= restPause {
			w.wound = 0
		}
		w.paused = time.Time{}
	}
}

// Tempo is what follows from the times of a record: the pace of the chain in hand, and whether a rest is due. It
// is a value that each event moves on, so that nothing has to be read again at every press. The zero Tempo
// knows no events.
type Tempo struct {
	pace intervals
	rest winding
}

// After is the tempo after one more event.
func (t Tempo) After(e Event) Tempo {
	t.rest.take(&e)
	if e.Kind == Laid && e.Chain != t.pace.chain {
		t.pace = intervals{chain: e.Chain}
	}
	t.pace.most = paceOf
	t.pace.all = slices.Clip(t.pace.all)
	t.pace.take(&e)
	return t
}

// Pace is the pace of a chain as [Pace] has it from all events, if its passes were the last to be laid.
func (t Tempo) Pace(chain int) PaceResult {
	if t.pace.chain != chain {
		return PaceResult{}
	}
	return paceResult(slices.Clone(t.pace.all))
}

// RestDue is [State.RestDue] for the events that led to the state.
func (t Tempo) RestDue(s State, now time.Time) bool { return s.restDue(t.rest, now) }
