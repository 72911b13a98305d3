package drawing

import (
	"fmt"
	"strconv"

	"millside/cmd/millside/internal/prose"
	"millside/plan/measure"
)

// mostDistances is how many distances of a board are drawn; of a longer way the first and the last.
const mostDistances = 14

// DrawBoard draws the way of the warp from peg to peg as a zigzag with the distances beside it. It isn't
// to scale, since only the distances are known and not where the pegs stand.
func DrawBoard(distances []measure.Length, units measure.LengthUnitSystem) Drawing {
	const left, right, top, step = 1200, 5800, 260, 330
	d := Drawing{W: drawingWidth, Title: "The way of the warp on the board"}
	d.Caption = fmt.Sprintf("The pegs in the order of the warp, from the near end peg, 1, to the far end peg, %d. "+
		"The distances are not to scale.", len(distances)+1)
	shown := numbered(len(distances), mostDistances)
	row := 0
	peg := func(row int) point {
		if row%2 == 0 {
			return point{left, top + row*step}
		}
		return point{right, top + row*step}
	}
	label := func(at point, n int) {
		d.circle("solid", at, 60)
		if at.x == left {
			d.text("", "end", at.x-130, at.y+50, strconv.Itoa(n))
		} else {
			d.text("", "start", at.x+130, at.y+50, strconv.Itoa(n))
		}
	}
	for i, n := range shown {
		from, to := peg(row), peg(row+1)
		if i > 0 && shown[i-1] != n-1 {
			d.text("", "middle", drawingWidth/2, from.y+50,
				fmt.Sprintf("%s left out here", prose.Count(n-shown[i-1]-1, "distance")))
			row++
			from, to = peg(row), peg(row+1)
		}
		d.path("line", from, to)
		label(from, n)
		label(to, n+1)
		d.text("small", "middle", drawingWidth/2, (from.y+to.y)/2-50, distances[n-1].As(units.Short(), 1).String())
		row++
	}
	d.H = top + row*step + 200
	return d
}

// numbered gives the numbers from 1 to n, or, where there are more than most, the first and the last of
// them, half of most each.
func numbered(n, most int) []int {
	var list []int
	for i := 1; i <= n; i++ {
		if n <= most || i <= most/2 || i > n-most/2 {
			list = append(list, i)
		}
	}
	return list
}
