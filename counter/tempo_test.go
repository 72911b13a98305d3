package counter_test

import (
	"millside/counter"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// Moved on by each event, the tempo says what all events say.
func TestTempoAgreesWithEvents(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		p.Spec.RestMinutes = 20
		events, m := drawHistory(t, p)
		var tempo counter.Tempo
		clock := at(0)
		for i := range events {
			clock = clock.Add(time.Duration(rapid.IntRange(-3, 12).Draw(t, "minutes")) * time.Minute)
			events[i].At = clock
			tempo = tempo.After(events[i])
		}
		s, err := Fold(p, events)
		if err != nil {
			t.Fatal(err)
		}
		now := clock.Add(time.Duration(rapid.IntRange(-2, 11).Draw(t, "now")) * time.Minute)
		if got, want := tempo.RestDue(s, now), s.RestDue(events, now); got != want {
			t.Fatalf("rest due %v, want %v", got, want)
		}
		if got, want := tempo.Pace(m.chain), counter.Pace(slices.Values(events), m.chain); got != want {
			t.Fatalf("pace %v, want %v", got, want)
		}
	})
}
