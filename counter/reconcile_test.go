package counter_test

import (
	"millside/counter"
	"millside/plan/measure"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// seen fills in what is given over a Seen with nothing in it.
func seen(change func(*counter.Seen)) counter.Seen {
	s := counter.NothingSeen()
	change(&s)
	return s
}

// The counts are those of design.md, rule 3: after k passes half of them, rounded up, lie over peg 1. In
// the facts (woolgathering.org.uk, web log) a weaver wound 14 groups for 12.
func TestReconcile(t *testing.T) {
	c := testPlan(t, 200, 10, 0).Chains[0] // 20 passes
	tests := []struct {
		name     string
		believed int
		seen     counter.Seen
		fits     []int
		best     int
		agrees   bool
		disagree []string
	}{
		{"nothing seen", 5, counter.NothingSeen(), nil, -1, false, nil},
		{"both pegs", 17, counter.Seen{9, 8, counter.WayUnknown, -1, -1}, []int{17}, 17, true, nil},
		{"both pegs, one pass miscounted", 18, counter.Seen{9, 8, counter.WayUnknown, -1, -1}, []int{17}, 17, false,
			nil},
		{"peg 1 and the way", 5, counter.Seen{9, -1, counter.WayReturn, -1, -1}, []int{18}, 18, false, nil},
		{"peg 2 and the way", 5, counter.Seen{-1, 8, counter.WayOutward, -1, -1}, []int{17}, 17, false, nil},
		{"peg 1 alone, believed above", 20, counter.Seen{9, -1, counter.WayUnknown, -1, -1}, []int{17, 18}, 18, false,
			nil},
		{"peg 1 alone, believed below", 3, counter.Seen{9, -1, counter.WayUnknown, -1, -1}, []int{17, 18}, 17, false,
			nil},
		{"peg 1 alone, believed right", 18, counter.Seen{9, -1, counter.WayUnknown, -1, -1}, []int{17, 18}, 18, true,
			nil},
		{"the way alone", 7, counter.Seen{-1, -1, counter.WayReturn, -1, -1}, []int{2, 4, 6, 8, 10, 12, 14, 16, 18, 20},
			6, false, nil},
		{"ties and loose groups", 7, counter.Seen{-1, -1, counter.WayUnknown, 10, 7}, []int{17}, 17, false, nil},
		{"ties alone", 7, counter.Seen{-1, -1, counter.WayUnknown, 18, -1}, []int{18, 19, 20}, 18, false, nil},
		{"loose groups alone", 20, counter.Seen{-1, -1, counter.WayOutward, -1, 17}, []int{17, 19}, 19, false, nil},
		{"nothing on the mill", 1, counter.Seen{0, 0, counter.WayUnknown, 0, 0}, []int{0}, 0, false, nil},
		{"the first group", 0, counter.Seen{1, 0, counter.WayOutward, 0, 1}, []int{1}, 1, false, nil},
		{"the last pass", 20, counter.Seen{10, 10, counter.WayReturn, 20, 0}, []int{20}, 20, true, nil},
		{"two more over peg 1 than over peg 2", 16, counter.Seen{9, 7, counter.WayUnknown, -1, -1}, nil, -1, false,
			[]string{"9 groups over peg 1 and 7 groups over peg 2 can't both be: the first would be 17 or 18 " +
				"passes, the other 14 or 15 passes. " +
				"Count again, or a group lies the wrong way. 16 groups in all would lie 8 and 8."}},
		{"more over peg 2", 16, counter.Seen{7, 8, counter.WayUnknown, -1, -1}, nil, -1, false,
			[]string{"7 groups over peg 1 and 8 groups over peg 2 can't both be: the first would be 13 or 14 " +
				"passes, the other 16 or 17 passes. " +
				"Count again, or a group lies the wrong way. 15 groups in all would lie 8 and 7."}},
		{"the way against both pegs", 16, counter.Seen{9, 8, counter.WayReturn, -1, -1}, nil, -1, false,
			[]string{"9 groups over peg 1 and 8 groups over peg 2 and a last group that returns can't both be: the " +
				"first would be 17 passes, " +
				"the other an even number of passes. Count again, or a group lies the wrong way."}},
		{"the ties against the pegs", 16, counter.Seen{9, 8, counter.WayUnknown, 10, 8}, nil, -1, false,
			[]string{"9 groups over peg 1 and 8 groups over peg 2 and 10 groups in ties and 8 loose can't both be: " +
				"the first would be 17 passes, " +
				"the other 18 passes. Count again, or a group lies the wrong way."}},
		{"a last group where none lies", 0, counter.Seen{0, 0, counter.WayReturn, -1, -1}, nil, -1, false,
			[]string{"0 groups over peg 1 and 0 groups over peg 2 and a last group that returns can't both be: the " +
				"first would be 0 passes, " +
				"the other an even number of passes. Count again, or a group lies the wrong way."}},
		{"more than the chain has", 20, counter.Seen{11, -1, counter.WayUnknown, -1, -1}, nil, -1, false,
			[]string{"11 groups over peg 1 can't be: that would be 21 or 22 passes, and the chain has 20. Count " +
				"again, or too much is wound."}},
		{"more over both pegs than the chain has", 20, counter.Seen{11, 11, counter.WayUnknown, -1, -1}, nil, -1, false,
			[]string{"11 groups over peg 1 can't be: that would be 21 or 22 passes, and the chain has 20. Count " +
				"again, or too much is wound.",
				"11 groups over peg 2 can't be: that would be 22 or 23 passes, and the chain has 20. Count again, " +
					"or too much is wound."}},
	}
	for _, tt := range tests {
		r := counter.Reconcile(c, tt.believed, tt.seen)
		if !slices.Equal(r.Fits, tt.fits) || r.Best != tt.best || r.Agrees != tt.agrees ||
			r.Sure != (len(tt.fits) == 1) {
			t.Errorf("%s: %+v", tt.name, r)
		}
		if !slices.Equal(r.Disagree, tt.disagree) {
			t.Errorf("%s: says\n%s\nwant\n%s", tt.name, strings.Join(r.Disagree, "\n"), strings.Join(tt.disagree, "\n"))
		}
	}
	twelve := testPlan(t, 120, 10, 0).Chains[0]
	if r := counter.Reconcile(twelve, 12, counter.Seen{7, 7, counter.WayReturn, -1, -1}); r.Best != -1 ||
		len(r.Disagree) != 2 || !strings.Contains(r.Disagree[0], "too much is wound") {
		t.Errorf("14 groups for 12: %+v", r)
	}
}

// A slip of the finger in a count makes no nonsense of the words.
func TestReconcileHugeCounts(t *testing.T) {
	c := testPlan(t, 200, 10, 0).Chains[0]
	for _, n := range []int{1 << 40, 1 << 62, 1<<63 - 1} {
		r := counter.Reconcile(c, 3, counter.Seen{n, n, counter.WayReturn, n, n})
		if text := strings.Join(r.Disagree, " "); r.Best != -1 || strings.Contains(text, "-") ||
			!strings.Contains(text, "100000 groups over peg 2") {
			t.Errorf("%d: %+v", n, r)
		}
	}
}

// trueOf is everything that can be seen after k passes, of which so many groups lie in ties.
func trueOf(k, tied int) counter.Seen {
	s := counter.Seen{OverPeg1: counter.CrossOf(k).OverPeg1, OverPeg2: counter.CrossOf(k).OverPeg2, TiedGroups: tied,
		LooseGroups: k - tied}
	switch {
	case k > 0 && k%2 == 1:
		s.LastWay = counter.WayOutward
	case k > 0:
		s.LastWay = counter.WayReturn
	}
	return s
}

// Any two true observations that can tell the number give it, whatever was believed; and no true
// observation contradicts another.
func TestReconcileFindsTheCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		c := p.Chains[0]
		n := len(c.Passes)
		k := rapid.IntRange(0, n).Draw(t, "laid")
		truth := trueOf(k, rapid.IntRange(0, k).Draw(t, "tied"))
		believed := rapid.IntRange(-1, n+1).Draw(t, "believed")
		for name, two := range map[string]counter.Seen{
			"both pegs": seen(func(s *counter.Seen) {
				s.OverPeg1, s.OverPeg2 = truth.OverPeg1,
					truth.OverPeg2
			}),
			"peg 1 and the way": seen(func(s *counter.Seen) { s.OverPeg1, s.LastWay = truth.OverPeg1, truth.LastWay }),
			"peg 2 and the way": seen(func(s *counter.Seen) { s.OverPeg2, s.LastWay = truth.OverPeg2, truth.LastWay }),
			"tied and loose": seen(func(s *counter.Seen) {
				s.TiedGroups, s.LooseGroups = truth.TiedGroups,
					truth.LooseGroups
			}),
		} {
			r := counter.Reconcile(c, believed, two)
			// With no group over peg 2 and no last group it may be one pass or none.
			if k == 0 && name == "peg 2 and the way" {
				if !slices.Contains(r.Fits, 0) {
					t.Fatalf("%s: %+v", name, r)
				}
				continue
			}
			if !r.Sure || r.Best != k || !slices.Equal(r.Fits, []int{k}) || r.Agrees != (believed == k) ||
				len(r.Disagree) > 0 {
				t.Fatalf("%s of %d: %+v", name, k, r)
			}
		}
		some := truth
		for _, hide := range []*int{&some.OverPeg1, &some.OverPeg2, &some.TiedGroups, &some.LooseGroups} {
			if rapid.Bool().Draw(t, "hidden") {
				*hide = counter.NotCounted
			}
		}
		if r := counter.Reconcile(c, believed, some); some != counter.NothingSeen() &&
			(!slices.Contains(r.Fits, k) || len(r.Disagree) > 0) {
			t.Fatalf("%+v, which is true of %d: %+v", some, k, r)
		}
	})
}

// Whatever is seen, true or not: what fits is what a search through all numbers of passes finds, and
// where it finds none, the reason is said.
func TestReconcileAgreesWithSearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawPlan(t).Chains[0]
		count := rapid.SampledFrom([]int{-1, -1, 0, 1, 2, 3, 4, 5, 8, 13, 1 << 62})
		s := counter.Seen{count.Draw(t, "peg 1"), count.Draw(t, "peg 2"),
			counter.Way(rapid.IntRange(0, 2).Draw(t, "way")), count.Draw(t, "tied"), count.Draw(t, "loose")}
		believed := rapid.IntRange(-2, 30).Draw(t, "believed")
		var want []int
		for k := range len(c.Passes) + 1 {
			truth := trueOf(k, 0)
			ok := (s.OverPeg1 < 0 || s.OverPeg1 == truth.OverPeg1) &&
				(s.OverPeg2 < 0 || s.OverPeg2 == truth.OverPeg2) &&
				(s.LastWay == counter.WayUnknown || s.LastWay == truth.LastWay)
			switch {
			case s.TiedGroups >= 0 && s.LooseGroups >= 0: // the sum of two huge counts would run over
				ok = ok && s.TiedGroups <= k && s.LooseGroups == k-s.TiedGroups
			case s.TiedGroups >= 0:
				ok = ok && s.TiedGroups <= k
			case s.LooseGroups >= 0:
				ok = ok && s.LooseGroups <= k
			}
			if ok {
				want = append(want, k)
			}
		}
		r := counter.Reconcile(c, believed, s)
		if s == counter.NothingSeen() {
			want = nil
		}
		if !slices.Equal(r.Fits, want) {
			t.Fatalf("%+v: fits %v, want %v", s, r.Fits, want)
		}
		if (len(r.Disagree) == 0) != (len(want) > 0 || s == counter.NothingSeen()) {
			t.Fatalf("%+v: fits %v, says %q", s, r.Fits, r.Disagree)
		}
		if (r.Best < 0) != (len(want) == 0) || r.Best >= 0 && !slices.Contains(want, r.Best) {
			t.Fatalf("%+v: best %d of %v", s, r.Best, want)
		}
		for _, k := range want {
			if measure.Distance(k, believed) < measure.Distance(r.Best, believed) {
				t.Fatalf("%+v: %d is nearer to %d than %d", s, k, believed, r.Best)
			}
		}
	})
}

// The longest chain, with the observation that fits the most numbers of passes.
func BenchmarkReconcile100k(b *testing.B) {
	c := testPlan(b, 100_000, 1, 0).Chains[0]
	for b.Loop() {
		if r := counter.Reconcile(c, 40_000, counter.Seen{-1, -1, counter.WayReturn, -1, -1}); r.Best != 40_000 {
			b.Fatal(r.Best)
		}
	}
}
