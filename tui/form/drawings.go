package form

import (
	"fmt"
	"strings"

	"millside/plan/loom"
	"millside/plan/measure"
	"millside/tui/look"
)

// mostTurns is how many turns the drawing of the mill shows; more are left out in the middle.
const mostTurns = 6

// millDrawing is the mill unrolled: one line a turn from the near end peg below, with a mark at each
// place where the far end peg could stand.
func (m Model) millDrawing(w int) []string {
	s, room, mill := m.Styles, m.project.Room, m.project.Plan.Spec.Mill
	width := min(max(w-22, 12), 60)
	marks := strings.Repeat("─", width)
	if n := room.StepsInTurn; n > 1 && n <= width/2 {
		rs := []rune(marks)
		for i := 1; i < n; i++ {
			rs[i*width/n] = '┼'
		}
		marks = string(rs)
	}
	last := min(int(room.Beyond.Times(width)/mill.Circumference), width)
	var rows []string
	if room.Beyond > 0 {
		rs := []rune(marks)
		done := s.Outward.Render(strings.ReplaceAll(string(rs[:max(last-1, 0)]), "─", "━") + "●")
		rows = append(rows, fmt.Sprintf("%4d │", room.Turns+1)+done+s.Dim.Render(string(rs[last:]))+"│ far end")
	}
	for turn := room.Turns; turn >= 1; turn-- {
		if room.Turns > mostTurns && turn == room.Turns-2 {
			rows = append(rows, "   ⋮ ")
			turn = 3
			continue
		}
		line, end := strings.ReplaceAll(marks, "─", "━"), ""
		if turn == 1 {
			line, end = "●"+string([]rune(line)[1:]), " lease"
		}
		if turn == room.Turns && room.Beyond == 0 {
			end += " far end"
		}
		rows = append(rows, fmt.Sprintf("%4d │", turn)+s.Outward.Render(line)+"│"+end)
	}
	rows = append(rows, s.Dim.Render(look.Fit(fmt.Sprintf("turn   once round %s, a peg every %s",
		mill.Circumference.As(m.project.Plan.Spec.Units.Long(), 2),
		mill.PegStep.As(m.project.Plan.Spec.Units.Short(), 1)), w)), "")
	return rows
}

// raddleDrawing shows the sections in the middle of the raddle, end by end, neighbouring groups in two
// shades and their numbers below.
func (m Model) raddleDrawing(w int) []string {
	list := m.project.Raddle
	var teeth, counts strings.Builder
	from, to := middleSections(list.Sections, w-2)
	for i := from; i < to; i++ {
		sec := list.Sections[i]
		edge := "│"
		if sec.FromCentre == 1 {
			edge = "┃"
		}
		width := max(sec.Ends, len(fmt.Sprint(sec.Ends)))
		teeth.WriteString(edge + look.Pad(m.endsOf(sec), width))
		counts.WriteString(" " + look.Center(fmt.Sprint(sec.Ends), width) +
			strings.Repeat(" ", width-len(look.Center(fmt.Sprint(sec.Ends), width))))
	}
	teeth.WriteString("│")
	title := fmt.Sprintf("raddle: %s, the middle %d", measure.Counted(len(list.Sections), "section", "sections"),
		to-from)
	if to-from == len(list.Sections) {
		title = fmt.Sprintf("raddle: %s", measure.Counted(len(list.Sections), "section", "sections"))
	}
	return []string{m.Styles.Dim.Render(look.Fit(title+", groups in two shades", w)),
		look.Fit(m.Styles.Outward.Render(teeth.String()), w), look.Fit(counts.String(), w)}
}

// endsOf draws the ends of a section, shaded by group.
func (m Model) endsOf(sec loom.RaddleSection) string {
	if sec.Ends == 0 {
		return ""
	}
	step := 1
	if sec.Last < sec.First {
		step = -1
	}
	var b strings.Builder
	for end := sec.First; ; end += step {
		r := '█'
		if at, err := m.project.Plan.Locate(end); err == nil && at.Pass%2 == 0 {
			r = '░'
		}
		b.WriteRune(r)
		if end == sec.Last {
			return b.String()
		}
	}
}

// middleSections chooses as many sections round the middle as find room.
func middleSections(list []loom.RaddleSection, w int) (from, to int) {
	wide := func(i int) int { return max(list[i].Ends, len(fmt.Sprint(list[i].Ends))) + 1 }
	from = len(list) / 2
	to = from
	for used := 0; ; {
		before := used
		if to < len(list) && used+wide(to) <= w {
			used += wide(to)
			to++
		}
		if from > 0 && used+wide(from-1) <= w {
			from--
			used += wide(from)
		}
		if used == before {
			return from, to
		}
	}
}

// dentDrawing shows the first dents of the reed with the ends in each.
func (m Model) dentDrawing(w int) []string {
	sley := m.project.Sley
	var dents, counts strings.Builder
	shown := 0
	for _, n := range sley.Dents {
		width := max(n, len(fmt.Sprint(n)))
		if dents.Len() > 0 && shown+width+1 > w-2 {
			break
		}
		shown += width + 1
		dents.WriteString("│" + look.Pad(strings.Repeat("•", n), width))
		counts.WriteString(" " + look.Pad(fmt.Sprint(n), width))
	}
	return []string{m.Styles.Dim.Render(look.Fit("reed, from the left: order "+m.project.Order.String(), w)),
		m.Styles.Outward.Render(dents.String() + "│"), counts.String()}
}
