package plan

import (
	"fmt"
	"math/big"

	"millside/plan/measure"
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
	return fmt.Sprintf("%s; %s tied on, %d cut off, %s threaded", measure.Counted(s.Halts, "halt", "halts"),
		measure.Counted(s.Ties, "end", "ends"), s.Cuts, measure.Counted(s.Threads, "package", "packages"))
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

// workOf adds up the same for a plain warp that isn't worked out pass by pass: its passes carry the first
// positions, so between two of them only the difference is cut off or tied on.
func workOf(parts []ChainPart) WorkSum {
	var s WorkSum
	for _, part := range parts {
		s.Passes += len(part.Passes)
		before := 0
		for i, ends := range part.Passes {
			s.Threads = max(s.Threads, ends)
			s.Ties += max(ends-before, 0)
			s.Cuts += max(before-ends, 0)
			if i > 0 && ends != before {
				s.Halts++
			}
			before = ends
		}
		s.Cuts += before
		if part.Finish() == AtCountingCross {
			s.FarFinishes++
		}
	}
	return s
}

// PassTurns is how many turns of the mill a pass takes. A board has none: each distance between two of
// its pegs, about a yard, counts as half a turn of a mill of two yards (no source). The number is the
// caller's own.
func (p MillPath) PassTurns() *big.Rat {
	if p.turns == nil {
		return big.NewRat(int64(p.Steps), 2)
	}
	return new(big.Rat).Set(p.turns)
}
