package plan_test

import (
	"encoding/json"
	"math/big"
	"testing"
	"time"

	"millside/plan"
	"millside/plan/times"
	"millside/plan/wind"
)

// 37 ends by 10: three ends are cut off at the far end peg before the last pass, seven at the near one.
func TestCutAtTheFarEnd(t *testing.T) {
	s := plan.DefaultSpec()
	s.Ends, s.Group = 37, 10
	p := must(t, s)
	w := p.WorkBefore(1, 4)
	if w.Peg != wind.FarPeg || w.Cut != wind.Span(8, 10) || w.Tie != 0 || len(w.Thread) != 0 ||
		w.Stay != wind.Span(1, 7) || !w.Halt() {
		t.Errorf("before pass 4: %+v", w)
	}
	w = p.WorkBefore(1, 5)
	if w.Peg != wind.NearPeg || w.Cut != wind.Span(1, 7) || w.Halt() || !w.Ends() {
		t.Errorf("after the last pass: %+v", w)
	}
	want := times.WorkSum{Passes: 4, Halts: 1, Cuts: 10, Ties: 10, Threads: 10}
	if got := p.WorkSum(); got != want {
		t.Errorf("got %+v, want %+v", got, want)
	}
}

// 40 passes of three and a half turns take a practised hand 20 to 25 minutes (common practice, no source).
func TestDefaultHandTimes(t *testing.T) {
	pass := times.DefaultHandTimes().PassTime(big.NewRat(7, 2))
	if pass != 33*time.Second {
		t.Errorf("a pass takes %v", pass)
	}
	if all := 40 * pass; all < 20*time.Minute || all > 25*time.Minute {
		t.Errorf("40 passes take %v", all)
	}
	own := times.DefaultHandTimes()
	own.Pass = 40 * time.Second
	if got := own.PassTime(big.NewRat(95, 2)); got != 40*time.Second {
		t.Errorf("a pass of one's own takes %v", got)
	}
	if got := times.DefaultHandTimes().PassTime(nil); got != 16200*time.Millisecond {
		t.Errorf("a pass without turns takes %v", got)
	}
	// By hand: 4 passes of 33 s, a halt of 30, 10 cuts of 12, 10 ties of 18, 10 packages of 60, a far
	// finish of 54: 132 + 30 + 120 + 180 + 600 + 54 = 1116 s.
	sum := times.WorkSum{Passes: 4, Halts: 1, Cuts: 10, Ties: 10, Threads: 10, FarFinishes: 1}
	if got := times.DefaultHandTimes().Total(sum, big.NewRat(7, 2)); got != 1116*time.Second {
		t.Errorf("the whole takes %v", got)
	}
}

// A scheduled pass is written as old records have it, a run with its two ends, and read back only so.
func TestScheduledPassText(t *testing.T) {
	for text, carried := range map[string]wind.Positions{
		"1-10 of 2":     wind.Span(1, 10),
		"5-5 of 1":      wind.Span(5, 5),
		"1-4,7-10 of 2": wind.Span(1, 4) | wind.Span(7, 10),
		"1-1,4-5 of 12": wind.Span(1, 1) | wind.Span(4, 5),
		"60-60 of 1":    wind.Span(60, 60),
	} {
		var p plan.ScheduledPass
		if err := json.Unmarshal([]byte(`"`+text+`"`), &p); err != nil || p.Carried != carried {
			t.Errorf("%q: %v, %v", text, p, err)
		}
		if p.String() != text {
			t.Errorf("%q is written as %q", text, p)
		}
	}
	for _, text := range []string{"", "1-10", "1-10 of", "of 2", "10-1 of 2", "0-4 of 1", "1-61 of 1", "5-8,1-4 of 1",
		"1-4,5-8 of 1",
		"1-4,3-8 of 1", "1-4, 7-8 of 1", "+1-4 of 1", "1-4 of 01", "1 of 1", "1-4,,6-7 of 1", "1-2-3 of 1"} {
		var p plan.ScheduledPass
		if err := p.UnmarshalText([]byte(text)); err == nil {
			t.Errorf("%q is read as %v", text, p)
		}
	}
}

// Among the positions that a pass carries holes and slots take turns, or the lease can't alternate.
func TestScheduleAsksForHolesAndSlotsInTurn(t *testing.T) {
	for _, tt := range []struct {
		carried wind.Positions
		ok      bool
	}{
		{wind.Span(1, 4), true},
		{wind.Span(1, 1) | wind.Span(4, 4), true},
		{wind.Span(2, 3) | wind.Span(6, 7), true},
		{wind.Span(1, 1) | wind.Span(3, 3), false},
		{wind.Span(1, 4) | wind.Span(6, 6), false},
		{0, false},
		{wind.Span(1, 13), false},
	} {
		s := plan.DefaultSpec()
		s.Stripes, s.Ends = "drawn", max(tt.carried.Count(), 1)
		all := make(plan.SetUp, 12)
		for i := range all {
			all[i] = 1
		}
		s.Schedule = &plan.Schedule{Colours: []plan.StripeColour{{Name: "sand"}}, SetUps: []plan.SetUp{all},
			Passes: []plan.ScheduledPass{{Carried: tt.carried, SetUp: 1}}}
		if _, err := plan.New(s); (err == nil) != tt.ok {
			t.Errorf("positions %v: %v", tt.carried, err)
		}
	}
}
