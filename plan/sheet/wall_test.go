package sheet

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"millside/plan"
	"millside/plan/stripe"
	"millside/plan/times"
	"millside/plan/wind"

	"pgregory.net/rapid"
)

// drawPlan makes a plan of any kind, plain or striped.
func drawPlan(t *rapid.T) *plan.Plan {
	s := plan.DefaultSpec()
	s.Positions = rapid.IntRange(2, 16).Draw(t, "positions")
	s.Group = rapid.IntRange(1, s.Positions).Draw(t, "group")
	s.Ends = rapid.IntRange(1, 400).Draw(t, "ends")
	s.ChainEnds = rapid.SampledFrom([]int{0, 0, 60, 131}).Draw(t, "chain ends")
	s.TieEvery = rapid.SampledFrom([]int{0, 20, 100}).Draw(t, "tie every")
	s.LastPass = wind.LastPass(rapid.IntRange(0, 1).Draw(t, "last pass"))
	if rapid.Bool().Draw(t, "striped") {
		// A small paddle has as many halts and kinds of pass as a large one, and its search is over at once.
		s.Positions = rapid.IntRange(2, 8).Draw(t, "few positions")
		s.Group = min(s.Group, s.Positions)
		part := rapid.SampledFrom([]string{"3 red", "2 white", "7 blue", "1 red", "5 white", "2 times (4 red, 6 white)",
			"3 times (2 blue, 2 red, 8 white)"})
		s.LastPass = wind.ShortLast
		s.Stripes = strings.Join(rapid.SliceOfN(part, 1, 4).Draw(t, "stripes"), ", ")
		made, err := stripe.ForPlan(context.Background(), s, stripe.Ask{}, nil)
		if err != nil {
			t.Skip(err)
		}
		s = made.Spec
	}
	p, err := plan.New(s)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// unfolded gives the steps of a chain in the order of winding, each with its passes of one round.
func unfolded(c Chain) []Step {
	var steps []Step
	for _, b := range c.Blocks {
		for round := range b.Times {
			for _, s := range b.Steps {
				s.Passes = [][]int{s.Passes[round]}
				steps = append(steps, s)
			}
		}
	}
	return steps
}

// Whoever ticks the boxes in order ticks every pass once, and finds before each what the ledger says.
func TestBoxesAreThePasses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		wall := NewWall(p, times.PublishedPace(), time.Time{})
		for i, c := range p.Chains {
			next := 1
			for _, step := range unfolded(wall.Wound[i]) {
				for k, number := range step.Passes[0] {
					if number != next {
						t.Fatalf("chain %d: pass %d stands where pass %d is laid", c.Number, number, next)
					}
					next++
					work := p.WorkBefore(c.Number, number)
					if (k == 0) != work.Any() || k == 0 && (step.Work == "") == work.Any() {
						t.Fatalf("chain %d, pass %d: the ledger has %+v, the sheet %q", c.Number, number, work,
							step.Work)
					}
					if k == 0 && work.Cut != 0 && !strings.Contains(step.Work, "cut off "+work.Cut.String()) {
						t.Fatalf("chain %d, pass %d: %q doesn't cut off %s", c.Number, number, step.Work, work.Cut)
					}
					if k == 0 && work.Tie != 0 && !strings.Contains(step.Work, "tie on "+work.Tie.String()) {
						t.Fatalf("chain %d, pass %d: %q doesn't tie on %s", c.Number, number, step.Work, work.Tie)
					}
					if pass := c.Passes[number-1]; step.Ends != pass.Ends() || step.Positions != pass.Carried.String() {
						t.Fatalf("chain %d, pass %d carries %s, on the sheet %s", c.Number, number, pass.Carried,
							step.Positions)
					}
				}
			}
			if next != len(c.Passes)+1 {
				t.Fatalf("chain %d: %d boxes for %d passes", c.Number, next-1, len(c.Passes))
			}
		}
	})
}

// Every pass goes one of the ways, and one only.
func TestWaysAreThePasses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		wall := NewWall(p, times.PublishedPace(), time.Time{})
		for _, c := range p.Chains {
			for _, pass := range c.Passes {
				named, others := 0, 0
				for _, w := range wall.Ways {
					if w.Direction != pass.Direction.String() {
						continue
					}
					if w.Passes == "" || w.Passes == othersPasses {
						others++
					}
					if w.First == pass.FirstOpening.String() && w.FirstPeg == pass.FirstPeg().String() &&
						w.Over == pass.CrossOver() && w.Turn == pass.TurnAfter.String() {
						named++
					}
				}
				if named != 1 || others != 1 {
					t.Fatalf("chain %d, pass %d goes %d ways; %d are those of all others: %+v", c.Number, pass.Number,
						named, others, wall.Ways)
				}
			}
		}
	})
}

// What repeats is drawn together, and the passes of its rounds stand in their order.
func TestFold(t *testing.T) {
	step := func(work string, passes ...int) Step {
		return Step{Work: work, Ends: 1, Positions: "1", Passes: [][]int{passes}}
	}
	blocks := fold([]Step{step("start", 1), step("a", 2), step("b", 3), step("a", 4), step("b", 5), step("a", 6),
		step("b", 7), step("c", 8)})
	got := fmt.Sprint(blocks)
	want := fmt.Sprint([]Block{
		{1, []Step{step("start", 1)}},
		{3, []Step{{Work: "a", Ends: 1, Positions: "1", Passes: [][]int{{2}, {4}, {6}}},
			{Work: "b", Ends: 1, Positions: "1", Passes: [][]int{{3}, {5}, {7}}}}},
		{1, []Step{step("c", 8)}},
	})
	if got != want {
		t.Errorf("folded to\n%s\nnot\n%s", got, want)
	}
	// The same work on passes that go the other way is not the same step.
	if blocks := fold([]Step{step("a", 1), step("a", 2)}); len(blocks) != 1 || len(blocks[0].Steps) != 2 {
		t.Errorf("an outward and a return pass were drawn together: %v", blocks)
	}
}

// A plain warp whose group divides its ends has two ways and one step; chains that stop alike share what
// follows.
func TestPlainWall(t *testing.T) {
	s := plan.DefaultSpec()
	s.Name, s.Ends, s.Group, s.ChainEnds = "plain", 400, 10, 200
	p, err := plan.New(s)
	if err != nil {
		t.Fatal(err)
	}
	wall := NewWall(p, times.PublishedPace(), time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC))
	if len(wall.Ways) != 2 || len(wall.Wound) != 2 || len(wall.Wound[0].Blocks) != 1 ||
		len(wall.Wound[0].Blocks[0].Steps) != 1 {
		t.Errorf("%+v", wall)
	}
	if len(wall.After) != 1 || !slices.Equal(wall.After[0].Chains, []int{1, 2}) ||
		wall.After[0].Heading(wall.Chains) != "After the last pass of each chain" {
		t.Errorf("%+v", wall.After)
	}
	if wall.Date != "25 November 2026" ||
		!strings.HasPrefix(wall.Summary().String(), "400 ends, 40 passes, 2 chains; 5 yd") {
		t.Errorf("%s, %s", wall.Date, wall.Summary())
	}
}
