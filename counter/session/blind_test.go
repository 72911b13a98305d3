package session

import (
	"context"
	"sync"
	"testing"
	"time"

	"millside/plan"
	"millside/plan/stripe"
	"millside/plan/stripe/schedule"
	"millside/plan/wind"
)

// warps are of each kind that the conversation treats in its own way.
var warps = map[string]func(*plan.Spec){
	"400 by 10": func(s *plan.Spec) { s.Ends, s.TieEvery = 400, 100 },
	"395 by 10": func(s *plan.Spec) { s.Ends, s.TieEvery = 395, 100 },
	"37 by 10":  func(s *plan.Spec) { s.Ends = 37 },
	"mirrored by 9": func(s *plan.Spec) {
		s.Ends, s.Group, s.ReturnOrder = 100, 9, wind.MirroredOrder
	},
	"left-handed, two chains": func(s *plan.Spec) { s.Ends, s.Hand, s.ChainEnds = 75, wind.LeftHanded, 40 },
	"striped":                 striped("8 times (10 blue, 10 white)", 12),
	"striped, small":          striped("4 red, 3 times (2 white, 1 blue, 5 red), 4 red", 9),
	"striped, mirror":         striped("mirror (3 red, 1 white, 2 blue, 7 white)", 6),
}

// striped is a warp of stripes, cut into passes once for all tests.
func striped(text string, positions int) func(*plan.Spec) {
	return stripedWay(text, positions, schedule.Searched)
}

func stripedWay(text string, positions int, way schedule.Way) func(*plan.Spec) {
	made := sync.OnceValue(func() plan.Spec {
		s := benchSpec()
		s.Stripes, s.Positions, s.Group, s.TieEvery = text, positions, 1, 0
		made, err := stripe.ForPlan(context.Background(), s, stripe.Ask{Way: way}, nil)
		if err != nil {
			panic(err)
		}
		return made.Spec
	})
	return func(s *plan.Spec) { *s = made() }
}

// winder winds with the hands and presses the keys, and now and then presses the pass key without looking.
type winder struct {
	*bench
	wound int // passes wound by hand, over all chains
}

// blindly presses the pass key right after something else: that may count nothing.
func (w *winder) blindly() {
	w.t.Helper()
	all := w.s.State().PassesLaidAll()
	w.after(300*time.Millisecond, Press{})
	if w.last.Cue != CueRefused || w.s.State().PassesLaidAll() != all {
		w.t.Fatalf("a press without looking did something: %v, %q", w.last.Cue, w.last.Said)
	}
}

// With the pass key pressed blindly once too early and once too often on every page, the count is that of the hands at
// the end, whether the question about the lease is answered or never looked at.
func TestBlindPresses(t *testing.T) {
	for name, change := range warps {
		for _, answers := range []bool{true, false} {
			t.Run(name, func(t *testing.T) {
				w := &winder{bench: newBench(t, change)}
				for i := 0; w.stage() != Done; i++ {
					if i > 2000 {
						t.Fatal("it never ends")
					}
					w.step(answers)
				}
				st := w.s.State()
				if st.PassesLaidAll() != w.wound || st.EndsStandingAll() != w.plan.EndsWound() {
					t.Errorf("%d passes counted, %d wound; %d ends of %d", st.PassesLaidAll(), w.wound,
						st.EndsStandingAll(), w.plan.EndsWound())
				}
			})
		}
	}
}

// step does what the page asks for.
func (w *winder) step(answers bool) {
	w.t.Helper()
	switch stage := w.stage(); {
	case stage == AtQuestion && answers:
		w.blindly() // once too early
		w.does(Answer{Yes})
		w.blindly() // once too often
	case stage == Winding || stage == AtQuestion && !w.s.State().Wound() && !w.stops():
		w.wound++ // who doesn't look at the question winds on
		w.does(Press{})
		w.blindly()
	default:
		w.does(Press{})
		if w.stage() != Done {
			w.blindly()
		}
	}
}

func (w *winder) stops() bool {
	_, stops := w.s.stopWork()
	return stops
}
