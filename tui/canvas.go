package tui

import (
	"strings"

	"github.com/charmbracelet/lipgloss"
)

// ink is the part that a cell of a drawing plays; the styles give each its colour.
type ink uint8

const (
	inkNone   ink = iota
	inkPeg        // wood
	inkPath       // the group on this pass
	inkPath2      // the other half of the group, at the lease
	inkLabel      // words
	inkStrong     // words to be read first
)

type cell struct {
	r   rune
	ink ink
}

// canvas is a small drawing of single-width characters. Drawing outside it does nothing.
type canvas struct {
	w, h  int
	flip  bool // left-handed layouts are drawn the other way round
	cells []cell
}

func newCanvas(w, h int, flip bool) *canvas {
	c := &canvas{w: max(w, 0), h: max(h, 0), flip: flip}
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

// set draws one character.
func (c *canvas) set(x, y int, r rune, k ink) {
	if c.flip {
		x = c.w - 1 - x
		if f, ok := flipped[r]; ok {
			r = f
		}
	}
	c.put(x, y, r, k)
}

func (c *canvas) put(x, y int, r rune, k ink) {
	if x >= 0 && x < c.w && y >= 0 && y < c.h {
		c.cells[y*c.w+x] = cell{r, k}
	}
}

// across draws a level line from x0 to x1, both included.
func (c *canvas) across(x0, x1, y int, r rune, k ink) {
	for x := min(x0, x1); x <= max(x0, x1); x++ {
		c.set(x, y, r, k)
	}
}

// down draws an upright line from y0 to y1, both included.
func (c *canvas) down(x, y0, y1 int, r rune, k ink) {
	for y := min(y0, y1); y <= max(y0, y1); y++ {
		c.set(x, y, r, k)
	}
}

// text writes words around a middle column; words are never turned round, and are pushed back inside
// where they would stick out.
func (c *canvas) text(mid, y int, s string, k ink) {
	if c.flip {
		mid = c.w - 1 - mid
	}
	rs := []rune(s)
	x := min(max(mid-len(rs)/2, 0), max(c.w-len(rs), 0))
	for i, r := range rs {
		c.put(x+i, y, r, k)
	}
}

// lines gives the drawing row by row with each ink in its style.
func (c *canvas) lines(style func(ink) lipgloss.Style) []string {
	rows := make([]string, c.h)
	for y := range rows {
		var out, run strings.Builder
		last := inkNone
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
