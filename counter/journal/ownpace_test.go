package journal

import (
	"millside/counter"
	"millside/plan"
	"millside/plan/measure"
	"millside/plan/times"
	"testing"
	"time"
)

func TestOwnPace(t *testing.T) {
	timed := func(passes int, perPass time.Duration) counter.PaceResult {
		return counter.PaceResult{PerPass: perPass, Low: perPass - time.Second, High: perPass + time.Second,
			Passes: passes}
	}
	spec := plan.DefaultSpec()
	spec.Length = 7 * measure.Yard // three and a half turns, for which a pace is given
	finished := func(name string, day int, pace counter.PaceResult) Summary {
		return Summary{Name: name, Finished: true, Last: at(day * 86400), Pace: pace, Spec: spec}
	}
	older, newer := finished("older", 1, timed(40, 40*time.Second)), finished("newer", 2, timed(4, 35*time.Second))
	practice := finished("practice", 9, timed(11, 2*time.Second))
	short := finished("short", 9, timed(3, 50*time.Second))
	damaged := finished("damaged", 9, timed(40, 50*time.Second))
	damaged.Err = ErrNewer
	half := Summary{Name: "half", Last: at(9 * 86400), Pace: timed(20, 50*time.Second)}
	days := finished("clock set wrong", 9, timed(20, 100*24*time.Hour))
	own := times.Pace{Low: 34 * time.Second, Middle: 35 * time.Second, High: 36 * time.Second, Passes: 4, Warps: 1}
	// 40 passes of 40 s and 4 of 35 s are 44 of 39.545454545 s.
	both := times.Pace{Low: 38_545_454_545, Middle: 39_545_454_545, High: 40_545_454_545, Passes: 44, Warps: 2}
	// Five turns take the usual hand 0.27 + 5 x 0.08 = 0.67 min, so 67 s there are 55 s at three and a half.
	long := finished("long", 3, counter.PaceResult{PerPass: 67 * time.Second, Low: 67 * time.Second,
		High: 67 * time.Second, Passes: 9})
	long.Spec.Length = 10 * measure.Yard
	scaled := times.Pace{Low: 55 * time.Second, Middle: 55 * time.Second, High: 55 * time.Second, Passes: 9, Warps: 1}
	var six []Summary
	for day := range 6 {
		six = append(six, finished("one of six", day, timed(10, time.Duration(day+1)*10*time.Second)))
	}
	for _, tt := range []struct {
		name string
		list []Summary
		want times.Pace
	}{
		{"nothing wound", nil, times.PublishedPace()},
		{"nothing that counts", []Summary{half, practice, short, damaged, days}, times.PublishedPace()},
		{"one", []Summary{half, practice, short, damaged, days, newer}, own},
		{"two, weighed by their passes", []Summary{older, half, newer}, both},
		{"in any order", []Summary{newer, older}, both},
		{"a longer warp", []Summary{long}, scaled},
		{"the latest five", six, times.Pace{Low: 39 * time.Second, Middle: 40 * time.Second, High: 41 * time.Second,
			Passes: 50, Warps: 5}},
	} {
		if got := OwnPace(tt.list, "practice"); got != tt.want {
			t.Errorf("%s: %+v, want %+v", tt.name, got, tt.want)
		}
	}
}

func TestPaceInWords(t *testing.T) {
	for want, r := range map[string]counter.PaceResult{
		"34 s a pass, mostly 30 to 38 s": {PerPass: 33_750 * time.Millisecond, Low: 30 * time.Second,
			High: 37_500 * time.Millisecond, Passes: 9},
		"30 s a pass": {PerPass: 30 * time.Second, Low: 30 * time.Second,
			High: 30_400 * time.Millisecond, Passes: 3},
	} {
		if got := r.String(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// The work at the pegs is learned from the five warps that were finished last of which halts enough were timed.
func TestOwnPacePegs(t *testing.T) {
	finished := func(day, halts int, took time.Duration) Summary {
		return Summary{Name: "striped", Finished: true, Last: at(day * 86400), Spec: plan.DefaultSpec(),
			Pegs: times.PegPace{Took: took, Usual: time.Minute, Halts: halts, Warps: 1}}
	}
	var list []Summary
	for day := range 6 { // the first one is too old
		list = append(list, finished(day, 4, time.Duration(day)*time.Minute+time.Second))
	}
	list = append(list, finished(9, times.FewestHalts-1, time.Minute))
	half := finished(9, 40, time.Minute)
	half.Finished = false
	got := OwnPace(append(list, half)).Pegs
	want := times.PegPace{Took: 15*time.Minute + 5*time.Second, Usual: 5 * time.Minute, Halts: 20, Warps: 5}
	if got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
}
