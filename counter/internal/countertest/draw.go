package countertest

import (
	"millside/counter"
	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/wind"
	"reflect"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// DrawPlan draws a small warp of one to several chains.
func DrawPlan(t *rapid.T) *plan.Plan {
	spec := plan.DefaultSpec()
	spec.Ends = rapid.IntRange(1, 24).Draw(t, "ends")
	spec.Group = rapid.IntRange(1, 6).Draw(t, "group")
	if chain := rapid.IntRange(0, 12).Draw(t, "chain"); chain >= spec.Group {
		spec.ChainEnds = chain
	}
	spec.ReturnOrder = wind.ReturnOrder(rapid.IntRange(0, 1).Draw(t, "order"))
	spec.Hand = wind.Hand(rapid.IntRange(0, 1).Draw(t, "hand"))
	p, err := plan.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// DrawEvent draws any event that makes some sense for a plan after so many passes of a chain, legal or not, and
// rather often legal. The marks are the lines of what can be withdrawn.
func DrawEvent(t *rapid.T, p *plan.Plan, chain, laid int, marks []int) counter.Event {
	kinds := []counter.Kind{counter.Laid, counter.Laid, counter.Laid, counter.Laid, counter.Laid, counter.Undone,
		counter.Recounted, counter.Paused, counter.Resumed, counter.Noted, counter.LeaseSeen, counter.Ticked,
		counter.Ticked, counter.Ticked, counter.Unticked, counter.Finished, "dropped",
		counter.Incident, counter.Incident, counter.Withdrawn, counter.WrongTurn, counter.WrongTurn, counter.Righted,
		counter.TieMade, counter.TieWaved, counter.Redone, counter.Redone, counter.WorkDone, counter.WorkUndone,
		counter.LeaseLeft, counter.Reopened, counter.FootSeen, counter.Renamed, counter.Joined}
	e := counter.Event{
		At:    At(rapid.IntRange(-5, 100).Draw(t, "at")),
		Kind:  rapid.SampledFrom(kinds).Draw(t, "kind"),
		Chain: chain + rapid.SampledFrom([]int{0, 0, 0, 0, 0, 0, -1, 1}).Draw(t, "chain"),
		Text:  rapid.SampledFrom([]string{"a knot", "counted", "ü \" \\ #", "", " ", "two\nlines"}).Draw(t, "text"),
		Order: wind.ReturnOrder(rapid.IntRange(0, 2).Draw(t, "order seen")),
	}
	e.Foot = wind.FootPosition(rapid.IntRange(0, 2).Draw(t, "foot"))
	e.Pass = laid + rapid.SampledFrom([]int{1, 1, 0, 0, -1, 2}).Draw(t, "pass")
	e.Position = rapid.IntRange(-1, 7).Draw(t, "position")
	e.What = rapid.SampledFrom([]counter.What{counter.Broken, counter.Knot, counter.Knot, counter.MissedOpening,
		counter.WrongPeg, "mouse"}).Draw(t, "what")
	if e.HasPlace = rapid.Bool().Draw(t, "has place"); e.HasPlace {
		e.Place = measure.Yard * measure.Length(rapid.IntRange(-1, 6).Draw(t, "place")) // the warp has five
	}
	if e.Kind == counter.Withdrawn && len(marks) > 0 {
		e.Line = rapid.SampledFrom(marks).Draw(t, "which")
	} else {
		e.Line = rapid.IntRange(-1, 60).Draw(t, "line")
	}
	steps := []finishing.StepID{"no-step"}
	for _, step := range finishing.Steps(p, p.Chains[chain-1]) {
		steps = append(steps, step.ID)
	}
	e.Step = rapid.SampledFrom(steps).Draw(t, "step")
	return e
}

// DrawHistory draws a list of events that follow from one another.
func DrawHistory(t *rapid.T, p *plan.Plan) []counter.Event {
	s := counter.NewState(p)
	var events []counter.Event
	for range rapid.IntRange(0, 60).Draw(t, "draws") {
		var marks []int
		for _, i := range s.Incidents {
			marks = append(marks, i.Number)
		}
		e := DrawEvent(t, p, s.Chain, s.Laid(), marks)
		if next, err := s.Apply(e); err == nil {
			s, events = next, append(events, e)
		}
	}
	return events
}

// Same compares states; the plan by its spec, since that makes the rest.
var Same = cmp.Options{
	cmp.Comparer(func(a, b *plan.Plan) bool { return reflect.DeepEqual(a.Spec, b.Spec) }),
	cmp.AllowUnexported(counter.Anew{}),
	cmpopts.EquateEmpty(),
}
