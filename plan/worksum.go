package plan

import (
	"fmt"
	"math/big"
	"time"
)

// WorkSum counts the work of a whole warp, its start and its end included.
type WorkSum struct {
	// Passes is the passes of all chains.
	Passes int
	// Halts is how often the mill stands between two passes of a chain for work at a peg.
	Halts int
	// Cuts and Ties count the ends cut off and tied on, Threads the packages threaded, those for the first
	// pass included.
	Cuts, Ties, Threads int
	// FarFinishes is how many chains stop at the counting cross.
	FarFinishes int
}

// String says it in words: "1 halt; 10 ends tied on, 10 cut off, 10 packages threaded".
func (s WorkSum) String() string {
	return fmt.Sprintf("%s; %s tied on, %d cut off, %s threaded", Counted(s.Halts, "halt", "halts"),
		Counted(s.Ties, "end", "ends"), s.Cuts, Counted(s.Threads, "package", "packages"))
}

// WorkSum adds up the ledger of [Plan.WorkBefore].
func (p *Plan) WorkSum() WorkSum {
	s := WorkSum{Passes: p.Passes()}
	for w := range p.Work() {
		if w.Halt() {
			s.Halts++
		}
		s.Cuts += w.Cut.Count()
		s.Ties += w.Tie.Count()
		s.Threads += w.Threaded().Count()
	}
	for _, c := range p.Chains {
		if c.Finish() == AtCountingCross {
			s.FarFinishes++
		}
	}
	return s
}

// HandTimes are the weaver's weights: how long each kind of work takes. All are 0 to [LongestHandTime].
type HandTimes struct {
	// Handling is what a pass takes at its two ends, Turn what each turn of the mill takes.
	Handling, Turn time.Duration
	// Halt is what it takes to stop at a peg and to go on again; Cut and Tie are for each end, Thread for
	// each package.
	Halt, Cut, Tie, Thread time.Duration
	// Far is what it takes more where a chain stops at the counting cross.
	Far time.Duration
	// Pass, where it is above 0, stands for the whole pass in place of Handling and Turn.
	Pass time.Duration
}

// LongestHandTime is the most that any of the [HandTimes] may be.
const LongestHandTime = 24 * time.Hour

// DefaultHandTimes are the times to begin with, until the weaver's own are known. With three and a half
// turns a pass takes 0.55 min, so that 40 passes take 22 min: a practised hand needs 20 to 25 (common
// practice, no source). What each kind of work takes is from memory.
func DefaultHandTimes() HandTimes {
	const hundredth = time.Minute / 100
	return HandTimes{
		Handling: 27 * hundredth, Turn: 8 * hundredth, Halt: 50 * hundredth, Cut: 20 * hundredth,
		Tie: 30 * hundredth, Thread: 100 * hundredth, Far: 90 * hundredth,
	}
}

// PassTime is how long one pass takes with so many turns of the mill, rounded to the nearest
// nanosecond. Nil, or a number below nothing, stands for no turns.
func (t HandTimes) PassTime(turns *big.Rat) time.Duration {
	if t.Pass > 0 {
		return t.Pass
	}
	if turns == nil || turns.Sign() <= 0 {
		return t.Handling
	}
	d := new(big.Rat).Mul(turns, new(big.Rat).SetInt64(int64(t.Turn)))
	twice := new(big.Int).Quo(new(big.Int).Lsh(d.Num(), 1), d.Denom()) // cut down; then halved with rounding
	return t.Handling + time.Duration(twice.Add(twice, big.NewInt(1)).Rsh(twice, 1).Int64())
}

// Total is how long the work takes with so many turns of the mill in each pass.
func (t HandTimes) Total(s WorkSum, turns *big.Rat) time.Duration {
	return timesOver(s.Passes, t.PassTime(turns)) + timesOver(s.Halts, t.Halt) + timesOver(s.Cuts, t.Cut) + timesOver(s.Ties, t.Tie) +
		timesOver(s.Threads, t.Thread) + timesOver(s.FarFinishes, t.Far)
}

func timesOver(n int, d time.Duration) time.Duration { return time.Duration(n) * d }

// PassTurns is how many turns of the mill a pass takes. A board has none: each distance between two of
// its pegs, about a yard, counts as half a turn of a mill of two yards (no source). The number is the
// caller's own.
func (p MillPath) PassTurns() *big.Rat {
	if p.turns == nil {
		return big.NewRat(int64(p.Steps), 2)
	}
	return new(big.Rat).Set(p.turns)
}
