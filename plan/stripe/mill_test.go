package stripe

import (
	"fmt"
	"slices"

	"millside/plan"
)

// holds lays a schedule on a model mill and says what is wrong with it, "" if nothing is.
func holds(s *Schedule, ends []int, l Limits, w Weights) string {
	laid := make([]int, len(ends))
	paddle := make([]int, l.Positions)
	var cost Cost
	for i, p := range s.Passes {
		if p.Number != i+1 || p.SetUp < 1 || p.SetUp > len(s.SetUps) {
			return fmt.Sprintf("pass %d is %+v", i+1, p)
		}
		if why := cost.add(s, p, paddle, l); why != "" {
			return why
		}
		colours := s.ColoursOn(p.Number)
		end := p.First
		step := 1
		if p.Mirrored {
			end, step = p.Last, -1
		}
		for pos := range p.Carried.All() {
			if end < 1 || end > len(ends) || laid[end-1] != 0 {
				return fmt.Sprintf("pass %d lays end %d", p.Number, end)
			}
			laid[end-1] = colours[pos-1]
			end += step
		}
		if p.Carried.Count() != p.Last-p.First+1 {
			return fmt.Sprintf("pass %d carries %v for ends %d to %d", p.Number, p.Carried, p.First, p.Last)
		}
	}
	for i := range ends {
		if laid[i] != ends[i] {
			return fmt.Sprintf("laid %v, not %v", laid, ends)
		}
	}
	for _, up := range s.SetUps {
		for c := range l.Packages {
			n := 0
			for _, has := range up.Colours {
				if has == c+1 {
					n++
				}
			}
			if l.Packages[c] > 0 && n > l.Packages[c] {
				return fmt.Sprintf("set-up %d has %d of colour %d", up.Number, n, c+1)
			}
		}
	}
	if cost.OneDirection = l.OneDirection; l.OneDirection || len(s.Passes)%2 == 1 {
		cost.Finish = plan.AtCountingCross
	}
	if got := s.Cost.Total(w); got != s.Total || cost != s.Cost {
		return fmt.Sprintf("total %v, but the cost %+v adds up to %v, and the passes to %+v", s.Total, s.Cost, got, cost)
	}
	return ""
}

// add makes the changes before a pass on the model's paddle, and counts what the pass costs.
func (c *Cost) add(s *Schedule, p Pass, paddle []int, l Limits) string {
	for k, change := range s.ChangesBefore(p.Number) {
		switch {
		case paddle[change.Position-1] != change.From || change.From == change.To:
			return fmt.Sprintf("pass %d: change %+v of %v", p.Number, change, paddle)
		case p.Number == 1:
			c.Threaded++
		case change.To != 0:
			c.Changes++
		}
		if k == 0 && p.Number > 1 {
			c.Stops++
		}
		paddle[change.Position-1] = change.To
	}
	if !slices.Equal(paddle, s.ColoursOn(p.Number)) {
		return fmt.Sprintf("pass %d: the paddle has %v, not %v", p.Number, paddle, s.ColoursOn(p.Number))
	}
	largest := l.Positions
	if len(l.Sizes) > 0 {
		largest = slices.Max(l.Sizes)
	}
	if size := p.Carried.Count(); size < largest {
		c.Short++
	}
	if len(l.Sizes) > 0 && !slices.Contains(l.Sizes, p.Carried.Count()) || p.Carried.Last()-p.Carried.First() != p.Carried.Count()-1 {
		return fmt.Sprintf("pass %d carries %v", p.Number, p.Carried)
	}
	c.Passes++
	return ""
}

// leaseHolds lays the passes for plan on the model of design.md, rule 4, and says what is wrong.
func leaseHolds(s *Schedule, ends []int) string {
	end, overA := 0, false
	for _, p := range s.PlanPasses() {
		for k := range p.Ends() {
			end++
			pos := p.PositionOf(end)
			if pos == 0 || p.EndAt(pos) != end || p.First+k != end {
				return fmt.Sprintf("pass %d doesn't lay end %d", p.Number, end)
			}
			if got := s.ColoursOn(p.Number)[pos-1]; got != ends[end-1] {
				return fmt.Sprintf("end %d is of colour %d, not %d", end, got, ends[end-1])
			}
			if end > 1 && p.OverA(pos) == overA {
				return fmt.Sprintf("ends %d and %d lie over the same lease peg", end-1, end)
			}
			overA = p.OverA(pos)
		}
	}
	if end != len(ends) {
		return fmt.Sprintf("%d ends laid, not %d", end, len(ends))
	}
	return ""
}
