package session

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"millside/counter"
	"millside/counter/journal"
	"millside/plan/measure"
)

// What the winder is told of the disk: our own choice, no source.
const (
	// SavingAfter is how long an event may be on its way to the disk before the screen says so.
	SavingAfter = 250 * time.Millisecond
	// slowDisk is how long saving may take before it is told afterwards.
	slowDisk = time.Second
)

// Saving says what the screen shows while an event has been on its way to the disk for [SavingAfter] or longer; false
// before, and if none is. A skin asks again then: nothing else tells it that the time has come.
func (s Session) Saving(since, now time.Time) (Message, bool) {
	if !s.Waiting() || now.Sub(since) < SavingAfter {
		return Message{}, false
	}
	text := "saving: the disk isn't done yet; what is pressed meanwhile is judged by when it was pressed"
	if s.wait.Kind == counter.Laid {
		text = fmt.Sprintf("saving pass %d: it counts when it is on the disk", s.wait.Pass)
	}
	return Message{text, Due}, true
}

// Slow tells, once an event is saved, that saving it took long; a shorter time changes nothing. What was to be said
// anyway stays in front.
func (s Session) Slow(took time.Duration) Session {
	if took < slowDisk || s.Waiting() {
		return s
	}
	text := fmt.Sprintf("the disk is slow: saving took %s", took.Round(time.Second/10))
	if s.message.Text != "" {
		text = s.message.Text + "; " + text
	}
	s.message = Message{text, max(s.message.Level, Due)}
	return s
}

// missing is how many lines are missing from the record, until the count was set right.
func (s Session) missing() int {
	if n := s.st.Missing(); n > 0 || len(s.st.Losses) > s.losses {
		return n // it is on the record, and may be settled
	}
	return s.lost
}

// missingItem is what stays said of lines that are missing from the record.
func (s Session) missingItem() (Item, bool) {
	n := s.missing()
	if n == 0 {
		return Item{}, false
	}
	return item(ItemLost, Alarm,
		fmt.Sprintf("about %s missing from the record: count the groups at the pegs and set the count right",
			measure.Counted(n, "line that was counted is", "lines that were counted are")),
		"counted passes are missing, recount"), true
}

// Remedy is a way on where the record can't be written.
type Remedy uint8

// The remedies.
const (
	TryAgain   Remedy = iota // the record is read anew: see [journal.Record.Reopen]
	SaveBeside               // all that was counted goes into a new record: see [journal.Record.SaveBeside]
)

// String says what the remedy does, for the line of keys.
func (r Remedy) String() string {
	if r == SaveBeside {
		return "save as a new record"
	}
	return "try again"
}

// Remedies lists the ways on where the record can't be written, the likelier one first; none if it can be.
func (s Session) Remedies() []Remedy {
	switch {
	case s.failed == nil:
		return nil
	case errors.Is(s.failed, journal.ErrReplaced):
		return []Remedy{SaveBeside, TryAgain}
	}
	return []Remedy{TryAgain, SaveBeside}
}

// Trouble says what to do where the record can't be written, in a few sentences; nothing if it can be.
func (s Session) Trouble() []string {
	if s.failed == nil {
		return nil
	}
	counted := fmt.Sprintf("%s counted and kept in memory.", measure.Counted(s.st.Laid(), "pass is", "passes are"))
	if errors.Is(s.failed, journal.ErrReplaced) {
		return []string{"Stop winding. Another program has moved, replaced or changed the file of this record.",
			counted,
			"Save them as a new record beside the old one and go on there, or put the file back and try again."}
	}
	return []string{"Stop winding. Make room on the disk, or put the stick back, then try again: the record is read " +
		"anew, and the page after it says what must stand on the mill.",
		counted, "If the disk doesn't come back, save them as a new record."}
}

// What is said where the record can't be written: all of it stands here.
const (
	notSaved     = "not saved: the count did not move"
	notSavedPage = "The record can't be written. Nothing is counted."
)

// breaks is a record that can't be written from now on, in the words for it.
func (s Session) breaks(err error) (Session, Reply) {
	s.failed = err
	text := fmt.Sprintf("%s, %s on the disk", notSaved, measure.Counted(s.st.Laid(), "pass", "passes"))
	s.message = Message{text, Alarm}
	said := []string{sentence(text), sentence(strings.TrimSuffix(err.Error(), "."))}
	return s, Reply{Said: said, Short: s.brokenSpoken(), Cue: CueStop}
}

// StillFailed is what the session says where a remedy didn't help.
func (s Session) StillFailed(err error) (Session, Reply) {
	s.failed, s.message = err, Message{"still " + notSaved, Alarm}
	return s, Reply{Said: []string{sentence(s.message.Text), sentence(err.Error())}, Short: "Still not saved.",
		Cue: CueStop}
}

// brokenRefusal refuses anything but leaving.
func (s Session) brokenRefusal(at time.Time) (Session, Reply) {
	return s.refuse("nothing is counted: the record can't be written; open it again",
		"Not counted. The record can't be written.", at)
}

// brokenPage is the page in long words, brokenSpoken in few.
func (s Session) brokenPage() []string { return append([]string{notSavedPage}, s.Trouble()...) }

func (s Session) brokenSpoken() string { return "Not saved. The count did not move." }

// Failure is the error with which a skin ends that can't go on; nil where the record can be written.
func (s Session) Failure() error {
	if s.failed == nil {
		return nil
	}
	return fmt.Errorf("the count did not move, %s laid on the disk: %w",
		measure.Counted(s.st.Laid(), "pass", "passes"), s.failed)
}
