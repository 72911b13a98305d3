package plan

import (
	"millside/plan/field"
	"millside/plan/loom"
	"millside/plan/measure"
)

// WrittenFrom is the side of the warp from which an order of stripes is written, seen by the weaver at the
// loom. In print most colour orders run from right to left, as threading drafts do.
type WrittenFrom uint8

// The ways to write an order.
const (
	FromEndOne   WrittenFrom = iota // from end 1 to the last, whichever side that is on
	FromTheLeft                     // from left to right
	FromTheRight                    // from right to left
)

// String gives "end 1", "left" or "right".
func (f WrittenFrom) String() string { return measure.OneOf(int(f), field.StripesFrom.Words...) }

// MarshalText writes the name.
func (f WrittenFrom) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// UnmarshalText reads "end 1", "left" or "right".
func (f *WrittenFrom) UnmarshalText(b []byte) error {
	i, err := measure.WhichOf(string(b), field.StripesFrom.Words...)
	*f = WrittenFrom(i)
	return err
}

// StripesTurned says whether the stripes, as they are written, run from the last end to end 1.
func (s Spec) StripesTurned() bool {
	return s.StripesFrom != FromEndOne && (s.StripesFrom == FromTheRight) != (s.Loom.FirstEnd == loom.RightSide)
}

// StripesText is the stripes with the side that they are written from, where that isn't end 1, and what was made of
// them for the ends that are wanted.
func (s Spec) StripesText() string {
	text := s.Stripes
	if s.StripesFrom != FromEndOne && text != "" {
		text += ", written from the " + s.StripesFrom.String()
	}
	if laid := s.Asked.Laid.Text(); laid != "" && text != "" {
		text += "; " + laid
	}
	return text
}
