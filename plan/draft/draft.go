package draft

import (
	"math/big"

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
	// Widths is the width of each thread where they are not all alike; else nil.
	Widths []measure.Length
	// Weft is how many picks each colour has, in the order in which they first appear; nil where the draft
	// doesn't say.
	Weft []Picks
	// Shafts and Treadles are what the draft says that it needs, 0 if it doesn't say.
	Shafts, Treadles int
	// Sett is what the spacing of the threads comes to, nil if the draft doesn't say. It is an offer
	// for the weaver to look at, never a thing to adopt unasked.
	Sett *Sett
	// Warnings lists what could not be read as it stands.
	Warnings []Warning
}

// Picks is how many picks of the draft are of a colour.
type Picks struct {
	// Colour is an index into the draft's own table, or NoColour.
	Colour int
	// Picks is 1 or more.
	Picks int
}

// Sett is so many threads side by side on a width.
type Sett struct {
	// Threads is their number, 1 or more.
	Threads int
	// Width is the width that they take together, above 0. It is rounded to the nearest nanometre,
	// halves up.
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

// NotThreaded is how many threads of the draft's threading go through no shaft: those behind the last one
// that is threaded, and those before it. Both are 0 where the draft has no threading, or threads nothing.
func (d *Draft) NotThreaded() (atEnd, before int) {
	bare, threaded := 0, false
	for _, shafts := range d.Threading {
		if len(shafts) == 0 {
			bare++
			continue
		}
		before, threaded = bare, true
	}
	if !threaded {
		return 0, 0
	}
	return bare - before, before
}
