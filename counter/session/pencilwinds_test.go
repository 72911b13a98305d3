package session

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"millside/counter"
	"millside/plan"
	"millside/plan/stripe"
	"millside/plan/stripe/schedule"
	"millside/plan/wind"
)

// drawnWarp is a warp to follow: its bench, and the colours of its ends as they were ordered.
type drawnWarp struct {
	*bench
	order   []string
	byChain bool // a chain for each colour
}

// newDrawnWarp plans stripes in one of the ways; false where they can't be wound so.
func newDrawnWarp(t testing.TB, text string, way schedule.Way, change func(*plan.Spec)) (drawnWarp, bool) {
	t.Helper()
	spec := plan.DefaultSpec()
	spec.Stripes = text
	change(&spec)
	ask := stripe.Ask{Way: way, Limits: schedule.Limits{Effort: 1}}
	made, err := stripe.ForPlan(context.Background(), spec, ask, nil)
	if err != nil {
		return drawnWarp{}, false
	}
	ends, err := made.Order.Ends()
	if err != nil {
		t.Fatal(err)
	}
	w := drawnWarp{bench: newBench(t, func(s *plan.Spec) { *s = made.Spec }), byChain: way == schedule.ChainEach}
	for _, c := range ends {
		w.order = append(w.order, w.plan.ColourText(c))
	}
	return w, true
}

// fickle takes back a pass now and then, as hands do that have gone wrong.
type fickle func() bool

func never() bool { return false }

// follow winds the warp to its end with paper and pencil.
func (w drawnWarp) follow(p *pencil, errs fickle) {
	w.t.Helper()
	for range 4000 {
		said, stage := w.s.Announce(w.clock), w.stage()
		if st := w.s.State(); st.Laid() > 0 && (stage == Winding || stage == AtPeg) && errs() {
			w.takesBack(p)
			continue
		}
		switch stage {
		case Winding:
			p.pass(said)
			w.press(1)
		case AtPeg:
			stop, _ := w.s.Stop()
			p.stop(said, stop)
			w.press(1)
		case AtQuestion:
			w.answers(p)
		case Finishing:
			chain := w.s.State().Chain
			p.step(strings.Join(said, " "))
			if w.press(1); w.s.State().Chain != chain {
				p.nextChain()
			}
		case Done:
			return
		default:
			p.t.Fatalf("stage %d: %q", stage, said)
		}
	}
	p.t.Fatalf("it never ends: %q", w.s.Announce(w.clock))
}

// takesBack takes the last pass off, if that is what the key does here.
func (w drawnWarp) takesBack(p *pencil) {
	w.t.Helper()
	laid := w.laid()
	w.does(TakeBack{})
	if w.laid() < laid {
		p.takeOff(w.laid())
		return
	}
	if last := w.events[len(w.events)-1]; last.Kind == counter.WorkUndone {
		w.press(1) // the work was done, and stays so
	}
}

// answers says what lies at the lease, and takes off what is to come off then.
func (w drawnWarp) answers(p *pencil) {
	w.t.Helper()
	q, _ := w.s.Question()
	says := p.looks(q)
	w.does(Answer{says})
	if strings.Contains(strings.Join(w.last.Said, " "), "answer once more") {
		w.does(Answer{says})
	}
	if w.last.Cue == CueRefused {
		p.t.Fatalf("%v is what lies there, but %q", says, w.last.Said)
	}
	text := strings.Join(w.last.Said, " ")
	if m := offWords.FindStringSubmatch(text); m != nil {
		p.takeOff(number(m[2]))
	} else if strings.Contains(text, "take it back and lay it anew") {
		w.takesBack(p)
	}
}

// check compares what was drawn with what was ordered, and the knots with the hand-over.
func (w drawnWarp) check(p *pencil) {
	w.t.Helper()
	var picks []string
	if w.byChain {
		picks = w.order
	}
	warp := p.warp(picks)
	var got []string
	for _, end := range warp {
		got = append(got, end.yarn)
	}
	if !slices.Equal(got, w.order) {
		p.t.Fatalf("drawn:   %q\nordered: %q", got, w.order)
	}
	for i, faults := range p.faults() {
		if wrong := w.s.State().Chains[i].WrongOpenings; len(faults) > 0 && len(wrong) == 0 {
			p.t.Fatalf("chain %d: neighbours on one side at passes %v, and nobody knows", i+1, faults)
		}
	}
	told := map[string]string{}
	for _, r := range counter.HandOver(w.s.State(), slices.Values(w.events)).Rows {
		if strings.HasPrefix(r.Name, "begin at") || strings.HasPrefix(r.Name, "finish at") {
			_, told[r.Name], _ = strings.Cut(r.Value.String(), ": ")
		}
	}
	drawn := p.knots(warp)
	for _, name := range []string{"begin at near peg", "finish at near peg", "begin at far peg", "finish at far peg"} {
		var list []int
		if told[name] != "" {
			list = p.positions(told[name])
		}
		if !slices.Equal(list, drawn[name]) {
			p.t.Fatalf("%s: drawn %v, told %v", name, drawn[name], list)
		}
	}
}

var pencilOrders = []struct {
	text      string
	positions int
}{
	{"4 red, 3 times (2 white, 1 blue, 5 red), 4 red", 6},
	{"mirror (3 red, 1 white, 2 blue, 7 white)", 5},
	{"4 times (4 black, 4 white), 4 black", 8},
	{"3 times (2 red, 2 white, 2 blue)", 6},
	{"8 navy, 21 white, 3 red, 21 white, 8 navy", 8},
	{"red, white, blue, red, green, white, blue, green, red, white", 4},
}

var allWays = []schedule.Way{schedule.Searched, schedule.SideBySide, schedule.Swapped, schedule.OneRepeat,
	schedule.ChainEach}

// Whoever follows the pages with paper and pencil gets the stripes as ordered, in each way to wind, whichever
// way round the hands lay a return pass, and finds each knot where the hand-over says it is.
func TestPencil(t *testing.T) {
	orders := pencilOrders
	if testing.Short() { // each is searched anew, which the race detector makes slow
		orders = orders[3:5]
	}
	for _, o := range orders {
		for _, way := range allWays {
			for _, mirrored := range []bool{false, true} {
				for _, foot := range []wind.FootPosition{wind.FootFirst, wind.FootLast} {
					name := fmt.Sprintf("%s/%v/mirrored=%v,%v", o.text, way, mirrored, foot)
					t.Run(name, func(t *testing.T) {
						w, ok := newDrawnWarp(t, o.text, way, func(s *plan.Spec) {
							s.Positions, s.Foot = o.positions, foot
						})
						if !ok {
							t.Skip("not this way")
						}
						p := newPencil(t, mirrored, foot == wind.FootLast)
						w.follow(p, never)
						w.check(p)
					})
				}
			}
		}
	}
}

// The same with passes taken back in between.
func TestPencilTakesBack(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		o := rapid.SampledFrom(pencilOrders).Draw(rt, "order")
		way := rapid.SampledFrom(allWays).Draw(rt, "way")
		foot := wind.FootPosition(rapid.IntRange(0, 1).Draw(rt, "foot"))
		chain := rapid.SampledFrom([]int{0, 0, 20}).Draw(rt, "chain")
		w, ok := newDrawnWarp(t, o.text, way, func(s *plan.Spec) {
			s.Positions, s.Foot, s.ChainEnds = o.positions, foot, chain
			s.ReturnOrder = wind.ReturnOrder(rapid.IntRange(0, 1).Draw(rt, "planned"))
		})
		if !ok {
			rt.Skip("not this way")
		}
		p := newPencil(t, rapid.Bool().Draw(rt, "mirrored"), foot == wind.FootLast)
		left, often := 60, 11 // one mistake seldom comes alone
		w.follow(p, func() bool {
			if left--; left < 0 || rapid.IntRange(0, often).Draw(rt, "errs") > 0 {
				often = 11
				return false
			}
			often = 1
			return true
		})
		w.check(p)
	})
}
