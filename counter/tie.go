package counter

import (
	"fmt"
	"time"
)

// Tie is a count tie that was made: a place where the count was known.
type Tie struct {
	At time.Time
	// Chain is counted from 1; Pass is the number of its passes that lay when it was made, and Ends the
	// number of their ends.
	Chain, Pass, Ends int
}

// tieMade ticks a count tie. There is one at most after a pass.
func (f *folder) tieMade(e Event) error {
	if _, err := f.lastPass(e); err != nil {
		return err
	}
	if n := len(f.s.Ties); n > 0 && f.s.Ties[n-1].Chain == e.Chain && f.s.Ties[n-1].Pass == e.Pass {
		return fmt.Errorf("the tie after pass %d is noted already", e.Pass)
	}
	f.s.Ties = append(f.s.Ties, Tie{At: e.At, Chain: e.Chain, Pass: e.Pass, Ends: f.s.Current().EndsAfter(e.Pass)})
	return nil
}

// dropTies lets go of the ties of the current chain above a number of passes: such a tie has to be opened
// for its last group to come off, and a count below it says that it never held what was thought.
func (f *folder) dropTies(passes int) {
	for n := len(f.s.Ties); n > 0 && f.s.Ties[n-1].Chain == f.s.Chain && f.s.Ties[n-1].Pass > passes; n-- {
		f.s.Ties = f.s.Ties[:n-1]
	}
}
