package counter

import (
	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/wind"
	"testing"
	"time"
)

// testPlan is a warp with the given ends, group and ends in a chain (0 for one chain).
func testPlan(t testing.TB, ends, group, chainEnds int) *plan.Plan {
	t.Helper()
	spec := plan.DefaultSpec()
	spec.Name, spec.Ends, spec.Group, spec.ChainEnds = "test warp", ends, group, chainEnds
	p, err := plan.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// at is a moment so many seconds into a morning's winding.
func at(seconds int) time.Time {
	return time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC).Add(time.Duration(seconds) * time.Second)
}

func laid(chain, pass int) Event {
	return Event{At: at(pass), Kind: Laid, Chain: chain, Pass: pass}
}

// windAll is every event from the first pass of a plan to the end.
func windAll(p *plan.Plan) []Event {
	var events []Event
	for _, c := range p.Chains {
		for k := range c.Passes {
			events = append(events, laid(c.Number, k+1))
		}
		for _, step := range finishing.Steps(p, c) {
			events = append(events, Event{At: at(1000), Kind: Ticked, Chain: c.Number, Step: step.ID})
		}
	}
	return append(events, Event{At: at(2000), Kind: Finished})
}

// sample is one event of every kind, with a text that tries the quoting.
func sample() []Event {
	return []Event{
		laid(1, 1), laid(1, 2),
		{At: at(3), Kind: LeaseSeen, Order: wind.MirroredOrder},
		{At: at(4).Add(250 * time.Millisecond), Kind: Noted, Chain: 1, Pass: 2, Text: `knot "here" \ #00000000, Länge ½`},
		{At: at(5), Kind: Undone, Chain: 1, Pass: 2},
		{At: at(6), Kind: Paused}, {At: at(7), Kind: Resumed},
		{At: at(8), Kind: Recounted, Chain: 1, Pass: 4, Text: "counted at the pegs"},
		{At: at(9), Kind: Ticked, Chain: 1, Step: finishing.StepFasten},
		{At: at(10), Kind: Unticked, Chain: 1, Step: finishing.StepFasten},
	}
}

// trouble is one event of every kind for what goes wrong, with and without what may be left out. It
// follows the first two passes of a warp of four.
func trouble() []Event {
	return []Event{
		laid(1, 1), laid(1, 2),
		{At: at(3), Kind: Incident, Chain: 1, Pass: 2, Position: 4, What: Knot},
		{At: at(4), Kind: Incident, Chain: 1, Pass: 3, Position: 10, What: Broken, Place: 4*measure.Yard + 18*measure.Inch, HasPlace: true, Text: `mended, "blue"`},
		{At: at(5), Kind: Incident, Chain: 1, Pass: 1, What: MissedOpening, HasPlace: true},
		{At: at(6), Kind: Incident, Chain: 1, Pass: 2, What: WrongPeg, Text: "over both"},
		{At: at(7), Kind: Withdrawn, Line: 6},
		{At: at(8), Kind: WrongTurn, Chain: 1, Pass: 2},
		{At: at(9), Kind: Righted},
		{At: at(10), Kind: TieMade, Chain: 1, Pass: 2},
		{At: at(11), Kind: NewCone, Chain: 1, Pass: 3, Position: 4, Weight: 250 * measure.Gram},
		{At: at(12), Kind: NewCone, Chain: 1, Pass: 3, Position: 5},
	}
}

// manyEvents is a list of 100,000 events: passes laid and taken back over the whole of a warp.
func manyEvents(p *plan.Plan) []Event {
	const n = 100_000
	events := make([]Event, 0, n)
	passes := len(p.Chains[0].Passes)
	for len(events) < n {
		for k := 1; k <= passes && len(events) < n; k++ {
			events = append(events, laid(1, k))
		}
		for k := passes; k >= 1 && len(events) < n; k-- {
			events = append(events, Event{At: at(k), Kind: Undone, Chain: 1, Pass: k})
		}
	}
	return events
}
