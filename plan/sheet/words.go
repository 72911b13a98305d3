package sheet

import "millside/plan/measure"

// words explains, once, what a newcomer may not know of the words on the sheet.
func (a maker) words() Part {
	rows := []measure.Row{
		{Name: "opening", Value: word("what the paddle makes when it is raised or lowered: one half of the ends up, the " +
			"other half down")},
		{Name: "bout", Value: word("an outward pass and the return pass after it")},
		{Name: "counting cross", Value: word("the cross at the far end, in which whole groups alternate, so that they " +
			"can be counted")},
		{Name: "lease", Value: word("the cross at the near end, in which every end crosses its neighbours")},
		{Name: "flick", Value: word("to change the opening: the ends in the holes and those in the slots change places")},
		{Name: "cut off, tie on", Value: word("an end that a pass carries no longer is cut at the end peg and made fast " +
			"there; one that is to be carried is made fast there")},
	}
	if a.Plan.Striped() {
		rows = append(rows, measure.Row{Name: "set-up", Value: word("which colour is in each position of the paddle")},
			measure.Row{Name: "parked", Value: word("threaded in the paddle, but carried on no pass for now")})
	}
	return Part{ID: PartWords, Title: "What the words mean", Rows: rows}
}
