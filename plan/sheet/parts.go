package sheet

import (
	"fmt"
	"strings"

	"millside/plan"
	"millside/plan/athand"
	"millside/plan/figure"
	"millside/plan/loom"
	"millside/plan/measure"
)

// yarn lists the cones, with the totals by colour and the weft as rows.
func (a maker) yarn() Part {
	part := Part{ID: PartYarn, Title: "Yarn"}
	units := a.Plan.Spec.Units
	if a.Yarn != nil {
		part.Table = a.cones()
		for _, total := range a.Yarn.Totals {
			part.Rows = append(part.Rows,
				measure.Row{Name: nameOfYarn(total),
					Value: figure.Say("%s, %s, %s", figure.Counted(total.Ends, "end", "ends"),
						total.Length.As(units.Long(), 1), total.Mass.AtLeast(units.Light(), 1)),
					How: measure.How{Formula: "the sum of its cones, each weight rounded up",
						WithNumbers: inNumbers(total, units)}})
		}
		part.Rows = append(part.Rows, measure.Row{Name: "whole warp",
			Value: figure.Say("%s, %s, %s", figure.Counted(a.Yarn.Ends, "end", "ends"),
				a.Yarn.Length.As(units.Long(), 1), a.Yarn.Mass.AtLeast(units.Heavy(), 3)), Warning: a.runsOut()},
			measure.Row{Name: "of that, at the pegs", Value: figure.Cell{a.Yarn.AtPegs.As(units.Long(), 1)},
				How: measure.How{Formula: "ends x what one takes at the pegs on a pass",
					WithNumbers: figure.Say("%s x %s = %s", figure.Counted(a.Yarn.Ends, "end", "ends"),
						a.Yarn.Extras.PerPass.As(units.Short(), 1), a.Yarn.AtPegs.As(units.Long(), 1))}},
			measure.Row{Name: "of that, tails", Value: figure.Cell{a.Yarn.Tails.As(units.Long(), 1)},
				How: measure.How{Formula: "ends tied on at the pegs x the tails of one",
					WithNumbers: figure.Say("%s x %s = %s", figure.Counted(a.Yarn.Ties, "end", "ends"),
						a.Yarn.Extras.PerTie.As(units.Short(), 1), a.Yarn.Tails.As(units.Long(), 1))}})
	}
	if row, told := a.PackagesRow(); told {
		part.Rows = append(part.Rows, row)
	}
	if a.Weft != nil {
		value := figure.Cell{a.Weft.Length.As(units.Long(), 1)}
		if a.Weft.Mass > 0 {
			value = value.And(", %s", a.Weft.Mass.AtLeast(units.Heavy(), 3))
		}
		part.Rows = append(part.Rows, measure.Row{Name: "weft, an estimate", Value: value, How: a.Weft.How})
		part.Rows = append(part.Rows, a.Weft.ByColour(a.Plan.Spec.Cloth.WeftColours, units)...)
	}
	return part
}

// runsOut names the positions whose cones don't suffice; "" where all do.
func (a maker) runsOut() string {
	var positions []int
	for _, u := range a.Yarn.Cones {
		if u.RunsOut != nil {
			positions = append(positions, u.Cone.Position)
		}
	}
	switch len(positions) {
	case 0:
		return ""
	case 1:
		return fmt.Sprintf("the cone of position %d runs out before the end", positions[0])
	default:
		return fmt.Sprintf("the cones of positions %s run out before the end", plan.Listed(positions))
	}
}

// cones lists the cones, those that give the same together.
func (a maker) cones() *Table {
	units := a.Plan.Spec.Units
	t := &Table{Columns: []string{"position", "colour", "yarn", "passes", "length", "weight", "left on the cone"}}
	var cones [][]figure.Cell
	for _, u := range a.Yarn.Cones {
		cones = append(cones, []figure.Cell{word(u.Cone.Colour), word(u.Cone.Yarn.Shown()), number(u.Passes),
			{u.Used.As(units.Long(), 1)}, {u.UsedMass.AtLeast(units.Light(), 1)}, leftOnCone(u, units)})
	}
	for _, run := range plan.SamePlaces(cones, sameCells) {
		first, last := a.Yarn.Cones[run[0]-1].Cone, a.Yarn.Cones[run[len(run)-1]-1].Cone
		line := append([]figure.Cell{number(first.Position)}, cones[run[0]-1]...)
		if len(run) > 1 {
			line[0], line[3] = ends(first.Position, last.Position), line[3].And(" each")
		}
		t.Lines = append(t.Lines, line)
	}
	return t
}

func nameOfYarn(t plan.YarnTotal) string {
	if t.Colour == "" {
		return t.Yarn.Shown()
	}
	return t.Colour + ", " + t.Yarn.Shown()
}

// inNumbers puts a total in numbers.
func inNumbers(t plan.YarnTotal, units measure.LengthUnitSystem) figure.Cell {
	return figure.Say("%s: %s of %s = %s", figure.Counted(t.Cones, "cone", "cones"), t.Length.As(units.Long(), 1),
		t.Yarn.PerMass(units), t.Mass.AtLeast(units.Light(), 1))
}

// leftOnCone says what is left on a cone, or where it runs out.
func leftOnCone(u plan.ConeUse, units measure.LengthUnitSystem) figure.Cell {
	switch {
	case !u.Weighed:
		return word("not weighed")
	case u.RunsOut != nil:
		return figure.Say("runs out on pass %d of chain %d, %s short", u.RunsOut.Pass, u.RunsOut.Chain,
			u.Short.As(units.Long(), 1))
	default:
		return figure.Cell{u.Left.As(units.Long(), 1)}
	}
}

// raddle lists the sections from the centre out, the two of a pair on one line.
func (a maker) raddle() Part {
	part := Part{ID: PartRaddle, Title: "Raddle, from the centre out"}
	if a.Raddle == nil {
		return part
	}
	part.Rows = []measure.Row{a.Raddle.Row,
		{Name: "sections filled", Value: figure.Say("%s, %s", number(len(a.Raddle.Sections)), a.centreText())}}
	t := &Table{Columns: []string{"section", "left", "numbers", "groups", "right", "numbers", "groups"}}
	part.Notes = []string{"Left and right: the ends in the section so far from the centre. Numbers: which ends of " +
		"the warp they are. Groups: the passes that laid them."}
	if a.Plan.ByColour() {
		t.Columns[3], t.Columns[6] = "colours", "colours"
		part.Notes = []string{"Left and right: the ends in the section so far from the centre. Numbers: which ends " +
			"of the warp they are. Colours: what is picked from their leases, in the order of the numbers."}
	}
	pairs := map[int]*[2]loom.RaddleSection{}
	var order []int
	for _, s := range a.Raddle.CentreOut() {
		distance, side := max(s.FromCentre, -s.FromCentre), 1
		if s.FromCentre < 0 {
			side = 0
		}
		if pairs[distance] == nil {
			pairs[distance] = &[2]loom.RaddleSection{}
			order = append(order, distance)
		}
		pairs[distance][side] = s
	}
	for _, distance := range order {
		where := number(distance)
		if distance == 0 {
			where = word("middle")
		}
		line := append([]figure.Cell{where}, a.sectionCells(pairs[distance][0])...)
		t.Lines = append(t.Lines, append(line, a.sectionCells(pairs[distance][1])...))
	}
	part.Table = t
	return part
}

// centreText says what lies at the centre of the loom.
func (a maker) centreText() string {
	if a.Raddle.MiddleSpace {
		return "centred on a space"
	}
	return "centred on a tooth"
}

// sectionCells says what lies in a section: its ends, their numbers, its groups. A section that isn't filled is
// empty.
func (a maker) sectionCells(s loom.RaddleSection) []figure.Cell {
	if s.Ends == 0 {
		return make([]figure.Cell, 3)
	}
	return []figure.Cell{number(s.Ends), ends(s.First, s.Last), groupsIn(a.Plan, s)}
}

// reed shows how the warp is sleyed, and how the reeds at hand would suit it.
func (a maker) reed() Part {
	part := Part{ID: PartReed, Title: "Reed", Table: a.reedsAtHand()}
	if a.Sley == nil {
		return part
	}
	if !a.Plan.Spec.Loom.Reed.IsZero() {
		part.Rows = append(part.Rows, measure.Row{Name: "reed", Value: word(a.Plan.Spec.Loom.Reed.String())})
	}
	part.Rows = append(part.Rows, a.SettRows()...)
	part.Rows = append(part.Rows, a.Sley.Rows...)
	return part
}

// reedsAtHand ranks the reeds at hand; nil where there are none or where the sett isn't known.
func (a maker) reedsAtHand() *Table {
	var reeds []loom.Reed
	names := map[loom.Reed]string{}
	for _, n := range athand.Alike(a.Reeds) {
		reeds, names[n.Reed] = append(reeds, n.Reed), n.Name
	}
	t := &Table{Columns: []string{"reed at hand, the best first", "order", "width", "why"}}
	unit := a.Plan.Spec.Units.Short()
	for _, c := range loom.RankReeds(reeds, a.SettInReed(), a.SideBySide()) {
		t.Lines = append(t.Lines, []figure.Cell{word(names[c.Reed]), word(c.Order.String()), {c.Width.As(unit, 1)},
			word(strings.Join(c.Reasons, "; "))})
	}
	if len(t.Lines) == 0 {
		return nil
	}
	return t
}

// cautions are the same for every warp, and those for dyeing where it will be dyed.
func (a maker) cautions() Part {
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
	return Part{ID: PartCautions, Title: "Cautions",
		Notes: append(notes, "Local rules and the advice of qualified people come first.")}
}
