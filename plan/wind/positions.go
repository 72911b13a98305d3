package wind

import (
	"fmt"
	"iter"
	"math/bits"
	"strings"

	"millside/plan/measure"
)

// Positions is a set of positions of the paddle, 1 to [measure.MaxPositions]. The zero value is the empty set.
// Position 1 is the one nearest the winder's thumb.
type Positions uint64

// FirstPositions is the set 1 to n; n is held to 0 to MaxPositions.
func FirstPositions(n int) Positions {
	n = min(max(n, 0), measure.MaxPositions)
	return Positions(1)<<n - 1
}

// Span is the set of neighbouring positions from one to another, both held to 1 to MaxPositions; it is
// empty where to lies below from.
func Span(from, to int) Positions { return FirstPositions(to).Without(FirstPositions(from - 1)) }

// OnePosition is the set of one position, 1 to MaxPositions.
func OnePosition(position int) Positions { return 1 << (position - 1) }

// Count is how many positions are in the set.
func (p Positions) Count() int { return bits.OnesCount64(uint64(p)) }

// Has says whether a position is in the set.
func (p Positions) Has(position int) bool {
	return position >= 1 && position <= measure.MaxPositions && p&(1<<(position-1)) != 0
}

// Without is the set less the positions of another.
func (p Positions) Without(q Positions) Positions { return p &^ q }

// All goes through the positions from 1 upwards.
func (p Positions) All() iter.Seq[int] {
	return func(yield func(int) bool) {
		for rest := uint64(p); rest != 0; rest &= rest - 1 {
			if !yield(bits.TrailingZeros64(rest) + 1) {
				return
			}
		}
	}
}

// First is the lowest position in the set, 0 in an empty one.
func (p Positions) First() int {
	if p == 0 {
		return 0
	}
	return bits.TrailingZeros64(uint64(p)) + 1
}

// Last is the highest position in the set, 0 in an empty one.
func (p Positions) Last() int { return 64 - bits.LeadingZeros64(uint64(p)) }

// rank is how many positions of the set are at or below a position.
func (p Positions) rank(position int) int {
	return (p & FirstPositions(position)).Count()
}

// nth is the n-th position of the set, counted from 1.
func (p Positions) nth(n int) int {
	for pos := range p.All() {
		if n--; n == 0 {
			return pos
		}
	}
	return 0
}

// String lists the positions, runs drawn together: "1 to 6, 9".
func (p Positions) String() string {
	var parts []string
	for pos := 1; pos <= p.Last(); pos++ {
		if !p.Has(pos) {
			continue
		}
		from := pos
		for p.Has(pos + 1) {
			pos++
		}
		switch {
		case from == pos:
			parts = append(parts, fmt.Sprint(from))
		case from+1 == pos:
			parts = append(parts, fmt.Sprintf("%d, %d", from, pos))
		default:
			parts = append(parts, fmt.Sprintf("%d to %d", from, pos))
		}
	}
	return strings.Join(parts, ", ")
}

// Alternate says whether holes and slots take turns in the set, from the lowest position to the
// highest, so that one opening lifts every other end.
func (p Positions) Alternate() bool {
	before := 0
	for pos := range p.All() {
		if before != 0 && IsHole(before) == IsHole(pos) {
			return false
		}
		before = pos
	}
	return true
}

// IsHole says whether a position is a hole: odd positions are.
func IsHole(position int) bool { return position%2 == 1 }

// PositionsText names positions: "position 3", "positions 1 to 6, 9".
func PositionsText(p Positions) string {
	if p.Count() == 1 {
		return "position " + p.String()
	}
	return "positions " + p.String()
}
