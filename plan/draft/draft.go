package draft

import (
	"fmt"
	"math/big"
	"strconv"

	"millside/plan/measure"
	"millside/plan/stripe"
)

// NoColour stands for the colour of a thread that the draft says nothing about.
const NoColour = -1

// Draft is what a draft says about the warp.
type Draft struct {
	// Title is the draft's title on one line, "" if it has none. It holds printable characters only.
	Title string
	// Threads is the number of warp threads, 1 to measure.MaxEnds.
	Threads int
	// Coloured says whether the draft gives any thread a colour.
	Coloured bool
	// Colours is the colour of each thread, thread 1 first: an index into the draft's own table, 0 or
	// above, or NoColour.
	Colours []int
	// Palette is the draft's table of colours, each part scaled to 0 to 255.
	Palette map[int]stripe.Shade
	// Threading lists the shafts of each thread, thread 1 first, counted from 1; a thread that goes
	// through none has an empty list. It is nil if the draft has no threading.
	Threading [][]int
	// Shafts and Treadles are what the draft says that it needs, 0 if it doesn't say.
	Shafts, Treadles int
	// Sett is what the spacing of the threads comes to, nil if the draft doesn't say. It is an offer
	// for the weaver to look at, never a thing to adopt unasked.
	Sett *Sett
	// Warnings lists what could not be read as it stands.
	Warnings []Warning
}

// Sett is so many threads side by side on a width.
type Sett struct {
	// Threads is their number, 1 or more.
	Threads int
	// Width is the width that they take together, above nil. Each thread's width is rounded to the
	// nearest nanometre, halves up.
	Width measure.Length
	// Absurd says that it is outside what is woven by hand, 2 to 100 ends an inch (from memory): the
	// draft's spacing or its unit is then likely to be wrong.
	Absurd bool
}

// PerInch is the ends an inch, exactly.
func (s Sett) PerInch() *big.Rat { return s.per(measure.Inch) }

// Per10cm is the ends in 10 cm, exactly.
func (s Sett) Per10cm() *big.Rat { return s.per(10 * measure.Centimetre) }

func (s Sett) per(unit measure.Length) *big.Rat {
	r := new(big.Rat).SetFrac64(int64(unit), int64(s.Width))
	return r.Mul(r, new(big.Rat).SetInt64(int64(s.Threads)))
}

// Side is the side of the warp that thread 1 of the draft is on. The standard doesn't say. The right
// is the commoner reading.
type Side uint8

// The two sides, seen by the weaver who sits at the loom.
const (
	FromRight Side = iota
	FromLeft
)

// String gives "right" or "left".
func (s Side) String() string {
	if s == FromLeft {
		return "left"
	}
	return "right"
}

// Thread is the number of the draft's thread that an end of the warp is, both from 1, if the ends are
// counted from the left. It is 0 if there is no such end.
func (d *Draft) Thread(end int, one Side) int {
	switch {
	case end < 1 || end > d.Threads:
		return 0
	case one == FromLeft:
		return end
	default:
		return d.Threads + 1 - end
	}
}

// Stripes is the stripe order of the warp from left to right. A colour is called by its index, such as
// "colour-3", and has a shade if the draft's table gives one; threads without a colour, where others
// have one, are in "no colour given". The error is a [*measure.FieldError] if the draft gives no colours at all, or
// more than stripe.MaxColours.
func (d *Draft) Stripes(one Side) (stripe.Order, error) {
	if !d.Coloured {
		return stripe.Order{}, &measure.FieldError{Field: "colours", Value: "none", Want: "a draft that gives its warp threads colours"}
	}
	var colours []stripe.Colour
	number := map[int]int{}
	ends := make([]int, d.Threads)
	for i := range ends {
		index := d.Colours[d.Thread(i+1, one)-1]
		if number[index] == 0 {
			if len(colours) == stripe.MaxColours {
				return stripe.Order{}, &measure.FieldError{
					Field: "colours", Value: strconv.Itoa(len(colours)+1) + " or more",
					Want: fmt.Sprintf("a draft with at most %d colours in its warp", stripe.MaxColours),
				}
			}
			colours = append(colours, d.colour(index))
			number[index] = len(colours)
		}
		ends[i] = number[index]
	}
	return stripe.FromEnds(colours, ends)
}

func (d *Draft) colour(index int) stripe.Colour {
	if index == NoColour {
		return stripe.Colour{Name: "no colour given"}
	}
	c := stripe.Colour{Name: "colour-" + strconv.Itoa(index)}
	c.Shade, c.Known = d.Palette[index]
	return c
}
