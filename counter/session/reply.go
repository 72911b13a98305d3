package session

import "millside/counter"

// Reply is what comes of an intent, or of the disk's answer.
type Reply struct {
	// Event is to be added to the record; its Kind is empty if there is nothing to write. If there is, all the rest is
	// empty, and [Session.Saved] or [Session.NotSaved] gives it.
	Event counter.Event
	// Said is what the winder is told, one sentence after the other.
	Said []string
	// Short is what is spoken: what matters first, about twelve words for an ordinary pass. It is empty where
	// nothing is to be heard.
	Short string
	// Cue is what is heard.
	Cue Cue
	// Over says that the skin may end: the winder has left, or nothing more can be done.
	Over bool
	// Waits says that an event is still on its way to the disk: the skin keeps the key, with its time, until
	// that one is answered. Nothing else happened.
	Waits bool
}

// Writes says whether an event has to be added to the record.
func (r Reply) Writes() bool { return r.Event.Kind != "" }

// Cue is a sound of its own, so that the winder needn't look up.
type Cue uint8

// The cues.
const (
	CueNone      Cue = iota
	CueOutward       // an outward pass is counted
	CueReturn        // a return pass is counted
	CueRefused       // nothing was done
	CueLook          // look here: something is due, asked or announced
	CueStop          // stop: there is work at the peg, the chain is wound, or the record can't be written
	CueLastPass      // the pass in hand is the last one
	CueConfirmed     // something was done that is no pass
)

// String names the cue in one or two words.
func (c Cue) String() string {
	switch c {
	case CueOutward:
		return "outward laid"
	case CueReturn:
		return "return laid"
	case CueRefused:
		return "refused"
	case CueLook:
		return "look here"
	case CueStop:
		return "stop"
	case CueLastPass:
		return "last pass"
	case CueConfirmed:
		return "confirmed"
	}
	return "none"
}

// Message is what just happened, for a line of its own.
type Message struct {
	Text string
	// Level says how loud it is.
	Level Level
}

// Level is how loud a message or an item is.
type Level uint8

// The levels.
const (
	Quiet Level = iota // good to know
	Due                // to be done or known now
	Alarm              // a press that didn't count, or something that can't be done
)
