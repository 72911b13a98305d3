package counter_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"millside/counter"
	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/wind"
)

// The fold takes exactly what the model of model_test.go allows, and comes to the same counts.
func TestFoldAgreesWithModel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := newModel(drawPlan(t))
		s := counter.NewState(m.plan)
		for range rapid.IntRange(0, 60).Draw(t, "draws") {
			e := m.draw(t)
			next, err := s.Apply(e)
			if (err == nil) != m.allows(e) {
				t.Fatalf("%+v: error %v, model allows %v", e, err, m.allows(e))
			}
			if err != nil {
				if d := cmp.Diff(s, next, same); d != "" {
					t.Fatalf("a refused event moved the state: %s", d)
				}
				continue
			}
			m.take(e)
			if d := m.differs(next); d != "" {
				t.Fatalf("after %+v: %s", e, d)
			}
			if next.Events != s.Events+1 ||
				!next.Last.Equal(e.At) && e.Kind != counter.Renamed && e.Kind != counter.Joined {
				t.Fatalf("after %+v: %d events, last at %v", e, next.Events, next.Last)
			}
			s = next
		}
	})
}

func TestFoldIsApplyAgainAndAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		events, _ := drawHistory(t, p)
		s := counter.NewState(p)
		for i, e := range events {
			next, err := s.Apply(e)
			if err != nil {
				t.Fatal(err)
			}
			s = next
			if e.Kind != counter.Renamed && e.Kind != counter.Joined && i == len(s.Renames)+s.Joins &&
				!s.Started.Equal(e.At) {
				t.Fatalf("started %v, want %v", s.Started, e.At)
			}
		}
		folded, err := Fold(p, events)
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(s, folded, same); d != "" {
			t.Fatal(d)
		}
	})
}

// A state that is kept while others go on from it, in two ways, stays as it was.
func TestApplyLeavesReceiver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		events, m := drawHistory(t, p)
		s, err := Fold(p, events)
		if err != nil {
			t.Fatal(err)
		}
		kept, err := Fold(p, events)
		if err != nil {
			t.Fatal(err)
		}
		var one, other counter.State
		first, second := m.draw(t), m.draw(t)
		if one, err = s.Apply(first); err != nil {
			t.Skip("refused")
		}
		copyOfOne, _ := kept.Apply(first)
		if other, err = s.Apply(second); err == nil {
			_, _ = other.Apply(first)
		}
		if d := cmp.Diff(kept, s, same); d != "" {
			t.Fatalf("the receiver changed: %s", d)
		}
		if d := cmp.Diff(copyOfOne, one, same); d != "" {
			t.Fatalf("a state was changed through its sibling: %s", d)
		}
	})
}

func TestUndoTakesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		events, m := drawHistory(t, p)
		before, err := Fold(p, events)
		if err != nil {
			t.Fatal(err)
		}
		next := laid(m.chain, m.laid[m.chain-1]+1)
		if !m.allows(next) {
			t.Skip("no pass to lay")
		}
		after, err := Fold(p, append(events, next,
			counter.Event{Kind: counter.Undone, Chain: next.Chain, Pass: next.Pass}))
		if err != nil {
			t.Fatal(err)
		}
		ignore := cmp.Options{cmpopts.IgnoreFields(counter.State{}, "Events", "Last", "Started"),
			cmpopts.IgnoreFields(counter.State{}, "Paddle"),
			cmpopts.IgnoreFields(counter.ChainState{}, "Lowered", "Back"),
			cmpopts.IgnoreFields(counter.IncidentState{}, "Undone")}
		if d := cmp.Diff(before, after, same, ignore); d != "" {
			t.Fatal(d)
		}
	})
}

func TestWholeWarp(t *testing.T) {
	p := testPlan(t, 100, 10, 50) // two chains of five passes
	events := windAll(p)
	s, err := Fold(p, events)
	if err != nil {
		t.Fatal(err)
	}
	if !s.Finished || s.Chain != 2 || s.PassesLaidAll() != 10 || s.EndsStandingAll() != 100 || s.EndsStanding() != 50 {
		t.Errorf("%+v", s)
	}
	if _, ok := s.NextStep(); ok {
		t.Error("a finished warp has a next step")
	}
	if _, err := s.Apply(counter.Event{Kind: counter.Noted, Chain: 1, Text: "late"}); err == nil {
		t.Error("a finished warp takes a note")
	}
}

func TestStateOnTheWay(t *testing.T) {
	p := testPlan(t, 45, 10, 0) // passes of 10, 10, 10, 10, 5
	tests := []struct {
		laid, standing int
		cross          counter.CrossCount // over peg 1 the outward passes, over peg 2 the returns: design.md, rule 3
		wound          bool
		next           int // 0 for none
	}{
		{0, 0, counter.CrossCount{0, 0}, false, 1},
		{1, 10, counter.CrossCount{1, 0}, false, 2},
		{2, 20, counter.CrossCount{1, 1}, false, 3},
		{4, 40, counter.CrossCount{2, 2}, false, 5},
		{5, 45, counter.CrossCount{3, 2}, true, 0},
	}
	for _, tt := range tests {
		s, err := Fold(p, windAll(p)[:tt.laid])
		if err != nil {
			t.Fatal(err)
		}
		next, ok := s.NextPass()
		if s.Laid() != tt.laid || s.EndsStanding() != tt.standing || s.Cross() != tt.cross || s.Wound() != tt.wound ||
			ok != (tt.next > 0) || next.Number != tt.next {
			t.Errorf("after %d passes: %d ends, %+v, wound %v, next %d", s.Laid(), s.EndsStanding(), s.Cross(),
				s.Wound(), next.Number)
		}
		step, ok := s.NextStep()
		if !ok || step.ID != finishing.StepFasten || len(s.Steps()) == 0 {
			t.Errorf("next step %q", step.ID)
		}
	}
}

func TestLeaseSeenSwitchesPlan(t *testing.T) {
	p := testPlan(t, 40, 10, 0)
	s, err := Fold(p, []counter.Event{laid(1, 1), laid(1, 2), {Kind: counter.LeaseSeen, Order: wind.MirroredOrder}})
	if err != nil {
		t.Fatal(err)
	}
	if !s.LeaseSeen || !s.Plan.Chains[0].Passes[1].Mirrored || p.Chains[0].Passes[1].Mirrored {
		t.Error("the order seen is not in force, or the plan given was changed")
	}
	s, err = s.Apply(counter.Event{Kind: counter.LeaseSeen, Order: wind.SameOrder})
	if err != nil || s.Plan.Chains[0].Passes[1].Mirrored {
		t.Errorf("the order was not switched back: %v", err)
	}
}

func TestUntickOfChainBefore(t *testing.T) {
	p := testPlan(t, 20, 10, 10)
	events := windAll(p)
	chainDone := 1 + len(finishing.Steps(p, p.Chains[0]))
	s, err := Fold(p, events[:chainDone])
	if err != nil || s.Chain != 2 {
		t.Fatalf("chain %d, %v", s.Chain, err)
	}
	untick := counter.Event{Kind: counter.Unticked, Chain: 1, Step: finishing.StepSecure}
	if back, err := s.Apply(untick); err != nil || back.Chain != 1 {
		t.Errorf("chain %d, %v", back.Chain, err)
	}
	if s, err = s.Apply(laid(2, 1)); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Apply(untick); err == nil {
		t.Error("chain 1 was reopened with chain 2 on the mill")
	}
}

func TestFoldNamesTheEvent(t *testing.T) {
	_, err := Fold(testPlan(t, 40, 10, 0), []counter.Event{laid(1, 1), laid(1, 3)})
	var fe *FoldError
	if !errors.As(err, &fe) || fe.Index != 1 || errors.Unwrap(fe) == nil || !strings.Contains(err.Error(), "index 1") {
		t.Errorf("%v", err)
	}
}

func TestStateWithoutPlan(t *testing.T) {
	for _, s := range []counter.State{{}, counter.NewState(nil), counter.NewState(&plan.Plan{})} {
		_, pass := s.NextPass()
		_, step := s.NextStep()
		if pass || step || s.Wound() || s.Laid()+s.EndsStanding()+s.EndsStandingAll()+s.PassesLaidAll() != 0 {
			t.Error("a state without a plan has something to wind")
		}
		if _, err := s.Apply(laid(1, 1)); err == nil {
			t.Error("a state without a plan takes events")
		}
	}
}

func TestTexts(t *testing.T) {
	s := counter.NewState(testPlan(t, 40, 10, 0))
	tests := []struct {
		name, text string
		ok         bool
	}{
		{"plain", "knot at position 4", true},
		{"other scripts", "узел 結び目 ½ \u200d", true},
		{"the longest", strings.Repeat("ü", 500), true},
		{"too long", strings.Repeat("ü", 501), false},
		{"empty", "", false},
		{"blank", " \u00a0", false},
		{"line feed", "a\nb", false},
		{"escape", "a\x1b[2Jb", false},
		{"delete", "a\x7f", false},
		{"C1 control", "a\u009bb", false},
		{"line separator", "a\u2028b", false},
		{"not UTF-8", "a\xffb", false},
	}
	for _, tt := range tests {
		for _, kind := range []counter.Kind{counter.Noted, counter.Recounted} {
			_, err := s.Apply(counter.Event{Kind: kind, Chain: 1, Text: tt.text})
			var fe *measure.FieldError
			if tt.ok && err != nil || !tt.ok && !errors.As(err, &fe) {
				t.Errorf("%s, %s: %v", tt.name, kind, err)
			}
		}
	}
}

// Two states that go on from the same one share no room for what is added.
func TestSiblingsShareNothing(t *testing.T) {
	note := func(text string) counter.Event { return counter.Event{Kind: counter.Noted, Chain: 1, Text: text} }
	recount := func(text string) counter.Event {
		return counter.Event{Kind: counter.Recounted, Chain: 1, Pass: 4, Text: text}
	}
	knot := func(text string) counter.Event {
		return counter.Event{Kind: counter.Incident, Chain: 1, Pass: 1, Position: 1, What: counter.Knot, Text: text}
	}
	p := testPlan(t, 100, 10, 0)
	// Three of each, so that the lists that Fold grows have room for a fourth.
	events := []counter.Event{note("1"), note("2"), note("3"), knot("1"), knot("2"), knot("3")}
	for k := 1; k <= 4; k++ {
		events = append(events, laid(1, k))
		if k < 4 {
			events = append(events, counter.Event{Kind: counter.TieMade, Chain: 1, Pass: k},
				counter.Event{Kind: counter.WrongTurn, Chain: 1, Pass: k})
		}
	}
	events = append(events, recount("1"), recount("2"), recount("3"))
	s := foldOf(t, p, events...)
	apply := func(s counter.State, e counter.Event) counter.State {
		next, err := s.Apply(e)
		if err != nil {
			t.Fatal(err)
		}
		return next
	}
	for _, add := range []func(text string) counter.Event{note, recount, knot,
		func(text string) counter.Event {
			return counter.Event{At: at(len(text)), Kind: counter.TieMade, Chain: 1, Pass: 4}
		},
	} {
		one, again := apply(s, add("one")), apply(foldOf(t, p, events...), add("one"))
		apply(s, add("other"))
		if d := cmp.Diff(again, one, same); d != "" {
			t.Error(d)
		}
		if s2 := apply(one, counter.Event{Kind: counter.Undone, Chain: 1,
			Pass: 4}); len(s2.Incidents) != len(one.Incidents) {
			t.Error("an undo loses an incident")
		}
	}
	// A wrong turn after pass 4, and one after pass 5.
	one := apply(s, counter.Event{Kind: counter.WrongTurn, Chain: 1, Pass: 4})
	apply(apply(s, laid(1, 5)), counter.Event{Kind: counter.WrongTurn, Chain: 1, Pass: 5})
	if got := one.Chains[0].WrongTurns; !slices.Equal(got, []int{1, 2, 3, 4}) {
		t.Errorf("wrong turns %v", got)
	}
	// And one that is taken back leaves the state before as it was.
	apply(apply(one, counter.Event{Kind: counter.Undone, Chain: 1, Pass: 4}), laid(1, 4))
	if got := one.Chains[0].WrongTurns; !slices.Equal(got, []int{1, 2, 3, 4}) {
		t.Errorf("after an undo: wrong turns %v", got)
	}
}
