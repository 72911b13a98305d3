package beside_test

import (
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/beside"
	"millside/plan/finishing"
	"millside/plan/frame"
	"millside/plan/measure"
)

// Own example, by hand: 5 yd on a mill of two yards, a yard of indigo and half a yard more from the lease on.
func TestPaintedWarp(t *testing.T) {
	s := plan.DefaultSpec()
	s.Length, s.Painted = 5*measure.Yard, frame.Sections{{Length: measure.Yard, Name: "indigo"},
		{Length: measure.Yard / 2}}
	p, err := plan.New(s)
	if err != nil {
		t.Fatal(err)
	}
	text := ""
	for _, row := range beside.Painted(p) {
		text += row.Name + ": " + row.Value.String() + "\n"
	}
	if want := `section 1, indigo: 36 in, from 0 in to 36 in; a tie there: 0.5 turns, peg 2
section 2: 18 in, from 36 in to 54 in; a tie there: 0.75 turns, peg 3
the rest: 3.5 yd, up to the far end peg
`; text != want {
		t.Errorf("painted:\n%s\nwant:\n%s", text, want)
	}
	found := false
	for _, step := range finishing.Steps(p, p.Chains[0]) {
		if step.ID == finishing.StepBorders {
			found = strings.Contains(step.Detail, "36 in (0.5 turns, peg 2), 54 in (0.75 turns, peg 3)") &&
				step.Title == "2 ties at the borders of the painted sections"
		}
	}
	if !found {
		t.Error("no finishing step for the ties at the borders")
	}
	s.Painted = append(s.Painted, frame.Section{Length: 4 * measure.Yard})
	if _, err := plan.New(s); err == nil || !strings.Contains(err.Error(), "at most 5 yd together") {
		t.Errorf("sections longer than the warp: %v", err)
	}
}
