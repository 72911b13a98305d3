package counter

import (
	"slices"
	"strings"
	"testing"
	"time"
)

// A clock that was never set, or that jumps, makes no absurd spans.
func TestClockThatIsWrong(t *testing.T) {
	p := testPlan(t, 40, 10, 0)
	for _, year := range []int{1, 1970, 1999, 2200, 9999} {
		wrong := time.Date(year, 1, 1, 0, 0, 0, 0, time.UTC)
		events := []Event{{At: wrong, Kind: Laid, Chain: 1, Pass: 1}, laid(1, 2), laid(1, 3), {At: wrong.Add(time.Hour), Kind: Laid, Chain: 1, Pass: 4}}
		s, err := Fold(p, events)
		if err != nil {
			t.Fatal(err)
		}
		if got := PaceOverall(slices.Values(events)); got.Passes != 1 || got.PerPass != time.Second {
			t.Errorf("%d: %+v", year, got)
		}
		for _, row := range HandOver(s, slices.Values(events)).Rows {
			if strings.Contains(row.Name, "first to last") {
				t.Errorf("%d: %s: %v", year, row.Name, row.Value)
			}
		}
	}
}
