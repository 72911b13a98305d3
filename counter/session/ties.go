package session

import (
	"fmt"
	"time"

	"millside/counter"
	"millside/plan"
	"millside/plan/measure"
)

// DueTie is the count tie that has fallen due and was neither made nor waved off; false if there is none. Of several it
// is the first.
func (s Session) DueTie() (plan.Tie, bool) {
	c, laid := s.st.Current(), s.st.Laid()
	if laid == 0 || len(s.st.Chains[s.st.Chain-1].Ticked) > 0 {
		return plan.Tie{}, false
	}
	seen := s.st.LastTieSeenTo()
	for k := s.st.Plan.NextTie(c, seen+1); k > 0 && k <= laid; k = s.st.Plan.NextTie(c, k+1) {
		if t, ok := s.st.Plan.TieAt(c, k); ok && t.To > seen {
			return t, true
		}
	}
	return plan.Tie{}, false
}

// tieMade confirms the tie that is due. Where none is due, one was made of the winder's own: the hands can have been at
// the counting cross only after the last outward pass, and the group that was just laid then can't be in it.
func (s Session) tieMade(at time.Time) (Session, Reply) {
	if s.guards.repeats("tie", at) {
		return s.tooFast(at)
	}
	groups := 0
	if t, ok := s.DueTie(); ok {
		groups = t.To
	} else {
		arrived := s.st.Laid() - 1 + s.st.Laid()%2
		groups = arrived - 1
	}
	if groups <= s.st.LastTie() {
		return s.refuse("no count tie is due: no whole group lies at the counting cross that isn't in a tie",
			"No tie is due.", at)
	}
	return s.write(counter.Event{Kind: counter.TieMade, Pass: groups}, at)
}

// tieOff waves the tie off that is due.
func (s Session) tieOff(at time.Time) (Session, Reply) {
	t, ok := s.DueTie()
	switch {
	case !ok:
		return s.refuse("no count tie is due", "", at)
	case s.guards.repeats("no tie", at):
		return s.tooFast(at)
	}
	return s.write(counter.Event{Kind: counter.TieWaved, Pass: t.To}, at)
}

// tieBack says that the last tie was not made.
func (s Session) tieBack(at time.Time) (Session, Reply) {
	n := len(s.st.Ties)
	if n == 0 || s.st.Ties[n-1].Chain != s.st.Chain {
		return s.refuse("no count tie is noted", "", at)
	}
	return s.dropMark(DropMark{s.st.Ties[n-1].Number}, at)
}

func (s Session) saidTie(e counter.Event) string {
	if e.Kind == counter.TieWaved {
		t := s.st.TiesWaved[len(s.st.TiesWaved)-1]
		return fmt.Sprintf("the count tie of %s is waved off", measure.Counted(t.Ends, "end", "ends"))
	}
	t := s.st.Ties[len(s.st.Ties)-1]
	return fmt.Sprintf("count tie noted: %s in %s", measure.Counted(t.Ends, "end", "ends"),
		measure.Counted(t.Pass, "group", "groups"))
}
