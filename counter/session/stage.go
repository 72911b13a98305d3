package session

import (
	"time"
)

// Stage is the page that the conversation is on.
type Stage uint8

// The stages.
const (
	Winding     Stage = iota // a pass is wound; the pass key counts it
	Looking                  // what stands on the mill has to be seen first; the pass key goes on
	AtPeg                    // there is work at the end peg; the pass key confirms it
	AtQuestion               // the lease is asked about; the pass key counts the next pass, or leaves the question
	Finishing                // the chain is wound; the pass key ticks a step
	Done                     // the record is closed
	Failed                   // the record can't be written
	OnlyLooking              // the record takes no events
)

// Stage is the page that belongs to the state and the time. It is [Looking] too once nothing has happened for
// [LookAfter]; the press that comes then is refused, brings up the page, and so counts nothing.
func (s Session) Stage(now time.Time) Stage {
	switch {
	case s.failed != nil:
		return Failed
	case s.watching:
		return OnlyLooking
	case s.st.Finished:
		return Done
	case s.looks():
		return Looking
	}
	stage := s.pageOf()
	if s.st.Laid() > 0 && (stage == Winding || stage == AtQuestion) && s.st.NeedsLook(now, LookAfter) {
		return Looking
	}
	return stage
}

// looks says whether the mill has to be seen before anything is counted, whatever the time is.
func (s Session) looks() bool { return s.look || s.st.Paused }

// pageOf is the page that belongs to the state alone.
func (s Session) pageOf() Stage {
	_, stops := s.stopWork()
	switch {
	case s.asks():
		return AtQuestion
	case stops:
		return AtPeg
	case s.st.Wound():
		return Finishing
	}
	return Winding
}
