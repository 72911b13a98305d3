package plan

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

// mirrored says whether the ends of a pass in a direction lie from the highest position to the lowest,
// foot to tip.
func (s Spec) mirrored(d Direction) bool {
	return (s.Foot == FootLast) != (d == Return && s.ReturnOrder == MirroredOrder)
}

// FootPosition is the position that lies at the foot of the peg on the pass: that of its lowest end. It
// is 0 if the pass carries nothing.
func (p Pass) FootPosition() int { return p.firstPosition() }

// WithFoot is the spec with the other end of the paddle at the foot. The stripes stay as they are: the
// schedules are turned round with the paddle.
func (s Spec) WithFoot(foot FootPosition) Spec {
	if s.Foot == foot {
		return s
	}
	s.Foot = foot
	s.Schedule, s.Other = s.Schedule.reflected(), s.Other.reflected()
	return s
}

// reflected is the schedule with the paddle turned round: what was in the lowest position is in the
// highest one that is used, and so on. Nil stays nil.
func (s *Schedule) reflected() *Schedule {
	if s == nil {
		return nil
	}
	used := 0
	for _, set := range s.SetUps {
		used = max(used, set.Threaded().Last())
	}
	r := &Schedule{Colours: s.Colours, Note: s.Note}
	for _, set := range s.SetUps {
		turned := make(SetUp, max(len(set), used))
		for i, colour := range set {
			if colour != 0 {
				turned[used-1-i] = colour
			}
		}
		r.SetUps = append(r.SetUps, turned)
	}
	for _, p := range s.Passes {
		var carried Positions
		for pos := range p.Carried.All() {
			carried |= onePosition(used + 1 - pos)
		}
		r.Passes = append(r.Passes, ScheduledPass{Carried: carried, SetUp: p.SetUp})
	}
	return r
}
