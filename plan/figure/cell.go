package figure

import (
	"fmt"
	"regexp"
	"strings"
)

// Cell is what stands in one place of a result, in the order in which it is read. None at all is an empty
// place.
type Cell []Figure

// verb is a place in a format that takes a value, or a written percent sign.
var verb = regexp.MustCompile(`%[-+# 0]*[0-9]*(?:\.[0-9]+)?[a-zA-Z%]`)

// Say makes a cell as fmt.Sprintf makes a text: a [Figure] or a [Cell] among the values stays what it is, and
// any other value becomes words. Each value has one verb; what is left over is put behind.
func Say(format string, values ...any) Cell {
	if !holdsFigures(values) {
		return Cell{}.with(Text(fmt.Sprintf(format, values...)))
	}
	var c Cell
	at := 0
	for _, m := range verb.FindAllStringIndex(format, -1) {
		c = c.with(Text(format[at:m[0]]))
		at = m[1]
		switch one := format[m[0]:m[1]]; {
		case one == "%%":
			c = c.with(Text("%"))
		case len(values) == 0:
			c = c.with(Text(one))
		default:
			c = c.add(one, values[0])
			values = values[1:]
		}
	}
	c = c.with(Text(format[at:]))
	for _, v := range values {
		c = c.with(Text(" ")).add("%v", v)
	}
	return c
}

func holdsFigures(values []any) bool {
	for _, v := range values {
		switch v.(type) {
		case Figure, Cell:
			return true
		}
	}
	return false
}

// add puts a value behind the cell.
func (c Cell) add(verb string, value any) Cell {
	switch v := value.(type) {
	case Cell:
		for _, f := range v {
			c = c.with(f)
		}
		return c
	case Figure:
		return c.with(v)
	}
	return c.with(Text(fmt.Sprintf(verb, value)))
}

// with puts a figure behind the cell; words behind words become one text, and no words are left out.
func (c Cell) with(f Figure) Cell {
	text, ok := f.(Text)
	if !ok {
		return append(c, f)
	}
	if text == "" {
		return c
	}
	if last := len(c) - 1; last >= 0 {
		if before, ok := c[last].(Text); ok {
			return append(c[:last:last], before+text)
		}
	}
	return append(c, text)
}

// And is the cell with more behind it.
func (c Cell) And(format string, values ...any) Cell {
	return Say("%s", c).add("", Say(format, values...))
}

// Join puts cells behind each other, with words between.
func Join(cells []Cell, between string) Cell {
	var all Cell
	for i, c := range cells {
		if i > 0 {
			all = all.with(Text(between))
		}
		all = all.add("", c)
	}
	return all
}

// String writes the cell for a person.
func (c Cell) String() string {
	var b strings.Builder
	for _, f := range c {
		b.WriteString(f.String())
	}
	return b.String()
}

// Plain writes the cell with decimal points, as programs read it.
func (c Cell) Plain() string {
	var b strings.Builder
	for _, f := range c {
		if n, ok := f.(Number); ok {
			b.WriteString(n.Plain())
		} else {
			b.WriteString(f.String())
		}
	}
	return b.String()
}

// MarshalText writes the cell as Plain does.
func (c Cell) MarshalText() ([]byte, error) { return []byte(c.Plain()), nil }

// Only is the one count of a cell that holds nothing else; ok is false for any other cell.
func (c Cell) Only() (n Count, ok bool) {
	if len(c) != 1 {
		return Count{}, false
	}
	n, ok = c[0].(Count)
	return n, ok && n.Many == ""
}

// UnmarshalText reads a cell back as words.
func (c *Cell) UnmarshalText(b []byte) error {
	*c = Cell{}.with(Text(b))
	return nil
}
