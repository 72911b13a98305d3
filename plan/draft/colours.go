package draft

import (
	"slices"

	"millside/plan/measure"
	"millside/plan/stripe"
)

// colours reads the colour of each thread of the warp.
func (r *reader) colours() {
	r.Colours = r.coloursOf("WARP", "WARP COLORS", r.Threads)
	bare := 0
	for _, c := range r.Colours {
		if c == NoColour {
			bare++
		}
	}
	r.Coloured = bare < r.Threads
	switch {
	case !r.Coloured:
		r.add("WARP COLORS", 0, "the draft gives no thread a colour, and none is made up")
	case bare > 0:
		r.add("WARP COLORS", r.lineOf("WARP COLORS"), "%d threads have no colour, and none is made up", bare)
	}
}

// coloursOf reads the colour of each thread: the default of one section, and over it the lines of another.
// Behind an index three more numbers may stand, which are obsolete and left out.
func (r *reader) coloursOf(name, lines string, threads int) []int {
	list := slices.Repeat([]int{NoColour}, threads)
	if v, line := r.sections[name].number("color"); v != "" {
		if index, ok := whole(fields(v)[0]); ok {
			list = slices.Repeat([]int{index}, threads)
		} else {
			r.add(name, line, "the colour %s is no number of a colour and is left out", quote(v))
		}
	}
	r.eachThread(lines, name, threads, func(thread int, value string, line int) {
		index, ok := whole(fields(value)[0])
		if !ok {
			r.add(lines, line, "%s is no number of a colour; the thread keeps the default", quote(value))
			return
		}
		list[thread] = index
	})
	return list
}

// weft reads how many picks each colour has. A draft whose weft can't be counted has none.
func (r *reader) weft() {
	v, line := r.sections["WEFT"].number("threads")
	n, ok := whole(v)
	if line == 0 || !ok || n < 1 || n > measure.MaxEnds {
		if line > 0 {
			r.add("WEFT", line, "the weft of %s threads is left out; 1 to %d would do", quote(v), measure.MaxEnds)
		}
		return
	}
	at := map[int]int{}
	for _, c := range r.coloursOf("WEFT", "WEFT COLORS", n) {
		i, ok := at[c]
		if !ok {
			i = len(r.Weft)
			at[c] = i
			r.Weft = append(r.Weft, Picks{Colour: c})
		}
		r.Weft[i].Picks++
	}
}

// lineOf is the line of a section's header, 0 if it isn't there.
func (r *reader) lineOf(name string) int {
	if s := r.sections[name]; s != nil {
		return s.line
	}
	return 0
}

// palette reads the table of colours and scales it.
func (r *reader) palette() {
	r.Palette = map[int]stripe.Shade{}
	table := r.sections["COLOR TABLE"]
	if table == nil {
		if r.Coloured {
			r.add("COLOR TABLE", 0, "the section is missing, so it isn't known how the colours look")
		}
		return
	}
	low, high := r.colourRange()
	for _, key := range table.order {
		v, line := table.number(key)
		index, ok := whole(key)
		if !ok {
			r.add("COLOR TABLE", line, "%s is no number of a colour and is left out", quote(key))
			continue
		}
		if s, ok := r.shade(v, line, low, high); ok {
			r.Palette[index] = s
		}
	}
	entries := r.entries()
	for _, c := range r.Colours {
		if _, ok := r.Palette[c]; c != NoColour && (!ok || entries > 0 && c > entries) {
			r.add("WARP COLORS", r.lineOf("WARP COLORS"),
				"colour %d is used, but isn't one of the table's; it is shown only if it stands there all the same", c)
			break
		}
	}
}

// entries is the number of colours that the palette says the table has, 0 if it doesn't say.
func (r *reader) entries() int {
	v, _ := r.sections["COLOR PALETTE"].number("entries")
	n, _ := whole(v)
	return n
}

// colourRange reads the lowest and the highest value of a part of a colour.
func (r *reader) colourRange() (low, high int) {
	const name = "COLOR PALETTE"
	v, line := r.sections[name].number("range")
	if line == 0 {
		r.add(name, r.lineOf(name), "the range of the colours isn't given; it is taken as 0 to 255")
		return 0, 255
	}
	f := fields(v)
	if len(f) == 2 {
		var okLow, okHigh bool
		low, okLow = whole(f[0])
		high, okHigh = whole(f[1])
		if okLow && okHigh && low < high {
			return low, high
		}
	}
	r.add(name, line, "the range %s can't be read; it is taken as 0 to 255", quote(v))
	return 0, 255
}

// shade reads the three parts of a colour and scales each from the range to 0 to 255, rounded to the
// nearest, halves up. A part outside the range is taken to its nearer end, with a warning.
func (r *reader) shade(value string, line, low, high int) (stripe.Shade, bool) {
	f := fields(value)
	if len(f) != 3 {
		r.add("COLOR TABLE", line, "%s isn't three numbers; the colour is left out", quote(value))
		return stripe.Shade{}, false
	}
	var parts [3]uint8
	for i := range parts {
		v, ok := whole(f[i])
		if !ok {
			r.add("COLOR TABLE", line, "%s isn't three numbers; the colour is left out", quote(value))
			return stripe.Shade{}, false
		}
		if v < low || v > high {
			r.addOnce("COLOR TABLE", line, "a part of the colour is outside the range and is taken to its end")
			v = min(max(v, low), high)
		}
		parts[i] = uint8((2*(v-low)*255 + (high - low)) / (2 * (high - low)))
	}
	return stripe.Shade{R: parts[0], G: parts[1], B: parts[2]}, true
}
