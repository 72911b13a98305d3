package counter

import (
	"fmt"
	"time"

	"millside/plan/measure"
)

// Tie is a count tie: a place where the count is known.
type Tie struct {
	// Number is the line of the record that notes it, by which it is taken back.
	Number int
	At     time.Time
	// Chain is counted from 1. Pass is the number of its passes that the ties hold so far, this one included,
	// and Ends the number of their ends.
	Chain, Pass, Ends int
}

// tieMade ticks a count tie, and tieWaved waves one off. There is one at most after a pass.
func (f *Folder) tieMade(e Event) error {
	t, err := f.tie(e)
	if err != nil {
		return err
	}
	f.s.Ties = append(f.s.Ties, t)
	return nil
}

func (f *Folder) tieWaved(e Event) error {
	t, err := f.tie(e)
	if err != nil {
		return err
	}
	f.s.TiesWaved = append(f.s.TiesWaved, t)
	return nil
}

// tie is the tie that an event is about, if it lies above the ties before it.
func (f *Folder) tie(e Event) (Tie, error) {
	c, err := f.current(e)
	if err != nil {
		return Tie{}, err
	}
	if c.Laid == 0 {
		return Tie{}, fmt.Errorf("chain %d has no pass yet", e.Chain)
	}
	if e.Pass < 1 || e.Pass > c.Laid {
		return Tie{}, &measure.FieldError{Field: "passes in ties", Value: fmt.Sprint(e.Pass),
			Want: fmt.Sprintf("1 to %d", c.Laid)}
	}
	if err := unfinished(c); err != nil {
		return Tie{}, err
	}
	if last := f.s.LastTie(); e.Pass <= last {
		return Tie{}, fmt.Errorf("the tie after pass %d is noted already", last)
	}
	return Tie{Number: f.line(), At: e.At, Chain: e.Chain, Pass: e.Pass, Ends: f.s.Current().EndsAfter(e.Pass)}, nil
}

// LastTie is the number of passes of the current chain that the count ties hold; 0 if there is none.
func (s State) LastTie() int { return lastOf(s.Ties, s.Chain) }

// LastTieSeenTo is the number of passes up to which every count tie of the current chain was made or waved
// off.
func (s State) LastTieSeenTo() int { return max(lastOf(s.Ties, s.Chain), lastOf(s.TiesWaved, s.Chain)) }

func lastOf(ties []Tie, chain int) int {
	if n := len(ties); n > 0 && ties[n-1].Chain == chain {
		return ties[n-1].Pass
	}
	return 0
}

// dropTies lets go of the ties of the current chain above a number of passes: such a tie has to be opened
// for its last group to come off, and a count below it says that it never held what was thought.
func (f *Folder) dropTies(passes int) {
	f.s.Ties = dropAbove(f.s.Ties, f.s.Chain, passes)
	f.s.TiesWaved = dropAbove(f.s.TiesWaved, f.s.Chain, passes)
}

func dropAbove(ties []Tie, chain, passes int) []Tie {
	for n := len(ties); n > 0 && ties[n-1].Chain == chain && ties[n-1].Pass > passes; n-- {
		ties = ties[:n-1]
	}
	return ties
}
