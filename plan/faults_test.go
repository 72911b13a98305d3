package plan

import (
	"millside/plan/wind"
	"testing"
)

// New carries neighbouring positions only, so a lease fault can't come from it yet; chooseOpenings must
// find one all the same, since a set-up may leave out positions. This is why the test stands inside.
func TestLeaseFaultsAreFound(t *testing.T) {
	holes := wind.Positions(0b101) // positions 1 and 3, both holes
	chains := []Chain{{Number: 1, First: 1, Last: 5, Passes: []wind.Pass{
		{Number: 1, Direction: wind.Outward, Carried: wind.FirstPositions(3), First: 1, Last: 3},
		{Number: 2, Direction: wind.Return, Carried: holes, Mirrored: true, First: 4, Last: 5},
	}}}
	faults := chooseOpenings(chains)
	if len(faults) != 1 {
		t.Fatalf("%d faults: %v", len(faults), faults)
	}
	want := LeaseFault{Chain: 1, Pass: 2, End: 5, Why: "positions 1 and 3 are both holes, so one opening lifts both"}
	if faults[0] != want {
		t.Errorf("got  %+v\nwant %+v", faults[0], want)
	}
	// What can be right is right: end 3 lies over A (a hole, as end 1), so end 4 lies over B.
	if chains[0].Passes[1].OverA(3) {
		t.Error("ends 3 and 4 lie over the same peg")
	}
	if got := kindOf(4); got != "slots" {
		t.Errorf("position 4 is one of the %s", got)
	}
}

// A value outside a small list is shown as a number, so that a message never hides it.
func TestUnknownWordsAreShownAsNumbers(t *testing.T) {
	if got := wind.Hand(7).String(); got != "7" {
		t.Errorf("hand 7 is shown as %q", got)
	}
}
