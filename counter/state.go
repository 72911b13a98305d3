package counter

import (
	"fmt"
	"slices"
	"time"

	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/wind"
)

// ChainState is how far one chain has come.
type ChainState struct {
	// Laid is the number of passes laid, 0 to the chain's passes.
	Laid int
	// Ticked lists the finishing steps that are done, in the order of ticking.
	Ticked []finishing.StepID
	// WrongTurns lists the passes, in order, after which the group went the wrong way round the end peg.
	WrongTurns []int
	// Surplus is the twist behind the paddle beyond what the plan has there: two half turns for each
	// wrong turn, less what was taken out. Clockwise above 0.
	Surplus wind.HalfTurns
	// Lowered is the line of the last event that lowered Laid, 0 if none did; see [IncidentState].
	Lowered int
	// WrongOpenings lists the passes, in order, that had the wrong opening first: they were laid before the
	// return order turned out to be the other one, and lie on the mill as they were laid. Where such a pass
	// meets its neighbours the lease has to be mended.
	WrongOpenings []int
	// Worked lists the passes, in order, before which the work at the end peg was confirmed.
	Worked []int
	// TurnLines are the lines of the record that note the wrong turns.
	TurnLines []int
	// Anew is the work at the pegs that is in no plan: where passes had been taken off.
	Anew []Anew
	// Back is what was taken back last: what [Redone] brings back; nil where there is nothing.
	Back *TakenBack
}

// Redo is the pass that [Redone] would bring back, or the pass before which it would confirm the work again;
// 0 if nothing was taken back, or if something else was done since.
func (c ChainState) Redo() int {
	if c.Back == nil {
		return 0
	}
	return c.Back.Pass
}

// Has says whether a finishing step is ticked.
func (c ChainState) Has(id finishing.StepID) bool { return slices.Contains(c.Ticked, id) }

// Note is something that the winder wrote down.
type Note struct {
	At time.Time
	// Chain is counted from 1; Pass is the number of passes of it that were laid.
	Chain, Pass int
	Text        string
}

// Recount is a correction of the count after the winder counted at the pegs.
type Recount struct {
	At    time.Time
	Chain int
	// From and To are the number of passes laid before and after.
	From, To int
	Reason   string
}

// Paddle is what the paddle holds at the end peg where the mill stands.
type Paddle struct {
	// Dressed says that anything is known: the paddle is threaded and the first group tied on.
	Dressed bool
	// Carried is the set of positions whose ends come from the warp on the mill.
	Carried wind.Positions
	// SetUp is the colour in each position; nil in a plain warp.
	SetUp plan.SetUp
	// TiedBefore is, for each position from 1 on, the pass of the chain in hand before which the yarn that it carries
	// was tied on; 0 where it carries none. Once passes were taken off, that may be a later one than the pass in hand:
	// then the piece hangs at another place than where the paddle stands, and nothing is laid of it.
	TiedBefore []int
}

// LossState is what a record lost: lines that had been counted, and were missing when it was opened.
type LossState struct {
	At time.Time
	// Chain and Laid are where the count stood without them.
	Chain, Laid int
	// Lines is how many lines were missing, as well as could be told.
	Lines int
	// Settled says that the count was set right since.
	Settled bool
}

// String says what is missing: "9 lines were missing from the record after pass 12 of chain 1".
func (l LossState) String() string {
	return fmt.Sprintf("%s missing from the record after pass %d of chain %d",
		measure.Counted(l.Lines, "line was", "lines were"), l.Laid, l.Chain)
}

// Missing is the number of lines that are missing from the record and for which the count was not set right yet.
func (s State) Missing() int {
	n := 0
	for _, l := range s.Losses {
		if !l.Settled {
			n += l.Lines
		}
	}
	return n
}

// State is a half-wound warp. It is a value: [State.Apply] makes a new one and leaves the old alone.
// Make the first one with [NewState]; the zero State has no plan and takes no events.
type State struct {
	// Plan is the plan in force: the plan that winding began with, made anew with the return order that
	// was seen on the mill once that turned out to be the other one.
	Plan *plan.Plan
	// Chains has one entry for each chain of the plan.
	Chains []ChainState
	// Chain is the number of the chain that is being wound or finished, from 1: the first that is not
	// wholly wound and ticked, or the last when all are.
	Chain int
	// Paused says that the winder has stopped for a while; LeaseSeen that the order in the lease has
	// been looked at; Finished that the warp is off the mill.
	Paused, LeaseSeen, Finished bool
	// LeaseLeft is the number of passes that were laid when the look at the lease was put off; 0 if it wasn't.
	LeaseLeft int
	// Paddle is what the paddle holds, as far as the record tells.
	Paddle Paddle
	// Renames lists the names that the warp had before the one that its plan has now.
	Renames []Rename
	// Joins is how often it was said with which other warp this one goes; the plan says which.
	Joins int
	// Reopened lists why and when the finished warp was opened again.
	Reopened []Note
	Notes    []Note
	Recounts []Recount
	// Losses lists what was missing from the record when it was opened.
	Losses []LossState
	// Incidents lists what went wrong, in the order of noting, those taken back included.
	Incidents []IncidentState
	// Ties lists the count ties that were ticked, in the order of chains and passes; TiesWaved those that
	// were waved off.
	Ties, TiesWaved []Tie
	// Cones lists the cones that were put in on the way, in the order of noting.
	Cones []ConeState
	// Started and Last are the times of the first and the last event but for new names; zero if there was none.
	Started, Last time.Time
	// Events is the number of events so far.
	Events int
}

// NewState is a warp of which nothing is wound yet. Without a plan it is the zero State.
func NewState(p *plan.Plan) State {
	if p == nil || len(p.Chains) == 0 {
		return State{}
	}
	return State{Plan: p, Chains: make([]ChainState, len(p.Chains)), Chain: 1}
}

// valid says whether the state was made by NewState and can take events.
func (s State) valid() bool {
	return s.Plan != nil && len(s.Chains) == len(s.Plan.Chains) && s.Chain >= 1 && s.Chain <= len(s.Chains)
}

// Current is the chain that is being wound or finished; the zero Chain in a zero State.
func (s State) Current() plan.Chain {
	if !s.valid() {
		return plan.Chain{}
	}
	return s.Plan.Chains[s.Chain-1]
}

// Laid is the number of passes laid in the current chain.
func (s State) Laid() int {
	if !s.valid() {
		return 0
	}
	return s.Chains[s.Chain-1].Laid
}

// EndsStanding is how many ends of the current chain stand on the mill.
func (s State) EndsStanding() int {
	if !s.valid() {
		return 0
	}
	return s.Current().EndsAfter(s.Laid())
}

// EndsStandingAll is how many ends are wound over all chains, those already off the mill included.
func (s State) EndsStandingAll() int {
	n := 0
	if s.valid() {
		for i, c := range s.Chains {
			n += s.Plan.Chains[i].EndsAfter(c.Laid)
		}
	}
	return n
}

// PassesLaidAll is the number of passes laid over all chains.
func (s State) PassesLaidAll() int {
	n := 0
	for _, c := range s.Chains {
		n += c.Laid
	}
	return n
}

// Wound says whether the current chain has all its passes.
func (s State) Wound() bool { return s.valid() && s.Laid() == len(s.Current().Passes) }

// NextPass is the pass of the current chain that comes next; false if all are laid.
func (s State) NextPass() (wind.Pass, bool) {
	passes := s.Current().Passes
	if k := s.Laid(); k < len(passes) {
		return passes[k], true
	}
	return wind.Pass{}, false
}

// Steps lists the finishing steps of the current chain, in order.
func (s State) Steps() []finishing.Step {
	if !s.valid() {
		return nil
	}
	return finishing.Steps(s.Plan, s.Current(), s.anewEnds(s.Chain)...)
}

// NextStep is the first finishing step of the current chain that is not ticked; false if all are.
func (s State) NextStep() (finishing.Step, bool) {
	for _, step := range s.Steps() {
		if !s.Chains[s.Chain-1].Has(step.ID) {
			return step, true
		}
	}
	return finishing.Step{}, false
}

// CrossCount is what a winder counts at the counting cross.
type CrossCount struct {
	// OverPeg1 and OverPeg2 are the groups that lie over each peg of the cross.
	OverPeg1, OverPeg2 int
}

// CrossOf is how many groups lie over each peg of the counting cross after so many passes, 0 or more:
// outward passes go over peg 1 and return passes over peg 2, so half of them lie over each, and an odd
// group over peg 1.
func CrossOf(passes int) CrossCount {
	return CrossCount{OverPeg1: (passes + 1) / 2, OverPeg2: passes / 2}
}

// Cross is how many groups of the current chain lie over each peg of the counting cross.
func (s State) Cross() CrossCount { return CrossOf(s.Laid()) }
