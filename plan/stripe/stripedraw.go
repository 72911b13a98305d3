package stripe

import "millside/plan"

// StripeCell is one cell of a drawing of stripes: the ends that it stands for, all of one colour.
type StripeCell struct {
	Colour      int // from 1; 0 is an empty position
	First, Last int // ends of the warp, from 1; a wide cell may share an end with its neighbour
}

// StripeDrawing is a row of cells that shows stripes in their order. Each stripe has a cell at least, so
// that none is lost and none looks like another; beyond that the widths are as true as cells can be.
type StripeDrawing struct {
	Cells []StripeCell
	// Whole says that all stripes are there. Else it is a part of them, end for end.
	Whole bool
}

// First and Last are the ends that the drawing begins and stops with, 0 in an empty one.
func (d StripeDrawing) First() int {
	if len(d.Cells) == 0 {
		return 0
	}
	return d.Cells[0].First
}

// Last is described at First.
func (d StripeDrawing) Last() int {
	if len(d.Cells) == 0 {
		return 0
	}
	return d.Cells[len(d.Cells)-1].Last
}

// CellOf is the index of the first cell that stands for an end, or of the nearest cell where none does.
func (d StripeDrawing) CellOf(end int) int {
	for i, c := range d.Cells {
		if c.Last >= end {
			return i
		}
	}
	return max(len(d.Cells)-1, 0)
}

// Laid is how many cells, from the first one on, stand for ends that are laid when so many ends are.
func (d StripeDrawing) Laid(ends int) int {
	for i, c := range d.Cells {
		if c.Last > ends {
			return i
		}
	}
	return len(d.Cells)
}

// DrawStripes draws runs of ends, the neighbours of different colours, in so many cells. Where there are
// more runs than cells it draws a part, a cell an end: the part in which an end lies (from 1). The parts
// have fixed borders, so that a drawing which follows the winding turns a page now and then and stands
// still in between.
func DrawStripes(runs []plan.EndRun, cells, end int) StripeDrawing {
	if len(runs) == 0 || cells < 1 {
		return StripeDrawing{}
	}
	if len(runs) <= cells {
		return StripeDrawing{Cells: appendCells(nil, runs, widths(runs, cells)), Whole: true}
	}
	page := pageOf(runs, cells, end)
	return StripeDrawing{Cells: appendCells(nil, page, widths(page, min(cells, ends(page))))}
}

// pageOf cuts runs into pages of as many ends as there are cells, between two runs, and gives the one in
// which an end lies. A run that is longer than a page is a page by itself.
func pageOf(runs []plan.EndRun, cells, end int) []plan.EndRun {
	from := 0
	for i := range runs {
		if i > from && ends(runs[from:i+1]) > cells {
			if runs[i].First > end {
				return runs[from:i]
			}
			from = i
		}
	}
	return runs[from:]
}

func ends(runs []plan.EndRun) int { return runs[len(runs)-1].Last - runs[0].First + 1 }

// widths shares cells out among runs: one at least for each, the rest by the ends. What is left over by
// rounding goes to the runs that are shown the most too narrow, the first of two alike.
func widths(runs []plan.EndRun, cells int) []int {
	w := make([]int, len(runs))
	free, total := cells, ends(runs)
	for again := true; again; { // runs that are too narrow for a cell get one, the others share what is left
		again = false
		for i, r := range runs {
			if w[i] == 0 && r.Ends()*free < total {
				w[i], again = 1, true
				free--
				total -= r.Ends()
			}
		}
	}
	given := 0
	narrow := make([]int, len(runs)) // by how much, in parts of a cell: total parts each
	for i, r := range runs {
		if w[i] == 0 {
			w[i] = max(r.Ends()*free/max(total, 1), 1)
			narrow[i] = r.Ends()*free - w[i]*total
		}
		given += w[i]
	}
	for ; given < cells; given++ {
		most := 0
		for i := range narrow {
			if narrow[i] > narrow[most] {
				most = i
			}
		}
		w[most]++
		narrow[most] -= max(total, 1)
	}
	return w
}

// appendCells makes the cells of runs that have so many each.
func appendCells(list []StripeCell, runs []plan.EndRun, w []int) []StripeCell {
	for i, r := range runs {
		for k := range w[i] {
			first := r.First + r.Ends()*k/w[i]
			last := max(r.First+r.Ends()*(k+1)/w[i]-1, first)
			list = append(list, StripeCell{Colour: r.Colour, First: first, Last: last})
		}
	}
	return list
}
