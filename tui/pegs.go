package tui

import (
	"fmt"
	"strings"

	"millside/plan"
)

// The drawings show the pegs from the side, as the winder sees them from the tips: the lease at the
// left with its end peg outermost, the counting cross at the right. A left-handed layout is drawn the
// other way round. "Over" is above a peg and "under" below it, so the picture can be laid beside the
// mill. Row 0 holds the labels, then the upper path, the pegs, the lower path, and the pegs' names.

// pegRows is the smallest height of a drawing.
const pegRows = 5

// frame holds the rows of a drawing of height h.
type frame struct{ label, top, mid, bottom, names int }

func rowsOf(h int) frame {
	bottom := h - 2
	return frame{label: 0, top: 1, mid: (1 + bottom) / 2, bottom: bottom, names: h - 1}
}

// peg draws one peg with its sign around column x: three rows high where there is room.
func (c *canvas) peg(x int, f frame, sign rune) {
	if f.bottom-f.top < 4 {
		c.set(x-1, f.mid, '(', inkPeg)
		c.set(x, f.mid, sign, inkPeg)
		c.set(x+1, f.mid, ')', inkPeg)
		return
	}
	for i := range 5 {
		c.set(x-2+i, f.mid-1, []rune("╭───╮")[i], inkPeg)
		c.set(x-2+i, f.mid+1, []rune("╰───╯")[i], inkPeg)
	}
	c.set(x-2, f.mid, '│', inkPeg)
	c.set(x, f.mid, sign, inkPeg)
	c.set(x+2, f.mid, '│', inkPeg)
}

// drawCross draws the counting cross for a pass. An outward pass arrives: over peg 1, under peg 2,
// round the end peg. A return pass leaves: over peg 2, under peg 1.
func drawCross(p plan.Pass, w, h int, hand plan.Hand) *canvas {
	c := newCanvas(w, h, hand == plan.LeftHanded)
	f := rowsOf(h)
	x1, x2, xe := w*22/100, w*52/100, w*80/100
	between, right := (x1+x2)/2, xe+5
	c.peg(x1, f, '1')
	c.peg(x2, f, '2')
	c.peg(xe, f, '●')
	over, under := x1, x2
	if p.Direction.Far() {
		c.across(0, between-1, f.top, '━', inkPath)
		c.set(between, f.top, '┓', inkPath)
		c.down(between, f.top+1, f.bottom-1, '┃', inkPath)
		c.set(between, f.bottom, '┗', inkPath)
		c.across(between+1, right-1, f.bottom, '━', inkPath)
		c.set(right, f.bottom, '┛', inkPath)
		c.down(right, f.top+1, f.bottom-1, '┃', inkPath)
		c.set(right, f.top, '┓', inkPath)
		c.across(xe-1, right-1, f.top, '━', inkPath)
		c.set(xe-2, f.top, '◀', inkPath)
	} else {
		over, under = x2, x1
		c.across(between+1, xe+2, f.top, '━', inkPath)
		c.set(between, f.top, '┏', inkPath)
		c.down(between, f.top+1, f.bottom-1, '┃', inkPath)
		c.set(between, f.bottom, '┛', inkPath)
		c.across(1, between-1, f.bottom, '━', inkPath)
		c.set(0, f.bottom, '◀', inkPath)
	}
	c.text(over, f.label, fmt.Sprintf("OVER %d", p.CrossOver()), inkStrong)
	c.text(under, f.names, fmt.Sprintf("UNDER %d", p.CrossUnder()), inkStrong)
	c.text(over, f.names, fmt.Sprintf("peg %d", p.CrossOver()), inkLabel)
	c.text(xe, f.names, "far end peg", inkLabel)
	return c
}

// drawLease draws the lease for a pass. The half of the group that is in the holes is drawn heavy,
// the half in the slots double. A return pass arrives: B first, then A, then round the end peg. An
// outward pass leaves: A first, then B.
func drawLease(p plan.Pass, w, h int, hand plan.Hand) *canvas {
	c := newCanvas(w, h, hand == plan.LeftHanded)
	f := rowsOf(h)
	xe, xa, xb := w*16/100, w*44/100, w*76/100
	c.peg(xe, f, '●')
	c.peg(xa, f, 'A')
	c.peg(xb, f, 'B')
	strands(c, f, p, xe, xa, xb)
	if p.Direction.Far() {
		c.set(w-1, f.top, '▶', halfInk(p.OpeningAt(plan.PegB)))
		c.set(w-1, f.bottom, '▶', halfInk(p.OpeningAt(plan.PegA)))
		c.across(xe-2, xe+2, f.top, '━', inkPath)
	} else {
		left := xe - 5
		c.across(left+1, xe+3, f.bottom, '━', inkPath)
		c.set(left, f.bottom, '┗', inkPath)
		c.down(left, f.top+1, f.bottom-1, '┃', inkPath)
		c.set(left, f.top, '┏', inkPath)
		c.across(left+1, xe+1, f.top, '━', inkPath)
		c.set(xe+2, f.top, '▶', inkPath)
	}
	for _, peg := range []plan.LeasePeg{plan.PegA, plan.PegB} {
		x, order := xa, "2nd"
		if peg == plan.PegB {
			x = xb
		}
		if peg == p.FirstPeg() {
			order = "1st"
		}
		c.text(x, f.label, order+": "+strings.ToUpper(p.OpeningAt(peg).String()), inkStrong)
		c.text(x, f.names, "peg "+peg.String(), inkLabel)
	}
	c.text(xe, f.names, "near end peg", inkLabel)
	return c
}

// strands draws the two halves of the group from the near end peg past A and B, crossing between.
func strands(c *canvas, f frame, p plan.Pass, xe, xa, xb int) {
	upA, upB := halfInk(p.OpeningAt(plan.PegA)), halfInk(p.OpeningAt(plan.PegB))
	mid := (xa + xb) / 2
	half := (f.bottom - f.top) / 2
	join := xa - 5
	// From the end peg to A: the group comes off the peg as one and opens.
	from, joined := f.top, xe+3
	if !p.Direction.Far() {
		from = f.bottom
	}
	c.across(joined, join, from, '━', inkPath)
	c.across(join+1, mid-half-1, f.top, strandRune(upA), upA)
	c.across(join+1, mid-half-1, f.bottom, strandRune(upB), upB)
	openUp(c, f, join, from, upA, upB)
	for i := range half + 1 {
		c.set(mid-half+i, f.top+i, '╲', upA)
		c.set(mid+half-i, f.top+i, '╱', upB)
		c.set(mid-half+i, f.bottom-i, '╱', upB)
		c.set(mid+half-i, f.bottom-i, '╲', upA)
	}
	c.set(mid, f.mid, '╳', inkPath)
	c.across(mid+half+1, c.w-1, f.top, strandRune(upB), upB)
	c.across(mid+half+1, c.w-1, f.bottom, strandRune(upA), upA)
}

// openUp draws the upright at which the group divides into its two halves.
func openUp(c *canvas, f frame, x, from int, upA, upB ink) {
	c.down(x, f.top+1, f.bottom-1, '┃', inkPath)
	if from == f.top {
		c.set(x, f.top, '┳', inkPath)
		c.set(x, f.bottom, '┗', upB)
		return
	}
	c.set(x, f.bottom, '┻', inkPath)
	c.set(x, f.top, '┏', upA)
}

// halfInk is the ink of the half of the group that is up.
func halfInk(up plan.Opening) ink {
	if up == plan.HolesUp {
		return inkPath
	}
	return inkPath2
}

func strandRune(k ink) rune {
	if k == inkPath2 {
		return '═'
	}
	return '━'
}
