package sheet

import (
	"fmt"
	"reflect"
	"strings"

	"millside/plan"
	"millside/plan/figure"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/wind"
)

// passes lists the passes: every one, or those that are alike together.
func (a maker) passes() Part {
	part := Part{ID: PartPasses, Title: "Passes", Rows: []measure.Row{a.boutRow()}, Notes: []string{
		"First opening: what goes over the first lease peg that is met; the other opening goes over the second. " +
			"Over: the peg of the counting cross that the group goes over; it goes under the other. Turn: the way " +
			"round the end peg after the pass."}}
	part.Notes = append(part.Notes, a.shortPasses()...)
	if row, ok := a.nearPegRow(); ok {
		part.Rows = append(part.Rows, row)
	}
	if a.AllPasses {
		part.Table = a.everyPass()
		return a.ownCount(part)
	}
	part.Table = a.likePasses()
	return part
}

// shortPasses names the passes that leave positions out.
func (a maker) shortPasses() []string {
	if a.Plan.Striped() {
		return nil // what each pass carries stands in the list of passes and positions
	}
	var notes []string
	for _, c := range a.Plan.Chains {
		for _, p := range c.Passes {
			if a.Plan.LeftOut(p) != 0 {
				notes = append(notes, fmt.Sprintf("Chain %d, pass %d carries only %s, in %s.", c.Number, p.Number,
					measure.Counted(p.Ends(), "end", "ends"), wind.PositionsText(p.Carried)))
			}
		}
	}
	return notes
}

// boutRow says how many bouts there are.
func (a maker) boutRow() measure.Row {
	bouts, odd := a.Plan.Bouts()
	row := measure.Row{Name: "bouts", Value: number(bouts),
		How: measure.How{Formula: "passes / 2 in each chain",
			WithNumbers: figure.Say("%d x 2 + %d = %s", bouts, odd, figure.Counted(2*bouts+odd, "pass", "passes"))}}
	if odd > 0 {
		row.Value = row.Value.And(", and %s",
			figure.Counted(odd, "outward pass", "outward passes, one in each of as many chains"))
	}
	return row
}

// nearPegRow says what the paddle does on its way round the near end peg.
func (a maker) nearPegRow() (measure.Row, bool) {
	kept, flicked := a.Plan.NearTurns()
	row := measure.Row{Name: "round the near peg"}
	switch {
	case kept+flicked == 0:
		return row, false
	case flicked == 0:
		row.Value = word("the paddle keeps its opening")
	case kept == 0:
		row.Value = word("flick the paddle once more")
	default:
		row.Value = word("keep or flick the paddle as the first opening of the next pass asks")
	}
	return row, true
}

// everyPass lists every pass by itself.
func (a maker) everyPass() *Table {
	t := &Table{Columns: []string{"chain", "pass", "way", "ends", "from", "to", "first opening", "over", "turn"}}
	for _, c := range a.Plan.Chains {
		for _, p := range c.Passes {
			ends := a.Plan.WoundRange(p.First, p.Last)
			t.Lines = append(t.Lines, []figure.Cell{number(c.Number), number(p.Number), word(p.Direction.String()),
				number(p.Ends()), number(ends.First), number(ends.Last), word(openingText(p)), number(p.CrossOver()),
				word(p.TurnAfter.String())})
		}
	}
	return t
}

// openingText names the first opening and the peg that it goes over: "holes up, A".
func openingText(p wind.Pass) string { return p.FirstOpening.String() + ", " + p.FirstPeg().String() }

// passKind is what makes passes alike to the hand.
type passKind struct {
	direction wind.Direction
	carried   wind.Positions
	mirrored  bool
	opening   wind.Opening
	turn      wind.Turn
}

func likenessOf(p wind.Pass) passKind {
	return passKind{p.Direction, p.Carried, p.Mirrored, p.FirstOpening, p.TurnAfter}
}

// likePasses lists the passes that are alike together, and so chains that are wound alike.
func (a maker) likePasses() *Table {
	t := &Table{Columns: []string{"chain", "passes", "way", "ends", "first opening", "over", "turn"}}
	var chains [][][]figure.Cell
	for _, c := range a.Plan.Chains {
		chains = append(chains, kindsOf(c))
	}
	t.addChains(chains)
	return t
}

// kindsOf gives a line for each kind of pass in a chain, in the order in which they first come.
func kindsOf(c plan.Chain) [][]figure.Cell {
	at := map[passKind]int{}
	var numbers [][]int
	for i, pass := range c.Passes {
		kind := likenessOf(pass)
		if pass.SetUp > 0 { // what each carries has a list of its own
			kind.carried, kind.mirrored = 0, false
		}
		k, seen := at[kind]
		if !seen {
			k = len(numbers)
			at[kind] = k
			numbers = append(numbers, nil)
		}
		numbers[k] = append(numbers[k], i+1)
	}
	var lines [][]figure.Cell
	for _, n := range numbers {
		pass := c.Passes[n[0]-1]
		lines = append(lines, []figure.Cell{list(n), word(pass.Direction.String()), endsOf(c, n),
			word(openingText(pass)), number(pass.CrossOver()), word(pass.TurnAfter.String())})
	}
	return lines
}

// endsOf is how many ends each of some passes lays: "10", or "2 to 12".
func endsOf(c plan.Chain, passes []int) figure.Cell {
	least, most := c.Passes[passes[0]-1].Ends(), 0
	for _, k := range passes {
		least, most = min(least, c.Passes[k-1].Ends()), max(most, c.Passes[k-1].Ends())
	}
	if least == most {
		return number(most)
	}
	return ends(least, most)
}

// ties lists the count ties and the ties at the end.
func (a maker) ties() Part {
	part := Part{ID: PartTies, Title: "Ties"}
	if every := a.Plan.Spec.TieEvery; every > 0 {
		part.Rows = append(part.Rows, measure.Row{Name: "count tie every",
			Value: figure.Cell{figure.Counted(every, "end", "ends")}})
		part.Table = a.countTies()
	}
	for _, step := range finishing.Steps(a.Plan, a.Plan.Chains[0]) {
		switch step.ID {
		case finishing.StepNearLoop, finishing.StepNearCross, finishing.StepNearChoke, finishing.StepFarLoop,
			finishing.StepFarCross,
			finishing.StepFarChoke, finishing.StepAlong, finishing.StepBorders:
			note := step.Title + ": " + a.sharedDetail(step)
			if step.Caution != "" {
				note += " Take care: " + step.Caution
			}
			part.Notes = append(part.Notes, note)
		}
	}
	return part
}

// sharedDetail is how a step is done on every chain. What was tied on and cut off on the way differs from
// chain to chain, and stands with the work at the pegs.
func (a maker) sharedDetail(step finishing.Step) string {
	if len(a.Plan.Chains) == 1 {
		return step.Detail
	}
	for _, peg := range []wind.EndPeg{wind.NearPeg, wind.FarPeg} {
		if knots := finishing.Loose(a.Plan, a.Plan.Chains[0], peg); knots != "" &&
			strings.HasSuffix(step.Detail, knots) {
			return strings.TrimSuffix(step.Detail, knots)
		}
	}
	return step.Detail
}

// countTies lists the count ties: each by itself, or those of chains that are wound alike in one line.
func (a maker) countTies() *Table {
	t := &Table{Columns: []string{"chain", "made after pass", "up to group", "ends in them so far"}}
	type tied struct{ passes, groups, ends []int }
	var chains []tied
	for _, c := range a.Plan.Chains {
		var one tied
		for tie := range a.Plan.Ties(c) {
			one.passes, one.groups, one.ends = append(one.passes, tie.Due), append(one.groups, tie.To),
				append(one.ends, tie.Total)
			if a.AllPasses {
				t.Lines = append(t.Lines,
					[]figure.Cell{number(c.Number), number(tie.Due), number(tie.To), number(tie.Total)})
			}
		}
		chains = append(chains, one)
	}
	for _, run := range plan.SamePlaces(chains, func(a, b tied) bool { return reflect.DeepEqual(a, b) }) {
		if one := chains[run[0]-1]; !a.AllPasses && len(one.passes) > 0 {
			t.Lines = append(t.Lines, []figure.Cell{list(run), list(one.passes), list(one.groups), list(one.ends)})
		}
	}
	if len(t.Lines) == 0 {
		return nil
	}
	return t
}
