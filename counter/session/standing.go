package session

import (
	"fmt"
	"time"

	"millside/counter"
	"millside/plan/measure"
	"millside/plan/wind"
)

// Standing is what stands on the mill if the count is right.
type Standing struct {
	// Laid of Of passes of the chain are laid, Ends of ChainEnds ends stand.
	Laid, Of, Ends, ChainEnds int
	// Peg is where the paddle is.
	Peg wind.EndPeg
	// Turn is the way in which the group went round that peg, as it was made; Wrong says that it was the
	// wrong way. They mean nothing before the first pass.
	Turn  wind.Turn
	Wrong bool
	// Cross is what lies over the pegs of the counting cross.
	Cross counter.CrossCount
	// Tie is the last count tie of the chain; its Pass is 0 if there is none.
	Tie counter.Tie
	// Stopped is when the last thing happened.
	Stopped time.Time
	// Paused says that the winder paused; otherwise the program or the winder was away.
	Paused bool
	// Ticked is how many finishing steps are done.
	Ticked int
	// Twist says how much twist too much there is and how to take it out; empty if there is none.
	Twist string
	// Chain says which of several chains is wound, and its colour where it has one: "2 of 3: navy"; empty for a single
	// one.
	Chain string
	// Missing says that lines are missing from the record, so that the count is too low; empty if none are.
	Missing string
}

// Standing is what stands on the mill if the count is right.
func (s Session) Standing() Standing {
	c := s.st.Current()
	st := Standing{
		Laid: s.st.Laid(), Of: len(c.Passes), Ends: s.st.EndsStanding(), ChainEnds: c.Ends(), Cross: s.st.Cross(),
		Stopped: s.st.Last, Paused: s.st.Paused, Ticked: len(s.st.Chains[s.st.Chain-1].Ticked),
		Twist: s.st.TwistAdvice(),
	}
	if n := len(s.st.Chains); n > 1 {
		st.Chain = fmt.Sprintf("%d of %d", s.st.Chain, n)
		if c, ok := s.st.Plan.Colour(s.st.Plan.ChainColour(s.st.Chain)); ok {
			st.Chain += ": " + measure.Clean(c.Name)
		}
	}
	if lost, ok := s.missingItem(); ok {
		st.Missing = sentence(lost.Text)
	}
	st.Turn, st.Wrong, _ = s.st.LastTurn()
	if st.Laid%2 == 1 {
		st.Peg = wind.FarPeg
	}
	if n := len(s.st.Ties); n > 0 && s.st.Ties[n-1].Chain == s.st.Chain {
		st.Tie = s.st.Ties[n-1]
	}
	return st
}

// Words says what must be seen, in a few sentences.
func (st Standing) Words() []string {
	state := ""
	switch {
	case st.Paused:
		state = "Paused at " + when(st.Stopped) + ": "
	case !st.Stopped.IsZero():
		state = "Stopped at " + when(st.Stopped) + ": "
	}
	if st.Chain != "" {
		state = sentence(state+"chain "+st.Chain) + " "
	}
	said := []string{fmt.Sprintf("%s%d of %s laid, %s.", state, st.Laid, measure.Counted(st.Of, "pass", "passes"),
		endsStand(st.Ends))}
	if st.Missing != "" {
		said = append([]string{st.Missing}, said...)
	}
	if st.Ticked > 0 {
		return append(said, fmt.Sprintf("%s done.", measure.Counted(st.Ticked, "finishing step", "finishing steps")))
	}
	if st.Laid > 0 {
		turn := st.Turn.String()
		if st.Wrong {
			turn += ", the wrong way"
		}
		said = append(said, fmt.Sprintf("On the mill: %s over peg 1 of the counting cross and %d over peg 2. The "+
			"paddle is at the %s, the last turn was %s.",
			measure.Counted(st.Cross.OverPeg1, "group", "groups"), st.Cross.OverPeg2, st.Peg, turn))
	}
	if st.Tie.Pass > 0 {
		said = append(said, fmt.Sprintf("The last count tie holds %s; count from there: %s loose.",
			measure.Counted(st.Tie.Ends, "end", "ends"),
			measure.Counted(st.Laid-st.Tie.Pass, "group", "groups")))
	}
	if st.Twist != "" {
		said = append(said, st.Twist)
	}
	return said
}

// endsStand says how many ends stand on the mill.
func endsStand(n int) string { return measure.Counted(n, "end stands", "ends stand") }

// when writes a time as a weaver reads it.
func when(t time.Time) string { return t.Local().Format("2 January 2006, 15:04") }

// Where says all that is known of the mill and of the pass in hand.
func (s Session) Where(now time.Time) []string {
	if s.st.Finished || !s.st.Begun() {
		return s.Announce(now)
	}
	var said []string
	if s.Stage(now) != Looking {
		said = s.Standing().Words()
	}
	for _, in := range s.st.Incidents {
		if in.Stands() {
			said = append(said, fmt.Sprintf("Number %d, chain %d: %s.", in.Number, in.Chain,
				measure.Clean(in.Words(s.st.Plan.Spec.Units))))
		}
	}
	if left, ok := s.TimeLeft(); ok {
		said = append(said, fmt.Sprintf("%s a pass; %s to the end of the chain, %s to %s.",
			s.Pace().PerPass.Round(time.Second),
			roughly(left.Likely), roughly(left.Low), roughly(left.High)))
	}
	if kind := s.kindInHand(); kind != "" && s.Stage(now) == Winding {
		said = append(said, sentence(kind))
	}
	return append(said, s.Announce(now)...)
}
