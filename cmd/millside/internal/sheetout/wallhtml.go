package sheetout

import (
	"fmt"
	"io"

	"millside/cmd/millside/internal/drawing"
	"millside/plan/sheet"
)

// wallHTML writes the wall sheet as one page.
func wallHTML(w io.Writer, s *sheet.Wall) error {
	return pages.ExecuteTemplate(w, "wall.html.tmpl", struct {
		Wall *sheet.Wall
		Size string // the class of the page
	}{s, wallSize(s)})
}

// wallSize is the class of a page with so many lines of steps that they stand in two columns or in three, in
// smaller letters; "" for one that holds them as they are.
func wallSize(s *sheet.Wall) string {
	full := 34 // lines on a page in letters of full size
	if s.Striped() {
		full = 23 // its drawings take the rest
	}
	switch lines := wallLines(s); {
	case lines > 56:
		return "many most"
	case lines > full:
		return "many"
	}
	return ""
}

// wallLines is about how many lines the steps of all chains take.
func wallLines(s *sheet.Wall) int {
	const inLine = 22 // boxes
	const inWay = 30  // letters of a line in one of the ways, which stand side by side
	const usual = 5   // lines of a way that has all passes in its direction
	const inPicked = 100
	lines, longest := 3*(len(s.Ways)/3)+3*len(s.After), 0
	for _, way := range s.Ways {
		longest = max(longest, (len(way.Title())+len(way.String()))/inWay-usual)
	}
	lines += longest
	if s.Striped() {
		lines += 8 + len(s.Colours)/2
	}
	if s.Picked != nil && !ownPage(s) {
		lines += 4 + pickedLetters(s.Picked)/inPicked
	}
	for _, c := range s.Wound {
		lines += 3
		for _, b := range c.Blocks {
			for _, step := range b.Steps {
				boxes := 0
				for _, round := range step.Passes {
					boxes += len(round)
				}
				lines += 2 + boxes/inLine
			}
		}
	}
	return lines
}

// ownPage says whether an order list is so long that it stands on a page of its own, beside the wall sheet.
func ownPage(s *sheet.Wall) bool {
	const most = 1000 // letters
	return s.Picked != nil && pickedLetters(s.Picked) > most
}

// pickedLetters is how many letters the blocks of an order list take, with what stands round them.
func pickedLetters(l *sheet.Picked) int {
	n := 0
	for _, b := range l.Blocks {
		n += len(b.Ends()) + len(b.String()) + 8
	}
	return n
}

// box is a box to tick. Back says that what it counts goes back to the lease, so that the two ways differ
// in shape.
type box struct {
	Text string
	Back bool
}

// mostBoxes is how many passes get a box each; a longer warp has one for every tenPasses of a stretch.
const mostBoxes, tenPasses = 400, 10

// makeBoxes makes the boxes of passes that follow one another.
func makeBoxes(all int, passes []int) []box {
	var list []box
	for i := 0; i < len(passes); i++ {
		one := box{Text: fmt.Sprint(passes[i]), Back: passes[i]%2 == 0}
		if all > mostBoxes {
			last := min(i+tenPasses, len(passes)) - 1
			if last > i {
				one = box{Text: fmt.Sprintf("%d to %d", passes[i], passes[last])}
			}
			i = last
		}
		list = append(list, one)
	}
	return list
}

func wallStripes(s *sheet.Wall) drawing.Drawing { return drawing.DrawStripes(s.Colours, s.Runs) }
func wallPaddle(s *sheet.Wall) drawing.Drawing  { return drawing.DrawPaddle(s.Thread, s.Colours) }

// fillOf is the fill of a swatch.
func fillOf(shade string) string {
	if shade == "" {
		return "#ffffff"
	}
	return shade
}
