package counter_test

import (
	"math"
	"millside/counter"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// timed lays passes of chain 1 with so many seconds between them; nought seconds stand for a pause of ten
// minutes, and below nought for a clock set back.
func timed(gaps ...int) []counter.Event {
	now, pass := at(0), 1
	events := []counter.Event{{At: now, Kind: counter.Laid, Chain: 1, Pass: 1}}
	for _, gap := range gaps {
		if gap == 0 {
			events = append(events, counter.Event{At: now.Add(time.Second), Kind: counter.Paused})
			now = now.Add(10 * time.Minute)
			events = append(events, counter.Event{At: now.Add(-time.Second), Kind: counter.Resumed})
		}
		now = now.Add(time.Duration(gap) * time.Second)
		pass++
		events = append(events, counter.Event{At: now, Kind: counter.Laid, Chain: 1, Pass: pass})
	}
	return events
}

func TestPace(t *testing.T) {
	var thirty []int
	for range 30 {
		thirty = append(thirty, 30)
	}
	knot := counter.Event{At: at(5), Kind: counter.Incident, Chain: 1, Pass: 1, Position: 1, What: counter.Knot}
	undo := counter.Event{At: at(5), Kind: counter.Undone, Chain: 1, Pass: 1}
	tests := []struct {
		name             string
		events           []counter.Event
		median, low, top int // seconds
		passes           int
	}{
		{"nothing", nil, 0, 0, 0, 0},
		{"one pass", timed(), 0, 0, 0, 0},
		{"one interval", timed(40), 40, 40, 40, 1},
		{"two", timed(30, 40), 35, 30, 40, 2},
		{"three", timed(50, 30, 40), 40, 30, 50, 3},
		{"four", timed(10, 20, 30, 40), 25, 15, 35, 4},
		{"five", timed(10, 20, 30, 40, 50), 30, 15, 45, 5},
		{"the latest twenty", timed(append([]int{100, 100, 100, 100, 100}, thirty[:20]...)...), 30, 30, 30, 20},
		{"a pause is left out", timed(30, 0, 30), 30, 30, 30, 2},
		{"just five times the median", timed(30, 30, 30, 150), 30, 30, 90, 4},
		{"a break that nobody noted", timed(30, 30, 30, 151), 30, 30, 30, 3},
		{"a clock set back", timed(30, -100, 30), 30, 30, 30, 2},
		{"nothing but a clock set back", timed(-100), 0, 0, 0, 0},
		{"a knot belongs to the work", slices.Insert(timed(30), 1, knot), 30, 30, 30, 1},
		{"a correction doesn't", slices.Insert(timed(30), 1, undo), 0, 0, 0, 0},
	}
	for _, tt := range tests {
		got := counter.Pace(slices.Values(tt.events), 1)
		want := counter.PaceResult{time.Duration(tt.median) * time.Second, time.Duration(tt.low) * time.Second,
			time.Duration(tt.top) * time.Second, tt.passes}
		if got != want {
			t.Errorf("%s: %+v, want %+v", tt.name, got, want)
		}
	}
}

// Chain 0 is the whole warp, and the time between two chains is no pass.
func TestPaceOfChains(t *testing.T) {
	p := testPlan(t, 80, 10, 40) // two chains of four passes
	events := windAll(p)
	for i := range events {
		events[i].At = at(i * 30)
		if events[i].Chain == 2 {
			events[i].At = at(i * 40)
		}
	}
	for chain, want := range map[int]counter.PaceResult{
		0: {35 * time.Second, 30 * time.Second, 40 * time.Second, 6},
		1: {30 * time.Second, 30 * time.Second, 30 * time.Second, 3},
		2: {40 * time.Second, 40 * time.Second, 40 * time.Second, 3},
		3: {},
	} {
		if got := counter.Pace(slices.Values(events), chain); got != want {
			t.Errorf("chain %d: %+v, want %+v", chain, got, want)
		}
	}
	if got := counter.PaceOverall(slices.Values(events)); got.Passes != 6 {
		t.Errorf("overall: %+v", got)
	}
}

// 400 ends in 40 passes take a practised hand 20 to 25 minutes, so 30 to 37.5 s a pass (facts.md, common
// practice, no source).
func TestRemaining(t *testing.T) {
	r := counter.PaceResult{PerPass: 34 * time.Second, Low: 30 * time.Second, High: 37500 * time.Millisecond,
		Passes: 20}
	want := counter.Left{Likely: 22*time.Minute + 40*time.Second, Low: 20 * time.Minute, High: 25 * time.Minute}
	if got := r.Remaining(40); got != want {
		t.Errorf("%+v", got)
	}
	if got := r.Remaining(-1); got != (counter.Left{}) {
		t.Errorf("passes below nought: %+v", got)
	}
	far := counter.PaceResult{PerPass: math.MaxInt64 / 2}
	if got := far.Remaining(100_000); got.Likely != math.MaxInt64 {
		t.Errorf("centuries: %+v", got)
	}
}

// The pace lies between the quickest and the slowest interval, the quartiles on their sides of it, and
// more events before the latest ones make no difference once twenty are there.
func TestPaceProperty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		gaps := rapid.SliceOfN(rapid.IntRange(-50, 400), 1, 40).Draw(t, "gaps")
		r := counter.Pace(slices.Values(timed(gaps...)), 1)
		if r.Passes == 0 {
			if slices.Max(gaps) > 0 {
				t.Fatal("no pace")
			}
			return
		}
		positive := slices.DeleteFunc(slices.Clone(gaps), func(g int) bool { return g <= 0 })
		if r.Passes > min(len(positive), 20) || r.Low > r.PerPass || r.PerPass > r.High ||
			r.Low < time.Duration(slices.Min(positive))*time.Second ||
			r.High > time.Duration(slices.Max(positive))*time.Second {
			t.Fatalf("%+v", r)
		}
		if len(positive) >= 20 {
			more := append([]int{7, 7, 7}, gaps...)
			if again := counter.Pace(slices.Values(timed(more...)), 1); again != r {
				t.Fatalf("%+v, and with more before %+v", r, again)
			}
		}
	})
}

func BenchmarkPace100k(b *testing.B) {
	events := manyEvents(testPlan(b, 1000, 10, 0))
	for b.Loop() {
		counter.Pace(slices.Values(events), 1)
	}
}
