package counter

import (
	"fmt"

	"millside/plan"
)

// Fold is the state after a list of events, from the start of a plan, as a record is read: in a time that grows with
// the number of events and no faster. If an event doesn't follow from those before it, the state before it is returned
// with a [*FoldError] that names its index. The times may run backwards, since clocks are set; the order of the list
// counts.
func Fold(p *plan.Plan, events []Event) (State, error) {
	f := newFolder(NewState(p))
	for i, e := range events {
		if err := f.apply(e); err != nil {
			return f.settled(), &FoldError{Index: i, Err: err}
		}
	}
	return f.settled(), nil
}

// FoldError says which event of a list doesn't follow from those before it.
type FoldError struct {
	// Index is the event's place in the list, from 0.
	Index int
	// Err says why.
	Err error
}

// Error names the event by its index, from 0.
func (e *FoldError) Error() string { return fmt.Sprintf("event with index %d: %v", e.Index, e.Err) }

// Unwrap gives the reason.
func (e *FoldError) Unwrap() error { return e.Err }
