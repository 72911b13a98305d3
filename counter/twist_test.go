package counter_test

import (
	"slices"
	"testing"

	"millside/counter"
	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/wind"
)

// On a right-handed mill the plan turns counterclockwise (-1) after an outward pass and clockwise (+1)
// after a return, so half a turn stands after every outward pass and none after a return (design.md, rule
// 2). A wrong turn is the opposite one.
func TestTwist(t *testing.T) {
	p := testPlan(t, 100, 10, 0)
	lay := func(from, to int) (events []counter.Event) {
		for k := from; k <= to; k++ {
			events = append(events, laid(1, k))
		}
		return events
	}
	wrong := func(pass int) []counter.Event {
		return []counter.Event{{Kind: counter.WrongTurn, Chain: 1, Pass: pass}}
	}
	undo := func(pass int) []counter.Event { return []counter.Event{{Kind: counter.Undone, Chain: 1, Pass: pass}} }
	righted := []counter.Event{{Kind: counter.Righted}}
	tests := []struct {
		name   string
		events []counter.Event
		twist  wind.HalfTurns
		wrong  []int
	}{
		{"nothing laid", nil, 0, nil},
		{"as planned, outward", lay(1, 1), -1, nil},
		{"as planned, return", lay(1, 2), 0, nil},
		{"wrong at the far peg", slices.Concat(lay(1, 1), wrong(1)), 1, []int{1}},
		{"wrong at the near peg: the same way at both", slices.Concat(lay(1, 2), wrong(2)), -2, []int{2}},
		{"it runs on", slices.Concat(lay(1, 2), wrong(2), lay(3, 5)), -3, []int{2}},
		{"a second one at the other end takes it out",
			slices.Concat(lay(1, 2), wrong(2), lay(3, 3), wrong(3), lay(4, 4)), 0, []int{2, 3}},
		{"a second one at the same end adds to it", slices.Concat(lay(1, 2), wrong(2), lay(3, 4), wrong(4)), -4,
			[]int{2, 4}},
		{"righted", slices.Concat(lay(1, 2), wrong(2), lay(3, 3), righted), -1, []int{2}},
		{"undone with its pass", slices.Concat(lay(1, 2), wrong(2), undo(2)), -1, nil},
		{"undone and laid again", slices.Concat(lay(1, 2), wrong(2), undo(2), lay(2, 2)), 0, nil},
		{"the pass after it undone", slices.Concat(lay(1, 2), wrong(2), lay(3, 3), undo(3)), -2, []int{2}},
		{"righted, then taken back round the peg", slices.Concat(lay(1, 2), wrong(2), righted, undo(2)), 1, nil},
		{"a recount moves no yarn", slices.Concat(lay(1, 2), wrong(2),
			[]counter.Event{{Kind: counter.Recounted, Chain: 1, Pass: 0, Text: "a"}}), -2, nil},
	}
	for _, tt := range tests {
		s := foldOf(t, p, tt.events...)
		if got := s.Twist(); got != tt.twist || !slices.Equal(s.Chains[0].WrongTurns, tt.wrong) {
			t.Errorf("%s: twist %d, wrong turns %v; want %d, %v", tt.name, got, s.Chains[0].WrongTurns, tt.twist,
				tt.wrong)
		}
	}
	if (counter.State{}).Twist() != 0 || (counter.State{}).TwistAdvice() != "" {
		t.Error("a state without a plan has twist")
	}
}

// A new chain begins without the twist of the one before.
func TestTwistEndsWithTheChain(t *testing.T) {
	p := testPlan(t, 40, 10, 20)
	events := slices.Insert(windAll(p), 2, counter.Event{Kind: counter.WrongTurn, Chain: 1, Pass: 2})
	s := foldOf(t, p, events[:3]...)
	if s.Twist() != -2 {
		t.Errorf("twist %d", s.Twist())
	}
	if s = foldOf(t, p, events[:4+len(finishing.Steps(p, p.Chains[0]))]...); s.Chain != 2 || s.Twist() != -1 {
		t.Errorf("chain %d, twist %d", s.Chain, s.Twist())
	}
}

func TestTwistAdvice(t *testing.T) {
	p := testPlan(t, 60, 10, 0) // six passes
	wrong := func(pass int) counter.Event { return counter.Event{Kind: counter.WrongTurn, Chain: 1, Pass: pass} }
	fasten := counter.Event{Kind: counter.Ticked, Chain: 1, Step: finishing.StepFasten}
	tests := []struct {
		name   string
		events []counter.Event
		want   string
	}{
		{"none", []counter.Event{laid(1, 1)}, ""},
		{"at the far peg", []counter.Event{laid(1, 1), wrong(1)},
			"Turn the paddle 2 half turns counterclockwise (2 clockwise too many lie behind it) and see that the " +
				"ends open. " +
				"Or at the next peg: after pass 2 go round the near end peg counterclockwise this once, not " +
				"clockwise."},
		{"at the near peg", []counter.Event{laid(1, 1), laid(1, 2), wrong(2)},
			"Turn the paddle 2 half turns clockwise (2 counterclockwise too many lie behind it) and see that the " +
				"ends open. " +
				"Or at the next peg: after pass 3 go round the far end peg clockwise this once, not counterclockwise."},
		{"noticed a pass later", []counter.Event{laid(1, 1), wrong(1), laid(1, 2)},
			"Turn the paddle 2 half turns counterclockwise (2 clockwise too many lie behind it) and see that the " +
				"ends open. " +
				"Or at the peg after the next: after pass 4 go round the near end peg counterclockwise this once, " +
				"not clockwise."},
		{"twice at the same end", []counter.Event{laid(1, 1), wrong(1), laid(1, 2), laid(1, 3), wrong(3)},
			"Turn the paddle 4 half turns counterclockwise (4 clockwise too many lie behind it) and see that the " +
				"ends open. " +
				"Or at the next peg: after pass 4 go round the near end peg counterclockwise this once, not " +
				"clockwise, which takes out 2 of them."},
		{"too late for another peg", []counter.Event{laid(1, 1), laid(1, 2), laid(1, 3), laid(1, 4), laid(1, 5),
			wrong(5)},
			"Turn the paddle 2 half turns counterclockwise (2 clockwise too many lie behind it) and see that the " +
				"ends open."},
		{"fastened", []counter.Event{laid(1, 1), laid(1, 2), laid(1, 3), laid(1, 4), laid(1, 5), laid(1, 6), wrong(6),
			fasten}, ""},
	}
	for _, tt := range tests {
		s := foldOf(t, p, tt.events...)
		if got := s.TwistAdvice(); got != tt.want {
			t.Errorf("%s:\n%s\nwant\n%s", tt.name, got, tt.want)
		}
	}
}

// Who follows the advice is rid of the twist: with a turn the other way at the peg that it names, noted as
// a wrong turn too.
func TestTwistAdviceHelps(t *testing.T) {
	for _, hand := range []wind.Hand{wind.RightHanded, wind.LeftHanded} {
		spec := plan.DefaultSpec()
		spec.Ends, spec.Hand = 60, hand
		p, err := plan.New(spec)
		if err != nil {
			t.Fatal(err)
		}
		for first := 1; first <= 3; first++ {
			for _, late := range []int{0, 1} {
				var events []counter.Event
				lay := func(to int) {
					for k := foldOf(t, p, events...).Laid() + 1; k <= to; k++ {
						events = append(events, laid(1, k))
					}
				}
				lay(first)
				events = append(events, counter.Event{Kind: counter.WrongTurn, Chain: 1, Pass: first})
				lay(first + late)
				at := first + 1 + 2*late // the next peg, or with one pass more the one after the next
				lay(at)
				s := foldOf(t, p, append(events, counter.Event{Kind: counter.WrongTurn, Chain: 1, Pass: at})...)
				if s.Twist() != p.Chains[0].Passes[at-1].Twist || s.TwistAdvice() != "" {
					t.Errorf("%s-handed, wrong after pass %d, righted after %d: twist %d", hand, first, at, s.Twist())
				}
			}
		}
	}
}
