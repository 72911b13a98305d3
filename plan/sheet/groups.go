package sheet

import (
	"strconv"
	"strings"

	"millside/plan"
	"millside/plan/figure"
	"millside/plan/loom"
)

// groupsIn says which groups have ends in a section, by the passes that laid them, and which of them have ends in
// another one too; of a warp whose order is made at the raddle, the colours that are picked for it.
func groupsIn(p *plan.Plan, s loom.RaddleSection) figure.Cell {
	switch {
	case s.Ends == 0:
		return nil
	case p.ByColour():
		return word(coloursIn(p, min(s.First, s.Last), max(s.First, s.Last)))
	case s.Groups == 0:
		return nil
	}
	var parts []figure.Cell
	before := 0 // groups of the chains before
	for _, c := range p.Chains {
		first, last := max(s.FirstGroup-before, 1), min(s.LastGroup-before, len(c.Passes))
		if first <= last {
			cell := groupNumbers(first, last, s.FirstCut && first+before == s.FirstGroup,
				s.LastCut && last+before == s.LastGroup)
			if len(p.Chains) > 1 {
				cell = figure.Say("chain %d: %s", c.Number, cell)
			}
			parts = append(parts, cell)
		}
		before += len(c.Passes)
	}
	return figure.Join(parts, "; ")
}

// coloursIn is the colours of the ends from first to last: "8 C, 4 D".
func coloursIn(p *plan.Plan, first, last int) string {
	var in []plan.EndRun
	for _, run := range p.EndRuns() {
		if run.First, run.Last = max(run.First, first), min(run.Last, last); run.First <= run.Last {
			in = append(in, run)
		}
	}
	return plan.RunsText(in)
}

// groupNumbers names the groups from first to last; the first and the last may be there in part only.
func groupNumbers(first, last int, firstCut, lastCut bool) figure.Cell {
	var parts []figure.Cell
	if firstCut {
		parts = append(parts, figure.Say("part of %s", number(first)))
		first++
	}
	lastCut = lastCut && last >= first
	if lastCut {
		last--
	}
	if first <= last {
		parts = append(parts, ends(first, last))
	}
	if lastCut {
		parts = append(parts, figure.Say("part of %s", number(last+1)))
	}
	return figure.Join(parts, ", ")
}

// GroupSpan names the groups of a section as short as a drawing has room for, those that have ends in another one too
// with a ~ before them: "3-5", "~3-5"; with several chains "2:3-5", and "1:30-2:2" where they are of two. It is ""
// where the groups aren't known.
func GroupSpan(p *plan.Plan, s loom.RaddleSection) string {
	if s.Groups == 0 || p.ByColour() {
		return ""
	}
	name := func(group int, cut, withChain bool) string {
		text, chain := "", 1
		if cut {
			text = "~"
		}
		for _, c := range p.Chains {
			if chain = c.Number; group <= len(c.Passes) {
				break
			}
			group -= len(c.Passes)
		}
		if withChain && len(p.Chains) > 1 {
			text += strconv.Itoa(chain) + ":"
		}
		return text + strconv.Itoa(group)
	}
	first := name(s.FirstGroup, s.FirstCut, true)
	if s.FirstGroup == s.LastGroup {
		return first
	}
	last := name(s.LastGroup, s.LastCut, true)
	chain, _, _ := strings.Cut(strings.TrimPrefix(first, "~"), ":")
	if strings.HasPrefix(strings.TrimPrefix(last, "~"), chain+":") {
		last = name(s.LastGroup, s.LastCut, false)
	}
	return first + "-" + last
}
