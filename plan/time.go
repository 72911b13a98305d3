package plan

import (
	"fmt"
	"math/big"
	"time"

	"millside/plan/figure"
	"millside/plan/measure"
)

// TimeSpan is how long a warp takes at the mill.
type TimeSpan struct {
	// Low, Middle and High are the time for quick, middling and slow passes. Middle is the figure that is
	// shown, everywhere the same.
	Low, Middle, High time.Duration
	// AtPegs is the part of it for the work at the end pegs; the rest is winding.
	AtPegs time.Duration
	// How says how it was reached.
	How measure.How
}

// String gives the middle of the span in whole minutes, rounded up: "about 37 min"; without "about" where
// there is no spread.
func (s TimeSpan) String() string { return s.shown().String() }

// shown is the middle of the span.
func (s TimeSpan) shown() figure.Duration {
	return figure.Duration{Time: s.Middle, About: s.Low != s.High}
}

// Words tells the parts as well: "about 37 min, 15 min of it at the pegs".
func (s TimeSpan) Words() string { return s.Cell().String() }

// Cell is what Words says, in its parts.
func (s TimeSpan) Cell() figure.Cell {
	if s.AtPegs < time.Minute {
		return figure.Cell{s.shown()}
	}
	return figure.Say("%s, %s of it at the pegs", s.shown(), figure.Duration{Time: s.AtPegs})
}

// HandTimes are the times that the plan is reckoned with: the weaver's own, where the plan has them, else
// the usual ones.
func (s Spec) HandTimes() HandTimes {
	if s.Times == (HandTimes{}) {
		return DefaultHandTimes()
	}
	return s.Times
}

// ownPass says whether the weaver has said how long a pass takes; the pace of other warps then counts for
// nothing.
func (s Spec) ownPass() bool {
	t, usual := s.HandTimes(), DefaultHandTimes()
	return t.Pass > 0 || t.Handling != usual.Handling || t.Turn != usual.Turn
}

// passPace is how long a pass takes.
func (s Spec) passPace(pace Pace, turns *big.Rat) Pace {
	if s.ownPass() {
		d := s.HandTimes().PassTime(turns)
		return Pace{Low: d, Middle: d, High: d}
	}
	return pace.At(turns)
}

// HandTimesAt are the [Spec.HandTimes] with Pass filled in for the turns of this plan and a pace: what
// [HandTimes.Total] makes of a plan's work is then the middle of [Plan.Time]. The pace may be zero. A spec
// whose length or mill won't do is reckoned without turns.
func (s Spec) HandTimesAt(pace Pace) HandTimes {
	t := s.HandTimes()
	t.Pass = max(s.passPace(pace, s.PassTurns()).Middle, 1)
	return t
}

// PassTurns is how many turns of the mill a pass of the plan takes: see [MillPath.PassTurns]. It is 0 where
// the length or the mill won't do.
func (s Spec) PassTurns() *big.Rat {
	path, _ := s.path()
	return path.PassTurns()
}

// TimeSource says by whose times the plan is reckoned.
func (s Spec) TimeSource(pace Pace) string {
	if s.ownPass() {
		return "the times that you gave"
	}
	return pace.Source()
}

// Time is how long the warp takes at the mill: see [Plan.TimeOf].
func (p *Plan) Time(pace Pace) TimeSpan { return p.TimeOf(p.WorkSum(), pace) }

// PassPace is how long one pass of the plan takes. The pace may be zero.
func (p *Plan) PassPace(pace Pace) Pace { return p.Spec.passPace(pace, p.Path.PassTurns()) }

// TimeOf is how long so much work takes on the way of this plan: each pass by the turns of the mill and the
// handling at its ends, or by the weaver's own pace, which is scaled by both; the work at the pegs by the
// weaver's weights. The pace may be zero: then it is the published one.
func (p *Plan) TimeOf(w WorkSum, pace Pace) TimeSpan { return p.Spec.TimeOf(w, pace) }

// TimeOf is [Plan.TimeOf] where no plan is worked out.
func (s Spec) TimeOf(w WorkSum, pace Pace) TimeSpan {
	one, t := s.passPace(pace, s.PassTurns()), s.HandTimes()
	span := TimeSpan{AtPegs: t.AtPegs(w)}
	span.Low = timesOver(w.Passes, one.Low) + span.AtPegs
	span.Middle = timesOver(w.Passes, one.Middle) + span.AtPegs
	span.High = timesOver(w.Passes, one.High) + span.AtPegs
	terms := []figure.Cell{figure.Say("%s x %s", figure.Counted(w.Passes, "pass", "passes"), seconds(one.Middle))}
	for _, part := range []struct {
		n         int
		one, many string
		d         time.Duration
	}{
		{w.Halts, "halt", "halts", t.Halt}, {w.Cuts, "cut", "cuts", t.Cut}, {w.Ties, "tie", "ties", t.Tie},
		{w.Threads, "package", "packages", t.Thread}, {w.FarFinishes, "far finish", "far finishes", t.Far},
	} {
		if part.n > 0 && part.d > 0 {
			terms = append(terms, figure.Say("%s x %s", figure.Counted(part.n, part.one, part.many), seconds(part.d)))
		}
	}
	span.How = measure.How{Formula: "passes x seconds a pass (" + s.passRule(pace) +
		") + halts, cuts, ties, packages threaded, far finishes x the seconds of each",
		WithNumbers: figure.Say("%s = %s", figure.Join(terms, " + "), figure.Duration{Time: span.Middle})}
	return span
}

// passRule says what a pass takes: "0.27 min + 3.5 turns x 0.08 min", or whose pace it is.
func (s Spec) passRule(pace Pace) string {
	t := s.HandTimes()
	switch {
	case s.ownPass() && t.Pass > 0:
		return "as you gave it"
	case s.ownPass() || pace.orPublished().Passes == 0:
		return fmt.Sprintf("%s min + %s x %s min", MinutesText(t.Handling),
			figure.Of(s.PassTurns(), 2, "turn", "turns"), MinutesText(t.Turn))
	default:
		return fmt.Sprintf("%s, scaled to %s", pace.Source(), figure.Of(s.PassTurns(), 2, "turn", "turns"))
	}
}
