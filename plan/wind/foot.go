package wind

import (
	"millside/plan/measure"
)

// FootPosition says which end of the paddle lies at the foot of the peg on an outward pass. End 1 of the
// warp is the foot of the first group, so it decides the number of every end. That neighbours lie on
// different sides of the lease doesn't depend on it as long as all groups are even, or all odd.
type FootPosition uint8

// The two ways.
const (
	FootFirst FootPosition = iota // the lowest position that is carried
	FootLast                      // the highest position that is carried
)

// String gives "first" or "last".
func (f FootPosition) String() string { return measure.OneOf(int(f), "first", "last") }

// Other is the other way.
func (f FootPosition) Other() FootPosition { return 1 - f }

// MarshalText writes the name.
func (f FootPosition) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// UnmarshalText reads "first" or "last".
func (f *FootPosition) UnmarshalText(b []byte) error {
	i, err := measure.WhichOf(string(b), "first", "last")
	*f = FootPosition(i)
	return err
}

// FootPosition is the position that lies at the foot of the peg on the pass: that of its lowest end. It
// is 0 if the pass carries nothing.
func (p Pass) FootPosition() int {
	if p.Mirrored {
		return p.Carried.Last()
	}
	return p.Carried.First()
}
