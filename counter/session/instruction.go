package session

import (
	"time"

	"millside/plan/wind"
)

// Instruction is the pass in hand: what the winder has to do from one end peg to the other.
type Instruction struct {
	// Chain is its chain of Chains, from 1; Of the number of the chain's passes.
	Chain, Chains, Of int
	Pass              wind.Pass
	// Standing is how many ends of the chain stand on the mill before the pass, ChainEnds how many the chain has.
	Standing, ChainEnds int
	// Last says that it is the last pass of the chain.
	Last bool
	// Lease is what is done at the lease pegs, in the order in which the group meets them: at the beginning
	// of an outward pass, at the end of a return pass.
	Lease [2]Drop
	// Over and Under are the pegs of the counting cross, 1 or 2: at the end of an outward pass, at the beginning of a
	// return pass.
	Over, Under int
	// TurnPeg and Turn are the end peg that the group comes to, and the way round it.
	TurnPeg wind.EndPeg
	Turn    wind.Turn
	// Round is what the paddle does on the way round the peg.
	Round Round
	// Kind is the number of the kind of pass in a striped warp with several, else 0; NewKind says that the pass before
	// it was of another kind, or that there was none.
	Kind    int
	NewKind bool
	// LeftOut are the positions that are threaded and carry no end.
	LeftOut wind.Positions
	// Now is what must be done or known for this pass, the most pressing first; Next what comes after it, announced one
	// pass ahead; Reminders what stays open. A message takes the place of none of them.
	Now, Next, Reminders []Item
}

// Drop is an opening made and dropped over a lease peg.
type Drop struct {
	Opening wind.Opening
	Peg     wind.LeasePeg
}

// Round is what the paddle does on the way round the near end peg.
type Round uint8

// What the paddle does.
const (
	RoundNone  Round = iota // nothing to be told: the far end peg has no lease, and after the last pass none follows
	RoundKeep               // it keeps its opening
	RoundFlick              // it is flicked once more
)

// String says it in words; empty for RoundNone.
func (r Round) String() string {
	switch r {
	case RoundKeep:
		return "keep the opening, no flick"
	case RoundFlick:
		return "flick once more round the peg"
	}
	return ""
}

// Instruction is the pass in hand; false once the chain is wound.
func (s Session) Instruction(now time.Time) (Instruction, bool) {
	p, ok := s.st.NextPass()
	if !ok {
		return Instruction{}, false
	}
	c := s.st.Current()
	in := Instruction{
		Chain: s.st.Chain, Chains: len(s.st.Chains), Of: len(c.Passes), Pass: p,
		Standing: s.st.EndsStanding(), ChainEnds: c.Ends(), Last: p.Number == len(c.Passes),
		Over: p.CrossOver(), Under: p.CrossUnder(), Turn: p.TurnAfter, TurnPeg: p.EndPeg(),
		LeftOut: s.st.Plan.LeftOut(p), Kind: s.st.Plan.KindOf(s.st.Chain, p.Number),
	}
	in.NewKind = in.Kind != s.st.Plan.KindOf(s.st.Chain, p.Number-1)
	first := p.FirstPeg()
	in.Lease = [2]Drop{{p.OpeningAt(first), first}, {p.OpeningAt(first.Other()), first.Other()}}
	switch {
	case p.Direction.Far() || in.Last:
	case c.KeepsOpening(p.Number):
		in.Round = RoundKeep
	default:
		in.Round = RoundFlick
	}
	in.Now, in.Next, in.Reminders = s.dueNow(p), s.comingAfter(p), s.Reminders(now)
	return in, true
}

// Words puts the way of the pass into one sentence, without what is due before it and after it.
func (in Instruction) Words() string { return in.Pass.Way() }
