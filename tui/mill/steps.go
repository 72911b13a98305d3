package mill

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"millside/counter/session"
	"millside/plan"
	"millside/tui/look"
)

// step is one thing that the hands do on a pass: in one or two short phrases to be drawn large, and in words.
type step struct {
	phrases []string
	words   string
	turn    rune // the sign of a turn, drawn before the first phrase
}

// stepsOf are the steps of a pass, in the order of the hands.
func stepsOf(in session.Instruction) []step {
	lease := step{words: fmt.Sprintf("lease: %s over %s, flick, %s over %s", in.Lease[0].Opening, in.Lease[0].Peg, in.Lease[1].Opening, in.Lease[1].Peg)}
	for _, d := range in.Lease {
		lease.phrases = append(lease.phrases, d.Peg.String()+" "+openingWord(d.Opening))
	}
	cross := step{phrases: []string{fmt.Sprintf("OVER %d", in.Over), fmt.Sprintf("UNDER %d", in.Under)},
		words: fmt.Sprintf("counting cross: over %d, under %d", in.Over, in.Under)}
	turn := step{phrases: []string{strings.ToUpper(in.Turn.String())}, turn: look.SignCounterclockwise,
		words: fmt.Sprintf("%s round the %s", in.Turn, in.TurnPeg)}
	if in.Turn == plan.Clockwise {
		turn.turn = look.SignClockwise
	}
	switch in.Round {
	case session.RoundKeep:
		turn.phrases = append(turn.phrases, "KEEP")
	case session.RoundFlick:
		turn.phrases = append(turn.phrases, "FLICK")
	}
	if in.Round != session.RoundNone {
		turn.words += "; " + in.Round.String()
	}
	if in.Pass.Direction.Far() {
		return []step{lease, cross, turn}
	}
	return []step{cross, lease, turn}
}

// openingWord names the half of the group that is up.
func openingWord(o plan.Opening) string {
	if o == plan.HolesUp {
		return "HOLES"
	}
	return "SLOTS"
}

// narrow is the width below which instructions in words lose the words that can be missed.
const narrow = 56

// stepSizes draws the steps in all sizes that find room in w cells: in words, at double width, and in block
// letters, each once without and once with the words below.
func stepSizes(s look.Styles, steps []step, w int, big lipgloss.Style) [][]string {
	words := make([][]string, len(steps))
	plainRows := []string{}
	for i, st := range steps {
		text := st.words
		if w < narrow {
			_, after, found := strings.Cut(text, ": ")
			if found {
				text = after
			}
		}
		words[i] = look.Wrap(text, w)
		plainRows = append(plainRows, look.Painted(words[i], big)...)
	}
	sizes := [][]string{plainRows}
	for z := look.Double; ; z++ {
		var bare, worded []string
		for i, st := range steps {
			rows, ok := st.draw(s, z, w)
			if !ok {
				return sizes
			}
			rows = look.Painted(rows, big)
			bare, worded = append(bare, rows...), append(append(worded, rows...), words[i]...)
		}
		sizes = append(sizes, bare)
		if z >= look.Blocks {
			sizes = append(sizes, worded)
		}
	}
}

// sizeOf is the place of a size among those of stepSizes.
func sizeOf(z look.Size, worded bool) int {
	at := int(z)
	if z > look.Blocks {
		at += int(z - look.Blocks)
	}
	if worded {
		at++
	}
	return at
}

// draw draws a step at a size: its phrases side by side where they find room, else one below the other.
func (st step) draw(s look.Styles, z look.Size, w int) ([]string, bool) {
	if st.turn != 0 {
		return st.drawTurn(s, z, w)
	}
	if rows := joined(s, st.phrases, z, w); rows != nil {
		return rows, true
	}
	var rows []string
	for _, p := range st.phrases {
		if s.Width(p, z) > w {
			return nil, false
		}
		rows = append(rows, padded(s.Big(p, z), w)...)
	}
	return rows, true
}

// joined sets phrases side by side at a size; nil if they are too wide.
func joined(s look.Styles, phrases []string, z look.Size, w int) []string {
	gap := 4 * max(int(z-look.Blocks)+1, 1)
	var rows []string
	for i, p := range phrases {
		big := s.Big(p, z)
		if i == 0 {
			rows = big
			continue
		}
		rows = look.Beside(rows, big, lipgloss.Width(rows[0]), gap)
	}
	if lipgloss.Width(rows[0]) > w {
		return nil
	}
	return rows
}

// drawTurn draws the sign of the turn at a size, and its words beside it as large as they find room. The sign
// is drawn only in block letters.
func (st step) drawTurn(s look.Styles, z look.Size, w int) ([]string, bool) {
	if z < look.Blocks {
		var rows []string
		for _, p := range st.phrases {
			if s.Width(p, z) > w {
				return nil, false
			}
			rows = append(rows, s.Big(p, z)...)
		}
		if one := joined(s, st.phrases, z, w); one != nil {
			rows = one
		}
		return rows, true
	}
	sign := s.Big(string(st.turn), z)
	left := lipgloss.Width(sign[0]) + 2
	for word := z; word > look.AsItIs; word-- {
		if beside := joined(s, st.phrases, word, w-left); beside != nil {
			return look.Beside(sign, middle(beside, len(sign)), left-2, 2), true
		}
		if rows := stacked(s, st.phrases, word, w-left); rows != nil && len(rows) <= len(sign) {
			return look.Beside(sign, middle(rows, len(sign)), left-2, 2), true
		}
	}
	return nil, false
}

// stacked sets phrases one below the other at a size; nil if they are too wide.
func stacked(s look.Styles, phrases []string, z look.Size, w int) []string {
	var rows []string
	for _, p := range phrases {
		if s.Width(p, z) > w {
			return nil
		}
		rows = append(rows, s.Big(p, z)...)
	}
	return rows
}

// middle sets rows in the middle of a height.
func middle(rows []string, h int) []string {
	return append(look.Blanks(max((h-len(rows))/2, 0)), rows...)
}

// padded makes rows equally wide.
func padded(rows []string, w int) []string {
	out := make([]string, len(rows))
	for i, r := range rows {
		out[i] = look.Pad(r, w)
	}
	return out
}
