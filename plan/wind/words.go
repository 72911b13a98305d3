package wind

import (
	"millside/plan/measure"
)

// Direction is the way that the group travels on a pass.
type Direction uint8

// The two directions.
const (
	Outward Direction = iota // from the lease to the counting cross
	Return                   // from the counting cross back to the lease
)

// String gives "outward" or "return".
func (d Direction) String() string { return measure.OneOf(int(d), "outward", "return") }

// Far says whether the group is heading for the counting cross.
func (d Direction) Far() bool { return d == Outward }

// DirectionOf is the direction of a pass by its number, counted from 1.
func DirectionOf(number int) Direction {
	if number%2 == 1 {
		return Outward
	}
	return Return
}

// Opening is one of the two openings that a paddle makes.
type Opening uint8

// The two openings. Holes are the odd positions of the paddle, slots the even ones.
const (
	HolesUp Opening = iota // the ends in the holes up, those in the slots down
	SlotsUp                // the other way about
)

// String gives "holes up" or "slots up".
func (o Opening) String() string { return measure.OneOf(int(o), "holes up", "slots up") }

// Other is the opening after the paddle has been flicked.
func (o Opening) Other() Opening { return 1 - o }

// LeasePeg is one of the two pegs of the threading lease.
type LeasePeg uint8

// The lease pegs. A stands next to the end peg.
const (
	PegA LeasePeg = iota
	PegB
)

// String gives "A" or "B".
func (p LeasePeg) String() string { return measure.OneOf(int(p), "A", "B") }

// Other is the other lease peg.
func (p LeasePeg) Other() LeasePeg { return 1 - p }

// Turn is the way round an end peg, seen by the winder who faces the peg's tip.
type Turn uint8

// The two turns.
const (
	Counterclockwise Turn = iota
	Clockwise
)

// String gives "counterclockwise" or "clockwise".
func (t Turn) String() string { return measure.OneOf(int(t), "counterclockwise", "clockwise") }

// HalfTurns counts half turns of twist in the group behind the paddle: clockwise above 0,
// counterclockwise below.
type HalfTurns int

// Twist is what one turn round an end peg adds behind the paddle.
func (t Turn) Twist() HalfTurns {
	if t == Clockwise {
		return 1
	}
	return -1
}

// Hand is the layout: which hand leads the paddle, and so which way the group turns.
type Hand uint8

// The two layouts.
const (
	RightHanded Hand = iota // counterclockwise at the far peg, clockwise at the near peg
	LeftHanded              // the other way about
)

// String gives "right" or "left".
func (h Hand) String() string { return measure.OneOf(int(h), "right", "left") }

// TurnAfter is the way round the end peg after a pass in direction d.
func (h Hand) TurnAfter(d Direction) Turn {
	if d.Far() == (h == RightHanded) {
		return Counterclockwise
	}
	return Clockwise
}

// MarshalText writes the name.
func (h Hand) MarshalText() ([]byte, error) { return []byte(h.String()), nil }

// UnmarshalText reads "right" or "left".
func (h *Hand) UnmarshalText(b []byte) error {
	i, err := measure.WhichOf(string(b), "right", "left")
	*h = Hand(i)
	return err
}

// ReturnOrder is the order in which a return pass lies in the lease.
type ReturnOrder uint8

// The two orders.
const (
	SameOrder     ReturnOrder = iota // 1 to g, as on an outward pass
	MirroredOrder                    // g to 1
)

// String gives "same" or "mirrored".
func (r ReturnOrder) String() string { return measure.OneOf(int(r), "same", "mirrored") }

// Other is the other order.
func (r ReturnOrder) Other() ReturnOrder { return 1 - r }

// MarshalText writes the name.
func (r ReturnOrder) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads "same" or "mirrored".
func (r *ReturnOrder) UnmarshalText(b []byte) error {
	i, err := measure.WhichOf(string(b), "same", "mirrored")
	*r = ReturnOrder(i)
	return err
}

// LastPass says what to do when the group doesn't divide the ends.
type LastPass uint8

// The two ways.
const (
	ShortLast LastPass = iota // the last pass carries only the ends that are left
	FullLast                  // the last pass is full and the surplus lies in the warp as spare ends
)

// String gives "short" or "full".
func (l LastPass) String() string { return measure.OneOf(int(l), "short", "full") }

// MarshalText writes the name.
func (l LastPass) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// UnmarshalText reads "short" or "full".
func (l *LastPass) UnmarshalText(b []byte) error {
	i, err := measure.WhichOf(string(b), "short", "full")
	*l = LastPass(i)
	return err
}

// Finish is the end of the mill at which the winding stops.
type Finish uint8

// The two ends.
const (
	AtLease Finish = iota
	AtCountingCross
)

// String gives "at the lease" or "at the counting cross".
func (f Finish) String() string {
	return measure.OneOf(int(f), "at the lease", "at the counting cross")
}

// FinishAfter is where the paddle is after so many passes.
func FinishAfter(passes int) Finish {
	if passes%2 == 1 {
		return AtCountingCross
	}
	return AtLease
}

// EndPeg is one of the two end pegs round which the group turns.
type EndPeg uint8

// The end pegs. The near one stands beside the lease, the far one beside the counting cross.
const (
	NearPeg EndPeg = iota
	FarPeg
)

// String gives "near end peg" or "far end peg".
func (p EndPeg) String() string { return measure.OneOf(int(p), "near end peg", "far end peg") }

// EndPegAfter is the end peg at which the paddle stands after so many passes of a chain.
func EndPegAfter(passes int) EndPeg {
	if passes%2 == 1 {
		return FarPeg
	}
	return NearPeg
}
