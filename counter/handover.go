package counter

import (
	"fmt"
	"iter"

	"millside/plan"
	"millside/plan/figure"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/sheet"
	"millside/plan/times"
)

// HandOver is what the loom must know of the winding, as a part of the studio sheet: every marked end
// with its colour, its section of the raddle and its dent, marked passes with their ends, wrong turns,
// count ties, cones, recounts, notes and the time taken. Incidents that were taken back are left out, and
// those of passes that are undone are named as such. Its title is "Hand-over" once the warp is finished,
// and "At the mill" before. The events are those that led to the state. A state without a plan, and one in
// which nothing has happened that the loom must know, gives a part without rows.
func HandOver(s State, events iter.Seq[Event]) sheet.Part {
	part := sheet.Part{ID: sheet.PartRecord, Title: "At the mill"}
	if !s.valid() {
		return part
	}
	if s.Finished {
		part.Title = "Hand-over"
	}
	if with := s.Plan.Spec.GoesWith; with != "" {
		part.Rows = append(part.Rows, measure.Row{Name: "goes with", Value: figure.Say("%s", with)})
	}
	part.Rows = append(append(part.Rows, s.markRows()...), s.knotRows()...)
	part.Rows = append(part.Rows, s.countRows()...)
	part.Rows = append(part.Rows, timeRows(s, events)...)
	return part
}

// knotRows names the ends that begin or finish at a peg, where the loom finds the knots of the winding. Until the
// warp is off the mill they stand with the plan only.
func (s State) knotRows() []measure.Row {
	if !s.Finished {
		return nil
	}
	var beside []finishing.PegEnd
	for i := range s.Chains {
		beside = append(beside, s.anewEnds(i+1)...)
	}
	return finishing.KnotRows(s.Plan, beside...)
}

// markRows names what has to be looked for at the loom.
func (s State) markRows() []measure.Row {
	var rows []measure.Row
	add := func(name, value string) { rows = append(rows, measure.Row{Name: name, Value: figure.Say("%s", value)}) }
	if look := s.Plan.LeaseLook(); s.Finished && !s.LeaseSeen && look.Kind == plan.CheckLease && look.Pass > 0 {
		add("lease", "not looked at while winding: see that neighbours alternate where two groups meet")
	}
	// A plan that can't be worked out for the loom still has its marked ends.
	project, _ := project.Of(s.Plan, times.Pace{})
	if project != nil && s.Plan.Spec.GoesWith != "" { // its ends don't lie in the raddle and the reed by themselves
		project.Raddle, project.Sley = nil, nil
	}
	for _, i := range s.Incidents {
		where := chainWords(s, i.Chain) + i.Words(s.Plan.Spec.Units)
		switch {
		case i.Withdrawn:
		case i.Undone:
			add("not on the mill", where)
		case i.What.OfEnd():
			add(i.What.Words(), where+project.Whereabouts(i.End))
		default:
			add(i.What.Words(), where+s.endsOfPass(i.Chain, i.Pass))
		}
	}
	for i, c := range s.Chains {
		for _, k := range c.WrongOpenings {
			add("lease to mend", fmt.Sprintf("%spass %d%s: the wrong opening first; mend it where it meets its "+
				"neighbours",
				chainWords(s, i+1), k, s.endsOfPass(i+1, k)))
		}
		if len(c.WrongTurns) == 0 {
			continue
		}
		value := chainWords(s, i+1) + "round the end peg " + afterPasses(c.WrongTurns)
		if c.Surplus == 0 {
			value += ", put right"
		}
		add("wrong turn", value)
	}
	return rows
}

// endsOfPass names the ends that a pass lays: ", ends 161 to 170".
func (s State) endsOfPass(chain, pass int) string {
	passes := s.Plan.Chains[chain-1].Passes
	if pass > len(passes) { // a striped warp has another schedule in the other return order
		return ""
	}
	return ", " + s.Plan.WoundText(passes[pass-1].First, passes[pass-1].Last)
}

// afterPasses lists passes: "after pass 12", "after passes 12, 20".
func afterPasses(passes []int) string {
	if len(passes) == 1 {
		return fmt.Sprintf("after pass %d", passes[0])
	}
	text := fmt.Sprintf("after passes %d", passes[0])
	for _, k := range passes[1:] {
		text += fmt.Sprintf(", %d", k)
	}
	return text
}

// countRows lists what the count rests on.
func (s State) countRows() []measure.Row {
	var rows []measure.Row
	add := func(name, value string) { rows = append(rows, measure.Row{Name: name, Value: figure.Say("%s", value)}) }
	for _, t := range s.Ties {
		add("count tie", fmt.Sprintf("%s%d ends, after pass %d", chainWords(s, t.Chain), t.Ends, t.Pass))
	}
	for _, c := range s.Cones {
		add("new package", fmt.Sprintf("%sposition %d, from pass %d on", chainWords(s, c.Chain), c.Position, c.Pass))
	}
	for _, r := range s.Recounts {
		add("recounted", fmt.Sprintf("%sfrom %d to %d: %s", chainWords(s, r.Chain), r.From, r.To, r.Reason))
	}
	for _, l := range s.Losses {
		value := l.String()
		if !l.Settled {
			value += "; the count was not set right since"
		}
		add("lost", value)
	}
	for _, n := range s.Reopened {
		add("opened again", n.Text)
	}
	for _, n := range s.Notes {
		add("note", fmt.Sprintf("%safter pass %d: %s", chainWords(s, n.Chain), n.Pass, n.Text))
	}
	return rows
}

// timeRows tells the pace, and the time from the first event to the last in whole minutes, rounded up.
func timeRows(s State, events iter.Seq[Event]) []measure.Row {
	var rows []measure.Row
	if taken := PaceOverall(events); taken.Passes > 0 {
		rows = append(rows, measure.Row{Name: "pace", Value: figure.Say("%s", taken)})
	}
	if all := s.Last.Sub(s.Started); told(s.Started) && told(s.Last) && all > 0 {
		span := times.TimeSpan{Low: all, Middle: all, High: all}
		rows = append(rows, measure.Row{Name: "from first to last", Value: span.Cell().And(", with all pauses")})
	}
	return rows
}

// chainWords names the chain where there are several.
func chainWords(s State, chain int) string {
	if len(s.Chains) == 1 {
		return ""
	}
	return fmt.Sprintf("chain %d, ", chain)
}
