package project

import (
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"millside/plan"
	"millside/plan/internal/measuretest"
	"millside/plan/measure"
	"millside/plan/times"
	"millside/plan/wind"
)

// choicesOf ranks the groups for a warp.
func choicesOf(t testing.TB, ends, positions int, more ...func(*plan.Spec)) []Choice {
	t.Helper()
	s := plan.DefaultSpec()
	s.Ends, s.Positions, s.Group = ends, positions, 1
	for _, change := range more {
		change(&s)
	}
	p, err := plan.New(s)
	if err != nil {
		t.Fatal(err)
	}
	list, err := Choices(p, times.Pace{})
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// find is the choice of a kind for a group.
func find(t testing.TB, list []Choice, group int, kind ChoiceKind) Choice {
	t.Helper()
	i := slices.IndexFunc(list, func(c Choice) bool { return c.Group == group && c.Kind == kind })
	if i < 0 {
		t.Fatalf("no group of %d, kind %d", group, kind)
	}
	return list[i]
}

// 396 ends by 10: 40 passes, the last of 6; or 40 full passes with 4 spare ends.
func TestChoicesFor396By10(t *testing.T) {
	list := choicesOf(t, 396, 12)
	short, spare := find(t, list, 10, ShortPass), find(t, list, 10, SpareEnds)
	if short.Passes != 40 || short.LastEnds != 6 || short.Spares != 0 || short.CutShort != 4 ||
		short.CutAt != wind.FarPeg ||
		short.Label() != "group of 10, last pass of 6" ||
		!slices.Contains(short.Reasons, "the last pass carries 6, so 4 ends are cut off at the far end peg before it") {
		t.Errorf("short last pass: %+v", short)
	}
	if spare.Passes != 40 || spare.LastEnds != 10 || spare.Spares != 4 ||
		spare.Label() != "group of 10, 4 spare ends" ||
		!slices.Contains(spare.Reasons, "4 spare ends are wound") {
		t.Errorf("spare ends: %+v", spare)
	}
}

// What comes first, and why.
func TestFirstChoice(t *testing.T) {
	raddle := func(s *plan.Spec) { s.Loom.Sett, s.Loom.Raddle.Space = measuretest.Sett(t, "20 an inch"), measure.Inch }
	for _, c := range []struct {
		name            string
		ends, positions int
		change          func(*plan.Spec)
		label           string
		passes          int
	}{
		// 400 ends in groups of ten are 40 passes; two groups make an inch of raddle (common practice, no
		// source).
		{"all full, even, stops at the lease", 400, 12, nil, "group of 10, all full", 40},
		{"the same with a raddle", 400, 12, raddle, "group of 10, all full", 40},
		// Trade silk: 4,992 ends = 96 bobbins x 52 passes (humphriesweaving.co.uk). A paddle has at most
		// 60 positions: half of it is 104 passes of 48.
		{"trade silk by half", 4992, 48, nil, "group of 48, all full", 104},
		// An odd total (fibergeekery web log 2011): only 3 divides it, and 167 passes of 3 are no choice.
		{"an odd total", 501, 12, nil, "group of 12, last pass of 9", 42},
		// 6, 14 and 18 cut two ends; by the usual times (from memory) 42 passes of 0.47 min with two and a half
		// turns, 6 packages to thread, tie and cut at 1.5 min and a halt of 0.5 min are 29.2 min; 18 passes
		// with 14 packages are 30.0 min.
		{"an end at the lease beats a divisor with an odd number of passes", 250, 20, nil, "group of 6, last pass of 4",
			42},
		// With eight and a half turns a pass takes 0.95 min: 48.9 against 38.6 min, and 18 is far slower yet.
		{"a long warp wants few passes", 250, 20, func(s *plan.Spec) { s.Length = 17 * measure.Yard },
			"group of 14, last pass of 12", 18},
		{"two divides it, but nobody winds 404 ends two by two", 404, 12, nil, "group of 12, last pass of 8", 34},
		{"no spare ends while there is another way", 11, 4, nil, "group of 2, last pass of 1", 6},
		{"seven packages", 400, 12, func(s *plan.Spec) { s.Yarn.Packages = 7 }, "group of 4, all full", 100},
		{"fewer packages than any group but one", 12, 12, func(s *plan.Spec) { s.Yarn.Packages = 1 },
			"group of 1, all full",
			12},
		{"a mirrored return pass flicks the paddle always", 400, 12,
			func(s *plan.Spec) { s.ReturnOrder = wind.MirroredOrder },
			"group of 12, last pass of 4", 34},
		{"chains that stop at the lease", 60, 12, func(s *plan.Spec) { s.ChainEnds = 30 }, "group of 5, all full", 12},
		{"a paddle of one position", 10, 1, nil, "group of 1, all full", 10},
		{"one end", 1, 12, nil, "group of 1, all full", 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			var more []func(*plan.Spec)
			if c.change != nil {
				more = append(more, c.change)
			}
			list := choicesOf(t, c.ends, c.positions, more...)
			if got := list[0]; got.Label() != c.label || got.Passes != c.passes {
				t.Errorf("first: %s in %d passes, want %s in %d\n%s", got.Label(), got.Passes, c.label, c.passes,
					strings.Join(got.Reasons, "\n"))
				for i := range min(len(list), 6) {
					t.Logf("%d %s in %d: %v", i, list[i].Label(), list[i].Passes, list[i].Reasons)
				}
			}
		})
	}
}

func TestChoiceOf400By10(t *testing.T) {
	list := choicesOf(t, 400, 12, func(s *plan.Spec) {
		s.Loom.Sett, s.Loom.Raddle.Space = measuretest.Sett(t, "20 an inch"),
			measure.Inch
	})
	c := list[0]
	if c.Raddle != RaddleFills || c.Flicks != 0 || c.Finish != wind.AtLease || c.AtCross != 0 {
		t.Errorf("%+v", c)
	}
	want := []string{"40 passes", "every pass is full",
		"stops at the lease, where it began: nothing is left at the far end",
		"10 packages",
		"2 groups fill a section of the raddle", "about 34 min"}
	if !slices.Equal(c.Reasons, want) {
		t.Errorf("reasons: %q", c.Reasons)
	}
}

func TestPassesOfGroups(t *testing.T) {
	for _, c := range []struct {
		ends, group, passes int
		because             string
	}{
		{500, 10, 50, "common practice, no source"},
		{440, 40, 11, "cuponthebus, Arithmetic, web log 2018: 40 spools, each once a section"},
		{2000, 40, 50, "25 bouts of 40 bobbins; arithmetic, from memory"},
	} {
		if got := find(t, choicesOf(t, c.ends, c.group), c.group, Divides); got.Passes != c.passes {
			t.Errorf("%d ends in groups of %d: %+v, want %d passes (%s)", c.ends, c.group, got, c.passes, c.because)
		}
	}
}

func TestRaddleFitOfGroups(t *testing.T) {
	for _, c := range []struct {
		group int
		want  RaddleFit
	}{{5, RaddleFills}, {10, RaddleFills}, {20, RaddleFills}, {40, RaddleFills}, {15, RaddleRhythm}, {7, RaddleCuts}} {
		s := plan.DefaultSpec()
		s.Group, s.Loom.Sett, s.Loom.Raddle.Space = c.group, measuretest.Sett(t, "20 an inch"), measure.Inch
		if got := raddleFit(s); got != c.want {
			t.Errorf("a group of %d: %v, want %v", c.group, got, c.want)
		}
		if why := (Choice{Group: c.group, Raddle: c.want}).raddleReason(s); why == "" {
			t.Errorf("a group of %d: no reason", c.group)
		}
	}
	if got := raddleFit(plan.DefaultSpec()); got != RaddleUnknown {
		t.Errorf("no raddle: %v", got)
	}
}

// drawChoiceSpec draws a plain warp.
func drawChoiceSpec(t *rapid.T) plan.Spec {
	s := plan.DefaultSpec()
	s.Ends = rapid.IntRange(1, 600).Draw(t, "ends")
	s.Positions = rapid.IntRange(1, 24).Draw(t, "positions")
	s.ReturnOrder = wind.ReturnOrder(rapid.IntRange(0, 1).Draw(t, "order"))
	s.ChainEnds = rapid.SampledFrom([]int{0, 30, 200}).Draw(t, "chain")
	s.Group = rapid.IntRange(1, s.Positions).Draw(t, "group")
	s.Yarn.Packages = rapid.IntRange(0, 24).Draw(t, "packages")
	if rapid.Bool().Draw(t, "raddle") {
		s.Loom.Sett, s.Loom.Raddle.Space = measuretest.Sett(t, "20 an inch"), measure.Inch/2
	}
	return s
}

// The choices are what the plans are that they would make, list each group that the paddle can carry, and
// stand in the order of trouble and time.
func TestChoicesHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawChoiceSpec(t)
		p, err := plan.New(s)
		if err != nil {
			t.Fatal(err)
		}
		list, err := Choices(p, times.Pace{})
		if err != nil {
			t.Fatal(err)
		}
		taken, want := 0, 0
		for g := 1; g <= s.Positions && (s.ChainEnds == 0 || g <= s.ChainEnds); g++ {
			want += min(s.Ends%g+1, 2)
		}
		if len(list) != want {
			t.Fatalf("%d choices, want %d", len(list), want)
		}
		quickest := time.Duration(1 << 62)
		for _, c := range list {
			if c.Lacking == 0 || s.Yarn.Packages == 0 {
				quickest = min(quickest, c.Time.Middle)
			}
		}
		for i, c := range list {
			if i > 0 {
				checkRanking(t, list[i-1], c)
			}
			if c.Taken(s) {
				taken++
			}
			if c.Slow != (c.Time.Middle > quickest*3/2) {
				t.Fatalf("%s takes %v, the quickest %v: slow %v", c.Label(), c.Time, quickest, c.Slow)
			}
			for _, why := range c.Reasons {
				if strings.TrimSpace(why) == "" {
					t.Fatalf("an empty reason: %+v", c)
				}
			}
			checkChoiceAgainstPlan(t, s, c)
		}
		if taken != 1 {
			t.Fatalf("%d choices are the plan's own", taken)
		}
	})
}

// checkRanking says again, in another way, what the ranking goes by.
func checkRanking(t *rapid.T, x, y Choice) {
	key := func(c Choice) []int {
		k := []int{0, 0, c.Spares, c.AtCross, c.Flicks, c.CutShort, c.Lacking, -int(c.Raddle), int(c.Time.Middle)}
		if c.Lacking > 0 {
			k[0] = 1
		}
		if c.Slow {
			k[1] = 1
		}
		return k
	}
	if slices.Compare(key(x), key(y)) > 0 {
		t.Fatalf("%s %v before %s %v", x.Label(), key(x), y.Label(), key(y))
	}
}

// checkChoiceAgainstPlan winds the choice.
func checkChoiceAgainstPlan(t *rapid.T, s plan.Spec, c Choice) {
	p, err := plan.New(c.In(s))
	if err != nil {
		t.Fatal(err)
	}
	last := p.Chains[len(p.Chains)-1]
	cut := 0
	for chain := range p.Chains {
		for k := 2; k <= len(p.Chains[chain].Passes); k++ {
			if n := p.WorkBefore(chain+1, k).Cut.Count(); n > 0 {
				cut += n
				if c.CutAt != p.WorkBefore(chain+1, k).Peg {
					t.Fatalf("%s: %d ends are cut off at the other peg", c.Label(), n)
				}
			}
		}
	}
	_, flicked := p.NearTurns()
	work := p.WorkSum()
	switch {
	case p.Passes() != c.Passes, p.Spares() != c.Spares, len(p.Chains) != c.Chains, last.Finish() != c.Finish,
		last.Passes[len(last.Passes)-1].Ends() != c.LastEnds, work != c.Work, flicked != c.Flicks, cut != c.CutShort:
		t.Fatalf("%s: %+v\nthe plan has %d passes, %d spares, %d chains, %d flicks, %d cut, work %+v", c.Label(), c,
			p.Passes(), p.Spares(), len(p.Chains), flicked, cut, work)
	case c.Time.Middle != p.TimeOf(work, times.Pace{}).Middle:
		t.Fatalf("%s takes %v", c.Label(), c.Time)
	case (c.Kind == Divides) != (c.Spares == 0 && c.LastEnds == c.Group), (c.Kind == SpareEnds) != (c.Spares > 0):
		t.Fatalf("not of its kind: %+v", c)
	case s.Yarn.Packages > 0 && c.Lacking != max(work.Threads-s.Yarn.Packages, 0):
		t.Fatalf("%s lacks %d packages", c.Label(), c.Lacking)
	}
}

// The ranking doesn't depend on the group that the weaver has in mind.
func TestChoicesDontDependOnTheGroup(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawChoiceSpec(t)
		first := s
		first.Group, first.LastPass = rapid.IntRange(1, s.Positions).Draw(t, "other group"), wind.FullLast
		var labels [2][]string
		for i, spec := range []plan.Spec{s, first} {
			pr, err := New(spec, times.Pace{})
			if err != nil {
				t.Skip(err)
			}
			for _, c := range pr.Choices {
				labels[i] = append(labels[i], c.Label())
			}
		}
		if !slices.Equal(labels[0], labels[1]) {
			t.Fatalf("%q\n%q", labels[0], labels[1])
		}
	})
}

func BenchmarkChoices(b *testing.B) {
	s := plan.DefaultSpec()
	s.Ends, s.Positions, s.ChainEnds, s.Loom.Sett, s.Loom.Raddle.Space = 5000, 24, 600,
		measuretest.Sett(b, "40 an inch"), measure.Inch/2
	p, err := plan.New(s)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := Choices(p, times.Pace{}); err != nil {
			b.Fatal(err)
		}
	}
}

// The work that a choice is ranked by, reckoned from the chains alone, is that of the ledger.
func TestWorkOfChainsIsThatOfTheLedger(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := plan.DefaultSpec()
		s.Positions = rapid.IntRange(1, 24).Draw(t, "positions")
		s.Group = rapid.IntRange(1, s.Positions).Draw(t, "group")
		s.Ends = rapid.IntRange(1, 600).Draw(t, "ends")
		s.LastPass = wind.LastPass(rapid.IntRange(0, 1).Draw(t, "last"))
		if rapid.Bool().Draw(t, "chains") {
			s.ChainEnds = rapid.IntRange(s.Group, 200).Draw(t, "chain ends")
		}
		p, err := plan.New(s)
		if err != nil {
			t.Fatal(err)
		}
		parts, err := s.Split(plan.KnownSections{})
		if err != nil {
			t.Fatal(err)
		}
		if sum := workOf(parts); sum != p.WorkSum() {
			t.Fatalf("reckoned from the chains %+v, from the ledger %+v", sum, p.WorkSum())
		}
	})
}
