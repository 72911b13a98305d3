package plan

import (
	"encoding/json"
	"testing"
	"time"

	"millside/plan/measure"
	"millside/plan/times"
	"millside/plan/wind"

	"pgregory.net/rapid"
)

// A mill of two yards round and a seven yard warp: three and a half turns (common practice, no source).
func sevenYards() Spec {
	s := DefaultSpec()
	s.Ends, s.Length = 400, 7*measure.Yard
	return s
}

func planOf(t interface {
	Helper()
	Fatalf(string, ...any)
}, s Spec) *Plan {
	t.Helper()
	p, err := New(s)
	if err != nil {
		t.Fatalf("%v", err)
	}
	return p
}

// 400 ends by 10 are 40 passes; a practised hand needs 20 to 25 minutes to wind them (common practice, no
// source). What the hands do at the pegs comes on top: ten ends tied on (3 min), ten cut off (2 min), ten
// packages threaded (10 min).
func TestTimeFor400Ends(t *testing.T) {
	p := planOf(t, sevenYards())
	got := p.Time(times.Pace{})
	if got.AtPegs != 15*time.Minute {
		t.Errorf("at the pegs %v", got.AtPegs)
	}
	if winding := got.Middle - got.AtPegs; winding < 20*time.Minute || winding > 25*time.Minute {
		t.Errorf("winding takes %v", winding)
	}
	if got.Words() != "about 37 min, 15 min of it at the pegs" {
		t.Errorf("in words: %s", got.Words())
	}
	if want := "40 passes x 33 s + 10 cuts x 12 s + 10 ties x 18 s + 10 packages x 60 s = 37 " +
		"min"; got.How.WithNumbers.String() != want {
		t.Errorf("reckoned as %s", got.How.WithNumbers)
	}
}

// 600 ends of 4 yards, 3 or 4 at once, took about two hours (a weaver's web log, 2022): 150 to 200 passes.
func TestTimeFor600Ends(t *testing.T) {
	s := DefaultSpec()
	s.Ends, s.Length = 600, 4*measure.Yard
	s.Group = 4
	low := planOf(t, s).Time(times.Pace{}).Low
	s.Group = 3
	if high := planOf(t, s).Time(times.Pace{}).High; low > 2*time.Hour || high < 90*time.Minute {
		t.Errorf("600 ends at 3 or 4 take %v to %v", low, high)
	}
}

// A longer warp takes longer.
func TestTimeGrowsWithTheTurns(t *testing.T) {
	short, long := sevenYards(), sevenYards()
	short.Length, long.Length = 3*measure.Yard, 95*measure.Yard
	a, b := planOf(t, short).Time(times.Pace{}), planOf(t, long).Time(times.Pace{})
	// By hand: 1.5 turns are 0.39 min a pass, 47.5 turns 4.07 min; 40 passes, and 15 min at the pegs.
	if a.String() != "about 31 min" || b.String() != "about 2 h 58 min" {
		t.Errorf("3 yd %s, 95 yd %s", a, b)
	}
	own := times.Pace{Low: 30 * time.Second, Middle: 33 * time.Second, High: 40 * time.Second, Passes: 39, Warps: 1}
	if c, d := planOf(t, short).Time(own), planOf(t, long).Time(own); c.Middle != a.Middle || d.Middle != b.Middle {
		t.Errorf("at an own pace that is the usual one: %s and %s", c, d)
	}
}

// What the weaver gives goes before any pace; a given pass stands for the whole pass whatever the turns.
func TestTimeByTheWeaversOwnFigures(t *testing.T) {
	own := times.Pace{Low: 50 * time.Second, Middle: 60 * time.Second, High: 70 * time.Second, Passes: 39, Warps: 1}
	s := sevenYards()
	s.Times = times.DefaultHandTimes()
	s.Times.Thread = 0
	if got := planOf(t, s).Time(own); got.Middle != 45*time.Minute || got.String() != "about 45 min" {
		t.Errorf("40 passes of a minute and 5 min at the pegs: %s", got)
	}
	s.Times.Pass = 2 * time.Minute
	if got := planOf(t, s).Time(own); got.String() != "1 h 25 min" {
		t.Errorf("40 passes of two minutes: %s", got)
	}
	if got := s.TimeSource(own); got != "the times that you gave" {
		t.Errorf("by %s", got)
	}
	s.Length = 95 * measure.Yard
	if got := planOf(t, s).Time(own); got.String() != "1 h 25 min" {
		t.Errorf("the same, longer: %s", got)
	}
}

// One figure, however it is asked for.
func TestOneTime(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := DefaultSpec()
		s.Positions = rapid.IntRange(1, 24).Draw(t, "positions")
		s.Group = rapid.IntRange(1, s.Positions).Draw(t, "group")
		s.Ends = rapid.IntRange(1, 600).Draw(t, "ends")
		s.Length = measure.Yard.Times(rapid.IntRange(1, 90).Draw(t, "yards"))
		s.LastPass = wind.LastPass(rapid.IntRange(0, 1).Draw(t, "last"))
		if rapid.Bool().Draw(t, "chains") {
			s.ChainEnds = rapid.IntRange(s.Group, 200).Draw(t, "chain ends")
		}
		pace := times.Pace{}
		if rapid.Bool().Draw(t, "own") {
			pace = times.Pace{Low: 20 * time.Second,
				Middle: time.Duration(rapid.IntRange(20, 60).Draw(t, "seconds")) * time.Second, High: time.Minute,
				Passes: 9, Warps: 1}
		}
		p := planOf(t, s)
		got := p.Time(pace)
		if want := s.HandTimesAt(pace).Total(p.WorkSum(), p.Path.PassTurns()); got.Middle != want {
			t.Fatalf("the plan says %v, its hand times %v", got.Middle, want)
		}
		if got.Low > got.Middle || got.Middle > got.High {
			t.Fatalf("%+v", got)
		}
	})
}

func TestHandTimesInAPlanFile(t *testing.T) {
	s := DefaultSpec()
	if text, _ := json.Marshal(s); string(text) != string(mustJSON(t, DefaultSpec())) ||
		containsKey(text, "hand_times") {
		t.Errorf("the usual times are written: %s", text)
	}
	s.Times = times.DefaultHandTimes()
	s.Times.Halt = 45 * time.Second
	text := mustJSON(t, s.Times)
	want := `{"handling":"16.2s","turn":"4.8s","halt":"45s","cut":"12s","tie":"18s","thread":"1m0s","far":"54s"}`
	if string(text) != want {
		t.Errorf("written %s", text)
	}
	var back times.HandTimes
	if err := json.Unmarshal(text, &back); err != nil || back != s.Times {
		t.Errorf("read back %+v, %v", back, err)
	}
	for _, bad := range []string{`{"halt":30}`, `{"halt":"thirty"}`, `{"stop":"30s"}`, `[]`} {
		if err := json.Unmarshal([]byte(bad), &back); err == nil {
			t.Errorf("%s was read", bad)
		}
	}
	s.Times.Cut = 2 * time.Hour
	if errs := measure.FieldErrors(s.Check()); len(errs) != 1 || errs[0].Field != "minutes to cut off an end" {
		t.Errorf("errors %v", errs)
	}
}

func mustJSON(t *testing.T, v any) []byte {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func containsKey(text []byte, key string) bool {
	var all map[string]any
	_ = json.Unmarshal(text, &all)
	_, ok := all[key]
	return ok
}

func TestMinutes(t *testing.T) {
	for text, want := range map[string]time.Duration{"0.6": 36 * time.Second, "0,6": 36 * time.Second, "60": time.Hour,
		"0.0001": 6 * time.Millisecond, " 10 ": 10 * time.Minute, "0": 0} {
		if got, err := times.ParseMinutes(text); err != nil || got != want {
			t.Errorf("%q is %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"", ".", "61", "-1", "0.00001", "100", "1.2.3", "a", "60.0001"} {
		if got, err := times.ParseMinutes(text); err == nil {
			t.Errorf("%q is read as %v", text, got)
		}
	}
	for d, want := range map[time.Duration]string{36 * time.Second: "0.6", time.Hour: "60",
		6 * time.Millisecond: "0.0001", 0: "0"} {
		if got := times.MinutesText(d); got != want {
			t.Errorf("%v is %q", d, got)
		}
	}
}
