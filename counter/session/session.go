package session

import (
	"errors"
	"fmt"
	"iter"
	"slices"
	"strings"
	"time"

	"millside/counter"
	"millside/counter/journal"
	"millside/plan/finishing"
	"millside/plan/measure"
)

// LookAfter is how long nothing may have happened before a press of the pass key brings up what must stand on the mill
// in place of counting: our own choice, no source. A slow pass takes less.
const LookAfter = 10 * time.Minute

// Session is a conversation over a record, from its opening to its end. Make one with [New]. It is a value: no method
// changes the one that it is called on.
type Session struct {
	st      counter.State
	guards  guards
	reckon  reckoning
	message Message
	// look says that what stands on the mill has to be seen before anything is counted.
	look bool
	// moved says that something was added to the record since it was opened.
	moved bool
	// watching says that the record was opened to look at only.
	watching bool
	// rest says that the reminder to rest was given in this stretch of winding.
	rest bool
	// sure says that the other order was answered once, though many passes of a striped warp lie wrong in it.
	sure bool
	// ignored is how many presses in a row were refused because they came too fast.
	ignored int
	// unticked is the finishing step that was taken back last, if nothing was done since.
	unticked finishing.StepID
	failed   error
	// lost is how many lines were missing at the opening, and losses how many losses were on the record then.
	lost, losses int
	// wait is the event on its way to the disk, asked what asked for it.
	wait  counter.Event
	asked asked
}

// asked is what an event on its way to the disk was asked for.
type asked struct {
	leaving bool
}

// Opening is a record as it was opened.
type Opening struct {
	State  counter.State
	Events []counter.Event
	// All goes through the events, where Events is empty.
	All iter.Seq[counter.Event]
	// Torn says what was left out at the end of the file, in words; empty if nothing was.
	Torn string
	// Lost is how many lines more are missing than a power cut takes; see [journal.Record.Lost].
	Lost int
	// OnlyLooking says that the record takes no events.
	OnlyLooking bool
	// Piped says that no hand presses keys: what comes is read from a file or sent by a program. Then the plan's guard
	// counts and nothing beside it.
	Piped bool
}

// New begins a conversation.
func New(o Opening) Session {
	s := Session{st: o.State, lost: o.Lost, losses: len(o.State.Losses), watching: o.OnlyLooking,
		look: o.State.Begun() && !o.State.Finished && !o.OnlyLooking}
	if o.State.Plan != nil {
		s.guards = newGuards(o.State.Plan.Spec.Guard.Duration(), !o.Piped)
	}
	all := o.All
	if all == nil {
		all = slices.Values(o.Events)
	}
	for e := range all {
		s.reckon.tempo = s.reckon.tempo.After(e)
		if e.Kind == counter.Laid {
			s.guards.pass = s.guards.pass.Counted(e.At) // coming back is no way round the guard
		}
	}
	s.reckon = s.reckon.packagesOf(s.st)
	if o.Torn != "" {
		s.message = Message{"take care: " + o.Torn + "; count the groups at the pegs", Due}
	}
	return s
}

// State is the warp as it is on the disk.
func (s Session) State() counter.State { return s.st }

// Message is what just happened, or why a press was refused; empty if there is nothing to say.
func (s Session) Message() Message { return s.message }

// Waiting says whether an event is on its way to the disk.
func (s Session) Waiting() bool { return s.wait.Kind != "" }

// Err is what keeps the record from being written; nil if it can be.
func (s Session) Err() error { return s.failed }

// Begin is what is said first.
func (s Session) Begin(now time.Time) Reply {
	var said []string
	if s.st.Plan != nil {
		said = append(said, fmt.Sprintf("Warp \"%s\".", s.st.Plan.Spec.Name))
	}
	if s.message.Text != "" {
		said = append(said, sentence(s.message.Text))
	}
	return Reply{Said: append(said, s.Announce(now)...), Short: s.Speak(now), Cue: CueLook}
}

// Take takes an intent, with the time at which its key came.
func (s Session) Take(in Intent, at time.Time) (Session, Reply) {
	if s.Waiting() {
		return s, Reply{Waits: true}
	}
	next, r := s.take(in, at)
	if next.ignored == s.ignored { // whatever else comes of it ends the row
		next.ignored = 0
	}
	return next, r
}

func (s Session) take(in Intent, at time.Time) (Session, Reply) {
	if s.watching || s.Stage(at) == Failed {
		return s.takeLooking(in, at)
	}
	switch in := in.(type) {
	case Press:
		return s.press(at)
	case GoOn:
		return s.goOn(at)
	case TakeBack:
		return s.takeBack(at)
	case Redo:
		return s.redo(at)
	case Pause:
		return s.pause(at)
	case LookAgain:
		return s.lookAgain(at)
	case Recount:
		return s.recount(in, at)
	case Mark:
		return s.markIt(in, at)
	case WrongTurn:
		return s.wrongTurn(at)
	case Righted:
		return s.righted(at)
	case NewPackage:
		return s.newPackage(in, at)
	case DropMark:
		return s.dropMark(in, at)
	case Note:
		return s.note(in, at)
	case TieMade:
		return s.tieMade(at)
	case TieBack:
		return s.tieBack(at)
	case TieOff:
		return s.tieOff(at)
	case Answer:
		return s.answer(in.Says, at)
	case Foot:
		return s.foot(in, at)
	case WorkDone:
		return s.workDone(at)
	case StepDone:
		return s.stepDone(at)
	case Reopen:
		return s.reopen(in, at)
	case Leave:
		return s.leave(at)
	}
	return s.refuse("that means nothing here", "", at)
}

// takeLooking is a record that takes no events: leaving is all that can be done.
func (s Session) takeLooking(in Intent, at time.Time) (Session, Reply) {
	if _, ok := in.(Leave); ok {
		return s, Reply{Over: true}
	}
	if s.failed != nil {
		return s.brokenRefusal(at)
	}
	return s.refuse("only looking: nothing is counted here", "Only looking.", at)
}

// write hands an event of the chain in hand to the skin.
func (s Session) write(e counter.Event, at time.Time) (Session, Reply) {
	if e.At = at; e.Chain == 0 {
		e.Chain = s.st.Chain
	}
	s.wait = e
	return s, Reply{Event: e}
}

// refuse does nothing, and says so.
func (s Session) refuse(why, short string, at time.Time) (Session, Reply) {
	if short == "" {
		short = sentence(why)
	}
	s.message = Message{why, Alarm}
	return s, Reply{Said: []string{sentence(why)}, Short: short, Cue: CueRefused}
}

// Saved takes the disk's answer: the event is in the record, and the state is the one after it.
func (s Session) Saved(e counter.Event, st counter.State) (Session, Reply) {
	before, asked := s, s.asked
	s.wait, s.asked = counter.Event{}, asked0
	s.st, s.moved = st, true
	s.reckon = s.reckon.after(e, before.st, st)
	s.message, s.sure = Message{}, false
	if e.Kind != counter.Unticked {
		s.unticked = ""
	}
	if asked.leaving {
		return s, s.leaves()
	}
	return s.follows(before, e)
}

var asked0 asked

// NotSaved takes the disk's refusal. An event that doesn't follow is explained; a record that can't be written takes
// nothing more.
func (s Session) NotSaved(err error) (Session, Reply) {
	e, asked := s.wait, s.asked
	s.wait, s.asked = counter.Event{}, asked0
	if errors.Is(err, journal.ErrFailed) {
		next, r := s.breaks(err)
		r.Over = asked.leaving
		return next, r
	}
	why := "not done: "
	if e.Kind == counter.Laid {
		why = "not counted: "
	}
	next, r := s.refuse(why+err.Error(), "", e.At)
	r.Over = asked.leaving
	return next, r
}

// leave pauses the warp, unless it stands still already or was only looked at.
func (s Session) leave(at time.Time) (Session, Reply) {
	if !s.moved || s.st.Paused || s.st.Finished {
		return s, s.leaves()
	}
	s.asked.leaving = true
	return s.write(counter.Event{Kind: counter.Paused}, at)
}

func (s Session) leaves() Reply {
	text := fmt.Sprintf("Left with %s laid. All of it is on the disk.", measure.Counted(s.st.Laid(), "pass", "passes"))
	return Reply{Over: true, Said: []string{text}, Short: text, Cue: CueConfirmed}
}

// sentence makes a sentence of a few words.
func sentence(text string) string {
	text = measure.Capital(text)
	if text == "" || strings.HasSuffix(text, ".") || strings.HasSuffix(text, "?") {
		return text
	}
	return text + "."
}
