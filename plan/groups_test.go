package plan

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"millside/plan/internal/measuretest"
	"millside/plan/measure"

	"pgregory.net/rapid"
)

func TestGroupTable(t *testing.T) {
	rows, err := GroupTable(GroupAsk{Ends: 400, Positions: 12, Sett: measuretest.Sett(t, "20 an inch"), RaddleSpace: measure.Inch, Time: func(w WorkSum) TimeSpan { return planOf(t, sevenYards()).TimeOf(w, Pace{}) }})
	if err != nil {
		t.Fatal(err)
	}
	// 400 ends in groups of ten are 40 passes, 20 bouts, 20 to 25 minutes; two groups make an inch of
	// raddle (common practice, no source). It ranks first: 12 has a short pass and is cut by the raddle.
	first := rows[0]
	if first.Group != 10 || first.Passes != 40 || first.Raddle != RaddleFills || !first.EvenLease || first.Time.Middle-first.Time.AtPegs < 20*time.Minute || first.Time.Middle-first.Time.AtPegs > 25*time.Minute || first.Packages != 10 || first.Finish != AtLease {
		t.Errorf("first: %+v", first)
	}
	if !slices.ContainsFunc(first.Reasons, func(s string) bool { return strings.Contains(s, "2 groups fill a section") }) {
		t.Errorf("reasons: %q", first.Reasons)
	}
	// Trade silk: 4,992 ends = 96 bobbins x 52 passes (humphriesweaving.co.uk). A paddle has at most 60
	// positions: half of it is 104 passes of 48.
	rows, err = GroupTable(GroupAsk{Ends: 4992, Positions: 48})
	if err != nil || rows[0].Group != 48 || rows[0].Passes != 104 || rows[0].Kind != Divides {
		t.Errorf("trade silk: %+v, %v", rows[0], err)
	}
	// A hand paddle and fewer cones than positions.
	rows, err = GroupTable(GroupAsk{Ends: 100, Positions: 12, Packages: 7})
	if err != nil || len(rows) != 3+2*3 { // 2, 4, 5 divide 100; 3, 6 and 7 don't
		t.Errorf("%d rows, %v", len(rows), err)
	}
	for _, r := range rows {
		if r.Group > 7 {
			t.Errorf("a group of %d with 7 packages", r.Group)
		}
	}
	if rows, err = GroupTable(GroupAsk{Ends: 10, Positions: 1}); err != nil || len(rows) != 1 || rows[0].Group != 1 {
		t.Errorf("a paddle of one position: %+v, %v", rows, err)
	}
}

func TestPassesOfGroups(t *testing.T) {
	for _, c := range []struct {
		ends, group, passes int
		because             string
	}{
		{500, 10, 50, "common practice, no source"},
		{440, 40, 11, "cuponthebus, Arithmetic, web log 2018: 40 spools, each once a section"},
		{2000, 40, 50, "25 bouts of 40 bobbins; arithmetic, from memory"},
	} {
		rows, err := GroupTable(GroupAsk{Ends: c.ends, Positions: c.group})
		if err != nil {
			t.Fatal(err)
		}
		i := slices.IndexFunc(rows, func(r GroupRow) bool { return r.Group == c.group })
		if i < 0 || rows[i].Passes != c.passes || rows[i].Kind != Divides {
			t.Errorf("%d ends in groups of %d: %+v, want %d passes (%s)", c.ends, c.group, rows[i], c.passes, c.because)
		}
	}
}

func TestRaddleFitOfGroups(t *testing.T) {
	for _, c := range []struct {
		group int
		want  RaddleFit
	}{{5, RaddleFills}, {10, RaddleFills}, {20, RaddleFills}, {40, RaddleFills}, {15, RaddleRhythm}, {7, RaddleCuts}} {
		r := GroupRow{Group: c.group}
		GroupAsk{Sett: measuretest.Sett(t, "20 an inch"), RaddleSpace: measure.Inch}.rateRaddle(&r)
		if r.Raddle != c.want || len(r.Reasons) != 1 {
			t.Errorf("a group of %d: %+v, want %v", c.group, r, c.want)
		}
	}
}

func TestGroupRowsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := GroupAsk{Ends: rapid.IntRange(1, 600).Draw(t, "ends"), Positions: rapid.IntRange(1, 24).Draw(t, "positions"),
			Packages: rapid.IntRange(0, 24).Draw(t, "packages"), ReturnOrder: ReturnOrder(rapid.IntRange(0, 1).Draw(t, "order")),
			ChainEnds: rapid.SampledFrom([]int{0, 30, 200}).Draw(t, "chain")}
		rows, err := GroupTable(a)
		if err != nil || len(rows) == 0 {
			t.Fatalf("%v, %v", rows, err)
		}
		for i, r := range rows {
			if i > 0 && r.Cost < rows[i-1].Cost {
				t.Fatalf("row %d costs %d after %d", i, r.Cost, rows[i-1].Cost)
			}
			if wound := (r.Passes-1)*r.Group + r.LastEnds; wound != a.Ends+r.Spares || r.LastEnds < 1 || r.LastEnds > r.Group {
				t.Fatalf("%+v winds %d of %d", r, wound, a.Ends)
			}
			checkRowAgainstPlan(t, a, r)
		}
	})
}

// checkRowAgainstPlan compares a row with the plan that it describes.
func checkRowAgainstPlan(t *rapid.T, a GroupAsk, r GroupRow) {
	s := DefaultSpec()
	s.Ends, s.Group, s.Positions, s.ReturnOrder = a.Ends, r.Group, a.Positions, a.ReturnOrder
	if r.Kind == SpareEnds {
		s.LastPass = FullLast
	}
	p, err := New(s)
	if err != nil {
		t.Fatal(err)
	}
	if p.Passes() != r.Passes || p.Spares() != r.Spares {
		t.Fatalf("%+v; the plan has %d passes, %d spares", r, p.Passes(), p.Spares())
	}
	if c := p.Chains[0]; len(c.Passes) > 3 && c.KeepsOpening(2) != r.EvenLease {
		t.Fatalf("%+v; the plan keeps its opening: %v", r, c.KeepsOpening(2))
	}
	if a.ChainEnds == 0 && (r.Chains != 1 || r.Finish != p.Chains[0].Finish()) {
		t.Fatalf("%+v; the plan stops %v", r, p.Chains[0].Finish())
	}
	// The table's cost is that of Choices and what the lease adds.
	for _, c := range Choices(a.Ends, r.Group, a.Positions) {
		if a.ChainEnds == 0 && c.Group == r.Group && c.Kind == r.Kind && (r.Cost < c.Cost || r.EvenLease && r.Cost != c.Cost) {
			t.Fatalf("%+v; the choice costs %d", r, c.Cost)
		}
	}
}

func TestGroupTableRefuses(t *testing.T) {
	if _, err := GroupTable(GroupAsk{}); len(measure.FieldErrors(err)) != 2 {
		t.Errorf("nothing given: %v", err)
	}
	bad := GroupAsk{Ends: math.MaxInt, Positions: 61, Packages: -1, ReturnOrder: 3, ChainEnds: -1, RaddleSpace: measure.Metre}
	if _, err := GroupTable(bad); len(measure.FieldErrors(err)) != 6 {
		t.Errorf("%d errors: %v", len(measure.FieldErrors(err)), err)
	}
}

func BenchmarkGroupTable(b *testing.B) {
	a := GroupAsk{Ends: 5000, Positions: 24, Sett: measuretest.Sett(b, "40 an inch"), RaddleSpace: measure.Inch / 2, ChainEnds: 600}
	for b.Loop() {
		if _, err := GroupTable(a); err != nil {
			b.Fatal(err)
		}
	}
}
