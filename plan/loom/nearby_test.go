package loom

import (
	"strings"
	"testing"

	"millside/plan/internal/measuretest"
)

// TestNearbySetts holds the setts beside the wanted one against the rows of a printed chart: 12 dents give 12 with 1,
// 15 with 1-1-1-2, 16 with 1-1-2, 18 with 1-2, 20 with 1-2-2; 10 dents 15 with 1-2 and 17 (16.67) with 1-2-2; 8 dents 8
// with 1, 10 with 1-1-1-2 and 12 with 1-2 (House of Wool, "Reed substitution guide", web page; it rounds to the nearest
// half). Where an order begins doesn't matter.
func TestNearbySetts(t *testing.T) {
	for _, c := range []struct{ reed, wanted, want string }{
		{"12 dents an inch", "16 an inch", "12 an inch with 1, 15 an inch with 1-1-1-2, 18 an inch with 1-2, " +
			"20 an inch with 1-2-2"},
		// Worked by hand: 7/4 is 21, 25 % more is 25, 9/4 is 27, so beside 20 stand 16, 18, 21 and 24.
		{"12 dents an inch", "20 an inch", "16 an inch with 1-1-2, 18 an inch with 1-2, 21 an inch with 1-2-2-2, " +
			"24 an inch with 2"},
		// No order of four dents gives 12 in 10 dents; what gives 12 itself is in use and not named again.
		{"10 dents an inch", "12 an inch", "10 an inch with 1, 12.5 an inch with 1-1-1-2, " +
			"13.33 an inch with 1-1-2"},
		{"8 dents an inch", "10 an inch", "8 an inch with 1, 10.67 an inch with 1-1-2, 12 an inch with 1-2"},
		{"40 in 10 cm", "80 in 10 cm", "66.67 in 10 cm with 1-2-2, 70 in 10 cm with 1-2-2-2, " +
			"90 in 10 cm with 2-2-2-3, 93.33 in 10 cm with 2-2-3"},
	} {
		r, sett := reed(t, c.reed), measuretest.Sett(t, c.wanted)
		o, err := r.Order(sett, longestOrder)
		if err != nil {
			t.Fatal(err)
		}
		row, ok := r.NearbyRow(sett, o)
		if got := row.Value.String(); !ok || got != c.want {
			t.Errorf("%s near %s: %s; want %s", c.reed, c.wanted, got, c.want)
		}
		if o.Exact && strings.Contains(row.Value.String(), " "+o.String()+",") {
			t.Errorf("%s names the order in use again: %s", c.reed, row.Value)
		}
	}
	if row, ok := (Reed{}).NearbyRow(measuretest.Sett(t, "16 an inch"), SleyOrder{}); ok {
		t.Errorf("the zero reed gives %v", row)
	}
}
