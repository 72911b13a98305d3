package mill

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"millside/counter/session"
	"millside/plan/wind"
	"millside/tui/keys"
	"millside/tui/look"
)

// viewQuestion asks about the lease, with the place to look at drawn large: as it is if the answer is yes, and as it is
// if it is the other.
func (m Model) viewQuestion(w, h int) string {
	s, k := m.Styles, m.Keys
	q, _ := m.s.Question()
	ask := textPart(q.Text, s.Strong, w)
	large := look.NewPart(nil)
	for z := look.Blocks; z < look.Blocks+3; z++ {
		rows := s.Wrapped(strings.ToUpper(q.Short), z, w-4)
		if rows == nil || w < largeQuestion {
			break
		}
		large.Sizes = append(large.Sizes, look.Drawn(look.Indent(look.Painted(rows, s.Title), 2)))
	}
	seam := look.NewPart(nil)
	for _, rows := range []int{6, 8, 10, 13, 16, 20} {
		seam.Sizes = append(seam.Sizes, look.Drawing{Rows: rows,
			Draw: func() []string { return m.seamRows(q, w, rows) }})
	}
	answers := look.NewPart(m.answerSizes(q, w)...)
	wishes := []look.Wish{seam.At(1), answers.At(1), large.At(1), seam.At(2), seam.At(3), answers.At(2), seam.At(4),
		large.At(2), seam.At(5), seam.At(6), large.At(3)}
	bindings := []key.Binding{keys.As(k.Laid, "pass laid"), k.Yes, k.Other, k.Later, k.Undo, k.Leave}
	if w < narrowKeys {
		bindings = []key.Binding{keys.As(k.Laid, "laid"), k.Yes, keys.As(k.Other, "no"), k.Later,
			keys.As(k.Undo, "back"), k.Leave}
	}
	line := s.KeyLine(w, bindings...)
	title := heading{words: "LOOK AT THE LEASE", large: "LOOK AT THE LEASE", ground: s.Warn, narrow: "LEASE"}
	return m.titled(title, line, []*look.Part{large, ask, seam, answers}, wishes, w, h)
}

// largeQuestion is the width from which the question itself is drawn in block letters; below it would take too many
// rows.
const largeQuestion = 100

// answerSizes are the answers with their keys.
func (m Model) answerSizes(q session.Question, w int) [][]string {
	k := m.Keys
	row := func(key, text string) []string {
		return look.Beside([]string{"  " + m.Styles.Strong.Render(key)}, look.Wrap(text, w-12), 8, 1)
	}
	answers := append(row(k.Yes.Help().Key, q.Yes), row(k.Other.Help().Key, q.Other)...)
	press := row(k.Laid.Help().Key, q.PressDoes)
	return [][]string{slices.Concat(answers, press), slices.Concat(answers, row(k.Later.Help().Key, q.Later), press)}
}

// seamRows draws the seam twice, side by side where there is room: as it should be, and as it is in the other order.
func (m Model) seamRows(q session.Question, w, h int) []string {
	half := (w - 8) / 2
	draw := func(ends []session.SeamEnd, key, says string) []string {
		label := strings.ToUpper(key + " " + says)
		if big := m.Styles.Rows(look.Blocks); h >= largeSeam && m.Styles.Width(label, look.Blocks) <= half {
			head := look.Painted(m.Styles.Big(label, look.Blocks), m.Styles.Strong)
			return append(head, m.drawSeam(q, ends, half, h-big, "")...)
		}
		return m.drawSeam(q, ends, half, h, key+": "+says)
	}
	yes := draw(q.Seam.Second, m.Keys.Yes.Help().Key, "yes")
	other := draw(q.Seam.Turned, m.Keys.Other.Help().Key, "no")
	return look.Indent(look.Beside(yes, other, half, 4), 2)
}

// largeSeam is the height from which the answer to a drawing stands above it in block letters.
const largeSeam = 10

// drawSeam draws the last ends of one group and the first of the next on peg A, from foot to tip: an end over the peg
// crosses it, an end under it is hidden behind it.
func (m Model) drawSeam(q session.Question, second []session.SeamEnd, w, h int, label string) []string {
	first := q.Seam.First
	wide := func() int { return (w - 6) / max(len(first)+len(second)+1, 1) }
	for len(first) > 2 && len(second) > 2 && wide() < 4 {
		first, second = first[1:], second[:len(second)-1]
	}
	cell := min(max(wide(), 2), 7)
	c := look.NewCanvas(w, h, false)
	peg, bottom := (h-2)/2+1, h-3
	c.Across(1, w-2, peg, '═', look.InkPeg)
	ends := append(append([]session.SeamEnd{}, first...), second...)
	for i, end := range ends {
		x := 3 + cell*i + cell/2
		ink := look.InkPath
		if i >= len(first) {
			x, ink = x+cell, look.InkPath2
		}
		c.Down(x, 1, bottom, '█', ink)
		c.Down(x+1, 1, bottom, '█', ink)
		if !end.OverA {
			for _, dx := range []int{0, 1} {
				c.Set(x+dx, peg, '═', look.InkPeg)
				if h > 8 {
					c.Set(x+dx, peg-1, ' ', look.InkNone)
					c.Set(x+dx, peg+1, ' ', look.InkNone)
				}
			}
		}
		c.Text(x+1, bottom+1, fmt.Sprint(end.Position), look.InkStrong)
	}
	seam := 3 + cell*len(first) + cell/2
	c.Text(seam, 0, label, look.InkStrong)
	c.Set(seam, h-1, '▲', look.InkStrong)
	c.Text(seam+10, h-1, "where they meet", look.InkLabel)
	return c.Lines(m.Styles.Inks(wind.Outward))
}
