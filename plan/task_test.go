package plan_test

import (
	"fmt"
	"strings"
	"testing"

	"millside/plan"

	"pgregory.net/rapid"
)

func kinds(tasks []plan.Task) []plan.TaskKind {
	var list []plan.TaskKind
	for _, t := range tasks {
		list = append(list, t.Kind)
	}
	return list
}

// Count ties: one whenever the ends that stand have passed a multiple of the interval, but for the last
// pass; NextTie finds the same; the groups tied together add up.
func TestTies(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := must(t, drawSpec(t))
		every := p.Spec.TieEvery
		for _, c := range p.Chains {
			next := 0 // the first tie at or after the pass, found from the back
			due := make([]int, len(c.Passes)+2)
			stood, tiedUpTo := 0, 0
			for i, pass := range c.Passes {
				k, before := i+1, stood
				stood += pass.Ends()
				want := every > 0 && k < len(c.Passes) && before/every != stood/every
				tie, got := tieOf(p.After(c, k))
				if got != want {
					t.Fatalf("pass %d of %d, %d to %d ends, tie every %d: tie %v", k, len(c.Passes), before, stood, every, got)
				}
				if !got {
					continue
				}
				due[k] = k
				groups := "the last group"
				if k-tiedUpTo > 1 {
					groups = fmt.Sprintf("the last %d groups", k-tiedUpTo)
				}
				if tie.Total != stood || !strings.Contains(tie.Text, groups) || !strings.Contains(tie.Text, fmt.Sprintf("%d ends stand", stood)) {
					t.Fatalf("pass %d, last tie after pass %d, %d ends: %+v", k, tiedUpTo, stood, tie)
				}
				tiedUpTo = k
			}
			for k := len(c.Passes) + 1; k >= 1; k-- {
				if due[k] != 0 {
					next = k
				}
				if got := p.NextTie(c, k); got != next {
					t.Fatalf("NextTie(%d) = %d, want %d", k, got, next)
				}
			}
		}
	})
}

func tieOf(tasks []plan.Task) (plan.Task, bool) {
	for _, t := range tasks {
		if t.Kind == plan.CountTie {
			return t, true
		}
	}
	return plan.Task{}, false
}

func TestTasksByPass(t *testing.T) {
	s := plan.DefaultSpec()
	s.Ends, s.TieEvery, s.ChainEnds = 95, 0, 50 // two chains of five passes, the last pass of 5 ends
	p := must(t, s)
	type at struct{ chain, pass int }
	before := map[at]string{
		{1, 1}: "thread the paddle: 10 positions, one end in each; tie the group to the near end peg, beside the lease",
		{2, 1}: "tie the group to the near end peg, beside the lease",
		{2, 5}: "leave out positions 6 to 10 (cut and park those ends)",
	}
	after := map[at][]plan.TaskKind{
		{1, 2}: {plan.CheckLease}, {1, 3}: {plan.TwoPassesLeft}, {1, 4}: {plan.LastPassIsNext}, {1, 5}: {plan.TieOff},
		{2, 3}: {plan.TwoPassesLeft}, {2, 4}: {plan.LastPassIsNext}, {2, 5}: {plan.TieOff},
	}
	for _, c := range p.Chains {
		for k := -1; k <= len(c.Passes)+1; k++ {
			var texts []string
			for _, task := range p.Before(c, k) {
				texts = append(texts, task.Text)
			}
			if got := strings.Join(texts, "; "); got != before[at{c.Number, k}] {
				t.Errorf("before chain %d pass %d: %q", c.Number, k, got)
			}
			if got, want := fmt.Sprint(kinds(p.After(c, k))), fmt.Sprint(after[at{c.Number, k}]); got != want {
				t.Errorf("after chain %d pass %d: %v, want %v", c.Number, k, got, want)
			}
		}
	}
}

// A warp of fewer ends than the group threads only those; there is nothing to cut and park.
func TestWarpSmallerThanTheGroup(t *testing.T) {
	s := plan.DefaultSpec()
	s.Ends = 3
	p := must(t, s)
	tasks := p.Before(p.Chains[0], 1)
	if got := fmt.Sprint(kinds(tasks)); got != fmt.Sprint([]plan.TaskKind{plan.ThreadPaddle, plan.FastenStart}) {
		t.Errorf("tasks %v", tasks)
	}
	if !strings.Contains(tasks[0].Text, "3 positions") {
		t.Errorf("thread: %s", tasks[0].Text)
	}
}

// One end alone can't show an order, so nobody is sent to look for one.
func TestNoLeaseCheckWhereNothingIsSeen(t *testing.T) {
	s := plan.DefaultSpec()
	s.Ends, s.Group = 5, 1
	p := must(t, s)
	for _, task := range p.After(p.Chains[0], 2) {
		if task.Kind == plan.CheckLease {
			t.Errorf("a lease check for groups of one: %s", task.Text)
		}
	}
}
