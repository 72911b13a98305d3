package sheet

import "millside/plan/measure"

// words explains, once, what a newcomer may not know of the words on the sheet.
func (a maker) words() Part {
	rows := []measure.Row{
		meaning("opening", "what the paddle makes when it is raised or lowered: one half of the ends up, the other "+
			"half down"),
		meaning("bout", "an outward pass and the return pass after it"),
		meaning("counting cross", "the cross at the far end, in which whole groups alternate, so that they can be "+
			"counted"),
		meaning("lease", "the cross at the near end, in which every end crosses its neighbours"),
		meaning("flick", "to change the opening: the ends in the holes and those in the slots change places"),
		meaning("cut off, tie on", "an end that a pass carries no longer is cut at the end peg and made fast there; "+
			"one that is to be carried is made fast there"),
	}
	if a.Plan.Striped() {
		rows = append(rows, meaning("set-up", "which colour is in each position of the paddle"),
			meaning("parked", "threaded in the paddle, but carried on no pass for now"))
	}
	return Part{ID: PartWords, Title: "What the words mean", Rows: rows}
}

func meaning(name, words string) measure.Row { return measure.Row{Name: name, Value: word(words)} }
