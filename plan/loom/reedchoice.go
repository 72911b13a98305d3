package loom

import (
	"fmt"
	"slices"

	"millside/plan/measure"
)

// ReedChoice is how well a reed suits a sett.
type ReedChoice struct {
	Reed  Reed
	Order SleyOrder
	// Width is the width of the warp in this reed, rounded to the nearest nanometre; Fits says that it
	// isn't wider than the reed, or that the reed's width isn't known.
	Width measure.Length
	Fits  bool
	// Cost is what the ranking goes by; less is better. See [RankReeds].
	Cost int
	// Reasons says in words what is good and what is bad about the reed.
	Reasons []string
}

// What the ranking of reeds adds. The figures are the project's own judgement. Two ends a dent as the
// ideal is from P. Osterkamp, "Useful information: more charts" (web page).
const (
	costNotTwo     = 3    // for each end a dent away from two
	costIrregular  = 4    // the order has more than one dent
	costOrderDent  = 1    // for each further dent of the order
	costOffPercent = 10   // for each percent that the sett is off
	costTooNarrow  = 1000 // the warp is wider than the reed
)

// reedOrderDents is the longest order that the ranking considers.
const reedOrderDents = 5

// RankReeds says which of the reeds at hand suit a sett, the best first. It adds three for each end a
// dent away from two, four for an irregular order and one for each further dent of it, ten for each
// percent that the sett is off, and a thousand where the warp is wider than the reed. Orders have at
// most five dents. Reeds that no order suits are left out, as is everything for a number of ends
// outside 1 to [measure.MaxEnds] or the zero sett.
func RankReeds(reeds []Reed, sett measure.Sett, ends int) []ReedChoice {
	if ends < 1 || ends > measure.MaxEnds {
		return nil
	}
	var list []ReedChoice
	for _, r := range reeds {
		o, err := r.Order(sett, reedOrderDents)
		if err != nil {
			continue
		}
		list = append(list, rateReed(r, o, ends))
	}
	slices.SortStableFunc(list, func(a, b ReedChoice) int { return a.Cost - b.Cost })
	return list
}

func rateReed(r Reed, o SleyOrder, ends int) ReedChoice {
	c := ReedChoice{Reed: r, Order: o, Width: o.Gives.WidthOf(ends)}
	c.Fits = r.width == 0 || c.Width <= r.width
	inOrder := 0
	for _, n := range o.Dents {
		inOrder += n
	}
	// Hundredths of an end a dent away from two, cut off.
	away := measure.Distance(100*inOrder/len(o.Dents), 200)
	c.Cost = costNotTwo*away/100 + costOffPercent*int(o.Off/measure.OnePercent)
	switch {
	case len(o.Dents) > 1:
		c.Cost += costIrregular + costOrderDent*(len(o.Dents)-1)
		c.Reasons = append(c.Reasons, fmt.Sprintf("an irregular order, %s", o))
	case inOrder == 2:
		c.Reasons = append(c.Reasons, "two ends in every dent, the ideal")
	default:
		c.Reasons = append(c.Reasons, fmt.Sprintf("%s in every dent", measure.Counted(inOrder, "end", "ends")))
	}
	if !o.Exact {
		c.Reasons = append(c.Reasons, fmt.Sprintf("%s, %s than asked", o.Gives.As(2), o.Away()))
	}
	if !c.Fits {
		c.Cost += costTooNarrow
		c.Reasons = append(c.Reasons, fmt.Sprintf("too narrow: the warp is %s wide, the reed %s",
			c.Width.As(r.widthUnit(), 1), r.width.As(r.widthUnit(), 1)))
	}
	return c
}
