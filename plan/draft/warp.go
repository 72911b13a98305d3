package draft

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"millside/plan"
	"millside/plan/cloth"
	"millside/plan/field"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/stripe"
	"millside/plan/wind"
)

// Use is what the weaver decides about a draft. The zero value takes it as it is, with thread 1 on the
// right.
type Use struct {
	// Side is the side that thread 1 is on.
	Side Side
	// First and Last are the first and the last thread that are taken, counted as the draft does; 0 stands
	// for thread 1 and for the last one.
	First, Last int
	// LeaveOut leaves out the threads that the draft's threading puts through no shaft.
	LeaveOut bool
	// Times is how often the threads are laid side by side, 0 or 1 for once.
	Times int
	// Ends is the ends wanted, with the added ones of both sides; 0 where none are asked for. OfWidth says that a
	// cloth's width takes them.
	Ends    int
	OfWidth bool
	// Laid is how the threads come to the ends wanted, where there are any. Only as written goes with Times.
	Laid wind.Laid
	// Edge is how many ends are added at each side, of the colour of the outermost thread, and threaded as
	// the two outermost ones by turns. EdgeRest adds what is left of the ends wanted, the odd one on the right, in
	// their place.
	Edge     int
	EdgeRest bool
	// Names are the weaver's names of the draft's colours, by their index.
	Names map[int]string
}

// Warp is a draft made into a warp, its ends from left to right as the weaver at the loom sees them.
type Warp struct {
	// Ends is how many ends it has.
	Ends int
	// Order is the stripe order, with repeats in brackets; it is empty in a plain warp: where the draft gives
	// no colours, or one only.
	Order stripe.Order
	// Colour is the name of the one colour of a plain warp, empty where the weaver gave it none.
	Colour string
	// Threading is the shafts of each end; it is empty where the draft has none.
	Threading loom.Threading
	// Widths is the width of each end where the draft says that they aren't all alike; else it is empty.
	Widths []measure.Length
	// Weft is how many picks each colour of the weft has, where the draft has several.
	Weft []cloth.WeftColour
	// Title is the draft's title, which names the warp.
	Title string
	// Said says what was made of the draft's threads, one sentence each; it is empty where they were taken
	// as they are.
	Said []string
}

// Plain says whether the warp has one colour, or none that is known.
func (w *Warp) Plain() bool { return len(w.Order.Parts) == 0 }

// end is one end of the warp: the threads whose colour and whose shafts it has, from 0.
type end struct{ colour, shafts int }

// Warp makes a warp of the draft. The error is a [*measure.FieldError]: where a number is out of its range,
// where no thread is left, where there would be more than measure.MaxEnds ends or more than
// stripe.MaxColours colours, or where a name won't do.
func (d *Draft) Warp(u Use) (*Warp, error) {
	w := &Warp{Title: d.Title}
	threads, err := d.threadsOf(u, w)
	if err != nil {
		return nil, err
	}
	ends, err := u.lay(threads, w)
	if err != nil {
		return nil, err
	}
	w.Ends = len(ends)
	if d.Threading != nil {
		for _, e := range ends {
			w.Threading = append(w.Threading, loom.Shafts(d.Threading[e.shafts]))
		}
	}
	for _, e := range ends {
		if d.Widths != nil {
			w.Widths = append(w.Widths, d.Widths[e.shafts])
		}
	}
	if len(d.Weft) > 1 {
		for _, p := range d.Weft {
			w.Weft = append(w.Weft, cloth.WeftColour{Name: d.NameOf(p.Colour, u.Names), Picks: p.Picks})
		}
	}
	w.noteUnthreaded()
	if err := d.colour(u, ends, w); err != nil {
		return nil, err
	}
	if w.Plain() && u.OfWidth && w.Ends != u.Ends {
		return nil, field.StripesLaid.Wrong(u.Laid.String(), fmt.Sprintf("%s: a warp of one colour has all %d ends of "+
			"its width, and this draft makes %d so", wind.Repeated, u.Ends, w.Ends))
	}
	return w, nil
}

// noteUnthreaded says where ends that go through no shaft lie between threaded ones, as a draft's floating selvedges do
// when it is repeated.
func (w *Warp) noteUnthreaded() {
	first, last, inside := -1, 0, 0
	for i, shafts := range w.Threading {
		if len(shafts) > 0 {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	for i := first + 1; i < last; i++ {
		if len(w.Threading[i]) == 0 {
			inside++
		}
	}
	if inside > 0 {
		verb := "lie"
		if inside == 1 {
			verb = "lies"
		}
		w.Said = append(w.Said, fmt.Sprintf("%s through no shaft %s inside the warp and not at its sides: leave out "+
			"what isn't threaded, or take the threads between", measure.Counted(inside, "end", "ends"), verb))
	}
}

// threadsOf lists the threads that are taken, from 0, from left to right.
func (d *Draft) threadsOf(u Use, w *Warp) ([]int, error) {
	first, last := max(u.First, 1), u.Last
	if last == 0 {
		last = d.Threads
	}
	if u.First < 0 || first > last || last > d.Threads {
		return nil, &measure.FieldError{Field: field.DraftThreads.Name,
			Value: fmt.Sprintf("%d to %d", u.First, u.Last),
			Want:  fmt.Sprintf("two of 1 to %d, the lower one first", d.Threads)}
	}
	if taken := last - first + 1; taken < d.Threads {
		w.Said = append(w.Said, fmt.Sprintf("threads %d to %d of %d are taken", first, last, d.Threads))
	}
	var list []int
	left := 0
	for i := first - 1; i < last; i++ {
		if u.LeaveOut && d.Threading != nil && len(d.Threading[i]) == 0 {
			left++
			continue
		}
		list = append(list, i)
	}
	if left > 0 {
		w.Said = append(w.Said, fmt.Sprintf("%s through no shaft left out", measure.Counted(left, "thread", "threads")))
	}
	if len(list) == 0 {
		return nil, &measure.FieldError{Field: field.DraftThreads.Name, Value: "none threaded",
			Want: "a draft that threads some, or keep those that go through no shaft"}
	}
	if u.Side == FromRight {
		slices.Reverse(list)
	}
	return list, nil
}

// colour gives the warp its stripes, or its one colour.
func (d *Draft) colour(u Use, ends []end, w *Warp) error {
	var colours []stripe.Colour
	number := map[string]int{}
	list := make([]int, len(ends))
	for i, e := range ends {
		c := d.colourOf(d.Colours[e.colour], u.Names)
		key := strings.ToLower(c.Name)
		if number[key] == 0 {
			if len(colours) == stripe.MaxColours {
				return &measure.FieldError{Field: "colours", Value: strconv.Itoa(len(colours)+1) + " or more",
					Want: fmt.Sprintf("a draft with at most %d colours in its warp", stripe.MaxColours)}
			}
			colours = append(colours, c)
			number[key] = len(colours)
		}
		list[i] = number[key]
	}
	if len(colours) == 1 {
		w.Colour = u.Names[d.Colours[ends[0].colour]]
		return nil
	}
	order, err := stripe.FromEnds(colours, list)
	if err != nil {
		return err
	}
	w.Order = order.Folded()
	return nil
}

// colourOf is a colour by its index in the draft: with the weaver's name, or "colour-3"; threads without a
// colour, where others have one, are in "no colour given".
func (d *Draft) colourOf(index int, names map[int]string) stripe.Colour {
	c := stripe.Colour{Name: "colour-" + strconv.Itoa(index)}
	if index == NoColour {
		c.Name = "no colour given"
	}
	if name := names[index]; name != "" {
		c.Name = name
	}
	c.Shade, c.Known = d.Palette[index]
	return c
}

// NameOf is what a colour of the draft is called, by its index.
func (d *Draft) NameOf(index int, names map[int]string) string {
	return d.colourOf(index, names).Name
}

// longestName is the most characters of a title that the name of a warp takes.
const longestName = 60

// Into puts the warp into a spec: its ends, its stripes or its one colour, its threading, and its title as
// the name where named is false. The stripes run from end 1 on, which lies on the side that the spec says;
// they are still to be cut into passes (see stripe.ForPlan).
func (w *Warp) Into(s plan.Spec, named bool) plan.Spec {
	s.Ends, s.Stripes, s.StripesFrom, s.Asked.Laid = w.Ends, "", plan.FromEndOne, wind.Laying{}
	if len(w.Threading) > 0 {
		s.Loom.Threading = slices.Clone(w.Threading)
		if s.Loom.FirstEnd == loom.RightSide {
			slices.Reverse(s.Loom.Threading)
		}
	}
	s.Loom.Widths, s.Cloth.WeftColours = slices.Clone(w.Widths), w.Weft
	if s.Loom.FirstEnd == loom.RightSide {
		slices.Reverse(s.Loom.Widths)
	}
	if title := strings.TrimSpace(w.Title); !named && title != "" {
		runes := []rune(title)
		s.Name = strings.TrimSpace(string(runes[:min(len(runes), longestName)]))
	}
	if w.Plain() {
		if w.Colour != "" {
			s.Yarn.Colour = w.Colour
		}
		return s
	}
	order := w.Order
	if s.Loom.FirstEnd == loom.RightSide {
		order = order.Turned()
	}
	s.Stripes = order.String()
	return s
}
