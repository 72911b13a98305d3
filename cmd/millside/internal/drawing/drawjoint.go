package drawing

import (
	"fmt"
	"strconv"

	"millside/cmd/millside/internal/prose"
	"millside/plan/sheet"
)

// What stands for an end of each warp: the form says it too, for who prints without colours.
const jointKey = "A round is an end of the ground (G), a square one of the second (S)"

// mark draws an end of a warp, or a group of it: round for the ground, square for the second; hollow or full.
func (d *Drawing) mark(letter byte, full bool, at point, r int) {
	class := "ring"
	if full {
		class = "solid"
	}
	if letter == 'G' {
		d.circle(class, at, r)
		return
	}
	d.box(class, at.x-r, at.y-r, 2*r, 2*r)
}

// sectionsInRow and mostJointRows bound what is drawn of a raddle: so many sections in a row, so many rows.
const (
	sectionsInRow = 10
	mostJointRows = 6
)

// DrawJointRaddle draws the raddle of two warps, each row of sections for itself: the ends of both in each section, and
// which groups they are.
func DrawJointRaddle(r *sheet.JointRaddle) []Drawing {
	outer := max(len(r.Sections)-mostJointRows*sectionsInRow, 0)
	shown := r.Sections[outer/2 : len(r.Sections)-(outer+1)/2]
	if len(shown) == 0 {
		return nil
	}
	rows := (len(shown) + sectionsInRow - 1) / sectionsInRow
	inRow := (len(shown) + rows - 1) / rows
	var list []Drawing
	for from := 0; from < len(shown); from += inRow {
		list = append(list, jointRaddleRow(shown[from:min(from+inRow, len(shown))], r.MiddleSpace, inRow))
	}
	last := &list[len(list)-1]
	last.Caption = "Ends of the ground (G) and of the second (S) in each section; in brackets which groups they are, " +
		"above them a round for each group of the ground and a square for each of the second, hollow where a tooth " +
		"parts it; below, how far the section is from the middle."
	if outer > 0 {
		last.Caption += fmt.Sprintf(" The outer %s are in the list.", prose.Count(outer, "section"))
	}
	return list
}

// jointRaddleRow draws sections side by side, each as wide as if there were so many.
func jointRaddleRow(sections []sheet.JointSection, middleSpace bool, inRow int) Drawing {
	const top, foot, band = 330, 1590, 600
	d := Drawing{W: drawingWidth, H: 1830, Title: "The raddle of both warps: what lies in each section"}
	width := min((drawingWidth-200)/inRow, 1400)
	x := (drawingWidth - width*len(sections)) / 2
	d.path("wood", point{x - 60, foot}, point{x + width*len(sections) + 60, foot})
	for i, s := range sections {
		at := x + i*width
		middle := at + width/2
		d.path("wood", point{at, top}, point{at, foot})
		for k, in := range []sheet.DrawnSection{s.Ground, s.Second} {
			if in.Ends > 0 {
				d.share("GS"[k], in, middle, top+40+k*band, width)
			}
		}
		d.text("small", "middle", middle, foot+190, jointSection(s.Ground.FromCentre))
		if f := s.Ground.FromCentre; f == 0 || f == 1 && !middleSpace {
			centre := at
			if f == 0 {
				centre = middle
			}
			d.path("thin", point{centre, 220}, point{centre, top})
			d.text("small", "middle", max(centre, 260), 170, "middle")
		}
	}
	d.path("wood", point{x + width*len(sections), top}, point{x + width*len(sections), foot})
	return d
}

// jointSection is where a section is: left or right of the middle.
func jointSection(fromCentre int) string {
	switch {
	case fromCentre < 0:
		return strconv.Itoa(-fromCentre) + " left"
	case fromCentre > 0:
		return strconv.Itoa(fromCentre) + " right"
	}
	return "middle"
}

// share draws what lies in a section of one warp: its groups, how many ends, and the numbers of the groups.
func (d *Drawing) share(letter byte, in sheet.DrawnSection, middle, top, width int) {
	if n := in.Groups; n > 0 {
		apart := min(130, (width-80)/n)
		for i := range n {
			at := point{middle + i*apart - (n-1)*apart/2, top + 80}
			d.mark(letter, i < n-in.Cut, at, min(40, max(apart/2-8, 6)))
		}
	}
	d.text("", "middle", middle, top+310, fmt.Sprintf("%c %d", letter, in.Ends))
	if in.GroupNumbers != "" {
		d.text("small", "middle", middle, top+470, "("+in.GroupNumbers+")")
	}
}

// dentsInRow and mostDentRows bound what is drawn of a reed.
const (
	dentsInRow   = 20
	mostDentRows = 4
)

// drawnDent is a dent in a row, and the run of dents that it is in; it is the n-th of the run.
type drawnDent struct {
	ends string
	run  sheet.DentRun
	n    int
}

// DrawJointReed draws the reed of two warps dent by dent, each row of dents for itself: dents that repeat once, and the
// repeat once more where there is room for it.
func DrawJointReed(r *sheet.JointReed) []Drawing {
	var dents []drawnDent
	left := 0
	for i, run := range r.Runs {
		if len(dents)+len(run.Dents) > dentsInRow*mostDentRows {
			for _, rest := range r.Runs[i:] {
				left += len(rest.Dents) * rest.Times
			}
			break
		}
		times := 1
		if run.Times > 1 && len(run.Dents) <= dentsInRow/3 {
			times = 2
		}
		for n := range times * len(run.Dents) {
			dents = append(dents, drawnDent{run.Dents[n%len(run.Dents)], run, n})
		}
	}
	var list []Drawing
	for from := 0; from < len(dents); from += dentsInRow {
		list = append(list, jointReedRow(dents[from:min(from+dentsInRow, len(dents))]))
	}
	if len(list) == 0 {
		return nil
	}
	last := &list[len(list)-1]
	last.Caption = jointKey + ". The dents from the left edge of the cloth on; within a dent the ends from left to " +
		"right stand from top to bottom."
	if left > 0 {
		last.Caption += fmt.Sprintf(" The other %s are in the list.", prose.Count(left, "dent"))
	}
	return list
}

// jointReedRow draws dents side by side.
func jointReedRow(dents []drawnDent) Drawing {
	const top = 60
	most := 1
	for _, d := range dents {
		most = max(most, len(d.ends))
	}
	apart := min(190, 1300/most)
	foot := top + 120 + most*apart
	d := Drawing{W: drawingWidth, H: foot + 560, Title: "The reed of both warps, dent by dent"}
	width := min((drawingWidth-300)/max(len(dents), 8), 620)
	x := (drawingWidth - width*len(dents)) / 2
	for i, one := range dents {
		at := x + i*width
		d.path("wood", point{at, top}, point{at, foot})
		for k := range len(one.ends) {
			d.end(one.ends[k], point{at + width/2, (top+foot)/2 + k*apart - (len(one.ends)-1)*apart/2}, apart)
		}
		if i == 0 || one.n == 0 {
			d.runBelow(dents[i:], at, width, foot)
		}
	}
	d.path("wood", point{x + width*len(dents), top}, point{x + width*len(dents), foot})
	for _, y := range []int{top, foot} {
		d.path("wood", point{x - 80, y}, point{x + width*len(dents) + 80, y})
	}
	return d
}

// end draws an end with its letter.
func (d *Drawing) end(letter byte, at point, apart int) {
	r := min(80, apart/2-8)
	d.mark(letter, false, at, r)
	if r >= 50 {
		d.text("mark", "middle", at.x, at.y+38, string(letter))
	}
}

// runBelow draws a bracket below the first dents of a row that are of one run, once through, and says which they are.
func (d *Drawing) runBelow(dents []drawnDent, x, width, foot int) {
	run, n := dents[0].run, 0
	for n < len(dents) && dents[n].run.First == run.First && dents[n].n == dents[0].n+n && dents[n].n < len(run.Dents) {
		n++
	}
	if n == 0 {
		return
	}
	low, high := x+40, x+n*width-40
	d.path("thin", point{low, foot + 60}, point{low, foot + 110}, point{high, foot + 110}, point{high, foot + 60})
	middle := max((low+high)/2, 560)
	d.text("small", "middle", min(middle, drawingWidth-560), foot+250, run.Where())
	if run.Times > 1 {
		d.text("small", "middle", min(middle, drawingWidth-560), foot+400, strconv.Itoa(run.Times)+" times over")
	}
}
