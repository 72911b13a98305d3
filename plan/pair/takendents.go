package pair

import (
	"fmt"
	"slices"

	"millside/plan/loom"
)

// takenRule is what becomes of ends that one warp alone has crammed and spaced.
const takenRule = "The %s alone is crammed and spaced, and keeps its dents: each end of the %s goes into the dent of " +
	"the end on its left, the outer ones on the left into that on their right."

// takeDents takes the order of the dents over from the warp that is crammed and spaced by itself, where nothing is said
// of both. Each end of the other lies in the dent of its neighbour to the left. Two orders of two warps can't both be
// kept, and neither can one where the warps lie beside one another or a selvedge has dents of its own: it is then to be
// said how both are sleyed. The error is a [*measure.FieldError].
func (j *Joint) takeDents(s loom.Sleying) error {
	if len(j.Ask.Dents) > 0 || j.Reed.IsZero() {
		return nil
	}
	var own []Which
	for w, pr := range j.Warps {
		if l := pr.Plan.Spec.Loom; len(l.Dents) > 0 || len(l.Widths) == pr.Plan.EndsWound() {
			own = append(own, Which(w))
		}
	}
	const say = "how many ends of both lie in each dent, such as \"20 dents of 3, 4 of 6\": "
	switch {
	case len(own) == 0:
		return nil
	case len(own) == 2:
		return DentsField.Wrong("", say+"each warp is crammed and spaced by itself, and both can't be kept")
	case j.Beside:
		return DentsField.Wrong("", say+fmt.Sprintf("the %s is crammed and spaced by itself, and the other warp lies "+
			"beside it", own[0]))
	case s.EdgeDents > 0 || s.Doubled > 0 || s.Floating > 0:
		return DentsField.Wrong("", say+fmt.Sprintf("the %s is crammed and spaced by itself, and the %s has a "+
			"selvedge in dents of its own", own[0], own[0].Other()))
	case !j.Ask.Sett.IsZero():
		return SettField.Wrong(j.Ask.Sett.String(), fmt.Sprintf("none: the %s is crammed and spaced by itself, and "+
			"its dents decide; or the dents of both", own[0]))
	}
	dents, err := j.dentsOf(own[0])
	if err != nil {
		return DentsField.In(err)
	}
	j.takenOf, j.taken = own[0], j.around(own[0], dents)
	for _, n := range j.taken {
		if n > 100 {
			return DentsField.Wrong("", say+fmt.Sprintf("in the dents of the %s %d ends would lie in one", own[0], n))
		}
	}
	return nil
}

// dentsOf is the ends of one warp alone in its dents, from left to right.
func (j *Joint) dentsOf(w Which) (dents []int, err error) {
	p := j.Warps[w].Plan
	l := p.Spec.Loom
	if len(l.Dents) > 0 {
		if dents, err = l.Dents.Fill(p.EndsWound()); err == nil && l.FirstEnd == loom.RightSide {
			slices.Reverse(dents)
		}
		return dents, err
	}
	widths := slices.Clone(l.Widths)
	if l.FirstEnd == loom.RightSide {
		slices.Reverse(widths)
	}
	return j.Reed.Denting(widths)
}

// around puts the ends of both into the dents that those of one lie in by themselves.
func (j *Joint) around(of Which, own []int) []int {
	both := make([]int, len(own))
	at, left := 0, own[0] // of the dent in hand, so many ends are still to come
	for _, w := range j.Places.Order {
		if w == of {
			for left == 0 {
				at++
				left = own[at]
			}
			left--
		}
		both[at]++
	}
	return both
}
