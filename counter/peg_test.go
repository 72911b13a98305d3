package counter_test

import (
	"slices"
	"strings"
	"testing"

	"millside/counter"
	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/wind"
)

// foldAll folds events that all follow.
func foldAll(t *testing.T, p *plan.Plan, events ...counter.Event) counter.State {
	t.Helper()
	s, err := Fold(p, events)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// What is wound in the other order lies with the wrong opening first until it is laid anew; seen the first way after
// all, it is right again. For an even group in the same order the first openings are holes, slots, holes, slots, in the
// mirrored order holes throughout: facts.md, "Order and openings", checked there by brute force.
func TestWrongOpenings(t *testing.T) {
	p := testPlan(t, 100, 10, 0)
	seen := func(order wind.ReturnOrder) counter.Event {
		return counter.Event{Kind: counter.LeaseSeen, Order: order}
	}
	wound := []counter.Event{laid(1, 1), laid(1, 2), laid(1, 3), laid(1, 4), laid(1, 5)}
	s := foldAll(t, p, append(wound, seen(wind.MirroredOrder))...)
	if got := s.Chains[0].WrongOpenings; !slices.Equal(got, []int{2, 4}) {
		t.Fatalf("%v", got)
	}
	if part := strings.Join(rowsOf(counter.HandOver(s, slices.Values[[]counter.Event](nil))),
		"\n"); !strings.Contains(part,
		"lease to mend: pass 2, ends 11 to 20") || !strings.Contains(part, "pass 4, ends 31 to 40") {
		t.Errorf("%s", part)
	}
	back := foldAll(t, p, append(wound, seen(wind.MirroredOrder), seen(wind.SameOrder))...)
	if got := back.Chains[0].WrongOpenings; len(got) != 0 {
		t.Errorf("seen the first way after all: %v", got)
	}
	undone := []counter.Event{{Kind: counter.Undone, Chain: 1, Pass: 5}, {Kind: counter.Undone, Chain: 1, Pass: 4},
		laid(1, 4)}
	anew := foldAll(t, p, append(append(wound, seen(wind.MirroredOrder)), undone...)...)
	if got := anew.Chains[0].WrongOpenings; !slices.Equal(got, []int{2}) {
		t.Errorf("laid anew: %v", got)
	}
}

// A take-back that is taken back brings back what was dropped with it.
func TestRedoneBringsAllBack(t *testing.T) {
	p := testPlan(t, 100, 10, 0)
	before := []counter.Event{laid(1, 1), laid(1, 2), laid(1, 3), {Kind: counter.TieMade, Chain: 1, Pass: 2},
		{Kind: counter.WrongTurn, Chain: 1, Pass: 3}}
	s := foldAll(t, p, before...)
	back := []counter.Event{{Kind: counter.Undone, Chain: 1, Pass: 3}, {Kind: counter.Undone, Chain: 1, Pass: 2},
		{Kind: counter.Noted, Chain: 1, Pass: 1, Text: "a note"},
		{Kind: counter.Redone, Chain: 1, Pass: 2}, {Kind: counter.Redone, Chain: 1, Pass: 3}}
	again := foldAll(t, p, append(before, back...)...)
	if again.Laid() != 3 || again.Twist() != s.Twist() || len(again.Ties) != 1 ||
		!slices.Equal(again.Chains[0].WrongTurns, []int{3}) {
		t.Errorf("%d passes, twist %d of %d, %d ties", again.Laid(), again.Twist(), s.Twist(), len(again.Ties))
	}
	if _, err := again.Apply(counter.Event{Kind: counter.Redone, Chain: 1, Pass: 4}); err == nil {
		t.Error("more is brought back than was taken back")
	}
	if next, err := s.Apply(counter.Event{Kind: counter.Undone, Chain: 1, Pass: 3}); err != nil ||
		next.Chains[0].Redo() != 3 {
		t.Errorf("%v", err)
	}
}

// The line of every kind of event says what the package comment says.
func TestLinesOfTheKinds(t *testing.T) {
	for want, e := range map[string]counter.Event{
		"work-done chain=1 pass=4":                  {Kind: counter.WorkDone, Chain: 1, Pass: 4},
		"work-undone chain=1 pass=4":                {Kind: counter.WorkUndone, Chain: 1, Pass: 4},
		"tie-waved chain=2 pass=10":                 {Kind: counter.TieWaved, Chain: 2, Pass: 10},
		"lease-left chain=1 pass=2":                 {Kind: counter.LeaseLeft, Chain: 1, Pass: 2},
		"redone chain=1 pass=7":                     {Kind: counter.Redone, Chain: 1, Pass: 7},
		"foot-seen foot=last":                       {Kind: counter.FootSeen, Foot: wind.FootLast},
		`reopened text="wrong label"`:               {Kind: counter.Reopened, Text: "wrong label"},
		"lease-seen order=mirrored":                 {Kind: counter.LeaseSeen, Order: wind.MirroredOrder},
		"tie-made chain=1 pass=10":                  {Kind: counter.TieMade, Chain: 1, Pass: 10},
		"withdrawn line=7":                          {Kind: counter.Withdrawn, Line: 7},
		"wrong-turn chain=1 pass=3":                 {Kind: counter.WrongTurn, Chain: 1, Pass: 3},
		"recounted chain=1 pass=3 text=\"counted\"": {Kind: counter.Recounted, Chain: 1, Pass: 3, Text: "counted"},
	} {
		e.At = at(0)
		line := string(counter.AppendEvent(nil, 2, e))
		if !strings.HasSuffix(line, "Z "+want) {
			t.Errorf("%q, want %q", line, want)
		}
		if got, err := counter.ParseEvent([]byte(line), 2); err != nil || got.Kind != e.Kind || got.Foot != e.Foot ||
			got.Pass != e.Pass {
			t.Errorf("%q: %+v, %v", line, got, err)
		}
	}
}

// What the paddle holds follows passes and confirmed work, and comes free between chains.
func TestPaddle(t *testing.T) {
	p := testPlan(t, 57, 10, 30)
	if len(p.Chains) < 2 {
		t.Fatal("one chain")
	}
	s := foldAll(t, p)
	if s.Paddle.Dressed {
		t.Error("dressed before anything was done")
	}
	s = foldAll(t, p, laid(1, 1))
	if !s.Paddle.Dressed || s.Paddle.Carried.Count() != 10 {
		t.Errorf("%+v", s.Paddle)
	}
	var events []counter.Event
	for k := range p.Chains[0].Passes {
		events = append(events, laid(1, k+1))
	}
	for _, step := range finishing.Steps(p, p.Chains[0]) {
		events = append(events, counter.Event{Kind: counter.Ticked, Chain: 1, Step: step.ID})
	}
	s = foldAll(t, p, events...)
	if s.Chain != 2 || !s.Paddle.Dressed || s.Paddle.Carried != 0 {
		t.Errorf("chain %d, %+v", s.Chain, s.Paddle)
	}
	last := events[len(events)-1]
	s = foldAll(t, p, append(events, counter.Event{Kind: counter.Unticked, Chain: 1, Step: last.Step})...)
	if s.Chain != 1 || s.Paddle.Carried == 0 {
		t.Errorf("chain %d, %+v", s.Chain, s.Paddle)
	}
}

// What was taken back can be brought back only until something else is done.
func TestRedoneNotAfterAnythingElse(t *testing.T) {
	p := testPlan(t, 100, 10, 0)
	s := foldAll(t, p, laid(1, 1), laid(1, 2), laid(1, 3), counter.Event{Kind: counter.Undone, Chain: 1, Pass: 3},
		counter.Event{Kind: counter.WrongTurn, Chain: 1, Pass: 2})
	if next, err := s.Apply(counter.Event{Kind: counter.Redone, Chain: 1, Pass: 3}); err == nil {
		t.Errorf("brought back over a wrong turn: %d passes", next.Laid())
	}
}
