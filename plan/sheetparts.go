package plan

import (
	"fmt"
	"strconv"
)

// passes lists every pass.
func (a SheetAsk) passes() SheetPart {
	t := &SheetTable{Columns: []string{"chain", "pass", "way", "ends", "from", "to", "first opening", "over peg", "then turn"}}
	for _, c := range a.Plan.Chains {
		for _, p := range c.Passes {
			t.Lines = append(t.Lines, []string{strconv.Itoa(c.Number), strconv.Itoa(p.Number), p.Direction.String(), strconv.Itoa(p.Ends()),
				strconv.Itoa(p.First), strconv.Itoa(p.Last), p.FirstOpening.String(), p.FirstPeg().String(), p.TurnAfter.String()})
		}
	}
	return SheetPart{ID: PartPasses, Title: "Passes", Table: t}
}

// ties lists the count ties and the ties at the end.
func (a SheetAsk) ties() SheetPart {
	part := SheetPart{ID: PartTies, Title: "Ties"}
	t := &SheetTable{Columns: []string{"chain", "after pass", "ends that stand"}}
	for _, c := range a.Plan.Chains {
		for number := range c.Passes {
			for _, task := range a.Plan.After(c, number+1) {
				if task.Kind == CountTie {
					t.Lines = append(t.Lines, []string{strconv.Itoa(c.Number), strconv.Itoa(number + 1), strconv.Itoa(task.Total)})
				}
			}
		}
	}
	if len(t.Lines) > 0 {
		part.Table = t
	}
	for _, step := range a.Plan.Finishing(a.Plan.Chains[0]) {
		switch step.ID {
		case StepNearLoop, StepNearCross, StepNearChoke, StepFarLoop, StepFarCross, StepFarChoke, StepAlong:
			part.Notes = append(part.Notes, step.Title+": "+step.Detail)
		}
	}
	return part
}

// yarn lists the cones, with the totals by colour and the weft as rows.
func (a SheetAsk) yarn() SheetPart {
	part := SheetPart{ID: PartYarn, Title: "Yarn"}
	units := a.Plan.Spec.Units
	if a.Yarn != nil {
		t := &SheetTable{Columns: []string{"position", "colour", "yarn", "passes", "length", "weight", "left on the cone"}}
		for _, u := range a.Yarn.Cones {
			t.Lines = append(t.Lines, []string{strconv.Itoa(u.Cone.Position), u.Cone.Colour, u.Cone.Yarn.Notation(), strconv.Itoa(u.Passes),
				u.Used.In(units.Long(), 1), u.UsedMass.In(units.Light(), 1), u.leftText(units)})
		}
		part.Table = t
		for _, total := range a.Yarn.Totals {
			part.Rows = append(part.Rows, Row{Name: nameOfYarn(total), Value: fmt.Sprintf("%s, %s, %s", counted(total.Ends, "end", "ends"),
				total.Length.In(units.Long(), 1), total.Mass.In(units.Light(), 1)), How: How{"the sum of its cones, each weight rounded up", total.inNumbers(units)}})
		}
		part.Rows = append(part.Rows, Row{Name: "whole warp", Value: fmt.Sprintf("%s, %s, %s", counted(a.Yarn.Ends, "end", "ends"),
			a.Yarn.Length.In(units.Long(), 1), a.Yarn.Mass.In(units.Heavy(), 3))})
	}
	if a.Weft != nil {
		value := a.Weft.Length.In(units.Long(), 1)
		if a.Weft.Mass > 0 {
			value += ", " + a.Weft.Mass.In(units.Heavy(), 3)
		}
		part.Rows = append(part.Rows, Row{Name: "weft, an estimate", Value: value, How: a.Weft.How})
	}
	return part
}

func nameOfYarn(t YarnTotal) string {
	if t.Colour == "" {
		return t.Yarn.Notation()
	}
	return t.Colour + ", " + t.Yarn.Notation()
}

// inNumbers puts a total in numbers.
func (t YarnTotal) inNumbers(units LengthUnitSystem) string {
	return fmt.Sprintf("%s: %s of %s = %s", counted(t.Cones, "cone", "cones"), t.Length.In(units.Long(), 1), t.Yarn.PerMass(units), t.Mass.In(units.Light(), 1))
}

// leftText says what is left on a cone, or where it runs out.
func (u ConeUse) leftText(units LengthUnitSystem) string {
	switch {
	case !u.Weighed:
		return "not weighed"
	case u.RunsOut != nil:
		return fmt.Sprintf("runs out on pass %d of chain %d, %s short", u.RunsOut.Pass, u.RunsOut.Chain, u.Short.In(units.Long(), 1))
	default:
		return u.Left.In(units.Long(), 1)
	}
}

// raddle lists the sections from the centre out.
func (a SheetAsk) raddle() SheetPart {
	part := SheetPart{ID: PartRaddle, Title: "Raddle, from the centre out"}
	if a.Raddle == nil {
		return part
	}
	part.Rows = []Row{a.Raddle.Row}
	t := &SheetTable{Columns: []string{"section", "ends", "from", "to", "groups"}}
	for _, s := range a.Raddle.CentreOut() {
		t.Lines = append(t.Lines, []string{s.place(), strconv.Itoa(s.Ends), strconv.Itoa(s.First), strconv.Itoa(s.Last), s.groupText()})
	}
	part.Table = t
	return part
}

// place says where a section is: "middle", "3 left".
func (s RaddleSection) place() string {
	switch {
	case s.FromCentre == 0:
		return "middle"
	case s.FromCentre < 0:
		return fmt.Sprintf("%d left", -s.FromCentre)
	default:
		return fmt.Sprintf("%d right", s.FromCentre)
	}
}

// groupText says how many groups a section holds.
func (s RaddleSection) groupText() string {
	switch {
	case s.Groups == 0:
		return ""
	case s.Cut == 0:
		return strconv.Itoa(s.Groups)
	default:
		return fmt.Sprintf("%d, %d of them in part", s.Groups, s.Cut)
	}
}

// reed shows how the warp is sleyed.
func (a SheetAsk) reed() SheetPart {
	part := SheetPart{ID: PartReed, Title: "Reed"}
	if a.Sley == nil {
		return part
	}
	if !a.Reed.IsZero() {
		part.Rows = append(part.Rows, Row{Name: "reed", Value: a.Reed.String()})
	}
	part.Rows = append(part.Rows, a.Sley.Rows...)
	return part
}

// cautions are the same for every warp, and those for dyeing where it will be dyed.
func (a SheetAsk) cautions() SheetPart {
	notes := []string{
		"Hair, sleeves, scarves and jewellery clear of the turning mill.",
		"A hand or a hip is the brake, so that the mill doesn't unwind.",
		"Threads and cones on the floor trip people.",
		"Rest your hands, neck and shoulders now and then.",
	}
	if a.Plan.Spec.Dyed {
		notes = append(notes, "Ties for dyeing are loose: tight ones keep the dye out and can cut into swollen yarn.",
			"For dyes: gloves, a mask, fresh air, and what the maker's sheet says.")
	}
	return SheetPart{ID: PartCautions, Title: "Cautions", Notes: append(notes, "Local rules and the advice of qualified people come first.")}
}
