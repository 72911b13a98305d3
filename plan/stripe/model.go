package stripe

import (
	"fmt"
	"time"

	"millside/plan"
	"millside/plan/measure"
)

// Weights says how long each kind of work takes. They are what the schedule is judged by; all are 0 or
// more and at most an hour. Whole nanoseconds, so that sums are exact.
type Weights struct {
	// Pass is one pass.
	Pass time.Duration
	// Change is one cone: to cut off what is in a position, if anything, to tie in the new colour and
	// to thread it. The first threading of the paddle counts as well.
	Change time.Duration
	// Stop is what it takes to halt for changes, however many, after the first pass has begun.
	Stop time.Duration
	// Short is the trouble of a pass that carries fewer ends than the largest group: parked ends have
	// to be kept out of the way and picked up again.
	Short time.Duration
	// AtCross is the trouble of a last pass that ends at the counting cross.
	AtCross time.Duration
	// Back is what a pass takes on top where all passes go outward: the empty way back, and the group
	// cut and tied on again. It counts in one-direction winding only.
	Back time.Duration
}

// DefaultWeights is a practised hand: a pass takes 36 seconds (facts.md, "The hand warping mill": 40
// passes in 20 to 25 minutes are 30 to 37.5 seconds each; common practice, no source). A change takes
// a minute and a half, a stop a minute, the way back a minute: common practice, no source. A short
// pass and an end at the counting cross cost half a pass and one and a half.
func DefaultWeights() Weights {
	return Weights{
		Pass: 36 * time.Second, Change: 90 * time.Second, Stop: time.Minute,
		Short: 18 * time.Second, AtCross: 54 * time.Second, Back: time.Minute,
	}
}

// check reports the first weight that is out of its range.
func (w Weights) check() error {
	for _, f := range []struct {
		field string
		v     time.Duration
	}{
		{"time for a pass", w.Pass}, {"time for a change", w.Change}, {"time for a stop", w.Stop},
		{"time for a short pass", w.Short}, {"time for an end at the counting cross", w.AtCross}, {"time for the way back", w.Back},
	} {
		if f.v < 0 || f.v > time.Hour {
			return &measure.FieldError{Field: f.field, Value: f.v.String(), Want: "nil to one hour"}
		}
	}
	return nil
}

// Limits is what the schedule must keep to.
//
// # The model
//
// The winding is cut into stretches by stops. In a stretch the set-up, which is the colour in each
// position of the paddle, or none, stays as it is. A pass carries neighbouring positions, one or more,
// and lays as many neighbouring ends of the warp: on an outward pass, and on a return pass in the same
// order, the lowest position lays the lowest end; on a mirrored return pass the highest does. The
// colours of the carried positions must be those of the ends. The other positions are parked: they
// stay threaded and keep their colours, to any later pass. Since the carried positions are neighbours,
// holes and slots alternate in every pass, and so the lease can alternate in the whole warp.
//
// Between two stretches any position may be given another colour, a parked one too, for a later pass.
// The cost is the sum, by [Weights], of every pass; every short pass; every position that gets a
// colour that it did not have in the set-up before (in the first set-up, every position threaded);
// every stop; and an end at the counting cross. To empty a position is free, and makes sense only
// where packages are short: at no time may more positions have a colour than there are packages of it.
//
// That the carried positions are neighbours is part of the model: a set such as 1, 4, 5 would keep
// the lease as well, but it would lead parked ends through the midst of those that are laid.
type Limits struct {
	// Positions is the number of positions in the paddle, 1 to measure.MaxPositions.
	Positions int
	// Sizes lists the numbers of ends that a pass may carry, each 1 to Positions; none means any.
	Sizes []int
	// Packages is how many packages of each colour are at hand, that of colour 1 first; 0, or a list
	// that is too short, means as many as are wanted.
	Packages []int
	// ReturnOrder is the order in which return passes lie in the lease.
	ReturnOrder plan.ReturnOrder
	// FinishAtLease asks for an even number of passes.
	FinishAtLease bool
	// OneDirection makes every pass an outward one. FinishAtLease means nothing then.
	OneDirection bool
	// Effort is how long the search may try, as a multiple of the usual, 1 to 100; 0 is the usual.
	// The result depends on it, but never on the speed of the machine.
	Effort int
}

// check reports the first limit that is out of its range for a warp of these ends, and gives the
// number of colours.
func (l Limits) check(ends []int) (int, error) {
	if len(ends) < 1 || len(ends) > measure.MaxEnds {
		return 0, wrong("ends", len(ends), fmt.Sprintf("1 to %d", measure.MaxEnds))
	}
	if l.Positions < 1 || l.Positions > measure.MaxPositions {
		return 0, wrong("paddle positions", l.Positions, fmt.Sprintf("1 to %d", measure.MaxPositions))
	}
	for _, s := range l.Sizes {
		if s < 1 || s > l.Positions {
			return 0, wrong("group sizes", s, fmt.Sprintf("1 to %d (the positions of the paddle)", l.Positions))
		}
	}
	for _, n := range l.Packages {
		if n < 0 {
			return 0, wrong("packages", n, "0 (enough) or more")
		}
	}
	if l.ReturnOrder > plan.MirroredOrder {
		return 0, wrong("return order", int(l.ReturnOrder), "0 to 1")
	}
	if l.Effort < 0 || l.Effort > 100 {
		return 0, wrong("effort", l.Effort, "0 to 100")
	}
	colours := 0
	for i, c := range ends {
		if c < 1 || c > MaxColours {
			return 0, wrong(fmt.Sprintf("colour of end %d", i+1), c, fmt.Sprintf("1 to %d", MaxColours))
		}
		colours = max(colours, c)
	}
	return colours, nil
}

// Cost is what a schedule costs, by kinds.
type Cost struct {
	// Passes is the number of passes, Short how many of them carry fewer ends than the largest group.
	Passes, Short int
	// Threaded is how many positions the first set-up threads, Changes how many positions get another
	// colour later, and Stops how often the winding halts for that.
	Threaded, Changes, Stops int
	// Finish is where the last pass ends.
	Finish plan.Finish
	// OneDirection says that every pass is an outward one.
	OneDirection bool
}

// Total is the cost in time.
func (c Cost) Total(w Weights) time.Duration {
	t := time.Duration(c.Passes)*w.Pass + time.Duration(c.Short)*w.Short +
		time.Duration(c.Threaded+c.Changes)*w.Change + time.Duration(c.Stops)*w.Stop
	switch {
	case c.OneDirection:
		t += time.Duration(c.Passes) * w.Back
	case c.Finish == plan.AtCountingCross:
		t += w.AtCross
	}
	return t
}
