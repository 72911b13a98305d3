package look

import (
	"fmt"

	"millside/plan"
	"millside/plan/wind"
)

// The smallest drawing of the mill.
const (
	MillWidth  = 36
	MillHeight = 9
)

// DrawMill draws the mill as the winder sees it: one line a turn from the near end peg, below, to the far end
// peg, with the pegs and the way that a pass takes. It is nil where the drawing would be smaller than
// [MillWidth] by [MillHeight], or where the warp is wound on a board.
func DrawMill(p *plan.Plan, pass wind.Pass, w, h int) *Canvas {
	if w < MillWidth || h < MillHeight || len(p.Spec.Board) > 0 || p.Path.Steps == 0 || p.Spec.Mill.Circumference <= 0 {
		return nil
	}
	m := mill{Canvas: NewCanvas(w, h, p.Spec.Hand == wind.LeftHanded), left: 9, right: w - 2, top: 1, bottom: h - 3}
	m.frame()
	m.turns(p, pass)
	m.Text(w/2, h-1, fmt.Sprintf("guide string: %s, %s", p.Path.InTurns(), p.Path.Length.As(p.Spec.Units.Long(), 2)),
		InkLabel)
	return m.Canvas
}

// mill is the drawing with the place of its frame.
type mill struct {
	*Canvas
	left, right, top, bottom int
}

// frame draws the cross bars and the posts.
func (m mill) frame() {
	for _, y := range []int{m.top, m.bottom} {
		m.Across(m.left, m.right, y, '═', InkLabel)
	}
	for _, x := range []int{m.left, (m.left + m.right) / 2, m.right} {
		m.Down(x, m.top+1, m.bottom-1, '│', InkLabel)
	}
}

// turns draws the way of the group, and the pegs at both ends of it.
func (m mill) turns(p *plan.Plan, pass wind.Pass) {
	step, round := int64(p.Spec.Mill.PegStep), int64(p.Spec.Mill.Circumference)
	all := int64(p.Path.Steps) * step
	whole, rest := int(all/round), all%round
	lines := whole
	if rest > 0 {
		lines++
	}
	room := m.bottom - m.top - 1
	shown := min(lines, room)
	wide := m.right - m.left - 1
	for i := range shown {
		turn, y := i+1, m.bottom-1-i*room/shown
		if lines > room && i >= room/2 { // the turns in the middle find no room
			turn = lines - (shown - 1 - i)
		}
		if lines > room && i == room/2 {
			m.Text(4, y, "...", InkLabel)
			continue
		}
		to := m.right - 1
		if turn == lines && rest > 0 {
			to = m.left + max(int(rest*int64(wide)/round), 8)
		}
		m.Text(4, y, fmt.Sprintf("turn %d", turn), InkLabel)
		m.Across(m.left+1, to, y, '━', InkPath)
		if turn == lines {
			m.far(to, y, pass.Direction.Far())
		}
	}
	m.near(m.bottom-1, pass.Direction.Far())
}

// near sets the near end peg and the lease at the beginning of the first turn.
func (m mill) near(y int, outward bool) {
	m.set3(m.left+1, y, '●', 'A', 'B')
	if outward {
		m.Set(m.left+7, y, '▶', InkStrong)
	} else {
		m.Set(m.left+7, y, '◀', InkStrong)
		m.Text((m.left+m.right)/2, m.bottom+1, "▲ heading here, to the lease", InkStrong)
	}
}

// far sets the counting cross and the far end peg at the end of the last turn.
func (m mill) far(x, y int, outward bool) {
	m.set3(x-4, y, '1', '2', '●')
	if outward {
		m.Set(x-6, y, '▶', InkStrong)
		m.Text((m.left+m.right)/2, m.top-1, "▼ heading here, to the counting cross", InkStrong)
	} else {
		m.Set(x-6, y, '◀', InkStrong)
	}
}

// set3 sets three pegs with a cell between them.
func (m mill) set3(x, y int, pegs ...rune) {
	for i, r := range pegs {
		m.Set(x+2*i, y, r, InkPeg)
	}
}
