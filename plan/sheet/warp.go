package sheet

import (
	"fmt"
	"slices"
	"strings"

	"millside/plan"
	"millside/plan/figure"
	"millside/plan/finishing"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/wind"
)

// mostFits is how many other counts of ends a sheet names.
const mostFits = 3

// cloth shows how the ends and the length follow from the cloth.
func (a maker) cloth() Part {
	part := Part{ID: PartCloth, Title: "Cloth"}
	if a.Ends != nil {
		part.Rows = append(part.Rows, a.Ends.Rows...)
		part.Rows = append(part.Rows, a.fitRows()...)
		part.Notes = a.otherFits()
	}
	if a.Warp != nil {
		part.Rows = append(part.Rows, a.Warp.Rows(a.Plan.Spec.Units)...)
	}
	return part
}

// fitRows shows the count of ends that was taken, and the width that it gives: by the reed where there is one,
// else by the sett.
func (a maker) fitRows() []measure.Row {
	unit := a.Plan.Spec.Units.Short()
	for _, f := range a.Ends.Fits {
		if f.Ends != a.Plan.Spec.Ends {
			continue
		}
		width := f.Finished.As(unit, 2)
		c := a.Plan.Spec.Cloth.Width
		how := measure.How{Formula: "ends without doubling and floating / sett in the reed " + c.FinishedFormula(),
			WithNumbers: figure.Say("from %s: %s", figure.Counted(f.Body, "end", "ends"), width)}
		if a.Ends.Real > 0 {
			width = a.Ends.RealFinished.As(unit, 2)
			how = measure.How{Formula: "width in the reed " + c.FinishedFormula(),
				WithNumbers: figure.Say("%s %s = %s", a.Ends.Real.As(unit, 2), c.FinishedNumbers(), width)}
		}
		return []measure.Row{{Name: "ends taken", Value: figure.Say("%s: %s", number(f.Ends), f.Why)},
			{Name: "finished width from them", Value: figure.Cell{width}, How: how}}
	}
	return nil
}

// otherFits names the nearest of the other counts.
func (a maker) otherFits() []string {
	var notes []string
	for _, f := range a.Ends.Fits {
		if f.Ends != a.Plan.Spec.Ends && len(notes) < mostFits {
			notes = append(notes, fmt.Sprintf("Or %d ends: %s.", f.Ends, f.Why))
		}
	}
	return notes
}

// plainRows are the ends, the group and the passes of a plain warp.
func plainRows(p *plan.Plan, n int, last wind.Pass) (ends, group, passes measure.Row) {
	ends = measure.Row{Name: "ends", Value: number(p.EndsWound()),
		How: measure.How{Formula: "full passes x group + last pass",
			WithNumbers: figure.Say("%d x %d + %d = %d", n-1, p.Spec.Group, last.Ends(), p.EndsWound())}}
	group = measure.Row{Name: "group", Value: figure.Say("%s in a paddle of %s",
		figure.Counted(p.Spec.Group, "end", "ends"), figure.Counted(p.Spec.Positions, "position", "positions"))}
	passes = measure.Row{Name: "passes", Value: figure.Say("%s, the last carries %s", number(n), number(last.Ends())),
		How: measure.How{Formula: "ends / group, rounded up to a whole pass",
			WithNumbers: figure.Say("%d / %d = %s, so %d", p.Spec.Ends, p.Spec.Group,
				figure.New(ratio.Quo(ratio.Of(p.Spec.Ends), ratio.Of(p.Spec.Group)), 2, ""), n)}}
	return ends, group, passes
}

// choiceHow says how the group stands among the ways to wind the ends, and why there.
func (a maker) choiceHow() measure.How {
	at := slices.IndexFunc(a.Choices, func(c project.Choice) bool { return c.Taken(a.Plan.Spec) })
	if at < 0 {
		return measure.How{}
	}
	return measure.How{Formula: project.ChoiceRule,
		WithNumbers: figure.Say("number %d of %d ways: %s", at+1, len(a.Choices),
			strings.Join(a.Choices[at].Reasons, "; "))}
}

// stripedRows are the same of a striped warp, whose passes carry what the stripes ask for.
func stripedRows(p *plan.Plan, n int) (ends, group, passes measure.Row) {
	least, most := p.Spec.Positions, 0
	for _, c := range p.Chains {
		for _, pass := range c.Passes {
			least, most = min(least, pass.Ends()), max(most, pass.Ends())
		}
	}
	ends = measure.Row{Name: "ends", Value: number(p.EndsWound()),
		How: measure.How{Formula: "the ends of the stripes", WithNumbers: word(p.Spec.Stripes)}}
	carried := figure.Cell{figure.Counted(most, "end", "ends")}
	if least < most {
		carried = figure.Say("%s to %s", number(least), figure.Counted(most, "end", "ends"))
	}
	group = measure.Row{Name: "group", Value: figure.Say("%s in a paddle of %s", carried,
		figure.Counted(p.Spec.Positions, "position", "positions"))}
	passes = measure.Row{Name: "passes", Value: number(n),
		How: measure.How{Formula: "the stripes cut into passes", WithNumbers: word(p.Spec.Schedule.Note)}}
	return ends, group, passes
}

// plan shows the warp in a few lines.
func (a maker) plan() Part {
	p := a.Plan
	n, last := p.Passes(), p.Chains[len(p.Chains)-1]
	lastPass := last.Passes[len(last.Passes)-1]
	ends, group, passes := plainRows(p, n, lastPass)
	if p.Striped() {
		ends, group, passes = stripedRows(p, n)
	} else {
		group.How = a.choiceHow()
	}
	part := Part{ID: PartPlan, Title: "Warp", Rows: []measure.Row{ends}}
	if spares := p.Spares(); spares > 0 {
		part.Rows = append(part.Rows, spareRow(spares, p.EndsWound(), lastPass))
	}
	part.Rows = append(part.Rows, group, passes,
		measure.Row{Name: "length wanted", Value: figure.Cell{p.Spec.Length.As(p.Spec.Units.Long(), 2)}})
	part.Rows = append(part.Rows, a.wayRows()...)
	if row, ok := a.pegRow(); ok {
		part.Rows = append(part.Rows, row)
	}
	span := p.Time(a.Pace)
	part.Rows = append(part.Rows, measure.Row{Name: "return order in the lease",
		Value: word(p.Spec.ReturnOrder.String())},
		measure.Row{Name: "time", Value: span.Cell().And(", by %s", p.Spec.TimeSource(a.Pace)), How: span.How})
	for _, f := range p.LeaseFaults {
		part.Notes = append(part.Notes, fmt.Sprintf("Chain %d, pass %d: ends %d and %d lie over the same lease peg, "+
			"since %s.", f.Chain, f.Pass, f.End-1, f.End, f.Why))
	}
	return part
}

// spareRow names the spare ends and where they lie.
func spareRow(spares, wound int, last wind.Pass) measure.Row {
	first := wound - spares + 1
	which := fmt.Sprintf("the last: number %d", wound)
	if spares > 1 {
		which = fmt.Sprintf("the last: numbers %d to %d", first, wound)
	}
	return measure.Row{Name: "spare ends", Value: figure.Say("%s, %s", number(spares), which),
		How: measure.How{Formula: "full last pass - ends wanted from it",
			WithNumbers: figure.Say("%d - %d = %d", last.Ends(), last.Ends()-spares, spares)}}
}

// wayRows shows the way of the warp on the mill or on the board.
func (a maker) wayRows() []measure.Row {
	p := a.Plan
	long := p.Spec.Units.Long()
	switch {
	case a.Board != nil:
		return []measure.Row{
			{Name: "on the board", Value: figure.Say("round %d pegs, %s", a.Board.Distances+1,
				figure.Counted(a.Board.Distances, "distance", "distances"))},
			{Name: "real length", Value: figure.Cell{a.Board.Length.As(long, 2)}, How: a.Board.How},
		}
	case a.Room != nil:
		return a.Room.Rows
	case !p.Path.OnMill():
		return []measure.Row{{Name: "length on the board", Value: figure.Cell{p.Path.Length.As(long, 2)}}}
	default:
		return []measure.Row{{Name: "length on the mill", Value: figure.Say("%s, %s", p.Path.Length.As(long, 2),
			p.Path.InTurns())}}
	}
}

// pegRow says whether the largest chain has room on a peg.
func (a maker) pegRow() (measure.Row, bool) {
	if a.Pegs == nil {
		return measure.Row{}, false
	}
	row := measure.Row{Name: "room on a peg",
		Value: figure.Say("about %s", figure.Counted(a.Pegs.Ends, "end", "ends")), How: a.Pegs.How}
	for _, c := range a.Plan.Chains {
		if c.Ends() > a.Pegs.Ends && row.Warning == "" {
			row.Warning = fmt.Sprintf("chain %d has %d: wind smaller chains, or more layers", c.Number, c.Ends())
		}
	}
	return row, true
}

// chains lists the chains, why each ends where it does, and what stands on its label.
func (a maker) chains() Part {
	p := a.Plan
	t := &Table{Columns: []string{"chain", "ends", "from", "to", "passes", "stops"}}
	part := Part{ID: PartChains, Title: "Chains", Table: t}
	for _, c := range p.Chains {
		ends := p.WoundRange(c.First, c.Last)
		t.Lines = append(t.Lines, []figure.Cell{number(c.Number), number(c.Ends()), number(ends.First),
			number(ends.Last), number(len(c.Passes)), word(c.Finish().String())})
	}
	if len(p.Chains) > 1 {
		if p.SplitWhy != "" {
			part.Notes = append(part.Notes, strings.ToUpper(p.SplitWhy[:1])+p.SplitWhy[1:]+".")
		}
		for _, c := range p.Chains {
			part.Notes = append(part.Notes, fmt.Sprintf("Chain %d: %s.", c.Number, c.Why))
		}
	}
	for _, c := range p.Chains {
		part.Notes = append(part.Notes, "On the label: "+finishing.Label(p, c))
	}
	return a.ownCount(part)
}

// OwnCount says of a table that counts the ends of each chain as they are wound what is counted; "" where the numbers
// are those of the warp.
func OwnCount(p *plan.Plan) string {
	if !p.ByColour() {
		return ""
	}
	return "Each chain's ends are counted within its own colour, from 1 on, as they lie in its lease. Their numbers " +
		"in the warp stand in the order list."
}

// ownCount notes in a part with ends of chains that they aren't the numbers of the warp, where that is so.
func (a maker) ownCount(part Part) Part {
	if text := OwnCount(a.Plan); text != "" {
		part.Notes = append([]string{text}, part.Notes...)
	}
	return part
}
