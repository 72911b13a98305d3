package times

import (
	"fmt"
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
