package plan

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"
)

// passes lists the passes: every one, or those that are alike together.
func (a SheetAsk) passes() SheetPart {
	part := SheetPart{ID: PartPasses, Title: "Passes", Rows: []Row{a.boutRow()}, Notes: []string{
		"First opening: what goes over the first lease peg that is met; the other opening goes over the second. " +
			"Over: the peg of the counting cross that the group goes over; it goes under the other. Turn: the way round the end peg after the pass."}}
	part.Notes = append(part.Notes, a.shortPasses()...)
	if row, ok := a.nearPegRow(); ok {
		part.Rows = append(part.Rows, row)
	}
	if a.AllPasses {
		part.Table = a.everyPass()
	} else {
		part.Table = a.likePasses()
	}
	return part
}

// shortPasses names the passes that leave positions out.
func (a SheetAsk) shortPasses() []string {
	var notes []string
	for _, c := range a.Plan.Chains {
		for _, p := range c.Passes {
			if a.Plan.LeftOut(p) != 0 {
				notes = append(notes, fmt.Sprintf("Chain %d, pass %d carries only %s, in %s.", c.Number, p.Number, Counted(p.Ends(), "end", "ends"), positionsText(p.Carried)))
			}
		}
	}
	return notes
}

// boutRow says how many bouts there are.
func (a SheetAsk) boutRow() Row {
	bouts, odd := 0, 0
	for _, c := range a.Plan.Chains {
		bouts += len(c.Passes) / 2
		odd += len(c.Passes) % 2
	}
	row := Row{Name: "bouts", Value: strconv.Itoa(bouts), How: How{"passes / 2 in each chain", fmt.Sprintf("%d x 2 + %d = %d passes", bouts, odd, 2*bouts+odd)}}
	if odd > 0 {
		row.Value += fmt.Sprintf(", and %s", Counted(odd, "outward pass", "outward passes, one in each of as many chains"))
	}
	return row
}

// nearPegRow says what the paddle does on its way round the near end peg.
func (a SheetAsk) nearPegRow() (Row, bool) {
	kept, flicked := 0, 0
	for _, c := range a.Plan.Chains {
		for k := 2; k < len(c.Passes); k += 2 {
			if c.KeepsOpening(k) {
				kept++
			} else {
				flicked++
			}
		}
	}
	row := Row{Name: "round the near peg"}
	switch {
	case kept+flicked == 0:
		return row, false
	case flicked == 0:
		row.Value = "the paddle keeps its opening"
	case kept == 0:
		row.Value = "flick the paddle once more"
	default:
		row.Value = "keep or flick the paddle as the first opening of the next pass asks"
	}
	return row, true
}

// everyPass lists every pass by itself.
func (a SheetAsk) everyPass() *SheetTable {
	t := &SheetTable{Columns: []string{"chain", "pass", "way", "ends", "from", "to", "first opening", "over", "turn"}}
	for _, c := range a.Plan.Chains {
		for _, p := range c.Passes {
			t.Lines = append(t.Lines, []string{strconv.Itoa(c.Number), strconv.Itoa(p.Number), p.Direction.String(), strconv.Itoa(p.Ends()),
				strconv.Itoa(p.First), strconv.Itoa(p.Last), p.openingText(), strconv.Itoa(p.CrossOver()), p.TurnAfter.String()})
		}
	}
	return t
}

// openingText names the first opening and the peg that it goes over: "holes up, A".
func (p Pass) openingText() string { return p.FirstOpening.String() + ", " + p.FirstPeg().String() }

// passKind is what makes passes alike to the hand.
type passKind struct {
	direction Direction
	carried   Positions
	mirrored  bool
	opening   Opening
	turn      Turn
}

func (p Pass) kind() passKind {
	return passKind{p.Direction, p.Carried, p.Mirrored, p.FirstOpening, p.TurnAfter}
}

// likePasses lists the passes that are alike together, and so chains that are wound alike.
func (a SheetAsk) likePasses() *SheetTable {
	t := &SheetTable{Columns: []string{"chain", "passes", "way", "ends", "first opening", "over", "turn"}}
	var chains [][][]string
	for _, c := range a.Plan.Chains {
		chains = append(chains, a.Plan.kindsOf(c))
	}
	for _, run := range samePlaces(chains, func(a, b [][]string) bool { return reflect.DeepEqual(a, b) }) {
		for _, line := range chains[run[0]-1] {
			t.Lines = append(t.Lines, append([]string{listed(run)}, line...))
		}
	}
	return t
}

// kindsOf gives a line for each kind of pass in a chain, in the order in which they first come.
func (p *Plan) kindsOf(c Chain) [][]string {
	at := map[passKind]int{}
	var numbers [][]int
	for i, pass := range c.Passes {
		k, seen := at[pass.kind()]
		if !seen {
			k = len(numbers)
			at[pass.kind()] = k
			numbers = append(numbers, nil)
		}
		numbers[k] = append(numbers[k], i+1)
	}
	var lines [][]string
	for _, n := range numbers {
		pass := c.Passes[n[0]-1]
		lines = append(lines, []string{listed(n), pass.Direction.String(), strconv.Itoa(pass.Ends()), pass.openingText(), strconv.Itoa(pass.CrossOver()), pass.TurnAfter.String()})
	}
	return lines
}

// ties lists the count ties and the ties at the end.
func (a SheetAsk) ties() SheetPart {
	part := SheetPart{ID: PartTies, Title: "Ties"}
	if every := a.Plan.Spec.TieEvery; every > 0 {
		part.Rows = append(part.Rows, Row{Name: "count tie every", Value: Counted(every, "end", "ends")})
		part.Table = a.countTies()
	}
	for _, step := range a.Plan.Finishing(a.Plan.Chains[0]) {
		switch step.ID {
		case StepNearLoop, StepNearCross, StepNearChoke, StepFarLoop, StepFarCross, StepFarChoke, StepAlong:
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
func (a SheetAsk) sharedDetail(step Step) string {
	if len(a.Plan.Chains) == 1 {
		return step.Detail
	}
	for _, peg := range []EndPeg{NearPeg, FarPeg} {
		if knots := a.Plan.loose(a.Plan.Chains[0], peg); knots != "" && strings.HasSuffix(step.Detail, knots) {
			return strings.TrimSuffix(step.Detail, knots)
		}
	}
	return step.Detail
}

// countTies lists the count ties: each by itself, or those of chains that are wound alike in one line.
func (a SheetAsk) countTies() *SheetTable {
	t := &SheetTable{Columns: []string{"chain", "after pass", "ends that stand"}}
	type tied struct{ passes, ends []int }
	var chains []tied
	for _, c := range a.Plan.Chains {
		var one tied
		for k := a.Plan.NextTie(c, 1); k != 0; k = a.Plan.NextTie(c, k+1) {
			one.passes, one.ends = append(one.passes, k), append(one.ends, c.EndsAfter(k))
			if a.AllPasses {
				t.Lines = append(t.Lines, []string{strconv.Itoa(c.Number), strconv.Itoa(k), strconv.Itoa(c.EndsAfter(k))})
			}
		}
		chains = append(chains, one)
	}
	for _, run := range samePlaces(chains, func(a, b tied) bool { return reflect.DeepEqual(a, b) }) {
		if one := chains[run[0]-1]; !a.AllPasses && len(one.passes) > 0 {
			t.Lines = append(t.Lines, []string{listed(run), listed(one.passes), listed(one.ends)})
		}
	}
	if len(t.Lines) == 0 {
		return nil
	}
	return t
}
