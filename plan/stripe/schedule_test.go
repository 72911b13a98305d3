package stripe

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"millside/plan"
	"pgregory.net/rapid"
)

// anyLimits draws limits for a small paddle.
func anyLimits(t *rapid.T, colours int) Limits {
	l := Limits{
		Positions:     rapid.IntRange(1, 4).Draw(t, "positions"),
		ReturnOrder:   plan.ReturnOrder(rapid.IntRange(0, 1).Draw(t, "return order")),
		FinishAtLease: rapid.Bool().Draw(t, "finish at the lease"),
		OneDirection:  rapid.IntRange(0, 3).Draw(t, "one direction") == 0,
	}
	if rapid.Bool().Draw(t, "sizes limited") {
		for size := 1; size <= l.Positions; size++ {
			if rapid.Bool().Draw(t, "allowed") {
				l.Sizes = append(l.Sizes, size)
			}
		}
	}
	for range rapid.IntRange(0, colours).Draw(t, "limited colours") {
		l.Packages = append(l.Packages, rapid.IntRange(0, 3).Draw(t, "packages"))
	}
	return l
}

func anyWeights(t *rapid.T) Weights {
	any := func(name string) time.Duration {
		return time.Duration(rapid.IntRange(0, 5).Draw(t, name)) * time.Minute
	}
	return Weights{Pass: any("pass"), Change: any("change"), Stop: any("stop"), Short: any("short"), AtCross: any("cross"), Back: any("back")}
}

// Every limit and any weights: the scheduler finds what the table of every set-up finds, or both find
// that there is none.
func TestLimitsAgainstTable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		colours := rapid.IntRange(1, 3).Draw(t, "colours")
		ends := rapid.SliceOfN(rapid.IntRange(1, colours), 1, 9).Draw(t, "ends")
		l, w := anyLimits(t, colours), anyWeights(t)
		table := newTable(l, w)
		for i := len(ends) - 1; i > 0; i-- {
			table.push(ends[i])
		}
		least := table.least(ends[0])
		s, err := Make(ends, l, w)
		if least >= unreachable {
			if len(plan.FieldErrors(err)) != 1 {
				t.Fatalf("no schedule is possible, but the error is %v", err)
			}
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		if why := holds(s, ends, l, w); why != "" {
			t.Fatal(why)
		}
		if s.Total != least || !s.Proof.Optimal {
			t.Fatalf("total %v, not %v: %+v", s.Total, least, s)
		}
		if p, err := prepare(ends, l, w); err != nil || p.bound() > least {
			t.Fatalf("bound %v is above %v (%v)", p.bound(), least, err)
		}
	})
}

// A search that can't look at everything still gives a schedule that holds, and a bound that isn't
// above the least cost.
func TestSomeAgainstWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		colours := rapid.IntRange(1, 4).Draw(t, "colours")
		ends := rapid.SliceOfN(rapid.IntRange(1, colours), 1, 20).Draw(t, "ends")
		l, w := anyLimits(t, colours), DefaultWeights()
		p, err := prepare(ends, l, w)
		if err != nil {
			return
		}
		whole, err := Make(ends, l, w)
		if err != nil || !whole.Proof.Optimal {
			t.Fatal(whole, err)
		}
		some := p.searchSome(p.bestByHand(), 3000)
		if why := holds(some, ends, l, w); why != "" {
			t.Fatal(why)
		}
		if some.Total < whole.Total || p.bound() > whole.Total {
			t.Fatalf("some %v, whole %v, bound %v", some.Total, whole.Total, p.bound())
		}
	})
}

// A longer warp, laid on a model mill of plan's own passes.
func TestLaidOnTheMill(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		colours := rapid.IntRange(1, 6).Draw(t, "colours")
		var ends []int
		for range rapid.IntRange(1, 20).Draw(t, "stripes") {
			c := rapid.IntRange(1, colours).Draw(t, "colour")
			ends = append(ends, slices.Repeat([]int{c}, rapid.IntRange(1, 9).Draw(t, "width"))...)
		}
		l := Limits{
			Positions:   rapid.IntRange(1, 12).Draw(t, "positions"),
			ReturnOrder: plan.ReturnOrder(rapid.IntRange(0, 1).Draw(t, "return order")),
		}
		s, err := Make(ends, l, DefaultWeights())
		if err != nil {
			t.Fatal(err)
		}
		if why := holds(s, ends, l, DefaultWeights()); why != "" {
			t.Fatal(why)
		}
		if f := s.Proof; f.Bound > s.Total || f.Gap != s.Total-f.Bound || f.Optimal != (f.Gap == 0) || f.Why == "" {
			t.Fatalf("proof %+v of total %v", f, s.Total)
		}
		if why := leaseHolds(s, ends); why != "" {
			t.Fatal(why)
		}
	})
}

// leaseHolds lays the passes for plan on the model of design.md, rule 4, and says what is wrong.
func leaseHolds(s *Schedule, ends []int) string {
	end, overA := 0, false
	for _, p := range s.PlanPasses() {
		for k := range p.Ends() {
			end++
			pos := p.PositionOf(end)
			if pos == 0 || p.EndAt(pos) != end || p.First+k != end {
				return fmt.Sprintf("pass %d doesn't lay end %d", p.Number, end)
			}
			if got := s.ColoursOn(p.Number)[pos-1]; got != ends[end-1] {
				return fmt.Sprintf("end %d is of colour %d, not %d", end, got, ends[end-1])
			}
			if end > 1 && p.OverA(pos) == overA {
				return fmt.Sprintf("ends %d and %d lie over the same lease peg", end-1, end)
			}
			overA = p.OverA(pos)
		}
	}
	if end != len(ends) {
		return fmt.Sprintf("%d ends laid, not %d", end, len(ends))
	}
	return ""
}

func TestWorkedByHand(t *testing.T) {
	w := DefaultWeights()
	for _, c := range []struct {
		name, text string
		l          Limits
		want       Cost
	}{
		// 40 passes of ten: facts.md, "The hand warping mill", 400 ends are 40 passes (common practice,
		// no source).
		{"one colour", "400 red", Limits{Positions: 10}, Cost{Passes: 40, Threaded: 10}},
		// Four red and four blue positions lay all, four passes of eight.
		{"stripes that fit", "4 times (4 red, 4 blue)", Limits{Positions: 8}, Cost{Passes: 4, Threaded: 8}},
		// Mirrored, a return pass lays the paddle backwards: the set-up of a mirrored stripe.
		{"mirrored", "2 times (mirror (3 red, 1 blue))", Limits{Positions: 4, ReturnOrder: plan.MirroredOrder}, Cost{Passes: 4, Threaded: 4}},
		// Two packages of red: two ends on a pass, and nothing above two threaded.
		{"packages", "8 red", Limits{Positions: 4, Packages: []int{2}}, Cost{Passes: 4, Threaded: 2, Short: 4}},
		{"at the lease", "6 red", Limits{Positions: 2, FinishAtLease: true}, Cost{Passes: 4, Threaded: 2, Short: 2}},
		{"one direction", "6 red", Limits{Positions: 2, OneDirection: true}, Cost{Passes: 3, Threaded: 2, Finish: plan.AtCountingCross, OneDirection: true}},
	} {
		o, err := Parse(c.text)
		if err != nil {
			t.Fatal(err)
		}
		ends, err := o.Ends()
		if err != nil {
			t.Fatal(err)
		}
		s, err := Make(ends, c.l, w)
		if err != nil {
			t.Fatal(c.name, err)
		}
		if s.Cost != c.want || !s.Proof.Optimal {
			t.Errorf("%s: %+v, not %+v; %+v", c.name, s.Cost, c.want, s.Proof)
		}
	}
}

func TestCompare(t *testing.T) {
	o, err := Parse("6 times (4 red, 2 blue, 6 red, 2 white)")
	if err != nil {
		t.Fatal(err)
	}
	ends, err := o.Ends()
	if err != nil {
		t.Fatal(err)
	}
	l, w := Limits{Positions: 8}, DefaultWeights()
	s, err := Make(ends, l, w)
	if err != nil {
		t.Fatal(err)
	}
	ways, err := Compare(s, ends, l, w)
	if err != nil || len(ways) != 2 {
		t.Fatal(ways, err)
	}
	// Single ends: 84 passes, one position threaded, a change and a stop at each of the 23 borders.
	single := Cost{Passes: 84, Threaded: 1, Changes: 23, Stops: 23}
	if ways[1].Cost != single {
		t.Errorf("single ends: %+v, not %+v", ways[1].Cost, single)
	}
	for _, way := range ways {
		if !way.Possible || way.Saved != way.Total-s.Total || way.Saved < 0 {
			t.Errorf("%+v beside %v", way, s.Total)
		}
	}
	few := Limits{Positions: 8, Packages: []int{2}}
	s, err = Make(ends, few, w)
	if err != nil {
		t.Fatal(err)
	}
	if ways, err = Compare(s, ends, few, w); err != nil || ways[0].Possible || !ways[1].Possible {
		t.Errorf("with two packages of red: %+v (%v)", ways, err)
	}
}

func TestMakeRefuses(t *testing.T) {
	good := Limits{Positions: 4}
	for name, c := range map[string]struct {
		ends []int
		l    Limits
		w    Weights
	}{
		"no ends":        {nil, good, Weights{}},
		"too many ends":  {make([]int, plan.MaxEnds+1), good, Weights{}},
		"colour 0":       {[]int{0}, good, Weights{}},
		"colour 201":     {[]int{201}, good, Weights{}},
		"no positions":   {[]int{1}, Limits{}, Weights{}},
		"61 positions":   {[]int{1}, Limits{Positions: 61}, Weights{}},
		"size 5 of 4":    {[]int{1}, Limits{Positions: 4, Sizes: []int{5}}, Weights{}},
		"packages":       {[]int{1}, Limits{Positions: 4, Packages: []int{-1}}, Weights{}},
		"return order":   {[]int{1}, Limits{Positions: 4, ReturnOrder: 2}, Weights{}},
		"effort":         {[]int{1}, Limits{Positions: 4, Effort: 1001}, Weights{}},
		"weight":         {[]int{1}, good, Weights{Stop: -1}},
		"odd sizes":      {[]int{1, 1, 1}, Limits{Positions: 4, Sizes: []int{2}}, Weights{}},
		"one at a lease": {[]int{1}, Limits{Positions: 4, FinishAtLease: true}, Weights{}},
		"too few":        {[]int{1, 1}, Limits{Positions: 4, Sizes: []int{2}, Packages: []int{1}}, Weights{}},
	} {
		if _, err := Make(c.ends, c.l, c.w); len(plan.FieldErrors(err)) != 1 {
			t.Errorf("%s: error %v", name, err)
		}
	}
}

// The result depends on nothing but the input.
func TestSameEveryTime(t *testing.T) {
	ends, l := scattered(120, 4), Limits{Positions: 8}
	a, err := Make(ends, l, DefaultWeights())
	if err != nil {
		t.Fatal(err)
	}
	b, err := Make(ends, l, DefaultWeights())
	if err != nil {
		t.Fatal(err)
	}
	if fmt.Sprint(a) != fmt.Sprint(b) {
		t.Errorf("%v\n%v", a, b)
	}
}
