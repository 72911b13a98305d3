package session

import (
	"millside/counter"
	"millside/plan/measure"
	"millside/plan/wind"
)

// Intent is what the winder wants. The types are those of this file.
type Intent interface{ intent() }

// Press is the pass key: "this pass is laid", and on the other pages "go on".
type Press struct{}

// TakeBack takes back the last thing that moved the winding: the last pass, the work at the peg since, or the last
// finishing step.
type TakeBack struct{}

// Redo brings back what was taken back last.
type Redo struct{}

// Pause stops for a while.
type Pause struct{}

// GoOn says that the mill stands as it was said to, after a pause or after coming back.
type GoOn struct{}

// LookAgain asks for the page that says what must stand on the mill, as after the terminal was put aside.
type LookAgain struct{}

// Recount sets the count to what was seen on the mill.
type Recount struct {
	// Passes is the number of passes that lie, 0 to those of the chain.
	Passes int
	// Reason is kept with it; where it is empty the record says that it was counted on the pegs.
	Reason string
	// Seen is what was counted at the pegs, kept with the reason; the zero Seen and [counter.NothingSeen] add nothing.
	Seen counter.Seen
}

// Mark notes that something went wrong.
type Mark struct {
	What counter.What
	// Pass is the pass, 0 for the one in hand; Position the position of the paddle, 0 where the whole pass is meant.
	Pass, Position int
	// Place is how far from the lease, if HasPlace.
	Place    measure.Length
	HasPlace bool
	Text     string
}

// WrongTurn says that the group went the wrong way round the end peg after the last pass.
type WrongTurn struct{}

// Righted says that the twist behind the paddle was taken out.
type Righted struct{}

// NewPackage puts another package into a position, from a pass on, 0 for the one in hand. Weight is 0 if it wasn't
// weighed.
type NewPackage struct {
	Position, Pass int
	Weight         measure.Mass
}

// DropMark takes a mark back: the one of that number, 0 for the last one made.
type DropMark struct{ Number int }

// Note keeps a few words with the pass.
type Note struct{ Text string }

// TieMade says that the count tie that is due is made; where none is, that one was made round all groups but the one
// in hand.
type TieMade struct{}

// TieBack says that the last count tie was not made after all.
type TieBack struct{}

// TieOff waves the count tie off that is due.
type TieOff struct{}

// Answer answers the question about the lease, whether its page is shown or it is open as a reminder.
type Answer struct{ Says Says }

// Says is an answer.
type Says uint8

// The answers.
const (
	Yes   Says = iota // as it is drawn
	Other             // the other way
	Later             // it stays open
)

// Foot says which end of the paddle lies at the foot of the peg on outward passes.
type Foot struct{ Position wind.FootPosition }

// WorkDone says that the work at the peg is done.
type WorkDone struct{}

// StepDone ticks the finishing step in hand.
type StepDone struct{}

// Reopen opens the finished warp again.
type Reopen struct{ Reason string }

// Leave pauses the warp, unless it stands still already, and leaves.
type Leave struct{}

func (Press) intent()      {}
func (TakeBack) intent()   {}
func (Redo) intent()       {}
func (Pause) intent()      {}
func (GoOn) intent()       {}
func (LookAgain) intent()  {}
func (Recount) intent()    {}
func (Mark) intent()       {}
func (WrongTurn) intent()  {}
func (Righted) intent()    {}
func (NewPackage) intent() {}
func (DropMark) intent()   {}
func (Note) intent()       {}
func (TieMade) intent()    {}
func (TieBack) intent()    {}
func (TieOff) intent()     {}
func (Answer) intent()     {}
func (Foot) intent()       {}
func (WorkDone) intent()   {}
func (StepDone) intent()   {}
func (Reopen) intent()     {}
func (Leave) intent()      {}
