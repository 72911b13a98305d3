package loom

import (
	"errors"
	"fmt"
	"slices"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// Sleying is what goes through the reed.
type Sleying struct {
	// Ends is the number of ends, 1 to [measure.MaxEnds].
	Ends int
	// Order is the repeating order of ends in a dent; see [Reed.Order].
	Order []int
	// Dents is the ends in each dent from left to right, in place of Order and of selvedge dents; see
	// [Reed.Denting]. They add up to Ends.
	Dents []int
	// EdgeDents is how many dents at each edge hold EdgeEnds ends each, for the selvedge: 0 for none.
	EdgeDents, EdgeEnds int
	// Doubled is how many ends at each edge are drawn double: the two of a pair go where one end would, so that
	// they add ends and no width. Floating is how many of the ends are floating selvedges, 0 to 4 over both
	// edges: each has a dent of its own, outside. (Both from memory.) The Ends have them all.
	Doubled, Floating int
	// FirstEnd is the side of the loom on which end 1 lies.
	FirstEnd Side
}

// SleyList is how a warp goes through the reed.
type SleyList struct {
	// Dents is the ends in each dent from left to right; they add up to the ends of the warp. The first
	// and the last hold at least one.
	Dents []int
	// Width is the width in the reed, first dent to last, rounded to the nearest nanometre.
	Width measure.Length
	// LeftOfCentre is how many of the dents are left of the reed's centre. An odd dent goes to the left.
	LeftOfCentre int
	// FirstDent and LastDent number the outer dents from the left end of the reed, from 1, where its
	// width is known, and are 0 otherwise or where the warp is too wide.
	FirstDent, LastDent int
	// ReedDents is how many whole dents the reed has, 0 where its width isn't known. Fits says that the
	// warp isn't wider, or that the reed's width isn't known.
	ReedDents int
	Fits      bool
	// Edge is how many dents at the left edge hold a selvedge of any kind.
	Edge int
	// Rows shows the result with its formulas and any warning.
	Rows []measure.Row
	// firstEnd is the side on which end 1 lies.
	firstEnd Side
	ends     int
}

// Sley lays a warp in the reed: the selvedge dents, the repeating order between them, begun so that no
// outer dent is empty and broken off where the ends are used up, and all centred in the reed. The error
// joins one [measure.FieldError] for each field that is out of its range.
func (r Reed) Sley(w Sleying) (*SleyList, error) {
	if err := r.checkSleying(w); err != nil {
		return nil, err
	}
	l := &SleyList{firstEnd: w.FirstEnd, ends: w.Ends}
	if l.Dents = w.Dents; len(l.Dents) == 0 {
		l.Dents, l.Edge = sleyDents(w)
	}
	l.Width = r.widthOf(len(l.Dents))
	l.LeftOfCentre = (len(l.Dents) + 1) / 2
	l.Fits = true
	if r.width > 0 {
		l.ReedDents = measure.SmallCount(ratio.Down, ratio.Mul(r.perNanometre(), ratio.Of(r.width)))
		l.Fits = len(l.Dents) <= l.ReedDents
		if l.Fits {
			l.FirstDent = (l.ReedDents+1)/2 - l.LeftOfCentre + 1
			l.LastDent = l.FirstDent + len(l.Dents) - 1
		}
	}
	l.Rows = l.rows(r, w)
	return l, nil
}

func (r Reed) checkSleying(w Sleying) error {
	var errs []error
	if r.IsZero() {
		errs = append(errs, &measure.FieldError{Field: field.Reed.Name, Value: "", Want: reedWants})
	}
	errs = append(errs, field.Ends.Check(w.Ends))
	if len(w.Dents) > 0 {
		return errors.Join(append(errs, checkDents(w))...)
	}
	if _, err := checkOrder(w.Order); err != nil {
		errs = append(errs, err)
	}
	if err := field.EdgeDents.Check(w.EdgeDents); err != nil {
		errs = append(errs, err)
	} else if err := field.EdgeEnds.CheckFrom(w.EdgeEnds, min(w.EdgeDents, 1), field.EdgeEnds.High, ""); err != nil {
		errs = append(errs, err)
	} else if w.EdgeDents > 0 && 2*w.EdgeDents*w.EdgeEnds > w.places() {
		errs = append(errs, field.EdgeDents.CheckFrom(w.EdgeDents, 0, max(w.places(), 0)/(2*w.EdgeEnds),
			" with so few ends"))
	}
	if w.Floating > 0 && w.Floating >= w.Ends {
		errs = append(errs, field.Floating.CheckFrom(w.Floating, 0, max(w.Ends-1, 0), ", fewer than the ends"))
	} else if err := field.Floating.Check(w.Floating); err != nil {
		errs = append(errs, err)
	} else {
		errs = append(errs, field.Doubled.CheckFrom(w.Doubled, 0, max(w.Ends-w.Floating, 0)/4, " with so few ends"))
	}
	errs = append(errs, field.FirstEnd.CheckWord(int(w.FirstEnd)))
	return errors.Join(errs...)
}

// checkDents reports dents that don't hold the ends.
func checkDents(w Sleying) error {
	n := 0
	for _, d := range w.Dents {
		if d < 0 || d > 100 {
			return measure.Outside("ends a dent", d, 0, 100, "")
		}
		n += d
	}
	if n != w.Ends || w.EdgeDents != 0 || w.Doubled != 0 || w.Floating != 0 || w.FirstEnd > RightSide {
		return &measure.FieldError{Field: "dents", Value: measure.Counted(n, "end", "ends"),
			Want: fmt.Sprintf("dents for %d ends, without selvedge dents, doubled or floating ends", w.Ends)}
	}
	return nil
}

// places is how many ends lie side by side in the width: without the second ends of the doubled pairs and
// without the floating ones.
func (w Sleying) places() int { return w.Ends - 2*w.Doubled - w.Floating }

// sleyDents lists the ends in each dent, and says how many dents at the left edge hold a selvedge.
func sleyDents(w Sleying) (dents []int, edge int) {
	dents = placesInDents(w)
	single := slices.Clone(dents)
	edge = w.EdgeDents
	for _, way := range []struct{ from, step int }{{0, 1}, {len(dents) - 1, -1}} {
		left := w.Doubled
		for i := way.from; left > 0; i += way.step {
			n := min(left, single[i])
			dents[i] += n
			left -= n
			edge = max(edge, min(i, len(dents)-1-i)+1)
		}
	}
	onLeft := (w.Floating + 1) / 2
	left, right := slices.Repeat([]int{1}, onLeft), slices.Repeat([]int{1}, w.Floating-onLeft)
	return slices.Concat(left, dents, right), edge + onLeft
}

// placesInDents lists the dents as if no end were doubled or floating.
func placesInDents(w Sleying) []int {
	edge := slices.Repeat([]int{w.EdgeEnds}, w.EdgeDents)
	dents := slices.Clone(edge)
	start := slices.IndexFunc(w.Order, func(n int) bool { return n > 0 })
	for left, i := w.places()-2*w.EdgeDents*w.EdgeEnds, start; left > 0; i++ {
		n := min(w.Order[i%len(w.Order)], left)
		dents = append(dents, n)
		left -= n
	}
	return append(dents, edge...)
}

func (l *SleyList) rows(r Reed, w Sleying) []measure.Row {
	show := r.widthUnit()
	order := measure.Row{Name: "ends a dent", Value: figure.Cell{figure.Text(orderText(w.Order))}}
	if len(w.Dents) > 0 {
		order = measure.Row{Name: "ends a dent, from the left", Value: figure.Cell{figure.Text(dentsText(w.Dents))},
			How: measure.How{Formula: "dent by dent, as its sections or the widths of the ends say"}}
	}
	if w.EdgeDents > 0 {
		order.Value = order.Value.And(", and %s of %d at each edge",
			figure.Counted(w.EdgeDents, "dent", "dents"), w.EdgeEnds)
	}
	if w.Doubled > 0 {
		order.Value = order.Value.And(", the outer %s at each edge doubled", figure.Counted(w.Doubled, "end", "ends"))
	}
	if w.Floating > 0 {
		order.Value = order.Value.And(", and a dent for each of %s",
			figure.Counted(w.Floating, "floating selvedge", "floating selvedges"))
	}
	if last, ok := w.brokenOff(); ok {
		order.Warning = fmt.Sprintf("the order is broken off: its last dent holds %d", last)
	}
	width := measure.Row{Name: "width in the reed", Value: figure.Cell{l.Width.As(show, 2)},
		How: measure.How{Formula: "dents / dents in a unit of width",
			WithNumbers: figure.Say("%d / %s = %s", len(l.Dents), r.Dents(r.unit()).As(2), l.Width.As(show, 2))}}
	if !l.Fits {
		width.Warning = fmt.Sprintf("the reed has %s, %d are needed", measure.Counted(l.ReedDents, "dent", "dents"),
			len(l.Dents))
	}
	rows := []measure.Row{order, {Name: "dents", Value: figure.Cell{figure.Count{N: len(l.Dents)}}}, width}
	first := measure.Row{Name: "first dent", Value: figure.Say("%d left of the centre", l.LeftOfCentre)}
	if l.FirstDent > 0 {
		first.Value = figure.Say("%d from the left end, the last is %d", l.FirstDent, l.LastDent)
		first.How = measure.How{Formula: "half of the reed's dents - half of the dents used + 1",
			WithNumbers: figure.Say("%d - %d + 1 = %d, odd dents to the left",
				(l.ReedDents+1)/2, l.LeftOfCentre, l.FirstDent)}
	}
	return append(rows, first)
}

// brokenOff says what the last dent of the order holds where that is less than the order says.
func (w Sleying) brokenOff() (last int, ok bool) {
	if len(w.Dents) > 0 {
		return 0, false
	}
	dents := placesInDents(w)
	body := len(dents) - 2*w.EdgeDents
	if body <= 0 {
		return 0, false
	}
	start := slices.IndexFunc(w.Order, func(n int) bool { return n > 0 })
	last = dents[w.EdgeDents+body-1]
	return last, last != w.Order[(start+body-1)%len(w.Order)]
}

// DentOf is the dent that holds an end of the warp, counted from the leftmost used dent, from 1; 0 for a
// number that is no end.
func (l *SleyList) DentOf(end int) int {
	if end < 1 || end > l.ends {
		return 0
	}
	if l.firstEnd == RightSide {
		end = l.ends + 1 - end
	}
	for i, n := range l.Dents {
		if end -= n; end <= 0 {
			return i + 1
		}
	}
	return 0
}

// Ends is how many ends are sleyed.
func (s *SleyList) Ends() int { return s.ends }
