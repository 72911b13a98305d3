package plan_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"millside/plan"
	"millside/plan/measure"
)

// 396 ends by 10: 40 passes, the last of 6; or 40 full passes with 4 spare ends.
func TestChoicesFor396By10(t *testing.T) {
	var short, spare bool
	for _, c := range plan.Choices(396, 10, 12) {
		switch {
		case c.Group == 10 && c.Kind == plan.ShortPass:
			short = c.Passes == 40 && c.LastEnds == 6 && c.Spares == 0 && c.Label() == "group of 10, last pass of 6" &&
				strings.Contains(strings.Join(c.Reasons, "; "), "the last pass carries 6, so 4 ends are cut off at the far end peg before it")
		case c.Group == 10 && c.Kind == plan.SpareEnds:
			spare = c.Passes == 40 && c.LastEnds == 10 && c.Spares == 4 && c.Label() == "group of 10, 4 spare ends" &&
				strings.Contains(strings.Join(c.Reasons, "; "), "4 spare ends are wound")
		case 396%c.Group != 0:
			t.Errorf("a choice that doesn't reach 396 ends: %+v", c)
		}
	}
	if !short || !spare {
		t.Errorf("short last pass listed rightly: %v, spare ends: %v", short, spare)
	}
}

// The choices are sorted, say why, and reach the number of ends.
func TestChoicesHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ends := rapid.IntRange(1, 3000).Draw(t, "ends")
		positions := rapid.IntRange(1, measure.MaxPositions).Draw(t, "positions")
		group := rapid.IntRange(1, positions).Draw(t, "group")
		list := plan.Choices(ends, group, positions)
		asked := 0
		for i, c := range list {
			if i > 0 && list[i-1].Cost > c.Cost {
				t.Fatalf("choice %d costs %d after one of %d", i, c.Cost, list[i-1].Cost)
			}
			if (c.Passes-1)*c.Group+c.LastEnds != ends+c.Spares || c.LastEnds < 1 || c.LastEnds > c.Group || c.Group > positions {
				t.Fatalf("%d ends: %+v", ends, c)
			}
			if (c.Finish == plan.AtLease) != (c.Passes%2 == 0) {
				t.Fatalf("%d passes finish %v", c.Passes, c.Finish)
			}
			if len(c.Reasons) < 3 || c.Label() == "" {
				t.Fatalf("a choice without its reasons: %+v", c)
			}
			for _, why := range c.Reasons {
				if strings.TrimSpace(why) == "" {
					t.Fatalf("an empty reason: %+v", c)
				}
			}
			if c.Group == group {
				asked++
			}
			choiceIsWhatThePlanDoes(t, ends, positions, c)
		}
		if want := min(ends%group+1, 2); asked != want {
			t.Fatalf("%d ends by %d: listed %d times, want %d", ends, group, asked, want)
		}
	})
}

// choiceIsWhatThePlanDoes winds the choice.
func choiceIsWhatThePlanDoes(t *rapid.T, ends, positions int, c plan.Choice) {
	s := plan.DefaultSpec()
	s.Ends, s.Group, s.Positions = ends, c.Group, positions
	if c.Kind == plan.SpareEnds {
		s.LastPass = plan.FullLast
	}
	p := must(t, s)
	if p.Passes() != c.Passes || p.Spares() != c.Spares || p.Chains[0].Finish() != c.Finish ||
		p.Chains[0].Passes[c.Passes-1].Ends() != c.LastEnds {
		t.Fatalf("the plan does otherwise than %+v", c)
	}
}

func TestChoicesOutOfRange(t *testing.T) {
	for _, n := range [][3]int{{0, 10, 12}, {-1, 10, 12}, {measure.MaxEnds + 1, 10, 12}, {100, 0, 12}, {100, 13, 12}, {100, 1, 0}, {100, 1, 61}} {
		if list := plan.Choices(n[0], n[1], n[2]); list != nil {
			t.Errorf("Choices(%v) = %v", n, list)
		}
	}
}
