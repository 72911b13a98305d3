package counter

import (
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/wind"
)

// Clock tells the time; [time.Now] is the usual one. Nothing in this package calls a clock by itself.
type Clock func() time.Time

// Kind is what happened. Records keep the names, so they are never changed or used again.
type Kind string

// The kinds of event. The comments say which fields of [Event] each one uses besides At.
const (
	Laid      Kind = "laid"       // Chain, Pass (the pass's number)
	Undone    Kind = "undone"     // Chain, Pass (the pass taken back: the last one laid)
	Recounted Kind = "recounted"  // Chain, Pass = the new number of passes laid, Text = reason
	Paused    Kind = "paused"     // none
	Resumed   Kind = "resumed"    // none
	Noted     Kind = "noted"      // Chain, Pass (passes laid when noted), Text
	LeaseSeen Kind = "lease-seen" // Order = the return order seen on the mill after pass 2
	Ticked    Kind = "ticked"     // Chain, Step: a finishing step done
	Unticked  Kind = "unticked"   // Chain, Step
	Finished  Kind = "finished"   // none
	Incident  Kind = "incident"   // Chain, Pass, Position, What; Place if HasPlace; Text if there is one
	Withdrawn Kind = "withdrawn"  // Line: the mark of that line was made by mistake
	WrongTurn Kind = "wrong-turn" // Chain, Pass (the last one laid): round the peg after it the wrong way
	Righted   Kind = "righted"    // none: the twist behind the paddle was taken out
	TieMade   Kind = "tie-made"   // Chain, Pass (the passes that the ties hold so far)
	NewCone   Kind = "new-cone"   // Chain, Pass (the first that it feeds), Position; Weight if it was weighed

	WorkDone   Kind = "work-done"   // Chain, Pass: the work at the end peg before that pass is done
	WorkUndone Kind = "work-undone" // Chain, Pass: it was not
	TieWaved   Kind = "tie-waved"   // Chain, Pass: the count tie that would hold so many passes is not made
	FootSeen   Kind = "foot-seen"   // Foot = the position that was seen to lie at the foot on outward passes
	LeaseLeft  Kind = "lease-left"  // Chain, Pass (passes laid): the look at the lease is put off
	Redone     Kind = "redone"      // Chain, Pass (the pass that lies again): the last take-back is taken back
	Reopened   Kind = "reopened"    // Text = reason: the finished warp is opened again
	Renamed    Kind = "renamed"     // Text = the warp's new name
	Joined     Kind = "joined"      // Text = the other warp of the cloth and how both lie; Apart: with none
	// Lines: so many lines that had been counted were missing when the record was opened
	Lost Kind = "lost"
)

// Event is one thing that happened at the mill. Fields that its kind doesn't use are ignored, and left
// out when it is written.
type Event struct {
	// At is when it happened. A record keeps whole milliseconds, cut down, in UTC; years 1 to 9999.
	At time.Time
	// Kind is what happened.
	Kind Kind
	// Chain and Pass are counted from 1.
	Chain, Pass int
	// Text is a note, the reason of a recount, or a word on an incident: 1 to 500 characters on one line.
	Text string
	// Step is a finishing step.
	Step finishing.StepID
	// Order is a return order.
	Order wind.ReturnOrder
	// Foot is a foot position.
	Foot wind.FootPosition
	// Position is a position of the paddle, from 1; 0 for an incident of the whole pass.
	Position int
	// What is what went wrong.
	What What
	// Place is how far from the lease along the warp, 0 to the warp's length; it counts only if HasPlace
	// says that it is known.
	Place    measure.Length
	HasPlace bool
	// Weight is that of a new cone with its tube; 0 if it wasn't weighed.
	Weight measure.Mass
	// Line is the number of a line in the record, which its event goes by: the plan stands on line 1, the
	// first event on line 2.
	Line int
	// Lines is a number of lines, 1 or more.
	Lines int
}

// field is one of the fields that an event may use.
type field uint8

const (
	chainField field = iota
	passField
	textField
	stepField
	orderField
	positionField
	whatField
	placeField
	remarkField // a text that may be missing
	lineField
	weightField
	footField
	linesField
)

// String is the field's name in the file.
func (f field) String() string {
	return [...]string{"chain", "pass", "text", "step", "order", "position", "what", "place", "text", "line", "weight",
		"foot", "lines"}[f]
}

// missing says whether an event leaves out a field that its kind may use.
func (e Event) missing(f field) bool {
	return f == placeField && !e.HasPlace || f == remarkField && e.Text == "" || f == weightField && e.Weight == 0
}

// mayMiss says whether a field may be left out.
func (f field) mayMiss() bool { return f == placeField || f == remarkField || f == weightField }

// fieldsOf lists the fields of each kind in the order in which they are written.
var fieldsOf = map[Kind][]field{
	Laid: {chainField, passField}, Undone: {chainField, passField},
	Recounted: {chainField, passField, textField}, Noted: {chainField, passField, textField},
	Paused: {}, Resumed: {}, Finished: {},
	LeaseSeen: {orderField}, FootSeen: {footField},
	Ticked: {chainField, stepField}, Unticked: {chainField, stepField},
	Incident:  {chainField, passField, positionField, whatField, placeField, remarkField},
	Withdrawn: {lineField},
	WrongTurn: {chainField, passField}, Righted: {}, TieMade: {chainField, passField},
	NewCone:  {chainField, passField, positionField, weightField},
	WorkDone: {chainField, passField}, WorkUndone: {chainField, passField},
	TieWaved: {chainField, passField}, LeaseLeft: {chainField, passField},
	Redone: {chainField, passField}, Reopened: {textField}, Renamed: {textField}, Joined: {textField},
	Lost: {linesField},
}

// normal is the event as a record keeps it: the time in UTC and cut down to whole milliseconds, and no
// field that the kind doesn't use.
func (e Event) Normal() Event {
	n := Event{At: e.At.UTC().Truncate(time.Millisecond), Kind: e.Kind}
	for _, f := range fieldsOf[e.Kind] {
		switch f {
		case chainField:
			n.Chain = e.Chain
		case passField:
			n.Pass = e.Pass
		case textField, remarkField:
			n.Text = e.Text
		case stepField:
			n.Step = e.Step
		case orderField:
			n.Order = e.Order
		case positionField:
			n.Position = e.Position
		case whatField:
			n.What = e.What
		case placeField:
			if e.HasPlace {
				n.Place, n.HasPlace = e.Place, true
			}
		case lineField:
			n.Line = e.Line
		case weightField:
			n.Weight = e.Weight
		case footField:
			n.Foot = e.Foot
		case linesField:
			n.Lines = e.Lines
		}
	}
	return n
}

// checkTime refuses a time whose year can't be written with four digits.
func (e Event) CheckTime() error {
	if y := e.At.UTC().Year(); y < 1 || y > 9999 {
		return &measure.FieldError{Field: "time", Value: e.At.String(), Want: "a year from 1 to 9999"}
	}
	return nil
}

// maxText is the longest note or reason, in characters.
const maxText = 500

// checkText refuses a text that is empty, too long, or that would upset a screen or a printed page:
// control characters, line and paragraph separators.
func checkText(name, s string) error {
	bad := func(want string) error {
		return &measure.FieldError{Field: name, Value: measure.Shortened(s), Want: want}
	}
	switch {
	case !utf8.ValidString(s):
		return bad("plain text (UTF-8)")
	case strings.TrimSpace(s) == "":
		return bad("a few words")
	case utf8.RuneCountInString(s) > maxText:
		return bad(fmt.Sprintf("at most %d characters", maxText))
	case strings.ContainsFunc(s, func(r rune) bool { return unicode.IsControl(r) || r == '\u2028' || r == '\u2029' }):
		return bad("one line of text without control characters")
	}
	return nil
}

// HasText says whether an event of the kind carries words of the weaver's, so that its line may be long.
func (k Kind) HasText() bool {
	return slices.Contains(fieldsOf[k], textField) || slices.Contains(fieldsOf[k], remarkField)
}
