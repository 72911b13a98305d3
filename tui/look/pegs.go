package look

import (
	"fmt"
	"strings"

	"millside/plan/wind"
)

// The drawings show the pegs from the side, as the winder sees them from the tips: the lease at the
// left with its end peg outermost, the counting cross at the right. A left-handed layout is drawn the
// other way round. "Over" is above a peg and "under" below it, so the picture can be laid beside the
// mill. Row 0 holds the labels, then the upper path, the pegs, the lower path, and the pegs' names.

// PegRows is the smallest height of a drawing.
const PegRows = 5

// Frame holds the rows of a drawing of height h.
type Frame struct{ Label, Top, Mid, Bottom, Names int }

func RowsOf(h int) Frame {
	bottom := h - 2
	return Frame{Label: 0, Top: 1, Mid: (1 + bottom) / 2, Bottom: bottom, Names: h - 1}
}

// Peg draws one peg with its sign around column x: three rows high where there is room.
func (c *Canvas) Peg(x int, f Frame, sign rune) {
	if f.Bottom-f.Top < 4 {
		c.Set(x-1, f.Mid, '(', InkPeg)
		c.Set(x, f.Mid, sign, InkPeg)
		c.Set(x+1, f.Mid, ')', InkPeg)
		return
	}
	for i := range 5 {
		c.Set(x-2+i, f.Mid-1, []rune("╭───╮")[i], InkPeg)
		c.Set(x-2+i, f.Mid+1, []rune("╰───╯")[i], InkPeg)
	}
	c.Set(x-2, f.Mid, '│', InkPeg)
	c.Set(x, f.Mid, sign, InkPeg)
	c.Set(x+2, f.Mid, '│', InkPeg)
}

// DrawCross draws the counting cross for a pass. An outward pass arrives: over peg 1, under peg 2,
// round the end peg. A return pass leaves: over peg 2, under peg 1.
func DrawCross(p wind.Pass, w, h int, hand wind.Hand) *Canvas {
	c := NewCanvas(w, h, hand == wind.LeftHanded)
	f := RowsOf(h)
	x1, x2, xe := w*22/100, w*52/100, w*80/100
	between, right := (x1+x2)/2, xe+5
	c.Peg(x1, f, '1')
	c.Peg(x2, f, '2')
	c.Peg(xe, f, '●')
	over, under := x1, x2
	if p.Direction.Far() {
		c.Across(0, between-1, f.Top, '━', InkPath)
		c.Set(between, f.Top, '┓', InkPath)
		c.Down(between, f.Top+1, f.Bottom-1, '┃', InkPath)
		c.Set(between, f.Bottom, '┗', InkPath)
		c.Across(between+1, right-1, f.Bottom, '━', InkPath)
		c.Set(right, f.Bottom, '┛', InkPath)
		c.Down(right, f.Top+1, f.Bottom-1, '┃', InkPath)
		c.Set(right, f.Top, '┓', InkPath)
		c.Across(xe-1, right-1, f.Top, '━', InkPath)
		c.Set(xe-2, f.Top, '◀', InkPath)
	} else {
		over, under = x2, x1
		c.Across(between+1, xe+2, f.Top, '━', InkPath)
		c.Set(between, f.Top, '┏', InkPath)
		c.Down(between, f.Top+1, f.Bottom-1, '┃', InkPath)
		c.Set(between, f.Bottom, '┛', InkPath)
		c.Across(1, between-1, f.Bottom, '━', InkPath)
		c.Set(0, f.Bottom, '◀', InkPath)
	}
	c.Text(over, f.Label, fmt.Sprintf("OVER %d", p.CrossOver()), InkStrong)
	c.Text(under, f.Names, fmt.Sprintf("UNDER %d", p.CrossUnder()), InkStrong)
	c.Text(over, f.Names, fmt.Sprintf("peg %d", p.CrossOver()), InkLabel)
	c.Text(xe, f.Names, "far end peg", InkLabel)
	return c
}

// DrawLease draws the lease for a pass. The half of the group that is in the holes is drawn heavy,
// the half in the slots double. A return pass arrives: B first, then A, then round the end peg. An
// outward pass leaves: A first, then B.
func DrawLease(p wind.Pass, w, h int, hand wind.Hand) *Canvas {
	c := NewCanvas(w, h, hand == wind.LeftHanded)
	f := RowsOf(h)
	xe, xa, xb := w*16/100, w*44/100, w*76/100
	c.Peg(xe, f, '●')
	c.Peg(xa, f, 'A')
	c.Peg(xb, f, 'B')
	strands(c, f, p, xe, xa, xb)
	if p.Direction.Far() {
		c.Set(w-1, f.Top, '▶', halfInk(p.OpeningAt(wind.PegB)))
		c.Set(w-1, f.Bottom, '▶', halfInk(p.OpeningAt(wind.PegA)))
		c.Across(xe-2, xe+2, f.Top, '━', InkPath)
	} else {
		left := xe - 5
		c.Across(left+1, xe+3, f.Bottom, '━', InkPath)
		c.Set(left, f.Bottom, '┗', InkPath)
		c.Down(left, f.Top+1, f.Bottom-1, '┃', InkPath)
		c.Set(left, f.Top, '┏', InkPath)
		c.Across(left+1, xe+1, f.Top, '━', InkPath)
		c.Set(xe+2, f.Top, '▶', InkPath)
	}
	for _, peg := range []wind.LeasePeg{wind.PegA, wind.PegB} {
		x, order := xa, "2nd"
		if peg == wind.PegB {
			x = xb
		}
		if peg == p.FirstPeg() {
			order = "1st"
		}
		c.Text(x, f.Label, order+": "+strings.ToUpper(p.OpeningAt(peg).String()), InkStrong)
		c.Text(x, f.Names, "peg "+peg.String(), InkLabel)
	}
	c.Text(xe, f.Names, "near end peg", InkLabel)
	return c
}

// strands draws the two halves of the group from the near end peg past A and B, crossing between.
func strands(c *Canvas, f Frame, p wind.Pass, xe, xa, xb int) {
	upA, upB := halfInk(p.OpeningAt(wind.PegA)), halfInk(p.OpeningAt(wind.PegB))
	mid := (xa + xb) / 2
	half := (f.Bottom - f.Top) / 2
	join := xa - 5
	// From the end peg to A: the group comes off the peg as one and opens.
	from, joined := f.Top, xe+3
	if !p.Direction.Far() {
		from = f.Bottom
	}
	c.Across(joined, join, from, '━', InkPath)
	c.Across(join+1, mid-half-1, f.Top, strandRune(upA), upA)
	c.Across(join+1, mid-half-1, f.Bottom, strandRune(upB), upB)
	openUp(c, f, join, from, upA, upB)
	for i := range half + 1 {
		c.Set(mid-half+i, f.Top+i, '╲', upA)
		c.Set(mid+half-i, f.Top+i, '╱', upB)
		c.Set(mid-half+i, f.Bottom-i, '╱', upB)
		c.Set(mid+half-i, f.Bottom-i, '╲', upA)
	}
	c.Set(mid, f.Mid, '╳', InkPath)
	c.Across(mid+half+1, c.w-1, f.Top, strandRune(upB), upB)
	c.Across(mid+half+1, c.w-1, f.Bottom, strandRune(upA), upA)
}

// openUp draws the upright at which the group divides into its two halves.
func openUp(c *Canvas, f Frame, x, from int, upA, upB Ink) {
	c.Down(x, f.Top+1, f.Bottom-1, '┃', InkPath)
	if from == f.Top {
		c.Set(x, f.Top, '┳', InkPath)
		c.Set(x, f.Bottom, '┗', upB)
		return
	}
	c.Set(x, f.Bottom, '┻', InkPath)
	c.Set(x, f.Top, '┏', upA)
}

// halfInk is the ink of the half of the group that is up.
func halfInk(up wind.Opening) Ink {
	if up == wind.HolesUp {
		return InkPath
	}
	return InkPath2
}

func strandRune(k Ink) rune {
	if k == InkPath2 {
		return '═'
	}
	return '━'
}
