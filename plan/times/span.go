package times

import (
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
	"time"
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

// seconds is a time in seconds with at most one decimal, rounded to the nearest.
func seconds(d time.Duration) figure.Number {
	return figure.New(ratio.Quo(ratio.Of(d), ratio.Of(time.Second)), 1, "s")
}

// Span is how long so much work takes where each pass takes what one says; rule says in words how that was
// reached.
func (t HandTimes) Span(w WorkSum, one Pace, rule string) TimeSpan {
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
	span.How = measure.How{Formula: "passes x seconds a pass (" + rule +
		") + halts, cuts, ties, packages threaded, far finishes x the seconds of each",
		WithNumbers: figure.Say("%s = %s", figure.Join(terms, " + "), figure.Duration{Time: span.Middle})}
	return span
}
