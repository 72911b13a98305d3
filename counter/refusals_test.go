package counter_test

import (
	"math"
	"millside/counter"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/wind"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// What the rules refuse, in words that say what would do.
func TestRefusals(t *testing.T) {
	p := testPlan(t, 40, 10, 20) // two chains of two passes
	wound := []counter.Event{laid(1, 1), laid(1, 2)}
	fasten := counter.Event{Kind: counter.Ticked, Chain: 1, Step: finishing.StepFasten}
	tests := []struct {
		name   string
		before []counter.Event
		e      counter.Event
		words  string
	}{
		{"pass skipped", nil, laid(1, 2), "the next pass of chain 1 is 1"},
		{"pass twice", wound[:1], laid(1, 1), "the next pass of chain 1 is 2"},
		{"pass too many", wound, laid(1, 3), "has 2 passes and all are laid"},
		{"other chain", nil, laid(2, 1), "chain 2 is not the one on the mill: that is chain 1"},
		{"no such chain", nil, laid(0, 1), "chain 0 is not"},
		{"nothing to undo", nil, counter.Event{Kind: counter.Undone, Chain: 1}, "has no pass"},
		{"undo of another pass", wound, counter.Event{Kind: counter.Undone, Chain: 1, Pass: 1},
			"the last pass laid is 2"},
		{"undo after a tick", append(wound, fasten), counter.Event{Kind: counter.Undone, Chain: 1, Pass: 2},
			`untick "fasten" first`},
		{"recount after a tick", append(wound, fasten),
			counter.Event{Kind: counter.Recounted, Chain: 1, Pass: 1, Text: "a"}, `untick "fasten" first`},
		{"recount beyond the chain", nil, counter.Event{Kind: counter.Recounted, Chain: 1, Pass: 3, Text: "a"},
			"0 to 2"},
		{"recount below nothing", nil, counter.Event{Kind: counter.Recounted, Chain: 1, Pass: -1, Text: "a"}, "0 to 2"},
		{"paused", []counter.Event{{Kind: counter.Paused}}, laid(1, 1), "paused"},
		{"paused twice", []counter.Event{{Kind: counter.Paused}}, counter.Event{Kind: counter.Paused}, "paused"},
		{"note on no chain", nil, counter.Event{Kind: counter.Noted, Chain: 3, Text: "a"}, "1 to 2"},
		{"tick too early", wound[:1], fasten, "only 1 of the 2 passes"},
		{"tick twice", append(wound, fasten), fasten, "ticked already"},
		{"no such step", wound, counter.Event{Kind: counter.Ticked, Chain: 1, Step: "dance"}, "no finishing step"},
		{"untick of nothing", wound, counter.Event{Kind: counter.Unticked, Chain: 1, Step: finishing.StepFasten},
			"not ticked"},
		{"order that isn't one", nil, counter.Event{Kind: counter.LeaseSeen, Order: 2}, "same or mirrored"},
		{"finished too early", wound, counter.Event{Kind: counter.Finished}, "missing"},
		{"after the end", windAll(p), counter.Event{Kind: counter.Finished}, "finished"},
		{"no kind", nil, counter.Event{}, "no kind of event"},
	}
	for _, tt := range tests {
		s, err := Fold(p, tt.before)
		if err != nil {
			t.Fatalf("%s: %v", tt.name, err)
		}
		if _, err := s.Apply(tt.e); err == nil || !strings.Contains(err.Error(), tt.words) {
			t.Errorf("%s: %v", tt.name, err)
		}
	}
}

// Any events at all, with numbers out of every range: no panic, and what is taken leaves counts in range.
func TestAnyEventsFoldToAValidState(t *testing.T) {
	kinds := append([]counter.Kind{"", "dropped"}, counter.AllKinds...)
	number := rapid.SampledFrom([]int{math.MinInt, -1, 0, 1, 1, 2, 2, 3, 4, 5, 6, math.MaxInt})
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		s := counter.NewState(p)
		for range rapid.IntRange(0, 80).Draw(t, "events") {
			e := counter.Event{
				Kind:  rapid.SampledFrom(kinds).Draw(t, "kind"),
				Chain: number.Draw(t, "chain"), Pass: number.Draw(t, "pass"), Position: number.Draw(t, "position"),
				Line:  number.Draw(t, "line"),
				Text:  rapid.SampledFrom([]string{"", "a", "\x00"}).Draw(t, "text"),
				Order: wind.ReturnOrder(number.Draw(t, "order")),
				What: rapid.SampledFrom([]counter.What{counter.Broken, counter.Knot, counter.MissedOpening,
					counter.WrongPeg, ""}).Draw(t, "what"),
				HasPlace: rapid.Bool().Draw(t, "has place"), Place: measure.Length(number.Draw(t, "place")),
			}
			if step, more := s.NextStep(); more && rapid.Bool().Draw(t, "next step") {
				e.Step = step.ID
			}
			if rapid.Bool().Draw(t, "likely") {
				e.Chain, e.Pass = s.Chain, s.Laid()+rapid.IntRange(0, 1).Draw(t, "next")
			}
			s, _ = s.Apply(e) // refused or not
			if s.Chain < 1 || s.Chain > len(p.Chains) || s.TwistAdvice() == "" && counter.Surplus(s) != 0 &&
				len(s.Chains[s.Chain-1].Ticked) == 0 {
				t.Fatalf("after %+v: %+v", e, s)
			}
			for i, c := range s.Chains {
				if c.Laid < 0 || c.Laid > len(p.Chains[i].Passes) || c.Surplus%2 != 0 {
					t.Fatalf("after %+v: chain %d is %+v", e, i+1, c)
				}
			}
			for _, in := range s.Incidents {
				if in.What.OfEnd() != (in.End >= 1) || in.End > p.EndsWound() || in.Stands() &&
					in.Pass > s.Chains[in.Chain-1].Laid+1 {
					t.Fatalf("after %+v: %+v", e, in)
				}
			}
			for _, tie := range s.Ties {
				if tie.Pass < 1 || tie.Pass > s.Chains[tie.Chain-1].Laid {
					t.Fatalf("after %+v: %+v", e, tie)
				}
			}
		}
	})
}
