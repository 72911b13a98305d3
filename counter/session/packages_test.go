package session

import (
	"slices"
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/measure"
)

// weighed gives every position a package that holds yarn for so many passes of a chain of five yards, and a little.
func weighed(t *testing.T, passes int, change func(*plan.Spec)) func(*plan.Spec) {
	t.Helper()
	return func(s *plan.Spec) {
		s.Ends, s.TieEvery = 60, 0
		size, err := measure.ParseYarn("2000 m/kg")
		if err != nil {
			t.Fatal(err)
		}
		if change != nil {
			change(s)
		}
		p, err := plan.New(*s)
		if err != nil {
			t.Fatal(err)
		}
		extras := plan.DefaultExtras()
		mass, err := size.MassOf((p.Path.Length + extras.PerPass).Times(passes) + extras.PerTie)
		if err != nil {
			t.Fatal(err)
		}
		s.Yarn.Size, s.Yarn.Cones = size, []measure.Mass{mass}
	}
}

// That a package runs out is said one pass ahead and before the pass, and rings; a new one ends it.
func TestPackageRunsOut(t *testing.T) {
	b := newBench(t, weighed(t, 3, nil))
	b.windTo(2)
	b.does(Answer{Yes})
	b.wants("position 1 runs out in the middle of pass 4: change the package before it")
	if in, _ := b.s.Instruction(b.clock); len(in.Now) != 0 {
		t.Errorf("said as due already: %+v", in.Now)
	}
	b.press(1)
	b.wants("Now: position 1 runs out in the middle of pass 4")
	if b.last.Cue != CueLook {
		t.Errorf("cue %v", b.last.Cue)
	}
	if got := b.s.RunsOut(4); len(got) != 10 {
		t.Errorf("%v", got)
	}
	b.does(NewPackage{Position: 1})
	b.wants("New package in position 1, from pass 4 on.")
	if got := b.s.RunsOut(4); slices.Contains(got, 1) || len(got) != 9 {
		t.Errorf("%v", got)
	}
	b.does(DropMark{})
	b.wants("The new package in position 1 is taken back.")
	if got := b.s.RunsOut(4); len(got) != 10 {
		t.Errorf("%v", got)
	}
	b.does(NewPackage{Position: 99})
	if b.last.Cue != CueRefused {
		t.Errorf("%+v", b.last)
	}
}

// A package that just suffices doesn't run out.
func TestPackageJustSuffices(t *testing.T) {
	b := newBench(t, weighed(t, 6, nil))
	for k := 1; k <= 6; k++ {
		if got := b.s.RunsOut(k); len(got) != 0 {
			t.Errorf("pass %d: %v", k, got)
		}
	}
}

// The warning belongs to the chain on which the package runs out.
func TestPackageOfALaterChain(t *testing.T) {
	b := newBench(t, weighed(t, 5, func(s *plan.Spec) { s.ChainEnds = 40 }))
	if n := len(b.plan.Chains[0].Passes); n < 3 {
		t.Fatalf("chain 1 has %d passes", n)
	}
	warned := 0
	for i := 0; b.s.State().Chain == 1; i++ {
		if i > 60 {
			t.Fatal("chain 1 never ends")
		}
		b.press(1)
		if b.s.State().Chain == 1 && strings.Contains(strings.Join(b.last.Said, " "), "runs out") {
			warned++
		}
	}
	if warned > 0 {
		t.Errorf("warned %d times on chain 1", warned)
	}
	var out []int
	for k := 1; k <= len(b.plan.Chains[1].Passes); k++ {
		if len(b.s.RunsOut(k)) > 0 {
			out = append(out, k)
		}
	}
	if len(out) == 0 {
		t.Error("never warned on chain 2")
	}
}
