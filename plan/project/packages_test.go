package project

import (
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/measure"
	"millside/plan/times"
)

// 200 ends, ten on a pass, are 20 passes. A package gives one end of 3 yd and 2 in at the pegs on each of them:
// and a tail of 18 in: 20 x 110 in + 18 in = 2218 in = 61.6 yd, counted by hand.
func TestPackagesAtHandAreHeldAgainstThePaddle(t *testing.T) {
	for _, c := range []struct {
		packages      int
		value, advice string
	}{
		{0, "", ""},
		{10, "10 at once, 10 at hand", ""},
		{12, "10 at once, 12 at hand", ""},
		{2, "10 at once, 2 at hand", "8 packages too few: wind more from those at hand, each with 61.6 yd for " +
			"20 passes; or carry 2 ends on a pass"},
		{9, "10 at once, 9 at hand", "1 package too few"},
	} {
		s := plan.DefaultSpec()
		s.Ends, s.Group, s.Length, s.Yarn.Packages = 200, 10, 3*measure.Yard, c.packages
		pr, err := New(s, times.Pace{})
		if err != nil {
			t.Fatal(err)
		}
		row, told := pr.PackagesRow()
		if told != (c.packages > 0) || row.Value.String() != c.value || !strings.HasPrefix(row.Warning, c.advice) ||
			(c.advice == "") != (row.Warning == "") {
			t.Errorf("%d packages: %v, %q, %q", c.packages, told, row.Value, row.Warning)
		}
	}
}
