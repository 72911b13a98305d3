package stripe

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"millside/plan"
	"millside/plan/measure"
)

// lot draws numbers evenly; rapid draws small ones mostly, and few of them press on the limits.
type lot struct{ *rand.Rand }

// from gives a number from low to high.
func (r lot) from(low, high int) int { return low + r.IntN(high-low+1) }

// ends draws the colours of up to most ends.
func (r lot) ends(most, colours int) []int {
	ends := make([]int, r.from(1, most))
	for i := range ends {
		ends[i] = r.from(1, colours)
		if i > 0 && r.from(0, 2) == 0 {
			ends[i] = ends[i-1]
		}
	}
	return ends
}

// limits draws limits for a small paddle.
func (r lot) limits(colours int) Limits {
	l := Limits{
		Positions:     4 - r.from(0, 1)*r.from(0, 3),
		ReturnOrder:   plan.ReturnOrder(r.from(0, 1)),
		FinishAtLease: r.from(0, 3) == 0,
		OneDirection:  r.from(0, 7) == 0,
	}
	for size := 1; size <= l.Positions && r.from(0, 2) == 0; size++ {
		if r.from(0, 2) > 0 {
			l.Sizes = append(l.Sizes, size)
		}
	}
	for range r.from(0, colours) {
		l.Packages = append(l.Packages, r.from(0, 2))
	}
	return l
}

func (r lot) weights() Weights {
	any := func() time.Duration { return time.Duration(r.from(0, 5)) * time.Minute }
	return Weights{Pass: any(), Change: any(), Stop: any(), Short: any(), AtCross: any(), Back: any()}
}

// Every limit and any weights: the scheduler finds what the table of every set-up finds, or both find
// that there is none.
func TestLimitsAgainstTable(t *testing.T) {
	r := lot{rand.New(rand.NewPCG(3, 4))}
	cases := 6_000
	if testing.Short() || RaceEnabled {
		cases = 1000
	}
	for range cases {
		colours := r.from(1, 3)
		ends, l, w := r.ends(10, colours), r.limits(colours), r.weights()
		table := newTable(l, w)
		for i := len(ends) - 1; i > 0; i-- {
			table.push(ends[i])
		}
		if why := agrees(ends, l, w, table.least(ends[0])); why != "" {
			t.Fatalf("%v, %+v, %+v: %s", ends, l, w, why)
		}
	}
}

// It matters which of the parked positions gives up its package: here the lowest is the wrong one.
func TestTheRightPackage(t *testing.T) {
	ends := []int{2, 2, 1, 1, 1, 2, 2, 2, 1}
	l := Limits{Positions: 4, Packages: []int{2, 1}, OneDirection: true}
	w := Weights{Pass: 4 * time.Minute, Change: time.Minute, Stop: 3 * time.Minute, Back: 4 * time.Minute}
	if why := agrees(ends, l, w, 47*time.Minute); why != "" { // 47 by the table
		t.Error(why)
	}
}

// agrees says how the scheduler's result differs from the least cost, "" if it doesn't.
func agrees(ends []int, l Limits, w Weights, least time.Duration) string {
	s, err := Make(ends, l, w)
	if least >= unreachable {
		if len(measure.FieldErrors(err)) != 1 {
			return fmt.Sprintf("no schedule is possible, but the error is %v", err)
		}
		return ""
	}
	if err != nil {
		return err.Error()
	}
	if why := holds(s, ends, l, w); why != "" {
		return why
	}
	if s.Total != least || !s.Proof.Optimal {
		return fmt.Sprintf("total %v, not %v: %+v", s.Total, least, s)
	}
	if p, err := prepare(ends, l, w); err != nil || p.bound() > least {
		return fmt.Sprintf("bound %v is above %v (%v)", p.bound(), least, err)
	}
	return ""
}

// A search that can't look at everything still gives a schedule that holds, and a bound that isn't
// above the least cost.
func TestSomeAgainstWhole(t *testing.T) {
	r := lot{rand.New(rand.NewPCG(5, 6))}
	for range 300 {
		colours := r.from(1, 4)
		ends, l, w := r.ends(20, colours), r.limits(colours), DefaultWeights()
		p, err := prepare(ends, l, w)
		if err != nil {
			continue
		}
		whole, err := Make(ends, l, w)
		if err != nil || !whole.Proof.Optimal {
			t.Fatalf("%v, %+v: %+v (%v)", ends, l, whole, err)
		}
		some := p.searchSome(p.bestByHand(), 3000, nil)
		if why := holds(some, ends, l, w); why != "" {
			t.Fatal(why)
		}
		if some.Total < whole.Total || p.bound() > whole.Total {
			t.Fatalf("%v, %+v: some %v, whole %v, bound %v", ends, l, some.Total, whole.Total, p.bound())
		}
	}
}

// A longer warp, laid on a model mill of plan's own passes.
func TestLaidOnTheMill(t *testing.T) {
	stripes, positions := 20, 12
	if RaceEnabled {
		stripes, positions = 5, 6
	}
	rapid.Check(t, func(t *rapid.T) {
		colours := rapid.IntRange(1, 6).Draw(t, "colours")
		var ends []int
		for range rapid.IntRange(1, stripes).Draw(t, "stripes") {
			c := rapid.IntRange(1, colours).Draw(t, "colour")
			ends = append(ends, slices.Repeat([]int{c}, rapid.IntRange(1, 9).Draw(t, "width"))...)
		}
		l := Limits{
			Positions:   rapid.IntRange(1, positions).Draw(t, "positions"),
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
	if err != nil || len(ways) != 3 {
		t.Fatal(ways, err)
	}
	if !ways[2].Cost.OneDirection {
		t.Errorf("%+v is not one-direction winding", ways[2])
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
		"too many ends":  {make([]int, measure.MaxEnds+1), good, Weights{}},
		"colour 0":       {[]int{0}, good, Weights{}},
		"colour 201":     {[]int{201}, good, Weights{}},
		"no positions":   {[]int{1}, Limits{}, Weights{}},
		"61 positions":   {[]int{1}, Limits{Positions: 61}, Weights{}},
		"size 5 of 4":    {[]int{1}, Limits{Positions: 4, Sizes: []int{5}}, Weights{}},
		"packages":       {[]int{1}, Limits{Positions: 4, Packages: []int{-1}}, Weights{}},
		"return order":   {[]int{1}, Limits{Positions: 4, ReturnOrder: 2}, Weights{}},
		"effort":         {[]int{1}, Limits{Positions: 4, Effort: 101}, Weights{}},
		"weight":         {[]int{1}, good, Weights{Stop: -1}},
		"odd sizes":      {[]int{1, 1, 1}, Limits{Positions: 4, Sizes: []int{2}}, Weights{}},
		"one at a lease": {[]int{1}, Limits{Positions: 4, FinishAtLease: true}, Weights{}},
		"too few":        {[]int{1, 1}, Limits{Positions: 4, Sizes: []int{2}, Packages: []int{1}}, Weights{}},
	} {
		if _, err := Make(c.ends, c.l, c.w); len(measure.FieldErrors(err)) != 1 {
			t.Errorf("%s: error %v", name, err)
		}
	}
}

// What is refused is what is to blame: the finish only where another one would do.
func TestMakeBlames(t *testing.T) {
	for _, c := range []struct {
		l    Limits
		want string
	}{
		{Limits{Positions: 4, Sizes: []int{3}, FinishAtLease: true}, "finish: \"at the lease\" won't do"},
		{Limits{Positions: 4, Sizes: []int{2, 4}, FinishAtLease: true}, "group sizes: \"2, 4\" won't do"},
		{Limits{Positions: 4, Sizes: []int{3}, Packages: []int{2}, FinishAtLease: true}, "group sizes: \"3\" won't do"},
	} {
		if _, err := Make([]int{1, 1, 1}, c.l, DefaultWeights()); err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%+v: %v, not %s", c.l, err, c.want)
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
