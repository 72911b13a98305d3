package plan

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/frame"
	"millside/plan/internal/measuretest"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/wind"
)

func TestChainsInUse(t *testing.T) {
	// 650 ends in 3, 450 in 2, 600 in 3 chains (allfiberarts.com); the limits that lead there are ours.
	for _, c := range []struct{ ends, most, chains int }{{650, 250, 3}, {450, 250, 2}, {600, 200, 3}, {600, 0, 1}} {
		parts, err := (ChainAsk{Ends: c.ends, Group: 10, Most: c.most}).Split(nil)
		if err != nil || len(parts) != c.chains {
			t.Errorf("%d ends, at most %d a chain: %d chains, %v; want %d", c.ends, c.most, len(parts), err, c.chains)
		}
	}
}

func TestChainsPreferBoundaries(t *testing.T) {
	// 48 passes of ten in two chains. Sections of 20 ends and an even number of passes agree at 240.
	parts, err := (ChainAsk{Ends: 480, Group: 10, Most: 300, Sett: measuretest.Sett(t, "20 an inch"),
		Raddle: loom.Raddle{Space: measure.Inch}}).Split(nil)
	if err != nil || parts[0].Last != 240 || !parts[0].OnSection || !parts[1].OnSection {
		t.Errorf("%+v, %v", parts, err)
	}
	// 25 passes a chain would stop at the counting cross twice: 24 and 26 are better.
	parts, err = (ChainAsk{Ends: 500, Group: 10, Most: 300}).Split(nil)
	if err != nil || len(parts[0].Passes) != 24 || len(parts[1].Passes) != 26 {
		t.Errorf("%+v, %v", parts, err)
	}
	// A repeat of 110 ends after a border of 10 ends at 230, near 240 of 480: worth an odd pass.
	parts, err = (ChainAsk{Ends: 480, Group: 10, Most: 300, Repeat: 110, Before: 10}).Split(nil)
	if err != nil || parts[0].Last != 230 || !parts[0].OnRepeat {
		t.Errorf("%+v, %v", parts, err)
	}
	if parts[0].Why == "" || parts[0].Finish() != wind.FinishAfter(len(parts[0].Passes)) {
		t.Errorf("why: %+v", parts[0])
	}
}

func TestChainsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := ChainAsk{
			Ends: rapid.IntRange(1, 1500).Draw(t, "ends"), Group: rapid.IntRange(1, 24).Draw(t, "group"),
			LastPass: wind.LastPass(rapid.IntRange(0, 1).Draw(t, "last")),
			Repeat:   rapid.IntRange(0, 80).Draw(t, "repeat"), Before: rapid.IntRange(0, 40).Draw(t, "before"),
		}
		if rapid.Bool().Draw(t, "raddle") {
			a.Sett, a.Raddle = measuretest.Sett(t, fmt.Sprintf("%d an inch", rapid.Int64Range(4, 40).Draw(t, "sett"))),
				loom.Raddle{Space: measure.Inch / 2}
		}
		if rapid.Bool().Draw(t, "limit") {
			a.Most = rapid.IntRange(a.Group, 700).Draw(t, "most")
		}
		parts, err := a.Split(nil)
		if err != nil {
			t.Fatal(err)
		}
		passes, next := 0, 1
		for i, c := range parts {
			sum := 0
			for _, n := range c.Passes {
				sum += n
				if n < 1 || n > a.Group {
					t.Fatalf("a pass of %d", n)
				}
			}
			if c.Number != i+1 || c.First != next || sum != c.Ends() || a.Most > 0 && c.Ends() > a.Most ||
				len(c.Passes) == 0 {
				t.Fatalf("chain %+v of %+v", c, a)
			}
			next = c.Last + 1
			passes += len(c.Passes)
		}
		want := (a.Ends + a.Group - 1) / a.Group
		if passes != want || a.LastPass == wind.ShortLast && next-1 != a.Ends || next-1 < a.Ends || next-1 >= a.Ends+
			a.Group {
			t.Fatalf("%d passes, %d ends for %+v", passes, next-1, a)
		}
		// As few chains as can be, and near equal: a tenth and the rounding of a pass at both cuts.
		if a.Most > 0 {
			if perChain := a.Most / a.Group; len(parts) != (want+perChain-1)/perChain {
				t.Fatalf("%d chains of at most %d passes for %d", len(parts), perChain, want)
			}
		}
		for _, c := range parts {
			if share := want / len(parts); measure.Distance(len(c.Passes), share) > 2*max(share/10, 1)+1 {
				t.Fatalf("%d passes, an equal share is %d", len(c.Passes), share)
			}
		}
	})
}

// The search finds the cheapest split: no other one within the same windows costs less.
func TestSplitIsTheCheapest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := ChainAsk{Ends: rapid.IntRange(20, 400).Draw(t, "ends"), Group: rapid.IntRange(4, 12).Draw(t, "group"),
			Repeat: rapid.IntRange(0, 60).Draw(t, "repeat"), Most: rapid.IntRange(60, 150).Draw(t, "most")}
		s := &chainSplit{ask: a, passes: (a.Ends + a.Group - 1) / a.Group, most: a.Most / a.Group}
		s.chains = (s.passes + s.most - 1) / s.most
		total := func(cuts []int) (sum int) {
			for i := 1; i < len(cuts); i++ {
				sum += s.lengthCost(cuts[i]-cuts[i-1]) + s.placeCost(cuts[i])
			}
			return sum
		}
		found := total(s.cuts())
		var try func(cuts []int)
		try = func(cuts []int) {
			cut, from := len(cuts), cuts[len(cuts)-1]
			if cut == s.chains+1 {
				if other := total(cuts); other < found {
					t.Fatalf("%v costs %d, the split found costs %d", cuts, other, found)
				}
				return
			}
			low, high := s.near(cut)
			for at := max(low, from+1); at <= min(high, from+s.most); at++ {
				try(append(slices.Clone(cuts), at))
			}
		}
		try([]int{0})
	})
}

func TestChainsRefuse(t *testing.T) {
	if _, err := (ChainAsk{}).Split(nil); len(measure.FieldErrors(err)) != 2 {
		t.Errorf("nothing given: %v", err)
	}
	bad := ChainAsk{Ends: math.MaxInt, Group: -1, LastPass: 4, Most: -1, Repeat: -1, Before: -1}
	if _, err := bad.Split(nil); len(measure.FieldErrors(err)) != 6 {
		t.Errorf("%d errors: %v", len(measure.FieldErrors(err)), err)
	}
	if _, err := (ChainAsk{Ends: 100, Group: 10, Sett: measuretest.Sett(t, "20 an inch"),
		Raddle: loom.Raddle{Spaces: 5}}).Split(nil); err == nil {
		t.Error("a raddle without a space is no error")
	}
}

func TestRoomOnPeg(t *testing.T) {
	// Own example: 15 cm of peg, a thread of half a millimetre, two layers.
	got, err := frame.RoomOnPeg(15*measure.Centimetre, measure.Millimetre/2, 2, measure.Metric)
	if err != nil || got.Ends != 600 || got.How.WithNumbers.String() == "" {
		t.Errorf("%+v, %v; want 600", got, err)
	}
	if got, err = frame.RoomOnPeg(measure.Metre, measure.Nanometre, 100, measure.Metric); err != nil ||
		got.Ends != measure.MaxEnds {
		t.Errorf("the thinnest thread: %+v, %v", got, err)
	}
	if _, err := frame.RoomOnPeg(0, 0, 0, measure.Metric); len(measure.FieldErrors(err)) != 3 {
		t.Errorf("nothing given: %v", err)
	}
	if _, err := frame.RoomOnPeg(measure.Centimetre, 2*measure.Centimetre, 1, measure.Metric); err == nil {
		t.Error("a thread thicker than the peg is long is no error")
	}
}

func BenchmarkSplitChains(b *testing.B) {
	a := ChainAsk{Ends: 5000, Group: 20, Most: 600, Sett: measuretest.Sett(b, "40 an inch"),
		Raddle: loom.Raddle{Space: measure.Inch / 2}, Repeat: 96}
	for b.Loop() {
		if _, err := a.Split(nil); err != nil {
			b.Fatal(err)
		}
	}
}
