package stripe

import (
	"millside/plan"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// runsOf makes runs of ends, of colours in turn.
func stripesOf(lengths []int) []plan.EndRun {
	var runs []plan.EndRun
	next := 1
	for i, n := range lengths {
		runs = append(runs, plan.EndRun{First: next, Last: next + n - 1, Colour: 1 + i%3})
		next += n
	}
	return runs
}

func drawn(d StripeDrawing) string {
	var b strings.Builder
	for _, c := range d.Cells {
		b.WriteRune(rune('A' + c.Colour - 1))
	}
	return b.String()
}

func TestDrawStripes(t *testing.T) {
	for _, c := range []struct {
		lengths []int
		cells   int
		end     int
		want    string
		whole   bool
	}{
		{[]int{4, 2, 4}, 5, 1, "AABCC", true},
		{[]int{4, 2, 4}, 10, 1, "AAAABBCCCC", true},
		{[]int{1, 1, 1}, 6, 1, "AABBCC", true},
		// A stripe of one end among hundreds has its cell.
		{[]int{200, 1, 200}, 9, 1, "AAAABCCCC", true},
		{[]int{50, 1, 1, 1, 50}, 10, 1, "AAAABCABBB", true},
		// More stripes than cells: end for end, and the page in which the end lies.
		{[]int{1, 1, 1, 1, 1, 1, 1}, 3, 1, "ABC", false},
		{[]int{1, 1, 1, 1, 1, 1, 1}, 3, 5, "ABC", false},
		{[]int{1, 1, 1, 1, 1, 1, 1}, 3, 7, "A", false},
		{[]int{9, 1, 1, 1, 1}, 3, 1, "AAA", false},
		{[]int{9, 1, 1, 1, 1}, 3, 11, "BCA", false},
		{nil, 5, 1, "", false},
	} {
		d := DrawStripes(stripesOf(c.lengths), c.cells, c.end)
		if drawn(d) != c.want || d.Whole != c.whole {
			t.Errorf("%v in %d cells at end %d: %s, whole %v", c.lengths, c.cells, c.end, drawn(d), d.Whole)
		}
	}
}

// Whatever the stripes, each that is drawn has a cell in its place and no cell mixes two; the cells are
// as many as there is room for, and none is more than a cell away from its true width where all stripes
// are as wide as a cell.
func TestDrawnStripesDontAlias(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		runs := stripesOf(rapid.SliceOfN(rapid.IntRange(1, 30), 1, 60).Draw(t, "runs"))
		cells := rapid.IntRange(1, 90).Draw(t, "cells")
		total := runs[len(runs)-1].Last
		end := rapid.IntRange(1, total).Draw(t, "end")
		d := DrawStripes(runs, cells, end)
		if d.Whole != (len(runs) <= cells) || len(d.Cells) > cells || d.Whole && len(d.Cells) != cells {
			t.Fatalf("%d runs in %d of %d cells", len(runs), len(d.Cells), cells)
		}
		if end < d.First() || end > d.Last() {
			t.Fatalf("end %d isn't among %d to %d", end, d.First(), d.Last())
		}
		if c := d.Cells[d.CellOf(end)]; end < c.First || end > c.Last {
			t.Fatalf("end %d isn't in its cell %+v", end, c)
		}
		at, has := 0, map[int]int{}
		for _, c := range d.Cells {
			for runs[at].Last < c.First {
				at++
			}
			if runs[at].Colour != c.Colour || c.Last > runs[at].Last || c.First < runs[at].First {
				t.Fatalf("cell %+v isn't one of run %+v", c, runs[at])
			}
			has[at]++
		}
		wide := true
		for i, r := range runs {
			if r.First >= d.First() && r.Last <= d.Last() && has[i] == 0 {
				t.Fatalf("run %d has no cell", i)
			}
			wide = wide && r.Ends()*cells >= total
		}
		for i, r := range runs {
			if off := has[i]*total - r.Ends()*cells; wide && (off >= total || off <= -total) {
				t.Fatalf("run %d of %d ends has %d cells of %d, of %d ends", i, r.Ends(), has[i], cells, total)
			}
		}
	})
}
