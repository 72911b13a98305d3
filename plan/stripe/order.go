package stripe

import (
	"fmt"
	"strconv"

	"millside/plan/field"
	"millside/plan/measure"
)

// Limits of the notation.
const (
	MaxColours = 200     // colours in one stripe order
	MaxDepth   = 16      // brackets within brackets
	MaxText    = 1 << 20 // bytes of notation
	maxName    = 40      // characters of a colour's name
)

// Shade is how a colour looks: red, green and blue, each 0 to 255.
type Shade struct {
	R, G, B uint8
}

// String writes the shade as the notation does: "#b03a2e".
func (s Shade) String() string { return fmt.Sprintf("#%02x%02x%02x", s.R, s.G, s.B) }

// Colour is one colour of yarn.
type Colour struct {
	// Name is what the weaver calls it: 1 to 40 printable characters but quotation marks, one space
	// between words.
	Name string
	// Shade is how it looks, if Known.
	Shade Shade
	// Known says that a shade was given. None is ever invented.
	Known bool
}

// Kind is what a part of a stripe order does.
type Kind uint8

// The kinds of part.
const (
	Stripe   Kind = iota // Count ends of one colour
	Repeat               // the inside, Count times
	Balanced             // the inside, Count times, and its first part once more
	Mirror               // the inside, then the inside backwards
	Point                // the inside, then the inside but for its last part backwards
	Back                 // the inside backwards
)

// Part is one part of a stripe order.
type Part struct {
	Kind Kind
	// Count is the ends of a Stripe or the times of a Repeat or Balanced, 1 to measure.MaxEnds; it is 0
	// for the other kinds.
	Count int
	// Colour is the colour of a Stripe, counted from 1 in the order's Colours; else 0.
	Colour int
	// Inside is what stands in the brackets; a Stripe has none.
	Inside []Part
}

// Order is a stripe order: the colours of a warp from end 1 to the last.
type Order struct {
	// Colours lists the colours in the order in which they first appear in the notation.
	Colours []Colour
	// Parts lists the parts from end 1 on; there is at least one.
	Parts []Part
}

// Check reports the first thing that keeps an order made by hand from being written and read: a name
// that isn't one, a count out of its range, more than measure.MaxEnds ends, and so on. The error is a
// [*measure.FieldError]. An order that [Parse] or [FromEnds] gave is always in order.
func (o Order) Check() error {
	if len(o.Colours) > MaxColours {
		return wrong("colours", len(o.Colours), fmt.Sprintf("at most %d", MaxColours))
	}
	seen := map[string]bool{}
	for _, c := range o.Colours {
		if why := badName(c.Name); why != "" {
			return &measure.FieldError{Field: field.Colour.Name, Value: c.Name, Want: why}
		}
		if seen[fold(c.Name)] {
			return &measure.FieldError{Field: field.Colour.Name, Value: c.Name, Want: "each name once"}
		}
		seen[fold(c.Name)] = true
	}
	if next, err := o.checkParts(o.Parts, 0, 1); err != nil {
		return err
	} else if next != len(o.Colours)+1 {
		return wrong("colours", len(o.Colours), "only colours that are used")
	}
	if n := sizeOf(o.Parts); n > measure.MaxEnds {
		return wrong("stripes", int(min(n, 1<<30)), fmt.Sprintf("at most %d ends", measure.MaxEnds))
	}
	return nil
}

// checkParts checks a list of parts and returns the number of the first colour not yet met.
func (o Order) checkParts(parts []Part, depth, next int) (int, error) {
	if depth > MaxDepth+1 { // one more than can be written, so that any order can be turned
		return 0, wrong("stripes", depth, fmt.Sprintf("brackets at most %d deep", MaxDepth))
	}
	if len(parts) == 0 {
		return 0, &measure.FieldError{Field: field.StripesOf.Name, Want: "at least one stripe"}
	}
	for _, p := range parts {
		counted := p.Kind <= Balanced
		if p.Kind > Back || counted != (p.Count > 0) || p.Count > measure.MaxEnds {
			return 0, wrong("count", p.Count, fmt.Sprintf("1 to %d", measure.MaxEnds))
		}
		if p.Kind == Stripe {
			if p.Colour < 1 || p.Colour > min(len(o.Colours), next) || p.Inside != nil {
				return 0, wrong("colour", p.Colour, "a number of a colour, numbered as they first appear")
			}
			next = max(next, p.Colour+1)
			continue
		}
		var err error
		if next, err = o.checkParts(p.Inside, depth+1, next); err != nil {
			return 0, err
		}
	}
	return next, nil
}

// Size is how many ends the order has.
func (o Order) Size() int { return int(min(sizeOf(o.Parts), 1<<30)) }

// sizeOf counts the ends of some parts; far above measure.MaxEnds it stops counting.
func sizeOf(parts []Part) int64 {
	var n int64
	for _, p := range parts {
		n = min(n+p.size(), 1<<40)
	}
	return n
}

func (p Part) size() int64 {
	n := int64(p.Count)
	if p.Kind == Stripe {
		return n
	}
	inside := sizeOf(p.Inside)
	if inside > measure.MaxEnds {
		return inside // the whole is too large as well, whatever the part does with it
	}
	switch p.Kind {
	case Repeat:
		return n * inside
	case Balanced:
		return n*inside + p.Inside[0].size()
	case Mirror:
		return 2 * inside
	case Point:
		return 2*inside - p.Inside[len(p.Inside)-1].size()
	default:
		return inside
	}
}

// Ends lists the colour of every end, from end 1; colours are counted from 1 in o.Colours. The error
// is that of [Order.Check].
func (o Order) Ends() ([]int, error) {
	if err := o.Check(); err != nil {
		return nil, err
	}
	return appendParts(make([]int, 0, o.Size()), o.Parts), nil
}

func appendParts(ends []int, parts []Part) []int {
	for _, p := range parts {
		ends = p.appendTo(ends)
	}
	return ends
}

func (p Part) appendTo(ends []int) []int {
	start := len(ends)
	switch p.Kind {
	case Stripe:
		for range p.Count {
			ends = append(ends, p.Colour)
		}
	case Repeat, Balanced:
		ends = appendParts(ends, p.Inside)
		once := ends[start:]
		for range p.Count - 1 {
			ends = append(ends, once...)
		}
		if p.Kind == Balanced {
			ends = append(ends, once[:p.Inside[0].size()]...)
		}
	case Back:
		ends = appendParts(ends, p.Inside)
		reverse(ends[start:])
	default:
		ends = appendParts(ends, p.Inside)
		back := append([]int(nil), ends[start:]...)
		if p.Kind == Point {
			back = back[:len(back)-int(p.Inside[len(p.Inside)-1].size())]
		}
		reverse(back)
		ends = append(ends, back...)
	}
	return ends
}

func reverse(ends []int) {
	for i, j := 0, len(ends)-1; i < j; i, j = i+1, j-1 {
		ends[i], ends[j] = ends[j], ends[i]
	}
}

// FromEnds makes an order from the colour of every end, counted from 1 in colours: one part for each
// run of ends of one colour. Colours are numbered anew as they first appear, and those that no end
// has are left out. The error is that of [Order.Check], or names an end whose colour isn't in the
// list.
func FromEnds(colours []Colour, ends []int) (Order, error) {
	var o Order
	number := make([]int, len(colours)+1)
	for i, c := range ends {
		if c < 1 || c > len(colours) {
			return Order{}, wrong("colour of end "+strconv.Itoa(i+1), c, fmt.Sprintf("1 to %d", len(colours)))
		}
		if number[c] == 0 {
			o.Colours = append(o.Colours, colours[c-1])
			number[c] = len(o.Colours)
		}
		if last := len(o.Parts) - 1; last >= 0 && o.Parts[last].Colour == number[c] {
			o.Parts[last].Count++
			continue
		}
		o.Parts = append(o.Parts, Part{Kind: Stripe, Count: 1, Colour: number[c]})
	}
	return o, o.Check()
}

// wrong is the error for a number that won't do.
func wrong(field string, value int, want string) *measure.FieldError {
	return &measure.FieldError{Field: field, Value: strconv.Itoa(value), Want: want}
}
