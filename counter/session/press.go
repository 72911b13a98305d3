package session

import (
	"fmt"
	"time"

	"millside/counter"
	"millside/plan/times"
)

// press is the pass key.
func (s Session) press(at time.Time) (Session, Reply) {
	switch s.Stage(at) {
	case Looking:
		return s.goOn(at)
	case AtPeg:
		return s.workDone(at)
	case AtQuestion:
		if _, stops := s.stopWork(); stops || s.st.Wound() {
			return s.answerByPress(at)
		}
		return s.lay(at)
	case Finishing:
		return s.stepDone(at)
	case Done:
		return s.refuse("not counted: the warp is finished; open the record again, with a reason, if something has "+
			"to be mended",
			"Not counted. The warp is finished.", at)
	}
	return s.lay(at)
}

const tooSoon = "too soon after the last"

// tooFast refuses a press that came too fast.
func (s Session) tooFast(at time.Time) (Session, Reply) { return s.ignore(tooSoon, at) }

// ignore refuses a press that came too fast, and counts those that are refused in a row.
func (s Session) ignore(why string, at time.Time) (Session, Reply) {
	if s.ignored++; s.ignored == 1 {
		return s.refuse("one press ignored: "+why, "Ignored, too soon.", at)
	}
	return s.refuse(fmt.Sprintf("%d presses ignored in a row: %s", s.ignored, why), "Ignored, too soon.", at)
}

// lay counts a pass.
func (s Session) lay(at time.Time) (Session, Reply) {
	guard := s.st.Plan.Spec.Guard
	if fast := !s.guards.pass.Allows(at); !s.guards.lay(at) {
		why := tooSoon
		if fast {
			why = fmt.Sprintf("sooner than %s after the last", guard)
		}
		return s.ignore(why, at)
	}
	next, ok := s.st.NextPass()
	if !ok {
		return s.refuse("not counted: all passes of the chain are laid", "", at)
	}
	return s.write(counter.Event{Kind: counter.Laid, Pass: next.Number}, at)
}

// goOn goes on after a pause, or after coming back. Where only the time says that the mill should be looked at, the
// page has not been seen: the press brings it up, and the next one goes on.
func (s Session) goOn(at time.Time) (Session, Reply) {
	if s.Stage(at) != Looking {
		return s.refuse("nothing is paused", "", at)
	}
	if !s.looks() {
		s.look = true
		s.guards.refused(at)
		s.guards.did(at)
		next, r := s.refuse(fmt.Sprintf("not counted: nothing has happened for %s; look at the mill first",
			roughly(s.st.Away(at))),
			"Not counted. Look at the mill first.", at)
		r.Said = append(r.Said, next.Announce(at)...)
		return next, r
	}
	if !s.guards.confirm(at) {
		return s.tooFast(at)
	}
	return s.write(counter.Event{Kind: counter.Resumed}, at)
}

// lookAgain brings up what must stand on the mill.
func (s Session) lookAgain(at time.Time) (Session, Reply) {
	if s.st.Begun() && !s.st.Finished {
		s.look = true
	}
	return s, Reply{Said: s.Announce(at), Short: s.Speak(at), Cue: CueLook}
}

func (s Session) pause(at time.Time) (Session, Reply) {
	switch {
	case s.st.Finished:
		return s.refuse("the warp is finished", "", at)
	case s.st.Paused:
		return s.refuse("paused already: the pass key goes on", "Paused already.", at)
	}
	s.guards.did(at)
	return s.write(counter.Event{Kind: counter.Paused}, at)
}

// workDone confirms the work at the peg.
func (s Session) workDone(at time.Time) (Session, Reply) {
	if s.Stage(at) != AtPeg {
		return s.refuse("there is no work at the peg now", "", at)
	}
	if !s.guards.confirm(at) {
		return s.tooFast(at)
	}
	return s.write(counter.Event{Kind: counter.WorkDone, Pass: s.st.Laid() + 1}, at)
}

// stepDone ticks the finishing step in hand, or closes the record after the last one.
func (s Session) stepDone(at time.Time) (Session, Reply) {
	if s.Stage(at) != Finishing {
		return s.refuse("the finishing has not begun", "", at)
	}
	if !s.guards.confirm(at) {
		return s.tooFast(at)
	}
	if step, more := s.st.NextStep(); more {
		return s.write(counter.Event{Kind: counter.Ticked, Step: step.ID}, at)
	}
	return s.write(counter.Event{Kind: counter.Finished}, at)
}

// reopen opens the finished warp again.
func (s Session) reopen(in Reopen, at time.Time) (Session, Reply) {
	if !s.st.Finished {
		return s.refuse("the record is open already", "", at)
	}
	if in.Reason == "" {
		return s.refuse("say why the record is opened again, so that it can be read later", "Say why.", at)
	}
	s.guards.did(at)
	return s.write(counter.Event{Kind: counter.Reopened, Text: in.Reason}, at)
}

// takeBack takes back the last pass, the work at the peg since, or the last finishing step; at the beginning of a later
// chain the last step of the chain before.
func (s Session) takeBack(at time.Time) (Session, Reply) {
	switch {
	case s.st.Finished:
		return s.refuse("nothing is taken back: the warp is finished; open the record again first", "", at)
	case s.looks():
		return s.refuse("nothing is taken back: look at the mill first, and go on", "", at)
	case s.guards.repeats("take back", at):
		return s.tooFast(at)
	}
	chain, k := s.st.Chains[s.st.Chain-1], s.st.Laid()
	if n := len(chain.Ticked); n > 0 {
		return s.write(counter.Event{Kind: counter.Unticked, Step: chain.Ticked[n-1]}, at)
	}
	if n := len(chain.Worked); n > 0 && chain.Worked[n-1] == k+1 {
		return s.write(counter.Event{Kind: counter.WorkUndone, Pass: k + 1}, at)
	}
	if k > 0 {
		return s.write(counter.Event{Kind: counter.Undone, Pass: k}, at)
	}
	if s.st.Chain > 1 {
		before := s.st.Chains[s.st.Chain-2].Ticked
		return s.write(counter.Event{Kind: counter.Unticked, Chain: s.st.Chain - 1, Step: before[len(before)-1]}, at)
	}
	return s.refuse("nothing to take back: no pass is laid", "", at)
}

// redo brings back what was taken back last.
func (s Session) redo(at time.Time) (Session, Reply) {
	switch {
	case s.st.Finished || s.looks():
		return s.refuse("nothing is brought back here", "", at)
	case s.guards.repeats("redo", at):
		return s.tooFast(at)
	}
	if k := s.st.Chains[s.st.Chain-1].Redo(); k > 0 {
		return s.write(counter.Event{Kind: counter.Redone, Pass: k}, at)
	}
	if s.unticked != "" {
		return s.write(counter.Event{Kind: counter.Ticked, Step: s.unticked}, at)
	}
	return s.refuse("nothing was taken back last", "", at)
}

// recount sets the count to what was seen on the mill.
func (s Session) recount(in Recount, at time.Time) (Session, Reply) {
	if s.st.Finished {
		return s.refuse("not counted: the warp is finished", "", at)
	}
	why := in.Reason
	if why == "" {
		why = CountedOnPegs
	}
	if one, two := in.Seen.OverPeg1, in.Seen.OverPeg2; in.Seen != (counter.Seen{}) && (one >= 0 || two >= 0) {
		why += fmt.Sprintf(" (%s over peg 1, %s over peg 2)", countedOr(one), countedOr(two))
	}
	s.guards.did(at)
	return s.write(counter.Event{Kind: counter.Recounted, Pass: in.Passes, Text: why}, at)
}

// countedOr writes a count, or a dash for what wasn't counted.
func countedOr(n int) string {
	if n < 0 {
		return "-"
	}
	return fmt.Sprint(n)
}

func (s Session) note(in Note, at time.Time) (Session, Reply) {
	s.guards.did(at)
	return s.write(counter.Event{Kind: counter.Noted, Pass: s.st.Laid(), Text: in.Text}, at)
}

// roughly writes a time in minutes, rounded up, so that no time is said to be shorter than it is.
func roughly(d time.Duration) string {
	span := times.TimeSpan{Low: d, Middle: d, High: d}
	return span.String()
}
