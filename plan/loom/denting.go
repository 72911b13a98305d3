package loom

import (
	"fmt"
	"strings"

	"millside/plan/field"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// Denting lays ends of different widths in a reed, as a draft with crammed and spaced threads asks for: each
// end goes through the dent in which the middle of its width lies, from the left. Dents in which no middle
// lies stay empty. The widths are those of the ends from left to right, each above nothing. The error is
// a [*measure.FieldError]: for the zero reed, no ends, a width of nothing, or over 100 ends in a dent.
func (r Reed) Denting(widths []measure.Length) ([]int, error) {
	if r.IsZero() {
		return nil, &measure.FieldError{Field: field.Reed.Name, Value: "", Want: reedWants}
	}
	if len(widths) < 1 || len(widths) > measure.MaxEnds {
		return nil, measure.Outside(field.Ends.Name, len(widths), 1, measure.MaxEnds, "")
	}
	var dents []int
	twice := measure.Length(0) // where an end begins, doubled, so that its middle is a whole number
	first := -1
	for _, w := range widths {
		if w <= 0 || w > measure.Metre {
			return nil, &measure.FieldError{Field: "spacing of a thread", Value: w.String(),
				Want: "above 0, at most 1 m"}
		}
		middle := twice + w
		twice += 2 * w
		dent := measure.SmallCount(ratio.Down, ratio.Mul(r.perNanometre(), ratio.Quo(ratio.Of(middle), ratio.Of(2))))
		if first < 0 {
			first = dent // the reed may begin anywhere
		}
		for len(dents) <= dent-first {
			if len(dents) == measure.MaxEnds {
				return nil, measure.Outside("dents", dent, 1, measure.MaxEnds, "")
			}
			dents = append(dents, 0)
		}
		if dents[dent-first]++; dents[dent-first] > 100 {
			return nil, &measure.FieldError{Field: "spacing of a thread", Value: w.String(),
				Want: "at most 100 ends a dent, which a reed of " + r.String() + " doesn't give"}
		}
	}
	return dents, nil
}

// dentsText writes the ends in each dent, dents that are alike drawn together: "24 dents of 2, 6 of 4".
func dentsText(dents []int) string {
	var parts []string
	for i := 0; i < len(dents); {
		from := i
		for i < len(dents) && dents[i] == dents[from] {
			i++
		}
		noun := " of"
		if from == 0 {
			noun = " " + strings.TrimPrefix(measure.Counted(i-from, "dent", "dents"), fmt.Sprint(i-from)+" ") + " of"
		}
		if dents[from] == 0 {
			parts = append(parts, fmt.Sprintf("%d empty", i-from))
			continue
		}
		parts = append(parts, fmt.Sprintf("%d%s %d", i-from, noun, dents[from]))
	}
	return strings.Join(parts, ", ")
}
