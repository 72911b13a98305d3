package session

import (
	"strings"
	"testing"

	"millside/plan"
)

// The kinds of pass are told before the first pass, named with each pass, announced where another follows, and heard
// once, with a number that a voice can read.
func TestKindsOfPass(t *testing.T) {
	b := newBench(t, stripedSpec)
	b.wants("Kind I, 3 passes: positions 1, 2, 4 C white; 3 D blue.",
		"Kind II, 1 pass: positions 1 to 3 C white; 4 D blue.")
	b.press(1)
	b.wants("Pass 1 of 4, outward, kind I: ")
	if !strings.Contains(b.last.Short, "Outward 1, kind 1: ") {
		t.Errorf("not heard: %q", b.last.Short)
	}
	b.press(1)
	if strings.Contains(b.last.Short, "kind") {
		t.Errorf("heard again: %q", b.last.Short)
	}
	b.press(1)
	b.does(Answer{Yes})
	b.wants("Pass 3 of 4, outward, kind I: ", "there the pass key confirms the work; then kind II")
	b.press(1)
	b.wants("Then kind II: positions 1 to 3 C white; 4 D blue.")
	if stop, ok := b.s.Stop(); !ok || stop.Kind != 2 || stop.Then == "" {
		t.Errorf("%+v", stop)
	}
	b.press(1)
	if !strings.Contains(b.last.Short, "Return 4, kind 2: ") {
		t.Errorf("not heard: %q", b.last.Short)
	}
	said := strings.Join(b.s.Where(b.clock), "\n")
	if !strings.Contains(said, "Kind II: positions 1 to 3 C white; 4 D blue.") {
		t.Errorf("where: %s", said)
	}
}

// A warp whose passes are all alike, striped or not, has nothing to say of kinds.
func TestOneKindHasNoName(t *testing.T) {
	for _, change := range []func(*plan.Spec){nil, func(s *plan.Spec) {
		stripedSpec(s)
		s.Schedule.Passes[3].SetUp = 1
	}} {
		b := newBench(t, change)
		for range 5 {
			said := strings.ToLower(strings.Join(b.last.Said, " ") + b.last.Short)
			if strings.Contains(said, "kind") {
				t.Errorf("%q", said)
			}
			b.press(1)
		}
	}
}

// Where there is not room for every kind, that of the pass in hand is among those shown.
func TestKindsInLittleRoom(t *testing.T) {
	b := newBench(t, striped("4 red, 3 times (2 white, 1 blue, 5 red), 4 red", 9))
	all, more := b.s.Kinds(1000)
	if len(all) < 2 || more != 0 {
		t.Fatalf("%d kinds, %d more", len(all), more)
	}
	for b.stage() == Winding || b.stage() == AtPeg {
		list, more := b.s.Kinds(1)
		next, _ := b.s.State().NextPass()
		kind := b.plan.KindOf(b.s.State().Chain, next.Number)
		if len(list) != 1 || more != len(all)-1 || list[0].Number != kind {
			t.Errorf("pass %d: %+v and %d more, not kind %d", next.Number, list, more, kind)
		}
		b.press(1)
		if b.stage() == AtQuestion {
			b.does(Answer{Yes})
		}
	}
	if list, _ := b.s.Kinds(0); list != nil {
		t.Errorf("no room: %v", list)
	}
}

// The winder is at a peg wherever the kind changes, so that what is announced there tells of each.
func TestKindsChangeAtThePegs(t *testing.T) {
	for name, change := range warps {
		s := benchSpec()
		change(&s)
		p, err := plan.New(s)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range p.Chains {
			for _, pass := range c.Passes[1:] {
				k := pass.Number
				if p.KindOf(c.Number, k) != p.KindOf(c.Number, k-1) && !p.WorkBefore(c.Number, k).Halt() {
					t.Errorf("%s: the kind changes before pass %d of chain %d without a halt", name, k, c.Number)
				}
			}
		}
	}
}
