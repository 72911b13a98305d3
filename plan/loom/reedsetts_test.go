package loom

import (
	"slices"
	"strings"
	"testing"

	"millside/plan/internal/measuretest"
	"millside/plan/measure"
)

// What reeds give near 18 an inch, against the rows of a printed chart: 12 dents give 15 with 1-1-1-2, 16 with 1-1-2,
// 18 with 1-2 and 20 with 1-2-2, 10 dents 17 (16.67) with 1-2-2, 17.5 with 1-2-2-2 and 20 with 2 (House of Wool, "Reed
// substitution guide", web page). The widths are 180 ends over each sett, by hand.
func TestSettsOfReeds(t *testing.T) {
	var reeds []Reed
	for _, text := range []string{"1 a cm", "5 dents an inch", "10 dents an inch", "12 dents an inch"} {
		reeds = append(reeds, reed(t, text))
	}
	reeds[2] = reeds[2].WithWidth(10 * measure.Inch)
	want := map[string]string{
		"12 dents an inch": "15 an inch -16.7 % 12 in 1-1-1-2; 16 an inch -11.1 % 11.3 in 1-1-2; " +
			"18 an inch as asked 10 in 1-2; 20 an inch +11.1 % 9 in 1-2-2; 21 an inch +16.7 % 8.6 in 1-2-2-2",
		"10 dents an inch": "16.67 an inch -7.4 % 10.8 in 1-2-2, too wide; " +
			"17.5 an inch -2.8 % 10.3 in 1-2-2-2, too wide; 18 an inch as asked 10 in 1-2-2-2-2; " +
			"20 an inch +11.1 % 9 in 2; 22.5 an inch +25 % 8 in 2-2-2-3",
	}
	list := SettsOf(reeds, measuretest.Sett(t, "18 an inch"), 180)
	if len(list) != len(reeds) || list[0].Reed != reeds[3] {
		t.Fatalf("%d reeds, %s first", len(list), list[0].Reed)
	}
	for _, r := range list {
		var lines []string
		near := 0
		for _, g := range r.Setts {
			var cells []string
			for _, c := range g.Cells(measure.Imperial) {
				cells = append(cells, c.String())
			}
			lines = append(lines, strings.Join(cells, " "))
			if g.Nearest {
				near++
			}
		}
		if w := want[r.Reed.String()]; len(w) > 60 && strings.Join(lines, "; ") != w {
			t.Errorf("%s: %s; want %s", r.Reed, strings.Join(lines, "; "), w)
		}
		if near != 1 || !slices.IsSortedFunc(r.Setts, func(a, b GivenSett) int {
			return a.Gives.PerNanometre().Cmp(b.Gives.PerNanometre())
		}) {
			t.Errorf("%s: %d are the nearest of %v", r.Reed, near, lines)
		}
	}
	far := SettsOf([]Reed{reed(t, "15 dents an inch")}, measuretest.Sett(t, "1 an inch"), 0)
	if len(far) != 1 || len(far[0].Setts) != 0 {
		t.Errorf("a reed that gives nothing near has %v", far)
	}
	if list := SettsOf(reeds, measure.Sett{}, 180); list != nil {
		t.Errorf("near no sett there are %v", list)
	}
	for _, r := range SettsOf(reeds[:1], measuretest.Sett(t, "18 an inch"), 0) {
		for _, g := range r.Setts {
			if g.Width != 0 || !g.Fits || g.Cells(measure.Imperial)[2].String() != "" {
				t.Errorf("without ends %s is %s wide", g, g.Width)
			}
		}
	}
}
