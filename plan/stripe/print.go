package stripe

import (
	"strconv"
	"strings"
)

// String writes the order in the notation, in its plainest form: one line, every count written, one
// space after each comma, shades last and in the order of the colours. [Parse] reads it back to the
// same order, as long as it has at most MaxText bytes. It is for orders that pass [Order.Check].
func (o Order) String() string {
	var b strings.Builder
	names := writtenNames(o.Colours)
	write(&b, o.Parts, names)
	before := " where "
	for i, c := range o.Colours {
		if c.Known {
			b.WriteString(before + names[i] + " is " + c.Shade.String())
			before = ", "
		}
	}
	return b.String()
}

// write writes parts with the names of the colours as they are to be written.
func write(b *strings.Builder, parts []Part, names []string) {
	for i, p := range parts {
		if i > 0 {
			b.WriteString(", ")
		}
		if p.Count > 0 {
			b.WriteString(strconv.Itoa(p.Count) + " ")
		}
		if p.Kind == Stripe {
			b.WriteString(nameOf(names, p.Colour))
			continue
		}
		b.WriteString([...]string{Repeat: "times (", Balanced: "times balanced (", Mirror: "mirror (", Point: "point (",
			Back: "back ("}[min(p.Kind, Back)])
		write(b, p.Inside, names)
		b.WriteString(")")
	}
}

// nameOf is a colour's name by its number from 1, or the number itself where there is no such colour.
func nameOf(names []string, colour int) string {
	if colour < 1 || colour > len(names) {
		return strconv.Itoa(colour)
	}
	return names[colour-1]
}
