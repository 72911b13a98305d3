package look

import (
	"fmt"
	"strconv"

	"millside/plan"
	"millside/plan/measure"
	"millside/plan/wind"
)

// The smallest drawing of the mill, or of the board.
const (
	MillWidth  = 36
	MillHeight = 9
)

// MillFits says whether the mill or the board can be drawn on so many columns and rows: at least [MillWidth] by
// [MillHeight], and its way is known.
func MillFits(p *plan.Plan, w, h int) bool {
	return w >= MillWidth && h >= MillHeight && p.Path.Steps > 0 &&
		(len(p.Spec.Board) > 0 || p.Spec.Mill.Circumference > 0)
}

// DrawMill draws the mill as the winder sees it from the side: each turn once across the front, heavy, and once
// behind, light, from the near end peg, below, to the far end peg, with the pegs, arrows in the direction of the pass,
// the place that it is heading for, and how far along the guide string each turn is. A warp on a board is drawn between
// the pegs of the board. It is nil where [MillFits] says no.
func DrawMill(p *plan.Plan, pass wind.Pass, w, h int) *Canvas {
	if !MillFits(p, w, h) {
		return nil
	}
	if len(p.Spec.Board) > 0 {
		return drawBoard(p, pass, w, h)
	}
	const label = 9
	m := mill{Canvas: NewCanvas(w, h, p.Spec.Hand == wind.LeftHanded), plan: p, outward: pass.Direction.Far(),
		left: label, right: w - label - 1, top: 1, bottom: h - 3}
	m.frame()
	m.turns()
	m.Text(w/2, h-1, fmt.Sprintf("guide string: %s, %s", p.Path.InTurns(), p.Path.Length.As(p.Spec.Units.Long(), 2)),
		InkLabel)
	return m.Canvas
}

// mill is the drawing with the place of its frame.
type mill struct {
	*Canvas
	plan                     *plan.Plan
	outward                  bool
	left, right, top, bottom int
	// apart is how many rows a turn takes: two, or one without what is behind the mill where there is no room.
	apart int
}

// frame draws the cross bars, the posts and the axle on which the mill turns.
func (m mill) frame() {
	for _, y := range []int{m.top, m.bottom} {
		m.Across(m.left-1, m.right+1, y, '═', InkLabel)
	}
	middle := (m.left + m.right) / 2
	for _, x := range []int{m.left, middle, m.right} {
		m.Down(x, m.top+1, m.bottom-1, '│', InkLabel)
	}
	for _, y := range []int{m.top - 1, m.bottom + 1} {
		m.Set(middle, y, '║', InkLabel)
	}
}

// turns draws the way of the group; turns in the middle that find no room are left out, and said.
func (m mill) turns() {
	step, round := int64(m.plan.Spec.Mill.PegStep), int64(m.plan.Spec.Mill.Circumference)
	all := int64(m.plan.Path.Steps) * step
	whole, rest := int(all/round), all%round
	turns := whole
	if rest > 0 {
		turns++
	} else {
		rest = round
	}
	room := (m.bottom - m.top - 1) / 2
	if m.apart = 2; turns > room {
		m.apart, room = 1, m.bottom-m.top-1
	}
	shown, gap := turns, false
	if turns > room {
		shown, gap = room, true
	}
	y := m.bottom - 1
	for i := range shown {
		turn := i + 1
		if below := shown / 2; gap && i >= below {
			turn = turns - (shown - 1 - i)
			if i == below {
				m.Text((m.left+m.right)/2, y, measure.Counted(turn-below, "turn more", "turns more"), InkLabel)
				y -= m.apart
				continue
			}
		}
		part := round
		if turn == turns {
			part = rest
		}
		m.turn(turn, y, part, round, turn == turns)
		y -= m.apart
	}
	m.near(m.bottom - 1)
}

// turn draws one turn, or as much of it as the warp takes: across the front to the right, and behind back to the left.
func (m mill) turn(n, y int, part, round int64, last bool) {
	wide := int64(m.right - m.left - 2)
	front, behind := m.left+1+int(min(part*2, round)*wide/round), 0
	m.Across(m.left+1, front, y, '━', InkPath)
	if n > 1 && m.apart > 1 {
		m.Set(m.left+1, y, '┗', InkPath)
	}
	m.arrow((m.left+m.right*3)/4, y, front, true)
	m.Text(3, y, fmt.Sprintf("turn %d", n), InkLabel)
	if part*2 > round && m.apart > 1 {
		behind = m.right - 1 - int((part*2-round)*wide/round)
		m.Set(m.right-1, y, '┛', InkPath)
		m.Set(m.right-1, y-1, '┓', InkPath)
		m.Across(behind, m.right-2, y-1, '┄', InkPath)
		m.arrow((m.left+m.right*3)/4, y-1, behind, false)
	}
	if last {
		m.far(front, behind, y)
		return
	}
	if m.apart > 1 {
		m.Set(m.left+1, y-1, '┏', InkPath)
	}
	if at, err := m.plan.Path.AtTurns(strconv.Itoa(n)); err == nil { // how far the guide string is there
		m.Text(m.w-4, y+1-m.apart, at.In(m.plan.Spec.Units.Long(), 1), InkLabel)
	}
}

// arrow shows the direction of the pass on a row that goes to the right on the way out, or to the left.
func (m mill) arrow(x, y, end int, right bool) {
	if right && x > end-6 || !right && x < end+6 {
		return
	}
	r := '◀'
	if right == m.outward {
		r = '▶'
	}
	m.Set(x, y, r, InkStrong)
}

// near sets the near end peg and the lease at the beginning of the first turn.
func (m mill) near(y int) {
	m.pegs(m.left+2, y, '●', 'A', 'B')
	if !m.outward {
		m.Text(m.left+8, m.bottom+1, "▲ heading here: the lease", InkStrong)
	}
}

// far sets the counting cross and the far end peg at the end of the last turn: on the front, or behind.
func (m mill) far(front, behind, y int) {
	x, over := max(front-4, m.left+8), y-1
	if behind != 0 {
		x, y, over = behind, y-1, y-2
		m.pegs(x, y, '●', '2', '1')
	} else {
		m.pegs(x, y, '1', '2', '●')
	}
	if m.outward {
		m.Text(x+2, max(over, 0), "▼ heading here: the counting cross", InkStrong)
	}
}

// pegs sets pegs with a cell between them.
func (m mill) pegs(x, y int, pegs ...rune) {
	for i, r := range pegs {
		m.Set(x+2*i, y, r, InkPeg)
	}
}
