package mill

import (
	"fmt"
	"strings"

	"millside/counter/session"
	"millside/plan"
	"millside/plan/wind"
	"millside/tui/look"
)

// onRight says on which side of the screen a direction stands: outward on the right, return on the left, the
// other way round in a left-handed layout.
func (m Model) onRight(d wind.Direction) bool {
	return d.Far() == (m.s.State().Plan.Spec.Hand == wind.RightHanded)
}

// onSide sets rows on the side of their direction.
func (m Model) onSide(rows []string, d wind.Direction, w int) []string {
	in := 2
	if m.onRight(d) {
		in = max(w-widest(rows)-2, 0)
	}
	return look.Indent(rows, in)
}

// directionWord is the word of a direction with its arrow, which points to its side.
func (m Model) directionWord(d wind.Direction) string {
	if m.onRight(d) {
		return strings.ToUpper(d.String()) + " >"
	}
	return "< " + strings.ToUpper(d.String())
}

// bandSizes is the direction with the pass that is wound, on the ground of the direction: as a line, and in
// block letters of every size that finds room. The number of the pass stands on this ground and nowhere else,
// the ends that stand never do.
func (m Model) bandSizes(in session.Instruction, w int) []look.Drawing {
	word := m.directionWord(in.Pass.Direction)
	line := strings.ReplaceAll(strings.ReplaceAll(word, ">", "━━▶"), "<", "◀━━")
	sizes := []look.Drawing{look.Drawn(m.bandRows(in, []string{line},
		[]string{fmt.Sprintf("pass %d of %d", in.Pass.Number, in.Of)}, w))}
	number := fmt.Sprint(in.Pass.Number)
	for z := look.Blocks; ; z++ {
		beside := "PASS " + number
		if z == look.Blocks {
			beside = number
		}
		if m.Styles.Width(word, z)+m.Styles.Width(beside, look.Blocks+(z-look.Blocks)/2)+10 > w {
			return sizes
		}
		sizes = append(sizes, look.Drawing{Rows: m.Styles.Rows(z), Draw: func() []string {
			big := m.Styles.Big(word, z)
			return m.bandRows(in, big, m.passNumber(in, w-10-look.Wide(big[0]), z), w)
		}})
	}
}

// passNumber is the number of the pass as large as it finds room beside the direction.
func (m Model) passNumber(in session.Instruction, w int, most look.Size) []string {
	rows, number := m.Styles.Rows(most), fmt.Sprint(in.Pass.Number)
	for _, text := range []string{"PASS " + number, number} {
		if z := m.Styles.Fitting(text, most, w, rows); z >= look.Blocks {
			return m.Styles.Big(text, z)
		}
	}
	return []string{number} // bandSizes leaves room for more
}

// bandRows sets the direction on its side, the pass on the other, and between them the kind of pass where there is
// room.
func (m Model) bandRows(in session.Instruction, word, pass []string, w int) []string {
	band, right := m.Styles.Band(in.Pass.Direction), m.onRight(in.Pass.Direction)
	gap := w - widest(word) - widest(pass) - 4
	pass, kind := middle(pass, len(word)), m.kindBetween(in.Kind, gap, len(word))
	var out []string
	for i, l := range word {
		other := ""
		if i < len(pass) {
			other = pass[i]
		}
		left, at := "  "+l, widest(word)+2
		end := other + "  "
		if right {
			left, end, at = "  "+other, l+"  ", widest(pass)+2
		}
		if kind != nil {
			left = look.Pad(left, at) + look.Center(kind[i], gap)
		}
		out = append(out, band.Render(look.Pad(look.Spread(left, end, w), w)))
	}
	return out
}

// kindBetween is the name of a kind of pass in a gap of so many cells and rows, in block letters where they find room;
// nil where there is no kind, and where not even its words find room.
func (m Model) kindBetween(kind, gap, rows int) []string {
	words := session.KindWords(kind)
	if words == "" || look.Wide(words)+4 > gap {
		return nil
	}
	drawn := []string{words}
	number := plan.KindName(kind)
	if z := m.Styles.Fitting(number, look.Blocks+look.Size(rows/6), gap-9, rows); z >= look.Blocks {
		big := m.Styles.Big(number, z)
		label := middle([]string{"kind"}, len(big))
		drawn = look.Beside(label, big, 4, 1)
	}
	wide := widest(drawn)
	for i := range drawn {
		drawn[i] = look.Pad(drawn[i], wide)
	}
	return append(middle(drawn, rows), look.Blanks(rows)...)[:rows]
}

// endSizes are the ends that stand on the mill, with their word as large as the number.
func (m Model) endSizes(in session.Instruction, w int) []look.Drawing {
	s := m.Styles
	sizes := []look.Drawing{look.Drawn(nil)}
	text := fmt.Sprintf("%d ENDS", in.Standing)
	words := fmt.Sprintf("on the mill, of %d", in.ChainEnds)
	for z := look.Blocks; s.Width(text, z)+4 <= w; z++ {
		sizes = append(sizes, look.Drawing{Rows: s.Rows(z), Draw: func() []string {
			rows := s.Big(text, z)
			if wide := look.Wide(rows[0]); wide+len(words)+8 <= w {
				rows = look.Beside(rows, append(look.Blanks(len(rows)-1), s.Dim.Render(words)), wide, 2)
			}
			return look.Indent(rows, 2)
		}})
	}
	return sizes
}
