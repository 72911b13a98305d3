package schedule_test

import (
	"testing"
	"time"

	"millside/plan/stripe/schedule"
)

// The group of each colour is ranked as that of a plain warp is. By hand: 84 ends in groups of 6 take 14 passes, which
// end at the lease without a flick or a cut; 8 and a last pass of 4 take 11 and finish at the counting cross. Of the
// groups for 21 ends, 7 and 3 take an odd number of passes; 6, 6, 6 and 3 take 4, which end at the lease without
// flicks, and 3 ends are cut before the last pass. 5 ends as 3 and 2 have 1 end cut, as 4 and 1 have 3.
func TestGroupOfEachColourIsThatOfLeastTrouble(t *testing.T) {
	times := schedule.Times{Pass: time.Minute, Halt: 30 * time.Second, Cut: 10 * time.Second, Tie: 20 * time.Second,
		Thread: 20 * time.Second, Far: 3 * time.Minute}
	for _, s := range []struct {
		ends, positions, group, passes int
		atLease                        bool
	}{
		{84, 8, 6, 14, true},
		{48, 8, 8, 6, true},
		{21, 8, 6, 4, true},
		{5, 4, 3, 2, true},
	} {
		ends := make([]int, s.ends)
		for i := range ends {
			ends[i] = 1
		}
		got, err := schedule.ByColour(ends, schedule.Limits{Positions: s.positions}, times)
		if err != nil {
			t.Fatal(err)
		}
		c := got.Chain[0]
		if c.Group != s.group || c.Sum.Passes != s.passes || c.Sum.Far == s.atLease {
			t.Errorf("%d ends: groups of %d, %d passes, far %v; want %d, %d", s.ends, c.Group, c.Sum.Passes, c.Sum.Far,
				s.group, s.passes)
		}
	}
}
