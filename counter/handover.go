package counter

import (
	"fmt"
	"time"

	"millside/plan"
)

// HandOver is what the loom must know of the winding, as a part of the studio sheet: every marked end
// with its section of the raddle and its dent, count ties, cones, recounts, notes and the time taken. The
// events are those that led to the state.
func HandOver(s State, events []Event) plan.SheetPart {
	part := plan.SheetPart{ID: plan.PartRecord, Title: "At the mill"}
	if !s.valid() {
		return part
	}
	add := func(name, value string) { part.Rows = append(part.Rows, plan.Row{Name: name, Value: value}) }
	units := s.Plan.Spec.Units
	// A plan that can't be worked out for the loom still has its marked ends.
	project, _ := plan.NewProject(s.Plan.Spec, plan.Pace{})
	for _, i := range s.Incidents {
		switch {
		case i.Withdrawn:
		case i.Undone:
			add("not on the mill", chainWords(s, i.Chain)+i.Words(units))
		default:
			add(i.What.Words(), chainWords(s, i.Chain)+i.Words(units)+project.Whereabouts(i.End))
		}
	}
	for _, t := range s.Ties {
		add("count tie", fmt.Sprintf("%s%d ends, after pass %d", chainWords(s, t.Chain), t.Ends, t.Pass))
	}
	for _, c := range s.Cones {
		add("new cone", fmt.Sprintf("%sposition %d, from pass %d on", chainWords(s, c.Chain), c.Position, c.Pass))
	}
	for _, r := range s.Recounts {
		add("recounted", fmt.Sprintf("%sfrom %d to %d: %s", chainWords(s, r.Chain), r.From, r.To, r.Reason))
	}
	for _, n := range s.Notes {
		add("note", fmt.Sprintf("%safter pass %d: %s", chainWords(s, n.Chain), n.Pass, n.Text))
	}
	if taken := PaceOverall(events); taken.Passes > 0 {
		add("pace", fmt.Sprintf("%s a pass, mostly %s to %s", taken.PerPass.Round(time.Second), taken.Low.Round(time.Second), taken.High.Round(time.Second)))
	}
	if !s.Started.IsZero() && s.Last.After(s.Started) {
		add("from first to last", s.Last.Sub(s.Started).Round(time.Minute).String()+", with all pauses")
	}
	return part
}

// chainWords names the chain where there are several.
func chainWords(s State, chain int) string {
	if len(s.Chains) == 1 {
		return ""
	}
	return fmt.Sprintf("chain %d, ", chain)
}
