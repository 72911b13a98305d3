package session

import (
	"fmt"

	"millside/counter"
	"millside/plan/measure"
)

// follows says what came of a saved event.
func (s Session) follows(before Session, e counter.Event) (Session, Reply) {
	at := e.At
	if e.Kind == counter.Resumed {
		s.look = false
	}
	if e.Kind == counter.Laid {
		return s.laid(e)
	}
	if e.Kind == counter.Unticked {
		s.unticked = e.Step
	}
	text := s.saidEvent(before, e)
	if text != "" {
		s.message = Message{text, Due}
	}
	r := Reply{Cue: CueConfirmed}
	if text != "" {
		r.Said, r.Short = []string{sentence(text)}, sentence(text)
	}
	if advice := s.st.TwistAdvice(); e.Kind == counter.WrongTurn && advice != "" {
		r.Said, r.Short = append(r.Said, advice), r.Short+" "+sentence(s.st.TwistBrief())
	}
	if s.quietly(e.Kind) {
		return s, r
	}
	r.Said = append(r.Said, s.Announce(at)...)
	if spoken := s.Speak(at); spoken != "" {
		if r.Short != "" && e.Kind != counter.Ticked {
			r.Short += " "
		} else {
			r.Short = ""
		}
		r.Short += spoken
	}
	return s, r
}

// quietly says whether a kind of event leaves the page as it is, so that it isn't said again.
func (s Session) quietly(kind counter.Kind) bool {
	switch kind {
	case counter.Noted, counter.Incident, counter.Withdrawn, counter.NewCone, counter.TieMade, counter.TieWaved,
		counter.WrongTurn, counter.Righted:
		return true
	}
	return false
}

// laid says what follows a pass that was counted.
func (s Session) laid(e counter.Event) (Session, Reply) {
	at := e.At
	r := Reply{Said: s.Announce(at), Short: s.Speak(at), Cue: s.cueAfter(e)}
	due := s.RestDue(at)
	if due && !s.rest {
		r.Said = append(r.Said, s.restWords())
		r.Short += " Time for a rest."
	}
	s.rest = due
	return s, r
}

// cueAfter is what is heard after a pass: what stops the winder first, then what has to be looked at.
func (s Session) cueAfter(e counter.Event) Cue {
	switch s.pageOf() {
	case AtPeg, Finishing:
		return CueStop
	case AtQuestion:
		return CueLook
	}
	in, ok := s.Instruction(e.At)
	switch {
	case !ok:
		return CueStop
	case in.Last:
		return CueLastPass
	case s.newlyDue(in):
		return CueLook
	case s.st.Current().Passes[e.Pass-1].Direction.Far():
		return CueOutward
	}
	return CueReturn
}

// newlyDue says whether something has to be seen that had not been there on the pass before.
func (s Session) newlyDue(in Instruction) bool {
	for _, item := range in.Now {
		if item.Level == Due && (item.Kind == ItemPackage || item.Kind == ItemCarry) {
			return true
		}
	}
	t, ok := s.DueTie()
	return ok && t.Due == s.st.Laid()
}

// saidEvent puts an event into words.
func (s Session) saidEvent(before Session, e counter.Event) string {
	switch e.Kind {
	case counter.Undone:
		return fmt.Sprintf("pass %d is taken back", e.Pass)
	case counter.WorkUndone:
		return fmt.Sprintf("the work before pass %d is taken back", e.Pass)
	case counter.Redone:
		if before.st.Laid() == s.st.Laid() {
			return fmt.Sprintf("the work before pass %d is done again", e.Pass)
		}
		return fmt.Sprintf("pass %d lies again", e.Pass)
	case counter.Recounted:
		return s.saidRecount(before)
	case counter.Noted:
		return "the note is kept"
	case counter.LeaseSeen:
		return s.saidOrder(before.st)
	case counter.LeaseLeft:
		return "the look at the lease stays open"
	case counter.FootSeen:
		return fmt.Sprintf("on outward passes position %d lies at the foot of the peg; end 1 of the warp is its "+
			"first end",
			s.st.Plan.Chains[0].Passes[0].FootPosition())
	case counter.WorkDone:
		return "the work at the peg is done"
	case counter.Ticked:
		return "done"
	case counter.Unticked:
		return "the step is taken back"
	case counter.Reopened:
		return "the record is open again"
	case counter.TieMade, counter.TieWaved:
		return s.saidTie(e)
	}
	return s.saidMark(e, before.st)
}

// saidRecount says what the count was, what it is now, and from which tie it counts.
func (s Session) saidRecount(before Session) string {
	text := fmt.Sprintf("the count was %d, now it is %d", before.st.Laid(), s.st.Laid())
	if n := len(s.st.Ties); n > 0 && s.st.Ties[n-1].Chain == s.st.Chain {
		tie := s.st.Ties[n-1]
		text += fmt.Sprintf("; the last count tie holds %s, so %s loose", measure.Counted(tie.Ends, "end", "ends"),
			measure.Counted(s.st.Laid()-tie.Pass, "group", "groups"))
	}
	return text
}
