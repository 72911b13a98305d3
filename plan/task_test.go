package plan_test

import (
	"fmt"
	"strings"
	"testing"

	"millside/plan"
)

func kinds(tasks []plan.Task) []plan.TaskKind {
	var list []plan.TaskKind
	for _, t := range tasks {
		list = append(list, t.Kind)
	}
	return list
}

func TestTasksByPass(t *testing.T) {
	s := plan.DefaultSpec()
	s.Ends, s.TieEvery, s.ChainEnds = 95, 0, 50 // two chains of five passes, the last pass of 5 ends
	p := must(t, s)
	type at struct{ chain, pass int }
	before := map[at]string{
		{1, 1}: "thread the paddle: 10 positions, one end in each; tie on the group at the near end peg, beside the " +
			"lease",
		{2, 1}: "tie on the group at the near end peg, beside the lease",
		{2, 5}: "cut off positions 6 to 10 at the near end peg and leave them out",
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
