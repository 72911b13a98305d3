package wind

import "fmt"

// Pass is the group laid once from one end of the mill to the other.
type Pass struct {
	// Number counts the passes of a chain from 1.
	Number int
	// Direction is outward for odd numbers, return for even ones.
	Direction Direction
	// Carried is the set of the paddle's positions that carry an end on this pass.
	Carried Positions
	// Mirrored says that the ends lie in the lease from the highest position to the lowest, foot to tip.
	Mirrored bool
	// First and Last are the lowest and the highest end number that the pass lays, counted over the
	// whole warp from 1.
	First, Last int
	// Spares is how many of the ends, the last ones, are beyond the number asked for.
	Spares int
	// SetUp is the set-up of the paddle, counted from 1; 0 in a plain warp.
	SetUp int
	// FirstOpening is the opening that goes over the first lease peg that the group meets; the other
	// opening goes over the second.
	FirstOpening Opening
	// TurnAfter is the way round the end peg after the pass. After the last pass of a chain the group
	// goes round the peg in the same way, so that its loop is as long as the others, and is fastened.
	TurnAfter Turn
	// Twist is the net twist in the group behind the paddle once it has turned: half a turn after an
	// outward pass, nil after a return pass, since turns alternate and cancel.
	Twist HalfTurns
}

// Ends is how many ends the pass carries.
func (p Pass) Ends() int { return p.Carried.Count() }

// FirstPeg is the lease peg that the group meets first: A outward, B on the return.
func (p Pass) FirstPeg() LeasePeg {
	if p.Direction.Far() {
		return PegA
	}
	return PegB
}

// OpeningAt is the opening that the pass drops over a lease peg.
func (p Pass) OpeningAt(peg LeasePeg) Opening {
	if peg == p.FirstPeg() {
		return p.FirstOpening
	}
	return p.FirstOpening.Other()
}

// CrossOver is the peg of the counting cross, 1 or 2, that the group goes over: 1 outward, 2 on the
// return.
func (p Pass) CrossOver() int {
	if p.Direction.Far() {
		return 1
	}
	return 2
}

// CrossUnder is the peg of the counting cross, 1 or 2, that the group goes under.
func (p Pass) CrossUnder() int { return 3 - p.CrossOver() }

// PositionOf is the position of the paddle that carries an end of the warp on this pass, 0 if the
// pass doesn't lay that end.
func (p Pass) PositionOf(end int) int {
	if end < p.First || end > p.Last {
		return 0
	}
	n := end - p.First + 1
	if p.Mirrored {
		n = p.Ends() + 1 - n
	}
	return p.Carried.nth(n)
}

// EndAt is the number in the warp of the end that a position lays on this pass, 0 if the position
// carries none.
func (p Pass) EndAt(position int) int {
	if !p.Carried.Has(position) {
		return 0
	}
	n := p.Carried.rank(position)
	if p.Mirrored {
		n = p.Ends() + 1 - n
	}
	return p.First + n - 1
}

// OverA says whether the end in a position goes over lease peg A, and so under peg B.
func (p Pass) OverA(position int) bool {
	return IsHole(position) == (p.OpeningAt(PegA) == HolesUp)
}

// TipPosition is the position at the tip of the peg, that of its highest end; 0 if the pass carries nothing.
func (p Pass) TipPosition() int {
	if p.Mirrored {
		return p.Carried.First()
	}
	return p.Carried.Last()
}

// EndPeg is the end peg that the group comes to.
func (p Pass) EndPeg() EndPeg { return EndPegAfter(p.Number) }

// Way puts what the group meets on the pass into words, in the order in which it meets it: the openings at the lease
// pegs, the counting cross, the turn round the end peg.
func (p Pass) Way() string {
	lease := fmt.Sprintf("%s over lease peg %s, then %s over peg %s", p.FirstOpening, p.FirstPeg(),
		p.FirstOpening.Other(), p.FirstPeg().Other())
	cross := fmt.Sprintf("over peg %d and under peg %d of the counting cross", p.CrossOver(), p.CrossUnder())
	if !p.Direction.Far() {
		lease, cross = cross, lease
	}
	return fmt.Sprintf("%s; %s; round the %s %s", lease, cross, p.EndPeg(), p.TurnAfter)
}
