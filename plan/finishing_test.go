package plan_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/wind"
)

func stepIDs(steps []finishing.Step) string {
	var ids []string
	for _, s := range steps {
		ids = append(ids, string(s.ID))
	}
	return strings.Join(ids, " ")
}

// Six ties come before a warp leaves the mill: loop, cross and choke at both ends (common practice, no
// source), first at the end where the winder stands; chokes between on a long warp; then it is labelled
// and taken off.
func TestFinishingOrder(t *testing.T) {
	const (
		free = "fasten cut park knot"
		near = "near-loop near-cross near-choke"
		far  = "far-loop far-cross far-choke"
		off  = "label slow chain secure"
	)
	for _, tt := range []struct {
		ends   int
		length measure.Length
		want   string
	}{
		{200, 2 * measure.Yard, free + " " + near + " " + far + " " + off},
		{210, 2 * measure.Yard, free + " " + far + " " + near + " " + off},
		{200, 9 * measure.Yard, free + " " + near + " " + far + " along " + off},
		{210, 9 * measure.Yard, free + " " + far + " " + near + " along " + off},
	} {
		for _, dyed := range []bool{false, true} {
			t.Run(fmt.Sprintf("%d ends, %v, dyed %v", tt.ends, tt.length, dyed), func(t *testing.T) {
				s := plan.DefaultSpec()
				s.Ends, s.Length, s.Dyed = tt.ends, tt.length, dyed
				p := must(t, s)
				steps := finishing.Steps(p, p.Chains[0])
				if got := stepIDs(steps); got != tt.want {
					t.Errorf("steps %s\nwant  %s", got, tt.want)
				}
				checkTies(t, steps, dyed)
			})
		}
	}
}

func checkTies(t *testing.T, steps []finishing.Step, dyed bool) {
	t.Helper()
	ties := 0
	for _, s := range steps {
		end, tie, _ := strings.Cut(string(s.ID), "-")
		if end != "near" && end != "far" {
			continue
		}
		ties++
		loose := strings.Contains(s.Detail, "loose")
		if tie != "cross" && loose != dyed {
			t.Errorf("%s on a warp to be dyed (%v): %s", s.ID, dyed, s.Detail)
		}
		// Tight ties resist the dye (common practice): the warning stands beside the crosses.
		if tie == "cross" && strings.Contains(s.Caution, "dyed") != dyed {
			t.Errorf("%s on a warp to be dyed (%v): %s", s.ID, dyed, s.Caution)
		}
	}
	if ties != 6 {
		t.Errorf("%d ties, not six", ties)
	}
}

// The choke ties between the crosses stand no more than two yards apart, and none could be spared.
func TestAlongTies(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := plan.DefaultSpec()
		s.Length = measure.Length(rapid.Int64Range(int64(10*measure.Centimetre), int64(200*measure.Metre)).Draw(t,
			"length"))
		p := must(t, s)
		between := p.Path.Length - 2*min(measure.Yard, p.Path.Length/3)
		n := finishing.AlongTies(p)
		if n < 0 || between > 2*measure.Yard*measure.Length(n+1) {
			t.Fatalf("%d ties along %v leave gaps of more than two yards", n, between)
		}
		if n > 0 && between <= 2*measure.Yard*measure.Length(n) {
			t.Fatalf("%d ties along %v: one less would do", n, between)
		}
	})
}

// Every step has a name of its own and says what to do; nothing it says is lost in rounding.
func TestFinishingStepsAreSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpec(t)
		s.Length = measure.Length(rapid.Int64Range(int64(10*measure.Centimetre), int64(30*measure.Metre)).Draw(t,
			"length"))
		s.Mill.PegStep = measure.Centimetre
		s.Dyed = rapid.Bool().Draw(t, "dyed")
		s.Units = rapid.SampledFrom([]measure.LengthUnitSystem{measure.Imperial, measure.Metric}).Draw(t, "units")
		p := must(t, s)
		for _, c := range p.Chains {
			seen := map[finishing.StepID]bool{}
			for _, step := range finishing.Steps(p, c) {
				if step.ID == "" || seen[step.ID] || step.Title == "" || step.Detail == "" {
					t.Fatalf("step %+v is empty or comes twice", step)
				}
				seen[step.ID] = true
				if all := " " + step.Title + " " + step.Detail; strings.Contains(all, " 0 ") {
					t.Fatalf("%v: a length of nothing: %s", s.Length, all)
				}
			}
			label := fmt.Sprintf("chain %d of %d, %d end", c.Number, len(p.Chains), c.Ends())
			if got := stepByID(finishing.Steps(p, c), finishing.StepLabel).Detail; !strings.Contains(got, label) ||
				!strings.Contains(got, s.Name) {
				t.Fatalf("the label says %q, want %q", got, label)
			}
		}
	})
}

// The end that comes off the mill last is the first that the loom gets.
func TestChainingFollowsTheDressing(t *testing.T) {
	for dressing, want := range map[plan.Dressing][2]string{
		plan.RaddleFirst: {"Chain from the lease", "Pass the last loop over the counting cross"},
		plan.ReedFirst:   {"Chain from the counting cross", "Pass the last loop over the lease"},
	} {
		s := plan.DefaultSpec()
		s.Dressing = dressing
		p := must(t, s)
		steps := finishing.Steps(p, p.Chains[0])
		got := [2]string{stepByID(steps, finishing.StepChain).Title, stepByID(steps, finishing.StepSecure).Title}
		if got != want {
			t.Errorf("%v: %q, want %q", dressing, got, want)
		}
	}
}

func stepByID(steps []finishing.Step, id finishing.StepID) finishing.Step {
	for _, s := range steps {
		if s.ID == id {
			return s
		}
	}
	return finishing.Step{}
}

// Ends that were cut off or tied on while the warp was wound don't go round their peg: they are knotted before
// the loop is tied, at the peg where they are. 37 by 10: ten begin at the near peg, three were cut off at the
// far one, seven are cut now.
func TestFinishingSecuresEveryCutEnd(t *testing.T) {
	s := plan.DefaultSpec()
	s.Ends, s.Group = 37, 10
	p := must(t, s)
	for id, want := range map[finishing.StepID]string{
		finishing.StepFasten:   "Take the 7 ends round the peg",
		finishing.StepNearLoop: "On the way 10 ends were tied on here",
		finishing.StepFarLoop:  "On the way 3 ends were cut off here",
	} {
		if got := stepOf(t, p, 1, id).Detail; !strings.Contains(got, want) {
			t.Errorf("%s: %q doesn't say %q", id, got, want)
		}
	}
	s.Ends = 40 // nothing is cut off at the far end
	if got := stepOf(t, must(t, s), 1, finishing.StepFarLoop).Detail; strings.Contains(got, "On the way") {
		t.Errorf("a far loop without cut ends: %q", got)
	}
}

// Over all chains the steps name each tie and each cut that the hands did: those on the way with the loops,
// those after the last pass with the fastening.
func TestFinishingNamesAllCuts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := must(t, rapid.OneOf(rapid.Custom(drawSpec), rapid.Custom(drawStriped)).Draw(t, "spec"))
		begin, finish := 0, 0
		for _, c := range p.Chains {
			for _, peg := range []wind.EndPeg{wind.NearPeg, wind.FarPeg} {
				k := finishing.OnTheWay(p, c, peg)
				begin += k.Begin
				finish += k.Finish
			}
			finish += c.Passes[len(c.Passes)-1].Ends()
		}
		sum := p.WorkSum()
		if begin != sum.Ties || finish != sum.Cuts {
			t.Fatalf("%d begin and %d finish, the sum is %+v", begin, finish, sum)
		}
		if n := len(finishing.PegEnds(p)); n != begin+finish {
			t.Fatalf("%d ends at the pegs, not %d", n, begin+finish)
		}
	})
}

// The paddle is parked after the last chain only; before that it is laid aside for the next one.
func TestPaddleIsParkedAfterTheLastChain(t *testing.T) {
	s := plan.DefaultSpec()
	s.Ends, s.ChainEnds = 90, 50
	p := must(t, s)
	if got := stepOf(t, p, 1, finishing.StepPark).Title; got != "Lay the paddle aside, still threaded, for chain 2" {
		t.Errorf("after chain 1: %s", got)
	}
	if got := stepOf(t, p, 2, finishing.StepPark).Title; got != "Park the paddle, still threaded" {
		t.Errorf("after chain 2: %s", got)
	}
}

func stepOf(t *testing.T, p *plan.Plan, chain int, id finishing.StepID) finishing.Step {
	t.Helper()
	for _, s := range finishing.Steps(p, p.Chains[chain-1]) {
		if s.ID == id {
			return s
		}
	}
	t.Fatalf("no step %s", id)
	return finishing.Step{}
}
