package plan

import (
	"fmt"
	"sort"

	"millside/plan/measure"
)

// ChoiceKind is one of the ways to reach a number of ends.
type ChoiceKind uint8

// The kinds of choice.
const (
	Divides   ChoiceKind = iota // the group divides the ends
	ShortPass                   // the last pass carries fewer ends
	SpareEnds                   // the last pass is full and the surplus is spare ends
)

// Choice is one way to wind a number of ends.
type Choice struct {
	Kind ChoiceKind
	// Group is the number of ends on a full pass.
	Group int
	// Passes is how many passes it takes.
	Passes int
	// LastEnds is how many ends the last pass carries.
	LastEnds int
	// Spares is how many ends are wound beyond the number wanted.
	Spares int
	// Finish is where the winding stops.
	Finish Finish
	// Cost is what the ranking goes by, in tenths of a pass; less is better. See [Choices].
	Cost int
	// Reasons says in words what is good and what is bad about the choice.
	Reasons []string
}

// What the ranking adds to ten for each pass, in tenths of a pass. They are the project's own
// judgement of a weaver's trouble, not a measured value.
const (
	costPass        = 10
	costFinishCross = 15 // the last group must be brought to rest at the far end
	costShort       = 5  // positions are parked before the last pass
	costSpare       = 2  // each spare end is yarn that goes to waste
)

// Choices lists the ways to wind a number of ends, the least trouble first: the given group with a
// short last pass and with spare ends, or alone where it divides, and every other group from 2 to the
// positions of the paddle that divides the ends. Ends is 1 to MaxEnds, group 1 to positions, positions
// 1 to MaxPositions; outside these the list is empty.
//
// The cost is ten for each pass, fifteen more for a finish at the counting cross, five more for a
// short last pass and two for each spare end.
func Choices(ends, group, positions int) []Choice {
	if ends < 1 || ends > measure.MaxEnds || positions < 1 || positions > measure.MaxPositions || group < 1 || group > positions {
		return nil
	}
	var list []Choice
	if ends%group == 0 {
		list = append(list, newChoice(Divides, ends, group))
	} else {
		list = append(list, newChoice(ShortPass, ends, group), newChoice(SpareEnds, ends, group))
	}
	for g := 2; g <= positions; g++ {
		if g != group && ends%g == 0 {
			list = append(list, newChoice(Divides, ends, g))
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].Cost < list[j].Cost })
	return list
}

func newChoice(kind ChoiceKind, ends, group int) Choice {
	c := Choice{Kind: kind, Group: group, Passes: (ends + group - 1) / group, LastEnds: group}
	c.Finish = finishAfter(c.Passes)
	c.Cost = costPass * c.Passes
	c.Reasons = append(c.Reasons, measure.Counted(c.Passes, "pass", "passes"))
	switch kind {
	case ShortPass:
		c.LastEnds = ends % group
		c.Cost += costShort
		c.Reasons = append(c.Reasons, c.shortReason())
	case SpareEnds:
		c.Spares = group - ends%group
		c.Cost += costSpare * c.Spares
		c.Reasons = append(c.Reasons, measure.Counted(c.Spares, "spare end is wound", "spare ends are wound"))
	default:
		c.Reasons = append(c.Reasons, "every pass is full")
	}
	if c.Finish == AtCountingCross {
		c.Cost += costFinishCross
	}
	c.Reasons = append(c.Reasons, c.finishReason())
	return c
}

// cutBefore is how many ends are cut off before the last pass, as [Plan.WorkBefore] has it.
func (c Choice) cutBefore() int {
	if c.Kind != ShortPass || c.Passes == 1 {
		return 0
	}
	return c.Group - c.LastEnds
}

func (c Choice) shortReason() string {
	if c.Passes == 1 {
		return fmt.Sprintf("the only pass carries %d", c.LastEnds)
	}
	return fmt.Sprintf("the last pass carries %d, so %s cut off at the %s before it", c.LastEnds,
		measure.Counted(c.cutBefore(), "end is", "ends are"), pegAfter(c.Passes-1))
}

func (c Choice) finishReason() string {
	switch {
	case c.Finish == AtCountingCross:
		return "stops at the counting cross: the last group is fastened at the far end, which is harder"
	case c.cutBefore() > 0: // before a return pass, so at the far end
		return "stops at the lease, where it began"
	default:
		return "stops at the lease, where it began: nothing is left at the far end"
	}
}

// Label names the choice in a few words.
func (c Choice) Label() string {
	switch c.Kind {
	case ShortPass:
		return fmt.Sprintf("group of %d, last pass of %d", c.Group, c.LastEnds)
	case SpareEnds:
		return fmt.Sprintf("group of %d, %s", c.Group, measure.Counted(c.Spares, "spare end", "spare ends"))
	default:
		return fmt.Sprintf("group of %d, all full", c.Group)
	}
}
