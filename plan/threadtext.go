package plan

import (
	"fmt"
	"millside/plan/wind"
	"slices"
	"strings"
)

// ThreadText says which yarn is put through which positions, colour by colour in the order of the
// positions: "3, 4, 9 D red; 5 E blue; take the yarn out of 7". In a plain warp it lists the positions.
func (p *Plan) ThreadText(list []Threading) string {
	var order []int
	at := map[int]wind.Positions{}
	for _, t := range list {
		if at[t.To] == 0 && (t.To != 0 || !p.Striped() || t.Empties()) {
			order = append(order, t.To)
		}
		at[t.To] |= wind.OnePosition(t.Position)
	}
	// Yarn is taken out last in the sentence, whatever its position.
	slices.SortStableFunc(order, func(a, b int) int { return boolInt(a == 0) - boolInt(b == 0) })
	var parts []string
	for _, colour := range order {
		switch {
		case !p.Striped():
			parts = append(parts, at[colour].String())
		case colour == 0:
			parts = append(parts, "take the yarn out of "+at[colour].String())
		default:
			parts = append(parts, fmt.Sprintf("%s %s", at[colour], p.ColourText(colour)))
		}
	}
	return strings.Join(parts, "; ")
}

func boolInt(b bool) int {
	if b {
		return 1
	}
	return 0
}

// WorkText says what the hands do at a peg, in their order: "cut off 8 to 10; thread 3, 4 D red; tie on 3, 4".
// It is empty where they do nothing. Numbers are positions of the paddle.
func (p *Plan) WorkText(w PegWork) string {
	var parts []string
	if w.Cut != 0 {
		parts = append(parts, "cut off "+w.Cut.String())
	}
	if len(w.Thread) > 0 {
		thread := p.ThreadText(w.Thread)
		if w.Threaded() != 0 {
			thread = "thread " + thread
		}
		parts = append(parts, thread)
	}
	if w.Tie != 0 {
		parts = append(parts, "tie on "+w.Tie.String())
	}
	return strings.Join(parts, "; ")
}
