package counter

import (
	"errors"
	"fmt"
	"slices"

	"millside/plan/finishing"
	"millside/plan/measure"
)

// stepIDs are the finishing steps of a chain. They don't depend on the return order.
func (f *Folder) stepIDs(chain int) []finishing.StepID {
	if f.stepsOf != chain {
		f.steps = f.steps[:0]
		for _, step := range finishing.Steps(f.s.Plan, f.s.Plan.Chains[chain-1]) {
			f.steps = append(f.steps, step.ID)
		}
		f.stepsOf = chain
	}
	return f.steps
}

// done says whether a chain is wholly wound and ticked.
func (f *Folder) done(chain int) bool {
	c := f.s.Chains[chain-1]
	return c.Laid == len(f.s.Plan.Chains[chain-1].Passes) && len(c.Ticked) == len(f.stepIDs(chain))
}

func (f *Folder) ticked(e Event) error {
	c, err := f.current(e)
	if err != nil {
		return err
	}
	if total := len(f.s.Plan.Chains[e.Chain-1].Passes); c.Laid < total {
		return fmt.Errorf("%q can't be ticked: only %d of the %d passes of chain %d are laid",
			measure.Shortened(string(e.Step)), c.Laid, total, e.Chain)
	}
	if !slices.Contains(f.stepIDs(e.Chain), e.Step) {
		return fmt.Errorf("%q is no finishing step of chain %d", measure.Shortened(string(e.Step)), e.Chain)
	}
	if c.Has(e.Step) {
		return fmt.Errorf("%q is ticked already", e.Step)
	}
	c.Ticked = append(c.Ticked, e.Step)
	if f.done(e.Chain) && e.Chain < len(f.s.Chains) {
		f.s.Chain = e.Chain + 1
		f.s.Paddle = paddleAfter(f.s.Plan, f.s.Chain, 0)
	}
	return nil
}

// unticked takes a tick away, from the current chain or from the one before it as long as nothing of
// the current one is laid: the last tick of a chain can be a slip too.
func (f *Folder) unticked(e Event) error {
	back := e.Chain >= 1 && e.Chain == f.s.Chain-1 && f.s.Chains[f.s.Chain-1].Laid == 0
	if e.Chain != f.s.Chain && !back {
		_, err := f.current(e)
		return err
	}
	c := &f.s.Chains[e.Chain-1]
	i := slices.Index(c.Ticked, e.Step)
	if i < 0 {
		return fmt.Errorf("%q is not ticked in chain %d", measure.Shortened(string(e.Step)), e.Chain)
	}
	if c.Ticked = slices.Delete(c.Ticked, i, i+1); len(c.Ticked) == 0 {
		c.Ticked = nil // the same state as before the first tick
	}
	if back {
		f.s.Paddle = paddleFor(f.s.Plan, e.Chain, c.Laid)
		f.s.Chains[f.s.Chain-1].Worked = nil // of a chain that is not begun
	}
	f.s.Chain = e.Chain
	return nil
}

func (f *Folder) finished() error {
	if f.s.Chain < len(f.s.Chains) || !f.done(f.s.Chain) {
		return errors.New("the warp can't be finished yet: a pass or a finishing step is missing")
	}
	f.s.Finished = true
	return nil
}
