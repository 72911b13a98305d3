package look

import (
	"fmt"

	"millside/plan"
	"millside/plan/measure"
	"millside/plan/wind"
)

// drawBoard draws the way of the warp between the pegs of a board, from the near end peg, below, to the far end peg:
// each distance to scale with the others, its length beside it, and arrows in the direction of the pass.
func drawBoard(p *plan.Plan, pass wind.Pass, w, h int) *Canvas {
	const label = 9
	b := board{Canvas: NewCanvas(w, h, p.Spec.Hand == wind.LeftHanded), plan: p, outward: pass.Direction.Far(),
		left: label + 3, right: w - 6, top: 1, bottom: h - 3}
	b.places()
	b.draw()
	b.Text(w/2, h-1, fmt.Sprintf("guide string: %s, %s", measure.Counted(p.Path.Steps, "distance", "distances"),
		p.Path.Length.In(p.Spec.Units.Long(), 2)), InkLabel)
	return b.Canvas
}

// board is the drawing with the columns of its pegs.
type board struct {
	*Canvas
	plan                     *plan.Plan
	outward                  bool
	left, right, top, bottom int
	x                        []int
}

// places finds the columns of the pegs: the warp goes to and fro between them.
func (b *board) places() {
	at := []int64{0}
	low, high := int64(0), int64(1)
	for i := range b.plan.Path.Steps {
		d := int64(b.plan.Spec.Board[i])
		if i%2 == 1 {
			d = -d
		}
		next := at[i] + d
		at, low, high = append(at, next), min(low, next), max(high, next)
	}
	for _, a := range at {
		b.x = append(b.x, b.left+int(float64(a-low)/float64(high-low)*float64(b.right-b.left)))
	}
}

// draw draws a row for each distance, or two where there is room; distances in the middle that find none are left out,
// and said.
func (b *board) draw() {
	n, room := b.plan.Path.Steps, b.bottom-b.top+1
	apart := 1
	if 2*n-1 <= room {
		apart = 2
	}
	shown := min(n, room)
	y := b.bottom
	for i := range shown {
		step := i
		if n > shown && i >= shown/2 {
			step = n - (shown - i)
			if i == shown/2 {
				b.Text((b.left+b.right)/2, y, measure.Counted(step-i+1, "distance more", "distances more"), InkLabel)
				y -= apart
				continue
			}
		}
		b.distance(step, y, apart)
		y -= apart
	}
	b.Set(b.x[0], b.bottom, '●', InkPeg)
	b.Set(b.x[0]+3, b.bottom, 'A', InkPeg)
	b.Set(b.x[0]+5, b.bottom, 'B', InkPeg)
	if !b.outward {
		b.Text(b.x[0]+8, b.bottom+1, "▲ heading here: the lease", InkStrong)
	}
}

// distance draws the way from one peg to the next, and the peg at its end.
func (b *board) distance(step, y, apart int) {
	from, to := b.x[step], b.x[step+1]
	b.Across(from, to, y, '━', InkPath)
	b.Text(4, y, b.plan.Spec.Board[step].In(b.plan.Spec.Units.Short(), 0), InkLabel)
	r, dir := '▶', 1
	if to < from {
		dir = -1
	}
	if (to > from) != b.outward {
		r = '◀'
	}
	if d := to - from; d > 12 || d < -12 {
		b.Set((from+to)/2, y, r, InkStrong)
	}
	b.Set(to, y, '●', InkPeg)
	if step+1 < b.plan.Path.Steps {
		if apart > 1 {
			b.Set(to, y-1, '┃', InkPath)
		}
		return
	}
	b.Set(to-3*dir, y, '2', InkPeg)
	b.Set(to-5*dir, y, '1', InkPeg)
	if b.outward {
		b.Text(to-4*dir, max(y-1, 0), "▼ heading here: the counting cross", InkStrong)
	}
}
