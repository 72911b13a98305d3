package finishing

import (
	"fmt"
	"slices"
	"strings"

	"millside/plan"
	"millside/plan/figure"
	"millside/plan/measure"
	"millside/plan/wind"
)

// PegEnd is an end of the warp that begins or finishes at an end peg, tied on or cut off there, where
// others go round the peg in a loop. Its tail has to be knotted.
type PegEnd struct {
	// End is its number in the warp, counted from 1.
	End int
	// Chain is the chain that it lies in.
	Chain int
	// Peg is where it begins or finishes.
	Peg wind.EndPeg
	// Begins says that it was tied on there; else it was cut off there.
	Begins bool
}

// PegEnds lists the ends that begin or finish at a peg, in the order of winding. A group that turns at a
// peg and is wound back leaves none: the end that it lays next is the same piece of yarn.
func PegEnds(p *plan.Plan) []PegEnd {
	var list []PegEnd
	for w := range p.Work() {
		passes := p.Chains[w.Chain-1].Passes
		for pos := range w.Cut.All() {
			list = append(list, PegEnd{End: p.EndOfWound(passes[w.Before-2].EndAt(pos)), Chain: w.Chain, Peg: w.Peg})
		}
		for pos := range w.Tie.All() {
			list = append(list, PegEnd{End: p.EndOfWound(passes[w.Before-1].EndAt(pos)), Chain: w.Chain, Peg: w.Peg,
				Begins: true})
		}
	}
	return list
}

// Knots counts the ends that begin and that finish at one peg.
type Knots struct{ Begin, Finish int }

// OnTheWay counts the ends of a chain that begin or finish at a peg while it is wound. What is cut off
// after the last pass isn't among them: that is a finishing step of its own.
func OnTheWay(p *plan.Plan, c plan.Chain, peg wind.EndPeg) Knots {
	var k Knots
	for number := 1; number <= len(c.Passes); number++ {
		if w := p.WorkBefore(c.Number, number); w.Peg == peg {
			k.Begin += w.Tie.Count()
			k.Finish += w.Cut.Count()
		}
	}
	return k
}

// text says what was done: "3 ends were cut off", "10 ends were tied on and 3 cut off".
func (k Knots) text() string {
	switch {
	case k.Begin == 0 && k.Finish == 0:
		return ""
	case k.Finish == 0:
		return measure.Counted(k.Begin, "end was", "ends were") + " tied on"
	case k.Begin == 0:
		return measure.Counted(k.Finish, "end was", "ends were") + " cut off"
	default:
		return fmt.Sprintf("%s tied on and %d cut off", measure.Counted(k.Begin, "end was", "ends were"), k.Finish)
	}
}

// KnotRows names the ends that begin or finish at each peg, for whoever looks for knots at the loom. Only
// these have a knot of the winding; knots in the yarn itself are marked at the mill.
//
// Extra are ends that do so though the plan has none there, where passes were taken off and laid anew.
func KnotRows(p *plan.Plan, extra ...PegEnd) []measure.Row {
	at := map[PegEnd][]int{} // the end's number and chain left out
	for _, e := range append(PegEnds(p), extra...) {
		kind := PegEnd{Peg: e.Peg, Begins: e.Begins}
		at[kind] = append(at[kind], e.End)
	}
	var rows []measure.Row
	kinds := []PegEnd{{Peg: wind.NearPeg, Begins: true}, {Peg: wind.NearPeg}, {Peg: wind.FarPeg, Begins: true},
		{Peg: wind.FarPeg}}
	for _, kind := range kinds {
		ends := at[kind]
		if len(ends) == 0 {
			continue
		}
		name := "finish"
		if kind.Begins {
			name = "begin"
		}
		name += " at " + strings.Replace(kind.Peg.String(), " end ", " ", 1)
		rows = append(rows, measure.Row{Name: name,
			Value: figure.Say("%s: %s", figure.Counted(len(ends), "end", "ends"), runsOf(ends))})
	}
	return rows
}

// runsOf writes numbers in order, neighbours drawn together: "1 to 10, 14". The numbers are all different.
func runsOf(numbers []int) string {
	sorted := slices.Sorted(slices.Values(numbers))
	var parts []string
	for i := 0; i < len(sorted); {
		from := i
		for i+1 < len(sorted) && sorted[i+1] == sorted[i]+1 {
			i++
		}
		switch i++; {
		case i-from == 1:
			parts = append(parts, fmt.Sprint(sorted[from]))
		case i-from == 2:
			parts = append(parts, fmt.Sprint(sorted[from]), fmt.Sprint(sorted[from+1]))
		default:
			parts = append(parts, fmt.Sprintf("%d to %d", sorted[from], sorted[i-1]))
		}
	}
	return strings.Join(parts, ", ")
}
