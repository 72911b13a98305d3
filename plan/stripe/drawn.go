package stripe

import (
	"fmt"

	"millside/plan"
)

// Drawn is the order in so many cells, and what has to be said of the drawing, "" where it shows all
// stripes. Where there are more stripes than cells each repeat is drawn once, in which case the cells count
// the ends of what is drawn; and where that is too much as well, the first ends only. The order passes
// [Order.Check].
func (o Order) Drawn(cells int) (StripeDrawing, string) {
	ends, err := o.Ends()
	if err != nil {
		return StripeDrawing{}, ""
	}
	runs := runsOf(ends)
	whole := DrawStripes(runs, cells, 1)
	if whole.Whole || cells < 1 {
		return whole, ""
	}
	flat, err := FromEnds(o.Colours, ends)
	if err != nil {
		return whole, ""
	}
	once := flat.Folded()
	folded := once.String()
	once.Parts = drawnOnce(once.Parts)
	if few, err := once.Ends(); err == nil && len(few) < len(ends) {
		number := map[string]int{}
		for i, c := range o.Colours {
			number[c.Name] = i + 1
		}
		for i, c := range few { // counted as the order at hand does
			few[i] = number[once.Colours[c-1].Name]
		}
		if d := DrawStripes(runsOf(few), cells, 1); d.Whole {
			return d, "more stripes than fit; each bracket is drawn once: " + folded
		}
	}
	return whole, fmt.Sprintf("more stripes than fit; drawn are ends %d to %d of %d", whole.First(), whole.Last(),
		len(ends))
}

// drawnOnce is parts with each bracket laid once.
func drawnOnce(parts []Part) []Part {
	var list []Part
	for _, p := range parts {
		switch p.Kind {
		case Stripe:
			list = append(list, p)
		case Back:
			list = append(list, Part{Kind: Back, Inside: drawnOnce(p.Inside)})
		default:
			list = append(list, drawnOnce(p.Inside)...)
		}
	}
	return list
}

// runsOf is the runs of ends of one colour.
func runsOf(ends []int) []plan.EndRun {
	var runs []plan.EndRun
	for i, c := range ends {
		if n := len(runs); n > 0 && runs[n-1].Colour == c {
			runs[n-1].Last = i + 1
			continue
		}
		runs = append(runs, plan.EndRun{First: i + 1, Last: i + 1, Colour: c})
	}
	return runs
}
