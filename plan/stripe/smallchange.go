package stripe

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"time"

	"millside/plan"
	"millside/plan/measure"
)

// Change is a small change of an order that winds far faster: a hint, done only where the weaver does it.
type Change struct {
	// Words says what is changed: "each stripe of 9 made 8".
	Words string
	// Order is the changed order as it would be written, from where the weaver's own is written from; Ends is how
	// many ends it has.
	Order Order
	Ends  int
	// Total is a quick figure of what it takes, and Saved how much less that is than the plan's own schedule.
	Total, Saved time.Duration
}

const (
	farFasterPart = 5  // the part of the plan's time that a change must save to be worth a hint
	mostChanges   = 16 // changes of all stripes of a width that are tried, those of the fewest ends first
	mostSingle    = 8  // changes of one stripe beside them, those of the rarest width first
	mostBy        = 2  // ends by which a stripe is changed at the most
)

// SmallerChange looks for the smallest change of the order that saves a fifth of the time or more, in all and
// for each end too, since fewer ends alone are no gain: stripes of one width, of all colours or of one, get an end
// or two more or fewer wherever they are written, or a single one does where others have its width too.
// It is nil where there is none among those that are tried. The
// figures are those of a short search; there are none for a warp of very many ends.
func (p *Plan) SmallerChange(ctx context.Context) *Change {
	if len(p.ends) > figureEnds || len(p.Order.Colours) < 2 {
		return nil
	}
	written, _, err := Written(p.Spec)
	if err != nil {
		return nil // it was read before
	}
	for _, w := range widenings(written) {
		c := p.changed(ctx, written, w)
		if c != nil {
			return c
		}
	}
	return nil
}

// changed tries one change; it is nil where that doesn't save enough.
func (p *Plan) changed(ctx context.Context, written Order, w widening) *Change {
	order := Order{Colours: written.Colours, Parts: w.parts(written.Parts)}
	spec := p.Spec
	spec.Stripes = order.String()
	_, laid, err := Written(spec)
	if err != nil {
		return nil
	}
	ends, err := laid.Ends()
	if err != nil || len(spec.Stripes) > plan.MaxStripes {
		return nil
	}
	s := figure(ctx, ends, p.limits, p.limits.Positions, p.Times)
	if s == nil {
		return nil
	}
	saved := p.Schedule.Total - s.Total
	// Of the time for the same number of ends: the plan's own total is for len(p.ends).
	fair := p.Schedule.Total/time.Duration(len(p.ends))*time.Duration(len(ends)) - s.Total
	if min(saved, fair) < p.Schedule.Total/farFasterPart {
		return nil
	}
	return &Change{w.words(written), order, len(ends), s.Total, saved}
}

// widening is a change of all stripes of a width, of one colour or of all, or of a single one.
type widening struct {
	width, by int
	colour    int // 0 for all
	only      int // the one stripe that is changed, counted as written; 0 for all of the width
	ends      int // that the order gains or loses, without a sign
}

// words says what is changed.
func (w widening) words(o Order) string {
	switch {
	case w.only > 0:
		return fmt.Sprintf("stripe %d as written, %d %s, made %d", w.only, w.width, o.Colours[w.colour-1].Name,
			w.width+w.by)
	case w.colour == 0:
		return fmt.Sprintf("each stripe of %d made %d", w.width, w.width+w.by)
	}
	return fmt.Sprintf("each stripe of %d %s made %d", w.width, o.Colours[w.colour-1].Name, w.width+w.by)
}

// parts are the parts of an order with the change made.
func (w widening) parts(parts []Part) []Part {
	stripe := 0
	var change func(parts []Part) []Part
	change = func(parts []Part) []Part {
		out := slices.Clone(parts)
		for i, part := range out {
			if part.Kind != Stripe {
				out[i].Inside = change(part.Inside)
				continue
			}
			stripe++
			if part.Count == w.width && (w.colour == 0 || part.Colour == w.colour) &&
				(w.only == 0 || w.only == stripe) {
				out[i].Count += w.by
			}
		}
		return out
	}
	return change(parts)
}

// widenings lists the changes to try, those that change the fewest ends first.
func widenings(o Order) []widening {
	stripes := eachStripe(o.Parts)
	colours, like := map[int]map[int]bool{}, map[int]int{} // of each width; how many stripes have it
	for _, one := range stripes {
		if colours[one.width] == nil {
			colours[one.width] = map[int]bool{}
		}
		colours[one.width][one.colour] = true
		like[one.width]++
	}
	var all []widening
	for width, of := range colours {
		all = append(all, widening{width: width})
		for c := range of {
			if len(of) > 1 {
				all = append(all, widening{width: width, colour: c})
			}
		}
	}
	singles := slices.DeleteFunc(stripes, func(w widening) bool { return like[w.width] == 1 })
	slices.SortStableFunc(singles, func(a, b widening) int { return cmp.Compare(like[a.width], like[b.width]) })
	list := byEnds(o, all, mostBy)
	list = list[:min(len(list), mostChanges)]
	few := byEnds(o, singles[:min(len(singles), mostSingle/2)], 1)
	list = append(list, few...)
	slices.SortStableFunc(list, func(a, b widening) int { return cmp.Compare(a.ends, b.ends) })
	return list
}

// eachStripe lists the stripes of an order as they are written.
func eachStripe(parts []Part) []widening {
	var list []widening
	var walk func(parts []Part)
	walk = func(parts []Part) {
		for _, part := range parts {
			if part.Kind == Stripe {
				list = append(list, widening{width: part.Count, colour: part.Colour, only: len(list) + 1})
			}
			walk(part.Inside)
		}
	}
	walk(parts)
	return list
}

// byEnds is each of the changes by up to so many ends, those that change the fewest ends of the order first.
func byEnds(o Order, changes []widening, most int) []widening {
	size := o.Size()
	var list []widening
	for _, w := range changes {
		for w.by = -most; w.by <= most; w.by++ {
			if w.by == 0 || w.width+w.by < 1 {
				continue
			}
			n := Order{Colours: o.Colours, Parts: w.parts(o.Parts)}.Size()
			w.ends = max(n-size, size-n)
			if n <= measure.MaxEnds && w.ends > 0 {
				list = append(list, w)
			}
		}
	}
	slices.SortFunc(list, func(a, b widening) int {
		return cmp.Or(cmp.Compare(a.ends, b.ends), cmp.Compare(a.width, b.width), cmp.Compare(a.colour, b.colour),
			cmp.Compare(a.only, b.only), cmp.Compare(a.by, b.by))
	})
	return list
}
