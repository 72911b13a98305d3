package athand

import (
	"testing"

	"millside/plan/internal/loomtest"
	"millside/plan/internal/measuretest"
	"millside/plan/loom"
	"millside/plan/measure"
)

// The reed of the plan stands first, once, whether it is at hand or not, and reeds that are alike are one.
func TestSettsOf(t *testing.T) {
	ten, twelve := loomtest.Reed(t, "10 dents an inch").WithWidth(measure.Yard), loomtest.Reed(t, "12 dents an inch")
	hand := []NamedReed{{"old", twelve}, {"ten", ten}, {"new", twelve}}
	for _, c := range []struct {
		planned loom.Reed
		want    []string
	}{
		{loom.Reed{}, []string{"old, new", "ten"}},
		{ten, []string{"ten, this plan's", "old, new"}},
		{loomtest.Reed(t, "10 dents an inch"), []string{"10 dents an inch, this plan's", "old, new", "ten"}},
		{loomtest.Reed(t, "8 dents an inch"), []string{"8 dents an inch, this plan's", "old, new", "ten"}},
	} {
		list := SettsOf(hand, c.planned, measuretest.Sett(t, "18 an inch"), 0)
		if len(list) != len(c.want) {
			t.Fatalf("%s: %d reeds", c.planned, len(list))
		}
		for i, r := range list {
			if r.Title() != c.want[i] || len(r.Setts) == 0 {
				t.Errorf("%s: %s with %d setts; want %s", c.planned, r.Title(), len(r.Setts), c.want[i])
			}
		}
	}
	if hand[0].Name != "old" {
		t.Errorf("the list of what is at hand is changed: %v", hand)
	}
}
