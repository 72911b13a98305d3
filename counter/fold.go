package counter

import (
	"errors"
	"fmt"
	"slices"

	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/wind"
)

// Apply is the state after one more event. The receiver and everything it points to stay as they were.
// If the event doesn't follow, the receiver is returned with an error that says why; a text that won't
// do is a [*measure.FieldError].
func (s State) Apply(e Event) (State, error) {
	f := NewFolder(s.private(e))
	if err := f.Apply(e); err != nil {
		return s, err
	}
	return f.State(), nil
}

// private is the state with its own copy of whatever an event may change. A list that is only added to
// is clipped, so that the next append has to move it.
func (s State) private(e Event) State {
	s.Losses = slices.Clone(s.Losses)
	s.Notes, s.Recounts, s.Reopened = slices.Clip(s.Notes), slices.Clip(s.Recounts), slices.Clip(s.Reopened)
	s.Renames = slices.Clip(s.Renames)
	s.Ties, s.TiesWaved = slices.Clip(s.Ties), slices.Clip(s.TiesWaved)
	s.Cones = slices.Clip(s.Cones)
	s.Incidents = slices.Clone(s.Incidents)
	switch e.Kind {
	case Withdrawn:
		s.Ties, s.Cones = slices.Clone(s.Ties), slices.Clone(s.Cones)
	case Noted, Paused, Resumed, Incident, TieMade, TieWaved, NewCone, Finished, Reopened, LeaseLeft, Renamed, Joined:
		return s // none of these changes a chain
	}
	s.Chains = slices.Clone(s.Chains)
	for i := range s.Chains {
		if i == e.Chain-1 || i == s.Chain-1 {
			s.Chains[i] = s.Chains[i].private()
		}
	}
	return s
}

// private is the chain with lists of its own.
func (c ChainState) private() ChainState {
	c.Ticked, c.WrongTurns, c.TurnLines = slices.Clone(c.Ticked), slices.Clone(c.WrongTurns), slices.Clone(c.TurnLines)
	c.WrongOpenings, c.Worked, c.Anew = slices.Clone(c.WrongOpenings), slices.Clone(c.Worked), slices.Clone(c.Anew)
	return c
}

// folder changes a state of its own in place.
type Folder struct {
	s State
	// other is the plan with the return order that is not in force, once it was needed.
	other *plan.Plan
	// steps are the finishing steps of chain stepsOf, kept since naming them is slow.
	steps   []finishing.StepID
	stepsOf int
}

func NewFolder(s State) *Folder { return &Folder{s: s} }

// apply moves the state by one event, or leaves it as it is and says why.
func (f *Folder) Apply(e Event) error {
	if !f.s.valid() {
		return errors.New("there is no plan to wind")
	}
	if err := f.follow(e); err != nil {
		return err
	}
	if !keepsBack[e.Kind] {
		f.s.Chains[f.s.Chain-1].Back = nil
	}
	f.s.Events++
	if e.Kind.aside() { // nothing happened at the mill
		return nil
	}
	if f.s.Events-len(f.s.Renames)-f.s.Joins == 1 {
		f.s.Started = e.At
	}
	f.s.Last = e.At
	return nil
}

// whilePaused are the kinds that may come during a pause: what a winder does who looks the mill over.
var whilePaused = map[Kind]bool{
	Resumed: true, Noted: true, Recounted: true, Incident: true, Withdrawn: true, WrongTurn: true, Righted: true,
	TieMade:  true,
	TieWaved: true, NewCone: true, LeaseSeen: true, LeaseLeft: true, FootSeen: true,
}

func (f *Folder) follow(e Event) error {
	s := &f.s
	if _, known := fieldsOf[e.Kind]; !known {
		return fmt.Errorf("%q is no kind of event", measure.Shortened(string(e.Kind)))
	}
	switch e.Kind { // these may come after the end too
	case Reopened:
		return f.reopened(e)
	case Lost:
		return f.lost(e)
	case Renamed:
		return f.renamed(e)
	case Joined:
		return f.joined(e)
	}
	if s.Finished {
		return fmt.Errorf("the warp is finished: nothing can be added (%s)", e.Kind)
	}
	if s.Paused && !whilePaused[e.Kind] {
		return fmt.Errorf("the winding is paused: go on before anything else (%s)", e.Kind)
	}
	switch e.Kind {
	case Laid:
		return f.laid(e)
	case Undone:
		return f.undone(e)
	case Recounted:
		return f.recounted(e)
	case Noted:
		return f.noted(e)
	case LeaseSeen:
		return f.leaseSeen(e)
	case Ticked:
		return f.ticked(e)
	case Unticked:
		return f.unticked(e)
	case Finished:
		return f.finished()
	case Incident:
		return f.incident(e)
	case Withdrawn:
		return f.withdrawn(e)
	case WrongTurn:
		return f.wrongTurn(e)
	case Righted:
		return f.righted()
	case TieMade:
		return f.tieMade(e)
	case NewCone:
		return f.newCone(e)
	case WorkDone, WorkUndone:
		return f.worked(e)
	case TieWaved:
		return f.tieWaved(e)
	case LeaseLeft:
		return f.leaseLeft(e)
	case FootSeen:
		return f.footSeen(e)
	case Redone:
		return f.redone(e)
	}
	// Resumed may come without a pause: after a crash the winder looks at the mill and goes on.
	s.Paused = e.Kind == Paused
	return nil
}

// current is the current chain, if the event is about it.
func (f *Folder) current(e Event) (*ChainState, error) {
	if e.Chain != f.s.Chain {
		return nil, fmt.Errorf("chain %d is not the one on the mill: that is chain %d", e.Chain, f.s.Chain)
	}
	return &f.s.Chains[e.Chain-1], nil
}

func (f *Folder) laid(e Event) error {
	c, err := f.current(e)
	if err != nil {
		return err
	}
	total := len(f.s.Plan.Chains[e.Chain-1].Passes)
	if c.Laid >= total {
		return fmt.Errorf("pass %d can't be counted: chain %d has %d passes and all are laid", e.Pass, e.Chain, total)
	}
	if e.Pass != c.Laid+1 {
		return fmt.Errorf("pass %d can't be counted: the next pass of chain %d is %d", e.Pass, e.Chain, c.Laid+1)
	}
	c.Laid++
	f.s.Paddle = f.s.Paddle.dressedFor(f.s.Plan, e.Chain, e.Pass)
	return nil
}

// unfinished refuses to change the count of a chain whose finishing has begun.
func unfinished(c *ChainState) error {
	if len(c.Ticked) > 0 {
		return fmt.Errorf("the finishing has begun: untick %q first", c.Ticked[len(c.Ticked)-1])
	}
	return nil
}

func (f *Folder) undone(e Event) error {
	c, err := f.current(e)
	if err != nil {
		return err
	}
	if c.Laid == 0 {
		return fmt.Errorf("pass %d can't be taken back: chain %d has no pass", e.Pass, e.Chain)
	}
	if e.Pass != c.Laid {
		return fmt.Errorf("pass %d can't be taken back: the last pass laid is %d", e.Pass, c.Laid)
	}
	if err := unfinished(c); err != nil {
		return err
	}
	f.keep(e.Pass)
	f.unturn(c, f.s.Current(), c.Laid-1)
	f.lower(c, c.Laid-1)
	return nil
}

func (f *Folder) recounted(e Event) error {
	c, err := f.current(e)
	if err != nil {
		return err
	}
	if err := f.passesLaid(e); err != nil {
		return err
	}
	if err := checkText("reason", e.Text); err != nil {
		return err
	}
	if err := unfinished(c); err != nil {
		return err
	}
	if e.Pass > c.Laid {
		f.s.Paddle = paddleFor(f.s.Plan, e.Chain, e.Pass)
	}
	for i := range f.s.Losses {
		f.s.Losses[i].Settled = true
	}
	f.s.Recounts = append(f.s.Recounts, Recount{At: e.At, Chain: e.Chain, From: c.Laid, To: e.Pass, Reason: e.Text})
	if e.Pass < c.Laid {
		f.lower(c, e.Pass)
	}
	c.Laid = e.Pass
	return nil
}

// lower brings the count of the current chain down, and lets go of what belonged to the passes above it.
func (f *Folder) lower(c *ChainState, passes int) {
	c.Laid, c.Lowered = passes, f.line()
	for n := len(c.WrongTurns); n > 0 && c.WrongTurns[n-1] > passes; n-- {
		c.WrongTurns, c.TurnLines = c.WrongTurns[:n-1], c.TurnLines[:n-1]
	}
	f.dropTies(passes)
	c.WrongOpenings = upTo(c.WrongOpenings, passes)
	c.Anew = slices.DeleteFunc(c.Anew, func(a Anew) bool { return a.Before > passes+1 })
	if f.s.Chain == 1 && passes < f.s.LeaseLeft {
		f.s.LeaseLeft = 0 // the look falls due again
	}
}

// line is the number of the line of the event that is being taken.
func (f *Folder) line() int { return f.s.Events + FirstLine }

// lost notes that counted lines are missing; the count stands as low as the lines that are left say.
func (f *Folder) lost(e Event) error {
	if e.Lines < 1 {
		return &measure.FieldError{Field: "lines", Value: fmt.Sprint(e.Lines), Want: "1 or more"}
	}
	f.s.Losses = append(f.s.Losses, LossState{At: e.At, Chain: f.s.Chain, Laid: f.s.Chains[f.s.Chain-1].Laid,
		Lines: e.Lines})
	return nil
}

// passesLaid checks a number of passes laid in a chain of the plan.
func (f *Folder) passesLaid(e Event) error {
	if total := len(f.s.Plan.Chains[e.Chain-1].Passes); e.Pass < 0 || e.Pass > total {
		return &measure.FieldError{Field: "passes laid", Value: fmt.Sprint(e.Pass), Want: fmt.Sprintf("0 to %d", total)}
	}
	return nil
}

func (f *Folder) noted(e Event) error {
	if n := len(f.s.Chains); e.Chain < 1 || e.Chain > n {
		return &measure.FieldError{Field: "chain", Value: fmt.Sprint(e.Chain), Want: fmt.Sprintf("1 to %d", n)}
	}
	if err := f.passesLaid(e); err != nil {
		return err
	}
	if err := checkText("note", e.Text); err != nil {
		return err
	}
	f.s.Notes = append(f.s.Notes, Note{At: e.At, Chain: e.Chain, Pass: e.Pass, Text: e.Text})
	return nil
}

// turnOrder takes the plan for the other return order.
func (f *Folder) turnOrder(order wind.ReturnOrder, now *plan.Plan) error {
	// Where each colour is a chain of its own, the stripes are made at the raddle or in the reed: what lies may stay.
	follows := now.Striped() && !now.ByColour()
	if now.Striped() && now.Spec.Other == nil {
		return errors.New("this striped warp has no schedule for the other return order")
	}
	off := errors.New("the order of a striped warp can be turned only while the first chain is wound that it changes")
	if follows && len(f.s.Chains[f.s.Chain-1].Ticked) > 0 {
		return off
	}
	spec := now.Spec.WithOrder(order)
	if now.ByColour() { // the schedule for the other order may carry other groups, and what lies has these
		spec.Schedule, spec.Other = now.Spec.Schedule, now.Spec.Schedule
	}
	if err := f.replan(spec); err != nil {
		return fmt.Errorf("making the plan with the order seen: %w", err)
	}
	if follows && !f.staysOff(now) {
		f.s.Plan, f.other = now, f.s.Plan
		return off
	}
	if follows {
		f.relay(now)
	} else {
		f.misopened(now)
	}
	return nil
}

// replan puts a plan in force in place of the one that is, and keeps that one at hand.
func (f *Folder) replan(spec plan.Spec) error {
	now := f.s.Plan
	if f.other == nil || f.other.Spec.ReturnOrder != spec.ReturnOrder || f.other.Spec.Foot != spec.Foot {
		other, err := plan.New(spec)
		if err != nil {
			return err
		}
		f.other = other
	}
	f.s.Plan, f.other = f.other, now
	return nil
}

// footSeen fixes which end of the paddle lies at the foot of the peg, and so which end of the warp is end 1.
func (f *Folder) footSeen(e Event) error {
	if e.Foot > wind.FootLast {
		return &measure.FieldError{Field: "foot position", Value: e.Foot.String(), Want: "first or last"}
	}
	now := f.s.Plan
	if e.Foot == now.Spec.Foot {
		return nil
	}
	if now.Striped() {
		return errors.New("the stripes of this warp are threaded for the other foot position: turn the paddle " +
			"round, or plan the warp anew")
	}
	if err := f.replan(now.Spec.WithFoot(e.Foot)); err != nil {
		return fmt.Errorf("making the plan with the foot position seen: %w", err)
	}
	f.misopened(now)
	return nil
}

// misopened notes which passes that lie had another opening first than the plan in force wants. One that the
// plan before wanted differently had been noted already, and is right in this one.
func (f *Folder) misopened(before *plan.Plan) {
	for i := range f.s.Chains {
		c, was, is := &f.s.Chains[i], before.Chains[i].Passes, f.s.Plan.Chains[i].Passes
		var wrong []int
		for k := 1; k <= c.Laid; k++ {
			if (was[k-1].FirstOpening != is[k-1].FirstOpening) != slices.Contains(c.WrongOpenings, k) {
				wrong = append(wrong, k)
			}
		}
		c.WrongOpenings = wrong
	}
}

// leaseSeen fixes the return order, and takes the other plan where the order was not as planned.
func (f *Folder) leaseSeen(e Event) error {
	if e.Order > wind.MirroredOrder {
		return &measure.FieldError{Field: "return order", Value: e.Order.String(), Want: "same or mirrored"}
	}
	if now := f.s.Plan; e.Order != now.Spec.ReturnOrder {
		if err := f.turnOrder(e.Order, now); err != nil {
			return err
		}
	}
	f.s.LeaseSeen = true
	return nil
}
