package counter

import (
	"errors"
	"fmt"
	"slices"

	"millside/plan/measure"
)

// worked notes that the work at the end peg before the next pass is done, or that it was not.
func (f *Folder) worked(e Event) error {
	c, err := f.current(e)
	if err != nil {
		return err
	}
	if next := c.Laid + 1; e.Pass != next || next > len(f.s.Current().Passes) {
		return fmt.Errorf("the work before pass %d is not the one in hand: %s of chain %d lie", e.Pass,
			measure.Counted(c.Laid, "pass", "passes"), e.Chain)
	}
	if e.Kind == WorkDone {
		if n := len(c.Worked); n == 0 || c.Worked[n-1] != e.Pass {
			c.Worked = append(upTo(c.Worked, c.Laid), e.Pass)
		}
		f.anew(c, e)
		return nil
	}
	n := len(c.Worked)
	if n == 0 || c.Worked[n-1] != e.Pass {
		return fmt.Errorf("the work before pass %d was not confirmed", e.Pass)
	}
	f.keep(e.Pass)
	c.Worked = c.Worked[:n-1]
	f.s.Paddle = paddleAfter(f.s.Plan, e.Chain, c.Laid)
	if n := len(c.Anew); n > 0 && c.Anew[n-1].Before == e.Pass {
		f.s.Paddle, c.Anew = c.Anew[n-1].held, c.Anew[:n-1]
	}
	return nil
}

// leaseLeft puts the look at the lease off.
func (f *Folder) leaseLeft(e Event) error {
	c, err := f.current(e)
	if err != nil {
		return err
	}
	if e.Pass != c.Laid || e.Pass == 0 {
		return fmt.Errorf("pass %d won't do: the last pass laid of chain %d is %d", e.Pass, e.Chain, c.Laid)
	}
	if f.s.LeaseSeen {
		return errors.New("the lease has been looked at")
	}
	f.s.LeaseLeft = e.Pass
	return nil
}

// TakenBack is the state of a chain before its last pass, or the work before its next one, was taken back.
type TakenBack struct {
	// Pass is the pass that was taken back, or the one before which the work was.
	Pass int
	// Chain is the chain as it was; the rest is the state's part of the same names.
	Chain           ChainState
	Ties, TiesWaved []Tie
	Paddle          Paddle
	LeaseLeft       int
}

// keepsBack are the kinds after which a take-back can still be taken back: they change neither the count nor
// what was dropped with it.
var keepsBack = map[Kind]bool{
	Undone: true, WorkUndone: true, Redone: true, Noted: true, Paused: true, Resumed: true, Incident: true,
	NewCone: true, Renamed: true, Joined: true,
}

// keep puts what is about to be taken back of the current chain aside.
func (f *Folder) keep(pass int) {
	c := &f.s.Chains[f.s.Chain-1]
	c.Back = &TakenBack{Pass: pass, Chain: c.private(), Paddle: f.s.Paddle, LeaseLeft: f.s.LeaseLeft,
		Ties: slices.Clone(f.s.Ties), TiesWaved: slices.Clone(f.s.TiesWaved)}
}

// redone brings back what was taken back last.
func (f *Folder) redone(e Event) error {
	c, err := f.current(e)
	if err != nil {
		return err
	}
	back := c.Back
	if back == nil {
		return errors.New("nothing was taken back last")
	}
	if e.Pass != back.Pass {
		return fmt.Errorf("pass %d can't be brought back: the one taken back last is %d", e.Pass, back.Pass)
	}
	lowered := c.Lowered
	*c = back.Chain.private()
	c.Lowered = lowered
	f.s.Ties, f.s.TiesWaved, f.s.Paddle, f.s.LeaseLeft = slices.Clone(back.Ties), slices.Clone(back.TiesWaved),
		back.Paddle, back.LeaseLeft
	return nil
}

// reopened opens a finished warp again.
func (f *Folder) reopened(e Event) error {
	if !f.s.Finished {
		return errors.New("the warp is not finished, so there is no need to open it again")
	}
	if err := checkText("reason", e.Text); err != nil {
		return err
	}
	f.s.Finished = false
	f.s.Reopened = append(f.s.Reopened, Note{At: e.At, Chain: f.s.Chain, Pass: f.s.Chains[f.s.Chain-1].Laid,
		Text: e.Text})
	return nil
}

// upTo is the part of a list of passes, in order, that isn't above a number.
func upTo(passes []int, most int) []int {
	n := len(passes)
	for n > 0 && passes[n-1] > most {
		n--
	}
	if n == 0 {
		return nil
	}
	return passes[:n]
}
