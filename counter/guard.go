package counter

import "time"

// held is the gap between presses below which they are taken for one key held down: the repeat of a
// keyboard is faster. From memory, common practice: keyboards repeat 10 to 40 times a second.
const held = 400 * time.Millisecond

// Guard decides whether a press counts, so that a key that is held down or hit twice is counted once.
// It is a value and has no clock of its own. The zero Guard is turned off.
type Guard struct {
	shortest       time.Duration
	counted, press time.Time // the last press that counted, and the last of any kind; zero if none
}

// NewGuard makes a guard that wants the given time between two presses that count. Nothing or less
// turns it off.
func NewGuard(shortest time.Duration) Guard { return Guard{shortest: max(shortest, 0)} }

// Press says whether a press counts: if the shortest time has gone since the last press that counted,
// and 400 ms (or the shortest time, if that is less) since the last press of any kind. It gives the
// guard to use for the next press. Both times reached exactly are enough.
//
// A clock that was set back says nothing about the time that has gone; then the press counts, so that
// a winder is never kept waiting for longer than the shortest time.
func (g Guard) Press(now time.Time) (Guard, bool) {
	if !g.Allows(now) {
		return g.Refused(now), false
	}
	g.press, g.counted = now, now
	return g, true
}

// Allows says whether a press would count, and leaves the guard as it is.
func (g Guard) Allows(now time.Time) bool {
	return gone(g.counted, now, g.shortest) && gone(g.press, now, min(held, g.shortest))
}

// Refused tells the guard of a press that didn't count.
func (g Guard) Refused(now time.Time) Guard {
	g.press = now
	return g
}

// Counted tells the guard that something counted without a press, so that a press right after it is
// too fast.
func (g Guard) Counted(now time.Time) Guard {
	g.counted = now
	return g
}

// gone says whether a gap has gone between two times, or the first of them is unknown or still to come.
func gone(from, now time.Time, gap time.Duration) bool {
	return from.IsZero() || now.Before(from) || now.Sub(from) >= gap
}
