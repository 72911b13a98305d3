package times

import (
	"fmt"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
	"strings"
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
func (s TimeSpan) String() string {
	text := hours(minutes(s.Middle))
	if s.Low == s.High {
		return text
	}
	return "about " + text
}

// Words tells the parts as well: "about 37 min, 15 min of it at the pegs".
func (s TimeSpan) Words() string {
	if s.AtPegs < time.Minute {
		return s.String()
	}
	return fmt.Sprintf("%s, %s of it at the pegs", s, hours(minutes(s.AtPegs)))
}

// seconds writes a time in seconds with at most one decimal, rounded to the nearest.
func seconds(d time.Duration) string {
	return ratio.Decimal(ratio.Quo(ratio.Of(d), ratio.Of(time.Second)), 1)
}

// minutes rounds a time up to whole minutes.
func minutes(d time.Duration) int {
	n := int(d / time.Minute)
	if d%time.Minute > 0 {
		n++
	}
	return n
}

func hours(minutes int) string {
	switch {
	case minutes < 60:
		return fmt.Sprintf("%d min", minutes)
	case minutes%60 == 0:
		return fmt.Sprintf("%d h", minutes/60)
	default:
		return fmt.Sprintf("%d h %d min", minutes/60, minutes%60)
	}
}

// Span is how long so much work takes where each pass takes what one says; rule says in words how that was
// reached.
func (t HandTimes) Span(w WorkSum, one Pace, rule string) TimeSpan {
	span := TimeSpan{AtPegs: t.AtPegs(w)}
	span.Low = timesOver(w.Passes, one.Low) + span.AtPegs
	span.Middle = timesOver(w.Passes, one.Middle) + span.AtPegs
	span.High = timesOver(w.Passes, one.High) + span.AtPegs
	terms := []string{fmt.Sprintf("%s x %s s", measure.Counted(w.Passes, "pass", "passes"), seconds(one.Middle))}
	for _, part := range []struct {
		n         int
		one, many string
		d         time.Duration
	}{
		{w.Halts, "halt", "halts", t.Halt}, {w.Cuts, "cut", "cuts", t.Cut}, {w.Ties, "tie", "ties", t.Tie},
		{w.Threads, "package", "packages", t.Thread}, {w.FarFinishes, "far finish", "far finishes", t.Far},
	} {
		if part.n > 0 && part.d > 0 {
			terms = append(terms, fmt.Sprintf("%s x %s s", measure.Counted(part.n, part.one, part.many),
				seconds(part.d)))
		}
	}
	span.How = measure.How{Formula: "passes x seconds a pass (" + rule +
		") + halts, cuts, ties, packages threaded, far finishes x the seconds of each",
		WithNumbers: strings.Join(terms, " + ") + " = " + hours(minutes(span.Middle))}
	return span
}
