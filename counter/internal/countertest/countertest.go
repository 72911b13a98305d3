// Package countertest holds what the tests of the record and of its file share: warps, events, and the plain fold.
package countertest

import (
	"fmt"
	"millside/counter"
	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/wind"
	"testing"
	"time"
)

// Plan is a warp with the given ends, group and ends in a chain (0 for one chain).
func Plan(t testing.TB, ends, group, chainEnds int) *plan.Plan {
	t.Helper()
	spec := plan.DefaultSpec()
	spec.Name, spec.Ends, spec.Group, spec.ChainEnds = "test warp", ends, group, chainEnds
	p, err := plan.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// At is a moment so many seconds into a morning's winding.
func At(seconds int) time.Time {
	return time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC).Add(time.Duration(seconds) * time.Second)
}

func Laid(chain, pass int) counter.Event {
	return counter.Event{At: At(pass), Kind: counter.Laid, Chain: chain, Pass: pass}
}

// WindAll is every event from the first pass of a plan to the end.
func WindAll(p *plan.Plan) []counter.Event {
	var events []counter.Event
	for _, c := range p.Chains {
		for k := range c.Passes {
			events = append(events, Laid(c.Number, k+1))
		}
		for _, step := range finishing.Steps(p, c) {
			events = append(events, counter.Event{At: At(1000), Kind: counter.Ticked, Chain: c.Number, Step: step.ID})
		}
	}
	return append(events, counter.Event{At: At(2000), Kind: counter.Finished})
}

// Sample is one event of every kind, with a text that tries the quoting.
func Sample() []counter.Event {
	return []counter.Event{
		Laid(1, 1), Laid(1, 2),
		{At: At(3), Kind: counter.LeaseSeen, Order: wind.MirroredOrder},
		{At: At(4).Add(250 * time.Millisecond), Kind: counter.Noted, Chain: 1, Pass: 2,
			Text: `knot "here" \ #00000000, Länge ½`},
		{At: At(5), Kind: counter.Undone, Chain: 1, Pass: 2},
		{At: At(6), Kind: counter.Paused}, {At: At(7), Kind: counter.Resumed},
		{At: At(8), Kind: counter.Recounted, Chain: 1, Pass: 4, Text: "counted at the pegs"},
		{At: At(9), Kind: counter.Ticked, Chain: 1, Step: finishing.StepFasten},
		{At: At(10), Kind: counter.Unticked, Chain: 1, Step: finishing.StepFasten},
	}
}

// Trouble is one event of every kind for what goes wrong, with and without what may be left out. It
// follows the first two passes of a warp of four.
func Trouble() []counter.Event {
	return []counter.Event{
		Laid(1, 1), Laid(1, 2),
		{At: At(3), Kind: counter.Incident, Chain: 1, Pass: 2, Position: 4, What: counter.Knot},
		{At: At(4), Kind: counter.Incident, Chain: 1, Pass: 3, Position: 10, What: counter.Broken,
			Place: 4*measure.Yard + 18*measure.Inch, HasPlace: true, Text: `mended, "blue"`},
		{At: At(5), Kind: counter.Incident, Chain: 1, Pass: 1, What: counter.MissedOpening, HasPlace: true},
		{At: At(6), Kind: counter.Incident, Chain: 1, Pass: 2, What: counter.WrongPeg, Text: "over both"},
		{At: At(7), Kind: counter.Withdrawn, Line: 6},
		{At: At(8), Kind: counter.WrongTurn, Chain: 1, Pass: 2},
		{At: At(9), Kind: counter.Righted},
		{At: At(10), Kind: counter.TieMade, Chain: 1, Pass: 2},
		{At: At(11), Kind: counter.NewCone, Chain: 1, Pass: 3, Position: 4, Weight: 250 * measure.Gram},
		{At: At(12), Kind: counter.NewCone, Chain: 1, Pass: 3, Position: 5},
	}
}

// ManyEvents is a list of 100,000 events: passes laid and taken back over the whole of a warp.
func ManyEvents(p *plan.Plan) []counter.Event {
	const n = 100_000
	events := make([]counter.Event, 0, n)
	passes := len(p.Chains[0].Passes)
	for len(events) < n {
		for k := 1; k <= passes && len(events) < n; k++ {
			events = append(events, Laid(1, k))
		}
		for k := passes; k >= 1 && len(events) < n; k-- {
			events = append(events, counter.Event{At: At(k), Kind: counter.Undone, Chain: 1, Pass: k})
		}
	}
	return events
}

// Fold is the state after a list of events, from the start of a plan, as a record is read: in a time that grows with
// the number of events and no faster. If an event doesn't follow from those before it, the state before it is returned
// with a [*FoldError] that names its index. The times may run backwards, since clocks are set; the order of the list
// counts.
func Fold(p *plan.Plan, events []counter.Event) (counter.State, error) {
	f := counter.NewFolder(counter.NewState(p))
	for i, e := range events {
		if err := f.Apply(e); err != nil {
			return f.State(), &FoldError{Index: i, Err: err}
		}
	}
	return f.State(), nil
}

// FoldError says which event of a list doesn't follow from those before it.
type FoldError struct {
	// Index is the event's place in the list, from 0.
	Index int
	// Err says why.
	Err error
}

// Error names the event by its index, from 0.
func (e *FoldError) Error() string { return fmt.Sprintf("event with index %d: %v", e.Index, e.Err) }

// Unwrap gives the reason.
func (e *FoldError) Unwrap() error { return e.Err }
