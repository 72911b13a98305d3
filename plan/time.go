package plan

import (
	"fmt"
	"math/big"

	"millside/plan/figure"
	"millside/plan/times"
	"millside/plan/wind"
)

// HandTimes are the times that the plan is reckoned with: the weaver's own, where the plan has them, else
// the usual ones.
func (s Spec) HandTimes() times.HandTimes {
	if s.Times == (times.HandTimes{}) {
		return times.DefaultHandTimes()
	}
	return s.Times
}

// ownPass says whether the weaver has said how long a pass takes; the pace of other warps then counts for
// nothing.
func (s Spec) ownPass() bool {
	t, usual := s.HandTimes(), times.DefaultHandTimes()
	return t.Pass > 0 || t.Handling != usual.Handling || t.Turn != usual.Turn
}

// passPace is how long a pass takes.
func (s Spec) passPace(pace times.Pace, turns *big.Rat) times.Pace {
	if s.ownPass() {
		d := s.HandTimes().PassTime(turns)
		return times.Pace{Low: d, Middle: d, High: d}
	}
	return pace.At(turns)
}

// HandTimesAt are the [Spec.HandTimes] with Pass filled in for the turns of this plan and a pace: what
// [times.HandTimes.Total] makes of a plan's work is then the middle of [Plan.Time]. The pace may be zero. A spec
// whose length or mill won't do is reckoned without turns.
func (s Spec) HandTimesAt(pace times.Pace) times.HandTimes {
	t := s.HandTimes().WithPegs(pace.Pegs)
	t.Pass = max(s.passPace(pace, s.PassTurns()).Middle, 1)
	return t
}

// PassTurns is how many turns of the mill a pass of the plan takes: see [frame.MillPath.PassTurns]. It is 0 where
// the length or the mill won't do.
func (s Spec) PassTurns() *big.Rat {
	path, _ := s.path()
	return path.PassTurns()
}

// TimeSource says by whose times the plan is reckoned.
func (s Spec) TimeSource(pace times.Pace) string {
	if s.ownPass() {
		return "the times that you gave"
	}
	return pace.Source()
}

// Time is how long the warp takes at the mill: see [Plan.TimeOf].
func (p *Plan) Time(pace times.Pace) times.TimeSpan { return p.TimeOf(p.WorkSum(), pace) }

// PassPace is how long one pass of the plan takes. The pace may be zero.
func (p *Plan) PassPace(pace times.Pace) times.Pace { return p.Spec.passPace(pace, p.Path.PassTurns()) }

// TimeOf is how long so much work takes on the way of this plan: each pass by the turns of the mill and the
// handling at its ends, or by the weaver's own pace, which is scaled by both; the work at the pegs by the
// weaver's weights, which their own halts change ([times.PegPace]). The pace may be zero: then it is the published one.
func (p *Plan) TimeOf(w times.WorkSum, pace times.Pace) times.TimeSpan {
	return p.Spec.timeOf(w, pace, p.Path.PassTurns())
}

// TimeOf is [Plan.TimeOf] where no plan is worked out.
func (s Spec) TimeOf(w times.WorkSum, pace times.Pace) times.TimeSpan {
	return s.timeOf(w, pace, s.PassTurns())
}

func (s Spec) timeOf(w times.WorkSum, pace times.Pace, turns *big.Rat) times.TimeSpan {
	return s.HandTimes().WithPegs(pace.Pegs).Span(w, s.passPace(pace, turns), s.passRule(pace, turns))
}

// passRule says what a pass takes: "0.27 min + 3.5 turns x 0.08 min", or whose pace it is.
func (s Spec) passRule(pace times.Pace, turns *big.Rat) string {
	t := s.HandTimes()
	switch {
	case s.ownPass() && t.Pass > 0:
		return "as you gave it"
	case s.ownPass() || !pace.Timed():
		return fmt.Sprintf("%s min + %s x %s min", times.MinutesText(t.Handling),
			figure.Of(turns, 2, "turn", "turns"), times.MinutesText(t.Turn))
	default:
		return fmt.Sprintf("%s, scaled to %s", pace.Source(), figure.Of(turns, 2, "turn", "turns"))
	}
}

// WorkSum adds up the ledger of [Plan.WorkBefore].
func (p *Plan) WorkSum() times.WorkSum {
	s := times.WorkSum{Passes: p.Passes()}
	for w := range p.Work() {
		if w.Halt() {
			s.Halts++
		}
		s.Cuts += w.Cut.Count()
		s.Ties += w.Tie.Count()
		s.Threads += w.Threaded().Count()
	}
	for _, c := range p.Chains {
		if c.Finish() == wind.AtCountingCross {
			s.FarFinishes++
		}
	}
	return s
}
