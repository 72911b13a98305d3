package counter_test

import (
	"millside/counter"
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
		events := []counter.Event{{At: wrong, Kind: counter.Laid, Chain: 1, Pass: 1}, laid(1, 2), laid(1, 3),
			{At: wrong.Add(time.Hour), Kind: counter.Laid, Chain: 1, Pass: 4}}
		s, err := Fold(p, events)
		if err != nil {
			t.Fatal(err)
		}
		if got := counter.PaceOverall(slices.Values(events)); got.Passes != 1 || got.PerPass != time.Second {
			t.Errorf("%d: %+v", year, got)
		}
		for _, row := range counter.HandOver(s, slices.Values(events)).Rows {
			if strings.Contains(row.Name, "first to last") {
				t.Errorf("%d: %s: %v", year, row.Name, row.Value)
			}
		}
	}
}
