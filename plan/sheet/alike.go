package sheet

import (
	"slices"
	"strings"

	"millside/plan"
	"millside/plan/figure"
)

// alikeLines gathers lines that say the same but for a number in their first cell, in the order in which each comes
// first: what is done again and again is read once.
type alikeLines struct {
	lines   [][]figure.Cell
	at      map[string]int
	numbers [][]int
}

// add takes a line for a number; its first cell is written anew.
func (a *alikeLines) add(n int, line []figure.Cell) {
	var key strings.Builder
	for _, cell := range line[1:] {
		key.WriteString(cell.Plain() + "\x00")
	}
	i, seen := a.at[key.String()]
	if !seen {
		if a.at == nil {
			a.at = map[string]int{}
		}
		i = len(a.lines)
		a.at[key.String()] = i
		a.lines, a.numbers = append(a.lines, slices.Clone(line)), append(a.numbers, nil)
	}
	a.numbers[i] = append(a.numbers[i], n)
	a.lines[i][0] = list(a.numbers[i])
}

// keep takes a line as it is.
func (a *alikeLines) keep(line []figure.Cell) {
	a.lines, a.numbers = append(a.lines, line), append(a.numbers, nil)
}

// addChains adds the lines of each chain, chains that say the same together, with the chains in front.
func (t *Table) addChains(chains [][][]figure.Cell) {
	runs := plan.SamePlaces(chains, func(a, b [][]figure.Cell) bool { return slices.EqualFunc(a, b, sameCells) })
	for _, run := range runs {
		for _, line := range chains[run[0]-1] {
			t.Lines = append(t.Lines, append([]figure.Cell{list(run)}, line...))
		}
	}
}
