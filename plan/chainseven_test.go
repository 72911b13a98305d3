package plan

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/measure"
)

// Own example, by hand: 614 ends at most 205 a chain. In fives, 205 is 41 passes: three chains of 41 passes, the last
// pass of 4. In tens, 205 holds 20 passes, and 62 passes take four chains of 15 or 16; the split that prefers the
// lease made 140, 160, 160 and 154 of them.
func TestEvenChains(t *testing.T) {
	for _, c := range []struct {
		group, most, count int
		want               []int
		why                string
	}{
		{5, 205, 0, []int{205, 205, 204}, "2 would take up to 309 ends in one, and at most 205 are asked for"},
		{10, 205, 0, []int{150, 150, 160, 154}, "3 would take up to 210 ends in one, and at most 205 are asked for"},
		{10, 0, 3, []int{200, 200, 214}, "3 chains, evenly in whole passes: so many were asked for"},
		{10, 210, 3, []int{200, 210, 204}, "so many were asked for"},
		{10, 0, 1, []int{614}, "1 chain, evenly"},
		{10, 700, 0, []int{614}, ""},
		{10, 0, 0, []int{614}, ""},
	} {
		parts, err := (ChainAsk{Ends: 614, Group: c.group, Most: c.most, Count: c.count, Even: true}).Split(nil)
		if err != nil {
			t.Fatal(err)
		}
		var got []int
		for _, p := range parts {
			got = append(got, p.Ends())
		}
		slices.Sort(got)
		slices.Sort(c.want)
		why := parts[0].Split
		if !slices.Equal(got, c.want) || !strings.Contains(why, c.why) || (c.why == "") != (why == "") {
			t.Errorf("groups of %d, at most %d, %d chains: %v, %q; want %v, %q", c.group, c.most, c.count, got,
				parts[0].Split, c.want, c.why)
		}
	}
}

func TestEvenChainsRefuse(t *testing.T) {
	for _, c := range []struct {
		ask  ChainAsk
		want string
	}{
		{ChainAsk{Ends: 614, Group: 10, Most: 205, Count: 3}, `4 or more: in whole passes, 3 take up to 210 ends` +
			` each, and at most 205 are asked for`},
		{ChainAsk{Ends: 50, Group: 10, Count: 6}, `at most 5, since a chain takes a whole pass`},
		{ChainAsk{Ends: 50, Group: 10, Count: -1}, "or 0 for as few as hold the ends"},
	} {
		c.ask.Even = true
		if _, err := c.ask.Split(nil); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%+v: %v, want %q", c.ask, err, c.want)
		}
	}
	s := DefaultSpec()
	s.ChainCount = 2
	if err := s.Check(); err == nil {
		t.Error("a number of chains without an even split is no error")
	}
}

// A repeat's end that is near is taken: 480 ends with a border of 10 and repeats of 110 end one at 230, near 240.
func TestEvenChainsKeepABoundary(t *testing.T) {
	parts, err := (ChainAsk{Ends: 480, Group: 10, Count: 2, Even: true, Repeat: 110, Before: 10}).Split(nil)
	if err != nil || parts[0].Last != 230 || !parts[0].OnRepeat {
		t.Errorf("%+v, %v", parts, err)
	}
}

func TestEvenChainsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := &evenSplit{ends: rapid.SliceOfN(rapid.IntRange(1, 20), 1, 80).Draw(t, "units"),
			word: "pass", words: "passes", most: rapid.SampledFrom([]int{0, 20, 57, 200}).Draw(t, "most"),
			odd: rapid.Bool().Draw(t, "odd")}
		e.count = rapid.IntRange(0, 12).Draw(t, "count")
		cuts, _, err := e.cuts()
		if err != nil {
			if e.count == 0 {
				t.Fatal(err)
			}
			return
		}
		if cuts[0] != 0 || cuts[len(cuts)-1] != len(e.ends) || e.count > 0 && len(cuts) != e.count+1 {
			t.Fatalf("cuts %v of %+v", cuts, e)
		}
		for i := 1; i < len(cuts); i++ {
			ends := e.after[cuts[i]] - e.after[cuts[i-1]]
			if cuts[i] <= cuts[i-1] || e.most > 0 && ends > e.most {
				t.Fatalf("cuts %v of %+v: %d ends", cuts, e, ends)
			}
		}
	})
}

// Plain passes are even to a pass where no boundary is near: two chains differ by a pass at most.
func TestEvenChainsAreEven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := ChainAsk{Ends: rapid.IntRange(1, 1500).Draw(t, "ends"), Group: rapid.IntRange(1, 24).Draw(t, "group"),
			Even: true}
		passes := (a.Ends + a.Group - 1) / a.Group
		a.Count = rapid.IntRange(1, min(passes, 12)).Draw(t, "count")
		parts, err := a.Split(nil)
		if err != nil {
			t.Fatal(err)
		}
		least, most := passes, 0
		for _, p := range parts {
			least, most = min(least, len(p.Passes)), max(most, len(p.Passes))
		}
		// The short last pass shifts the equal share by less than a pass.
		if most-least > 2 || measure.Distance(most*len(parts), passes) > 2*len(parts) {
			t.Fatalf("%d to %d passes of %+v", least, most, a)
		}
	})
}
