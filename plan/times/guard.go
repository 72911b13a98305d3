package times

import (
	"encoding/json"
	"fmt"
	"math"
	"time"

	"millside/plan/field"
	"millside/plan/figure"
)

// Guard is the shortest time between two passes that are counted: whole milliseconds from 0, which turns the guard
// off, to a minute.
type Guard time.Duration

// Duration is the guard as the standard library counts time.
func (g Guard) Duration() time.Duration { return time.Duration(g) }

// String writes the guard as the standard library does: "1.5s".
func (g Guard) String() string { return figure.Signed(g.Duration().String()) }

// Check refuses a guard that is out of its range, or has a part of a millisecond, which a record can't keep.
func (g Guard) Check() error {
	if g.Duration()%time.Millisecond != 0 {
		return field.Guard.Wrong(g.String(), "whole thousandths of a second")
	}
	return field.Guard.CheckTime(g.Duration())
}

// MarshalJSON writes whole milliseconds, as records have held them from the first. What is no whole number of them
// is an error: nothing is rounded.
func (g Guard) MarshalJSON() ([]byte, error) {
	if g.Duration()%time.Millisecond != 0 {
		return nil, fmt.Errorf("guard %s is no whole number of milliseconds", g)
	}
	return json.Marshal(g.Duration().Milliseconds())
}

// UnmarshalJSON reads a whole number of milliseconds. What no duration can hold is an error.
func (g *Guard) UnmarshalJSON(text []byte) error {
	var ms int64
	if err := json.Unmarshal(text, &ms); err != nil {
		return fmt.Errorf("guard: %w", err)
	}
	if most := int64(math.MaxInt64 / time.Millisecond); ms > most || ms < -most {
		return fmt.Errorf("guard: %d ms is more than can be counted", ms)
	}
	*g = Guard(time.Duration(ms) * time.Millisecond)
	return nil
}
