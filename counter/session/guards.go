package session

import (
	"time"

	"millside/counter"
)

// What a hand can't do faster: our own choice, no source.
const (
	// stepGap is the shortest time between two presses that are no passes: enough to tell a second press from a key
	// held down, also where the weaver has turned the guard of the passes off.
	stepGap = 600 * time.Millisecond
	// mostGap bounds what a guard set very high does to anything but passes.
	mostGap = 2 * time.Second
)

// guards keep presses that are too fast from doing anything.
type guards struct {
	pass  counter.Guard // between two passes
	after counter.Guard // from a pass, a mark or the like to a press of the pass key that counts none
	step  counter.Guard // between two presses of the pass key that count none
	next  counter.Guard // from anything that is no pass to a pass
	again counter.Guard // between two presses of one key that is not the pass key
	kind  string        // what that key asked for
	gap   time.Duration // of after, next and again
}

// newGuards makes the guards for presses by hand, or for what a program sends, which repeats nothing by itself: there
// the weaver's guard is all that counts.
func newGuards(shortest time.Duration, byHand bool) guards {
	step := stepGap
	if !byHand {
		step = min(step, shortest)
	}
	gap := min(max(shortest, step), mostGap)
	return guards{
		pass: counter.NewGuard(shortest), after: counter.NewGuard(gap), step: counter.NewGuard(step), gap: gap,
		next: counter.NewGuard(gap), again: counter.NewGuard(gap),
	}
}

// lay says whether a press of the pass key may count a pass.
func (g *guards) lay(at time.Time) bool {
	if !g.pass.Allows(at) || !g.next.Allows(at) {
		g.refused(at)
		return false
	}
	g.pass, _ = g.pass.Press(at)
	g.after, g.step, g.kind = g.after.Counted(at), g.step.Refused(at), ""
	return true
}

// confirm says whether a press of the pass key may do something that is no pass.
func (g *guards) confirm(at time.Time) bool {
	if !g.after.Allows(at) || !g.step.Allows(at) {
		g.refused(at)
		return false
	}
	g.step, _ = g.step.Press(at)
	g.pass, g.next = g.pass.Refused(at), g.next.Counted(at)
	return true
}

// refused notes a press of the pass key that did nothing.
func (g *guards) refused(at time.Time) {
	g.pass, g.step, g.next = g.pass.Refused(at), g.step.Refused(at), g.next.Refused(at)
}

// did notes that something was done that is no pass, so that the same key neither counts one nor confirms
// anything right after it.
func (g *guards) did(at time.Time) { g.next, g.after = g.next.Counted(at), g.after.Counted(at) }

// repeats says whether a key that is not the pass key was pressed again sooner than a hand means it.
func (g *guards) repeats(kind string, at time.Time) bool {
	if kind != g.kind {
		g.again, g.kind = counter.NewGuard(g.gap), kind
	}
	next, ok := g.again.Press(at)
	if g.again = next; ok {
		g.did(at)
	}
	return !ok
}
