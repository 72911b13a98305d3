package session

import (
	"fmt"
	"time"

	"millside/counter"
	"millside/plan/measure"
)

// InHand is the pass that a mark without a number means: the one being laid, after the last pass of the chain that one.
func (s Session) InHand() int { return min(s.st.Laid()+1, len(s.st.Current().Passes)) }

// markIt notes that something went wrong.
func (s Session) markIt(in Mark, at time.Time) (Session, Reply) {
	if in.Pass == 0 {
		in.Pass = s.InHand()
	}
	if s.guards.repeats(fmt.Sprintf("mark %s %d %d", in.What, in.Pass, in.Position), at) {
		return s.tooFast(at)
	}
	return s.write(counter.Event{Kind: counter.Incident, What: in.What, Pass: in.Pass, Position: in.Position,
		Place: in.Place, HasPlace: in.HasPlace, Text: in.Text}, at)
}

func (s Session) wrongTurn(at time.Time) (Session, Reply) {
	switch {
	case s.st.Laid() == 0:
		return s.refuse("no pass is laid yet, so no turn was made", "", at)
	case s.guards.repeats("turn", at):
		return s.tooFast(at)
	}
	return s.write(counter.Event{Kind: counter.WrongTurn, Pass: s.st.Laid()}, at)
}

func (s Session) righted(at time.Time) (Session, Reply) {
	switch {
	case s.st.TwistAdvice() == "":
		return s.refuse("there is no twist to take out: no wrong turn is open", "", at)
	case s.guards.repeats("righted", at):
		return s.tooFast(at)
	}
	return s.write(counter.Event{Kind: counter.Righted}, at)
}

func (s Session) newPackage(in NewPackage, at time.Time) (Session, Reply) {
	if in.Pass == 0 {
		in.Pass = s.InHand()
	}
	if s.guards.repeats(fmt.Sprintf("package %d", in.Position), at) {
		return s.tooFast(at)
	}
	return s.write(counter.Event{Kind: counter.NewCone, Pass: in.Pass, Position: in.Position, Weight: in.Weight}, at)
}

// dropMark takes a mark back: the one of that number, or the one made last.
func (s Session) dropMark(in DropMark, at time.Time) (Session, Reply) {
	if s.guards.repeats("drop", at) {
		return s.tooFast(at)
	}
	if in.Number == 0 {
		last, ok := s.st.LastMark()
		if !ok {
			return s.refuse("there is no mark to take back", "", at)
		}
		in.Number = last.Number
	}
	return s.write(counter.Event{Kind: counter.Withdrawn, Line: in.Number}, at)
}

// saidMark puts what was marked, or taken back, into words.
func (s Session) saidMark(e counter.Event, before counter.State) string {
	switch e.Kind {
	case counter.Incident:
		in := s.st.Incidents[len(s.st.Incidents)-1]
		text := fmt.Sprintf("marked as number %d: %s", in.Number, measure.Clean(in.Words(s.st.Plan.Spec.Units)))
		if colour := s.st.Plan.EndColour(in.End); in.End != 0 && colour != 0 {
			text += ", " + s.st.Plan.ColourText(colour)
		}
		return text
	case counter.Withdrawn:
		return s.saidDropped(e.Line, before)
	case counter.WrongTurn:
		if s.st.TwistAdvice() == "" {
			return fmt.Sprintf("wrong turn after pass %d marked; the twist is as planned again", e.Pass)
		}
		return fmt.Sprintf("wrong turn after pass %d marked", e.Pass)
	case counter.Righted:
		return "the twist is as planned again"
	case counter.NewCone:
		return fmt.Sprintf("new package in position %d, from pass %d on", e.Position, e.Pass)
	}
	return ""
}

// saidDropped says which mark was taken back.
func (s Session) saidDropped(number int, before counter.State) string {
	for _, in := range before.Incidents {
		if in.Number == number {
			return fmt.Sprintf("mark number %d is taken back (%s)", number,
				measure.Clean(in.Words(before.Plan.Spec.Units)))
		}
	}
	chain := before.Chains[before.Chain-1]
	for i, line := range chain.TurnLines {
		if line == number {
			return fmt.Sprintf("the wrong turn after pass %d is taken back", chain.WrongTurns[i])
		}
	}
	for _, t := range before.Ties {
		if t.Number == number {
			return fmt.Sprintf("the count tie of %s is taken back", measure.Counted(t.Ends, "end", "ends"))
		}
	}
	for _, c := range before.Cones {
		if c.Number == number {
			return fmt.Sprintf("the new package in position %d is taken back", c.Position)
		}
	}
	return fmt.Sprintf("mark number %d is taken back", number)
}
