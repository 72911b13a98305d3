package sheet

import (
	"strings"

	"millside/plan"
	"millside/plan/figure"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/wind"
)

// PartWork is what the hands do at the pegs.
const PartWork PartID = "work"

// work lists what is cut off, threaded and tied on at the end pegs, in the order of the hands, and the ends
// that begin or finish there with a knot.
func (a maker) work() Part {
	p := a.Plan
	part := Part{ID: PartWork, Title: "Work at the pegs",
		Rows: []measure.Row{{Name: "in all", Value: word(p.WorkSum().String())}}}
	part.Table = &Table{Columns: []string{"chain", "before pass", "peg", "cut off", "thread", "tie on"}}
	chains := make([][][]figure.Cell, len(p.Chains))
	alike := make([]alikeLines, len(p.Chains))
	for w := range p.Work() {
		line := []figure.Cell{number(w.Before), word(pegWord(w.Peg)), positionsCell(w.Cut), threadCell(p, w),
			positionsCell(w.Tie)}
		switch {
		case w.Ends():
			line[0] = figure.Say("after %s", number(w.Before-1))
			fallthrough
		case a.AllPasses:
			alike[w.Chain-1].keep(line)
		default:
			alike[w.Chain-1].add(w.Before, line)
		}
		chains[w.Chain-1] = alike[w.Chain-1].lines
	}
	part.Table.addChains(chains)
	part.Rows = append(part.Rows, finishing.KnotRows(p)...)
	part.Notes = []string{"Numbers are positions of the paddle. At each peg first cut off, then thread, then tie on; " +
		"what isn't named stays as it is."}
	if p.ByColour() {
		part.Notes = append(part.Notes, "Ends that begin or finish at a peg have their numbers in the warp.")
	}
	return part
}

// pegWord is the peg in a narrow column.
func pegWord(p wind.EndPeg) string { return strings.TrimSuffix(p.String(), " end peg") }

// positionsCell lists positions in a table, a dash where there are none.
func positionsCell(p wind.Positions) figure.Cell {
	if p == 0 {
		return word("-")
	}
	return word(p.String())
}

// threadCell lists what is threaded, with its colours in a striped warp.
func threadCell(p *plan.Plan, w plan.PegWork) figure.Cell {
	if !p.Striped() || len(w.Thread) == 0 {
		return positionsCell(w.Threaded())
	}
	return word(p.ThreadText(w.Thread))
}
