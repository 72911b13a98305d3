package drawing

import (
	"fmt"
	"strconv"

	"millside/cmd/millside/internal/prose"
	"millside/plan/sheet"
)

// mostSections is how many sections of the raddle are drawn on each side of the centre.
const mostSections = 12

// DrawRaddle draws the sections round the centre with the ends and the groups in them.
func DrawRaddle(r *sheet.RaddleDrawing) Drawing {
	const top, foot = 420, 1150
	d := Drawing{W: drawingWidth, H: 1480, Title: "The raddle, with the ends and the groups in each section"}
	var shown []sheet.DrawnSection
	for _, s := range r.Sections {
		if s.FromCentre >= -mostSections && s.FromCentre <= mostSections {
			shown = append(shown, s)
		}
	}
	if len(shown) == 0 {
		return d
	}
	d.Caption = "Ends in each section; below, how far it is from the centre. A dot is a whole group, a ring one " +
		"that a tooth parts."
	if left := len(r.Sections) - len(shown); left > 0 {
		d.Caption += fmt.Sprintf(" The outer %s are in the list.", prose.Count(left, "section"))
	}
	width := min((drawingWidth-200)/len(shown), 900)
	x := (drawingWidth - width*len(shown)) / 2
	d.path("wood", point{x - 60, foot}, point{x + width*len(shown) + 60, foot})
	for i, s := range shown {
		at := x + i*width
		d.path("wood", point{at, top}, point{at, foot})
		middle := at + width/2
		d.text("", "middle", middle, foot-60, strconv.Itoa(s.Ends))
		d.text("small", "middle", middle, foot+190, sectionName(s.FromCentre))
		d.groups(s, middle, width)
		if s.FromCentre == 0 || !r.MiddleSpace && s.FromCentre == 1 {
			centre := at
			if s.FromCentre == 0 {
				centre = middle
			}
			d.path("thin", point{centre, 240}, point{centre, foot})
			d.text("small", "middle", centre, 190, "centre")
		}
	}
	d.path("wood", point{x + width*len(shown), top}, point{x + width*len(shown), foot})
	return d
}

// sectionName is the distance from the centre, or a sign for the middle one.
func sectionName(fromCentre int) string {
	if fromCentre == 0 {
		return "mid"
	}
	return strconv.Itoa(max(fromCentre, -fromCentre))
}

// groups draws a dot for each group of a section, rings for those that are parted. They stand in rows, as
// many as there is room for.
func (d *Drawing) groups(s sheet.DrawnSection, middle, width int) {
	const apart, top = 130, 520
	inRow := max((width-40)/apart, 1)
	for i := range min(s.Groups, 3*inRow) {
		row := i / inRow
		n := min(inRow, s.Groups-row*inRow)
		at := point{middle + (i%inRow)*apart - (n-1)*apart/2, top + row*apart}
		class := "solid"
		if i >= s.Groups-s.Cut {
			class = "ring"
		}
		d.circle(class, at, 40)
	}
}

// DrawReed draws the first dents at the left edge: the selvedge and two repeats of the order.
func DrawReed(r *sheet.ReedDrawing) Drawing {
	const top, foot, most = 300, 1050, 30
	d := Drawing{W: drawingWidth, H: 1500, Title: "The first dents of the reed at the left edge"}
	dents := r.Dents[:min(len(r.Dents), most)]
	if len(dents) == 0 {
		return d
	}
	width := min((drawingWidth-300)/len(dents), 620)
	x := (drawingWidth - width*len(dents)) / 2
	d.Caption = "The dents from the left edge of the warp inwards: a dot is an end."
	if r.Edge > 0 {
		d.Caption += " The shaded ones are the selvedge."
		d.box("shade", x, top, width*min(r.Edge, len(dents)), foot-top)
	}
	for i, ends := range dents {
		at := x + i*width
		d.path("wood", point{at, top}, point{at, foot})
		d.ends(ends, at+width/2, (top+foot)/2, width)
		d.text("", "middle", at+width/2, foot+200, strconv.Itoa(ends))
	}
	d.path("wood", point{x + width*len(dents), top}, point{x + width*len(dents), foot})
	for _, y := range []int{top, foot} {
		d.path("wood", point{x - 80, y}, point{x + width*len(dents) + 80, y})
	}
	for from := r.Edge; from+r.Repeat <= len(dents) && r.Repeat > 0; from += r.Repeat {
		low, high := x+from*width+50, x+(from+r.Repeat)*width-50
		d.path("thin", point{low, foot + 260}, point{low, foot + 310}, point{high, foot + 310}, point{high, foot + 260})
	}
	if r.Edge+r.Repeat <= len(dents) && r.Repeat > 0 {
		d.text("small", "middle", x+r.Edge*width+r.Repeat*width/2, foot+430, "repeat")
	}
	return d
}

// ends draws a dot for each end of a dent, one above the other, at most nine.
func (d *Drawing) ends(n, x, y, width int) {
	n = min(n, 9)
	apart := min(150, 640/max(n, 1))
	for i := range n {
		d.circle("solid", point{x, y + i*apart - (n-1)*apart/2}, min(50, width/5, apart/2-6))
	}
}
