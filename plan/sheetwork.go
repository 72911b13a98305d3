package plan

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// PartWork is what the hands do at the pegs.
const PartWork PartID = "work"

// work lists what is cut off, threaded and tied on at the end pegs, in the order of the hands, and the ends
// that begin or finish there with a knot.
func (a SheetAsk) work() SheetPart {
	p := a.Plan
	part := SheetPart{ID: PartWork, Title: "Work at the pegs", Rows: []Row{{Name: "in all", Value: p.WorkSum().String()}}}
	t := &SheetTable{Columns: []string{"chain", "before pass", "peg", "cut off", "thread", "tie on"}}
	for w := range p.Work() {
		before := strconv.Itoa(w.Before)
		if w.Ends() {
			before = "after " + strconv.Itoa(w.Before-1)
		}
		t.Lines = append(t.Lines, []string{strconv.Itoa(w.Chain), before, w.Peg.word(), w.Cut.cell(), p.threadCell(w), w.Tie.cell()})
	}
	part.Table = t
	part.Rows = append(part.Rows, p.KnotRows()...)
	part.Notes = []string{"Numbers are positions of the paddle. At each peg first cut off, then thread, then tie on; what isn't named stays as it is."}
	return part
}

// word is the peg in a narrow column.
func (p EndPeg) word() string { return strings.TrimSuffix(p.String(), " end peg") }

// cell lists positions in a table, a dash where there are none.
func (p Positions) cell() string {
	if p == 0 {
		return "-"
	}
	return p.String()
}

// threadCell lists what is threaded, with its colours in a striped warp.
func (p *Plan) threadCell(w PegWork) string {
	if !p.Striped() || len(w.Thread) == 0 {
		return w.Threaded().cell()
	}
	return p.ThreadText(w.Thread)
}

// ThreadText says which yarn is put through which positions, colour by colour in the order of the
// positions: "3, 4, 9 D red; 5 E blue; take the yarn out of 7". In a plain warp it lists the positions.
func (p *Plan) ThreadText(list []Threading) string {
	var order []int
	at := map[int]Positions{}
	for _, t := range list {
		if at[t.To] == 0 && (t.To != 0 || !p.Striped() || t.Empties()) {
			order = append(order, t.To)
		}
		at[t.To] |= onePosition(t.Position)
	}
	// Yarn is taken out last in the sentence, whatever its position.
	slices.SortStableFunc(order, func(a, b int) int { return boolInt(a == 0) - boolInt(b == 0) })
	var parts []string
	for _, colour := range order {
		switch {
		case !p.Striped():
			parts = append(parts, at[colour].String())
		case colour == 0:
			parts = append(parts, "take the yarn out of "+at[colour].String())
		default:
			parts = append(parts, fmt.Sprintf("%s %s", at[colour], p.ColourText(colour)))
		}
	}
	return strings.Join(parts, "; ")
}

func boolInt(b bool) int {
	if b {
		return 1
	}
	return 0
}
