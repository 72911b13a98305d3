package sheet

import (
	"strings"

	"millside/plan"
	"millside/plan/figure"
	"millside/plan/measure"
	"millside/plan/wind"
)

// The parts of the sheet of a striped warp.
const (
	PartStripes       PartID = "stripes"
	PartStripedPasses PartID = "striped-passes"
	PartEndColours    PartID = "end-colours"
)

// stripes shows the colours and the set-ups: what is in each position, and before which pass what is
// changed. It is empty for a plain warp, as are the other two.
func (a maker) stripes() Part {
	part := Part{ID: PartStripes, Title: "Stripes and set-ups"}
	if !a.Plan.Striped() {
		return part
	}
	p := a.Plan
	if p.Spec.Stripes != "" {
		part.Rows = append(part.Rows, measure.Row{Name: "stripes", Value: word(p.Spec.StripesText()),
			Warning: laidWarning(p.Spec)})
	}
	for _, use := range p.ColourUses() {
		row := measure.Row{Name: p.ColourText(use.Colour),
			Value: figure.Say("%s, %s at once", figure.Counted(use.Ends, "end", "ends"),
				figure.Counted(use.Packages, "package", "packages"))}
		if c, ok := p.Colour(use.Colour); ok && c.Shade != "" {
			row.Value = row.Value.And(", %s", figure.Colour{Shade: c.Shade})
		}
		part.Rows = append(part.Rows, row)
	}
	t := &Table{Columns: []string{"set-up", "chain", "before pass", "positions, 1 first", "what is changed"}}
	at := 0
	for _, c := range p.Chains {
		for _, pass := range c.Passes {
			if pass.SetUp == at {
				continue
			}
			at = pass.SetUp
			what := "thread positions " + p.SetUpText(p.SetUpOf(pass))
			if c.Number > 1 || pass.Number > 1 {
				what = p.ChangesText(p.ChangesBefore(c, pass.Number))
			}
			t.Lines = append(t.Lines, []figure.Cell{number(at), number(c.Number), number(pass.Number),
				word(p.SetUpOf(pass).Letters()), word(what)})
		}
	}
	part.Table = t
	part.Notes = append(part.Notes, "Odd positions of the paddle are holes, even ones slots; a dot is an empty "+
		"position. "+
		"The letters of the colours begin with C, since A and B are the lease pegs. "+
		"A position that carries no end on a pass stays parked, threaded; it is cut off before and tied on after.")
	if note := p.Spec.Schedule.Note; note != "" {
		part.Notes = append(part.Notes, "Why these passes: "+strings.TrimSuffix(note, ".")+".")
	}
	return part
}

// laidWarning says that the stripes make another width than the cloth has, and what would do.
func laidWarning(s plan.Spec) string {
	off := s.Asked.Laid.Off()
	switch {
	case !s.Cloth.Used || off == 0 || s.Asked.Laid.How == wind.WholeRepeats:
		return ""
	case off < 0:
		return "narrower than the cloth: the stripes can be laid repeated"
	}
	return "wider than the cloth: the stripes can be cut"
}

// stripedPasses lists the set-up and the positions that carry an end, and the colours in which they lie: of every
// pass by itself, or of those that are alike together.
func (a maker) stripedPasses() Part {
	part := Part{ID: PartStripedPasses, Title: "Passes and positions"}
	if !a.Plan.Striped() {
		return part
	}
	part.Table = &Table{Columns: []string{"chain", "passes", "way", "set-up", "positions", "ends",
		"colours in the lease"}}
	if a.AllPasses {
		part.Table.Columns[1] = "pass"
	}
	var chains [][][]figure.Cell
	for _, c := range a.Plan.Chains {
		var lines alikeLines
		for _, p := range c.Passes {
			line := []figure.Cell{number(p.Number), word(p.Direction.String()), number(p.SetUp),
				word(p.Carried.String()), number(p.Ends()), word(plan.RunsText(a.Plan.PassRuns(p)))}
			if a.AllPasses {
				at := a.Plan.WoundRange(p.First, p.Last)
				line[4] = ends(at.First, at.Last)
				part.Table.Lines = append(part.Table.Lines, append([]figure.Cell{number(c.Number)}, line...))
			}
			lines.add(p.Number, line)
		}
		chains = append(chains, lines.lines)
	}
	if a.AllPasses {
		return a.ownCount(part)
	}
	part.Table.addChains(chains)
	return part
}

// endColours lists the colour of every end, run by run, for the raddle, the threading and the reed.
func (a maker) endColours() Part {
	part := Part{ID: PartEndColours, Title: "Colour of every end"}
	if !a.Plan.Striped() {
		return part
	}
	t := &Table{Columns: []string{"from", "to", "ends", "colour"}}
	byColour, picked := a.Plan.ByColour(), map[int]int{} // how many ends of a colour are picked
	if byColour {
		part.Title = "Order list"
		t.Columns = append(t.Columns, "of its lease")
		part.Notes = append(part.Notes, "From end 1 on: pick so many ends from the lease of that colour. "+
			"Its ends are counted as they lie there, the first one at the foot of the peg. End 1 lies on the "+
			a.Plan.Spec.Loom.FirstEnd.String()+" of the loom.")
	}
	for _, run := range a.Plan.EndRuns() {
		line := []figure.Cell{number(run.First), number(run.Last), number(run.Ends()), colour(a.Plan, run.Colour)}
		if byColour {
			from := picked[run.Colour]
			picked[run.Colour] += run.Ends()
			line = append(line, ends(from+1, picked[run.Colour]))
		}
		t.Lines = append(t.Lines, line)
	}
	part.Table = t
	return part
}

// colour is the cell of a colour of the plan, by its number.
func colour(p *plan.Plan, n int) figure.Cell {
	c, ok := p.Colour(n)
	if !ok {
		return word(p.ColourText(n))
	}
	return figure.Cell{figure.Colour{Letter: string(plan.Letter(n)), Name: c.Name, Shade: c.Shade}}
}
