package counter_test

import (
	"fmt"
	"slices"

	"millside/counter"
	"millside/plan"
)

// differs says where a state is not as the model has it.
func (m *model) differs(s counter.State) string {
	for i, c := range s.Chains {
		if c.Laid != m.laid[i] {
			return fmt.Sprintf("chain %d: %d laid, want %d", i+1, c.Laid, m.laid[i])
		}
		if len(c.Ticked) != len(m.ticked[i]) {
			return fmt.Sprintf("chain %d: %v ticked, want %v", i+1, c.Ticked, m.ticked[i])
		}
		for id := range m.ticked[i] {
			if !c.Has(id) {
				return fmt.Sprintf("chain %d: %s not ticked", i+1, id)
			}
		}
	}
	if d := m.differsInTrouble(s); d != "" {
		return d
	}
	worked := 0
	for _, c := range s.Chains {
		worked += len(c.Worked)
	}
	got := fmt.Sprint(s.Chain, s.Paused, s.LeaseSeen, s.LeaseLeft, s.Finished, s.Plan.Spec.ReturnOrder,
		s.Plan.Spec.Foot, len(s.Notes), len(s.Recounts),
		len(s.TiesWaved), len(s.Reopened), worked, s.Plan.Spec.Name, len(s.Renames), s.Plan.Spec.GoesWith,
		s.Joins, s.Begun())
	want := fmt.Sprint(m.chain, m.paused, m.leaseSeen, m.leaseLeft, m.finished, m.order, m.foot, m.notes, m.recounts,
		len(m.waved), m.reopened, len(m.worked), m.name, m.renames, m.with, m.joins,
		m.events > m.renames+m.joins)
	if got != want {
		return got + ", want " + want
	}
	return ""
}

// differsInTrouble compares incidents, twist and ties.
func (m *model) differsInTrouble(s counter.State) string {
	var got []modelIncident
	for _, in := range s.Incidents {
		got = append(got, modelIncident{in.Number, in.Chain, in.Pass, in.Position, in.Withdrawn, in.Undone})
		end := 0
		if in.Position > 0 {
			var err error
			if end, err = s.Plan.End(plan.Place{Chain: in.Chain, Pass: in.Pass, Position: in.Position}); err != nil {
				return err.Error()
			}
		}
		if in.End != end {
			return fmt.Sprintf("%+v: want end %d", in, end)
		}
	}
	if !slices.Equal(got, m.incidents) {
		return fmt.Sprintf("incidents %+v, want %+v", got, m.incidents)
	}
	wrong := 0
	for i, c := range s.Chains {
		for _, pass := range c.WrongTurns {
			if wrong++; m.wrong[[2]int{i + 1, pass}] == 0 {
				return fmt.Sprintf("chain %d: no wrong turn after pass %d", i+1, pass)
			}
		}
	}
	twist := m.surplus[m.chain-1] // and half a turn after an outward pass: design.md, rule 2
	if m.laid[m.chain-1]%2 == 1 {
		twist += m.turn(1)
	}
	if wrong != len(m.wrong) || int(s.Twist()) != twist {
		return fmt.Sprintf("%d wrong turns, twist %d, want %d and %d", wrong, s.Twist(), len(m.wrong), twist)
	}
	var ties [][2]int
	for _, tie := range s.Ties {
		ties = append(ties, [2]int{tie.Chain, tie.Pass})
		if tie.Ends != s.Plan.Chains[tie.Chain-1].EndsAfter(tie.Pass) {
			return fmt.Sprintf("tie %+v", tie)
		}
	}
	if !slices.Equal(ties, m.ties) {
		return fmt.Sprintf("ties %v, want %v", ties, m.ties)
	}
	return ""
}
