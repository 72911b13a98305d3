package look

import (
	"strings"
)

// Ink is the part that a cell of a drawing plays; the styles give each its colour.
type Ink uint8

const (
	InkNone   Ink = iota
	InkPeg        // wood
	InkPath       // the group on this pass
	InkPath2      // the other half of the group, at the lease
	InkLabel      // words
	InkStrong     // words to be read first
)

type cell struct {
	r   rune
	ink Ink
}

// Canvas is a small drawing of single-width characters. Drawing outside it does nothing.
type Canvas struct {
	w, h  int
	flip  bool // left-handed layouts are drawn the other way round
	cells []cell
}

// NewCanvas is an empty drawing of w by h cells.
func NewCanvas(w, h int, flip bool) *Canvas {
	c := &Canvas{w: max(w, 0), h: max(h, 0), flip: flip}
	c.cells = make([]cell, c.w*c.h)
	for i := range c.cells {
		c.cells[i].r = ' '
	}
	return c
}

// flipped are the characters that change when a drawing is seen the other way round.
var flipped = map[rune]rune{
	'┏': '┓', '┓': '┏', '┗': '┛', '┛': '┗', '╱': '╲', '╲': '╱', '▶': '◀', '◀': '▶',
	'╔': '╗', '╗': '╔', '╚': '╝', '╝': '╚', '╭': '╮', '╮': '╭', '╰': '╯', '╯': '╰', '(': ')', ')': '(',
}

// Set draws one character.
func (c *Canvas) Set(x, y int, r rune, k Ink) {
	if c.flip {
		x = c.w - 1 - x
		if f, ok := flipped[r]; ok {
			r = f
		}
	}
	c.put(x, y, r, k)
}

func (c *Canvas) put(x, y int, r rune, k Ink) {
	if x >= 0 && x < c.w && y >= 0 && y < c.h {
		c.cells[y*c.w+x] = cell{r, k}
	}
}

// Across draws a level line from x0 to x1, both included.
func (c *Canvas) Across(x0, x1, y int, r rune, k Ink) {
	for x := min(x0, x1); x <= max(x0, x1); x++ {
		c.Set(x, y, r, k)
	}
}

// Down draws an upright line from y0 to y1, both included.
func (c *Canvas) Down(x, y0, y1 int, r rune, k Ink) {
	for y := min(y0, y1); y <= max(y0, y1); y++ {
		c.Set(x, y, r, k)
	}
}

// Text writes words around a middle column; words are never turned round, and are pushed back inside
// where they would stick out.
func (c *Canvas) Text(mid, y int, s string, k Ink) {
	if c.flip {
		mid = c.w - 1 - mid
	}
	rs := []rune(s)
	x := min(max(mid-len(rs)/2, 0), max(c.w-len(rs), 0))
	for i, r := range rs {
		c.put(x+i, y, r, k)
	}
}

// Lines gives the drawing row by row with each ink in its style.
func (c *Canvas) Lines(style func(Ink) Style) []string {
	rows := make([]string, c.h)
	for y := range rows {
		var out, run strings.Builder
		last := InkNone
		flush := func() {
			if run.Len() > 0 {
				out.WriteString(style(last).Render(run.String()))
				run.Reset()
			}
		}
		for x := range c.w {
			cl := c.cells[y*c.w+x]
			if cl.ink != last {
				flush()
				last = cl.ink
			}
			run.WriteRune(cl.r)
		}
		flush()
		rows[y] = out.String()
	}
	return rows
}
