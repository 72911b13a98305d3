package drawing

import (
	"fmt"
	"strconv"

	"millside/plan/sheet"
)

// The measures of the stripes' drawing. A letter that finds no room in its stripe stands below it, in one
// of a few lanes, at the end of a thin line.
const (
	stripeTop, stripeFoot = 180, 620
	letterInside          = 130 // what a letter within a stripe takes
	letterBelow           = 75  // and one below it
	laneHeight, lanes     = 120, 4
)

// DrawStripes draws the warp from end 1 to the last, each stripe in its colour and with its letter, with the
// numbers of some ends above. A colour whose shade isn't known is left white.
func DrawStripes(colours []sheet.Colour, runs []sheet.Run) Drawing {
	d := Drawing{W: drawingWidth, Title: "The stripes from end 1 on, each with the letter of its colour"}
	d.Caption = "The stripes from end 1 on. The letters are those of the colours."
	if len(runs) == 0 {
		return d
	}
	const left, right = 60, drawingWidth - 60
	ends := runs[len(runs)-1].Last
	at := func(end int) int { return left + (right-left)*end/ends }
	var free [lanes]int // from where on each lane is empty
	used := 0
	for _, run := range runs {
		x, to := at(run.First-1), at(run.Last)
		var c sheet.Colour
		if run.Colour >= 1 && run.Colour <= len(colours) {
			c = colours[run.Colour-1]
		}
		d.filled(c.Shade, x, stripeTop, to-x, stripeFoot-stripeTop)
		middle := (x + to) / 2
		if to-x >= letterInside {
			d.text("", "middle", middle, (stripeTop+stripeFoot)/2+50, c.Letter)
			continue
		}
		for lane := range free {
			if middle-letterBelow/2 < free[lane] {
				continue
			}
			free[lane] = middle + letterBelow/2
			used = max(used, lane+1)
			y := stripeFoot + (lane+1)*laneHeight
			d.path("thin", point{middle, stripeFoot}, point{middle, y - 80})
			d.text("small", "middle", middle, y, c.Letter)
			break
		}
	}
	d.box("frame", left, stripeTop, right-left, stripeFoot-stripeTop)
	d.ruler(ends, at)
	d.H = stripeFoot + used*laneHeight + 60
	return d
}

// ruler writes the numbers of some ends above the stripes.
func (d *Drawing) ruler(ends int, at func(int) int) {
	step := 1
	for _, s := range []int{5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000} {
		if step = s; ends/s <= 12 {
			break
		}
	}
	mark := func(end int) {
		d.path("thin", point{at(end), stripeTop - 30}, point{at(end), stripeTop})
		anchor, x := "middle", max(at(end), 120)
		if end == ends {
			anchor, x = "end", at(end)
		}
		d.text("small", anchor, x, stripeTop-50, strconv.Itoa(end))
	}
	for end := step; end <= ends-step*2/3; end += step {
		mark(end)
	}
	mark(ends)
}

// filled draws a rectangle in a shade, "#" and six hexadecimal digits; without one it is left white.
func (d *Drawing) filled(shade string, x, y, w, h int) {
	d.box("stripe", x, y, w, h)
	d.fill(shade)
}

// fill gives the shape that was drawn last its shade.
func (d *Drawing) fill(shade string) {
	if shade == "" {
		shade = "#ffffff"
	}
	d.Shapes[len(d.Shapes)-1].Fill = shade
}

// DrawPaddle draws the paddle with what is threaded: holes round, slots long, numbered from the handle on.
func DrawPaddle(t sheet.Threading, colours []sheet.Colour) Drawing {
	const top, foot, most = 260, 760, 30
	d := Drawing{W: drawingWidth, H: 1000, Title: "The paddle: what is in each position"}
	n := len(t.Positions)
	if n == 0 {
		return d
	}
	rows := (n + most - 1) / most
	perRow := (n + rows - 1) / rows
	width := min((drawingWidth-500)/perRow, 420)
	for i, colour := range t.Positions {
		x := 420 + (i%perRow)*width + width/2
		y := i / perRow * (foot + 60)
		class, shade, letter := "stripe", "", ""
		if colour >= 1 && colour <= len(colours) {
			shade, letter = colours[colour-1].Shade, colours[colour-1].Letter
		}
		if i%2 == 0 {
			d.circle(class, point{x, y + (top+foot)/2}, width*2/5)
		} else {
			d.box(class, x-width/4, y+top, width/2, foot-top)
		}
		d.fill(shade)
		d.text("", "middle", x, y+(top+foot)/2+50, letter)
		d.text("small", "middle", x, y+top-40, strconv.Itoa(i+1))
	}
	d.text("small", "start", 20, (top+foot)/2+40, "handle")
	d.H = rows*(foot+60) + 40
	d.Caption = fmt.Sprintf("Holes (round) are the odd positions, slots (long) the even ones; position 1 is nearest "+
		"the handle; %s.", t.Foot)
	return d
}
