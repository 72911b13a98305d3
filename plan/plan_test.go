package plan_test

import (
	"errors"
	"testing"

	"pgregory.net/rapid"

	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/frame"
	"millside/plan/measure"
	"millside/plan/wind"
)

// The ends that the passes carry add up to the ends wanted and the spares named.
func TestEndsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpec(t)
		p := must(t, s)
		ends, spares, passes := 0, 0, 0
		for _, c := range p.Chains {
			inChain := 0
			for i, pass := range c.Passes {
				if pass.Ends() != pass.Last-pass.First+1 || pass.Ends() < 1 || pass.Ends() > s.Group {
					t.Fatalf("pass %d carries %d ends, %d to %d", i+1, pass.Ends(), pass.First, pass.Last)
				}
				inChain += pass.Ends()
				spares += pass.Spares
				if got := c.EndsAfter(i + 1); got != inChain {
					t.Fatalf("EndsAfter(%d) = %d, want %d", i+1, got, inChain)
				}
			}
			if c.Ends() != inChain {
				t.Fatalf("chain %d: Ends() = %d, its passes carry %d", c.Number, c.Ends(), inChain)
			}
			ends += inChain
			passes += len(c.Passes)
		}
		if ends != s.Ends+spares || p.Spares() != spares || p.EndsWound() != ends || p.Passes() != passes {
			t.Fatalf("%d wanted, %d carried, %d spare; plan says %d, %d", s.Ends, ends, spares, p.EndsWound(),
				p.Spares())
		}
		if passes != (s.Ends+s.Group-1)/s.Group {
			t.Fatalf("%d passes for %d ends by %d", passes, s.Ends, s.Group)
		}
		if spares != 0 && (s.LastPass == wind.ShortLast || spares != s.Group-s.Ends%s.Group) {
			t.Fatalf("%d spares with the last pass %v", spares, s.LastPass)
		}
		if p.WarpYarn() != p.Path.Length*measure.Length(ends) {
			t.Fatalf("the yarn of %d ends is %v", ends, p.WarpYarn())
		}
	})
}

// Ends 1 to EndsWound and the places (chain, pass, position) go one to one, in the order of the model.
func TestEndNumbersAreABijection(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := must(t, drawSpec(t))
		warp := layModel(p)
		if len(warp) != p.EndsWound() {
			t.Fatalf("the model has %d ends, the plan %d", len(warp), p.EndsWound())
		}
		seen := make(map[plan.Place]int)
		for i, e := range warp {
			end, want := i+1, plan.Place{Chain: e.chain, Pass: e.pass, Position: e.position}
			got, err := p.Locate(end)
			if err != nil || got != want {
				t.Fatalf("Locate(%d) = %+v, %v; the model has it at %+v", end, got, err, want)
			}
			if before, twice := seen[got]; twice {
				t.Fatalf("ends %d and %d at one place", before, end)
			}
			seen[got] = end
			if back, err := p.End(got); err != nil || back != end {
				t.Fatalf("End(Locate(%d)) = %d, %v", end, back, err)
			}
		}
	})
}

// A place that lays no end has no number, and is refused with its field named.
func TestPlacesThatLayNothing(t *testing.T) {
	s := plan.DefaultSpec()
	s.Ends, s.Group = 25, 10 // the third pass carries 5
	p := must(t, s)
	tests := []struct {
		at    plan.Place
		field string
	}{
		{plan.Place{Chain: 0, Pass: 1, Position: 1}, "chain"},
		{plan.Place{Chain: 2, Pass: 1, Position: 1}, "chain"},
		{plan.Place{Chain: 1, Pass: 0, Position: 1}, "pass"},
		{plan.Place{Chain: 1, Pass: 4, Position: 1}, "pass"},
		{plan.Place{Chain: 1, Pass: 1, Position: 0}, "position"},
		{plan.Place{Chain: 1, Pass: 1, Position: 11}, "position"},
		{plan.Place{Chain: 1, Pass: 3, Position: 6}, "position"},
		{plan.Place{Chain: 1, Pass: 3, Position: 1 << 40}, "position"},
	}
	for _, tt := range tests {
		var fe *measure.FieldError
		if _, err := p.End(tt.at); !errors.As(err, &fe) || fe.Field != tt.field {
			t.Errorf("End(%+v): %v, want an error in %q", tt.at, err, tt.field)
		}
	}
	for _, end := range []int{-1, 0, 26} {
		var fe *measure.FieldError
		if _, err := p.Locate(end); !errors.As(err, &fe) || fe.Field != "end number" {
			t.Errorf("Locate(%d): %v", end, err)
		}
	}
	if got := p.Chains[0].Passes[1].PositionOf(1); got != 0 {
		t.Errorf("pass 2 has end 1 in position %d", got)
	}
}

// Chains: none above the limit, near equal, every end in one of them.
func TestChains(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpec(t)
		p := must(t, s)
		next, fewest, most := 1, len(p.Chains[0].Passes), 0
		for i, c := range p.Chains {
			if c.Number != i+1 || c.First != next || len(c.Passes) == 0 {
				t.Fatalf("chain %d is numbered %d, starts at %d of %d passes", i+1, c.Number, c.First, len(c.Passes))
			}
			next = c.Last + 1
			if s.ChainEnds > 0 && c.Ends() > s.ChainEnds {
				t.Fatalf("chain %d has %d ends, the limit is %d", c.Number, c.Ends(), s.ChainEnds)
			}
			fewest, most = min(fewest, len(c.Passes)), max(most, len(c.Passes))
			want := wind.AtLease
			if len(c.Passes)%2 == 1 {
				want = wind.AtCountingCross
			}
			if c.Finish() != want {
				t.Fatalf("%d passes finish %v", len(c.Passes), c.Finish())
			}
		}
		// Each split is at most a tenth of a chain, or one pass, from the equal share; a chain has two.
		if share := p.Passes() / len(p.Chains); most-fewest > 4*max(1, share/10)+1 {
			t.Fatalf("chains of %d to %d groups", fewest, most)
		}
		if s.ChainEnds == 0 && len(p.Chains) != 1 {
			t.Fatalf("no limit, but %d chains", len(p.Chains))
		}
	})
}

// EndsAfter is held to the passes that there are.
func TestEndsAfterIsHeld(t *testing.T) {
	s := plan.DefaultSpec()
	s.Ends = 25
	c := must(t, s).Chains[0]
	for passes, want := range map[int]int{-1: 0, 0: 0, 1: 10, 3: 25, 4: 25, 1 << 40: 25} {
		if got := c.EndsAfter(passes); got != want {
			t.Errorf("EndsAfter(%d) = %d, want %d", passes, got, want)
		}
	}
}

// The warp may be handed a value that nobody filled in; that is an error or nothing, never a crash.
func TestZeroValuesDoNotCrash(t *testing.T) {
	if _, err := plan.New(plan.Spec{}); err == nil {
		t.Error("New took an empty spec")
	}
	p := must(t, plan.DefaultSpec())
	var c plan.Chain
	if c.EndsAfter(1) != 0 || c.KeepsOpening(1) || p.NextTie(c, 1) != 0 {
		t.Error("an empty chain has ends or ties")
	}
	if len(p.Before(c, 1))+len(p.After(c, 1))+len(finishing.Steps(p, c)) != 0 {
		t.Error("an empty chain has something to do")
	}
	if got := (frame.Mill{}).Path(measure.Yard); got.Steps != 0 || got.Length != 0 || got.Turns() != "0" {
		t.Errorf("a mill of no size gives %+v", got)
	}
}
