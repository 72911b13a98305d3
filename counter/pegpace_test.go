package counter_test

import (
	"slices"
	"testing"
	"time"

	"millside/counter"
	"millside/plan"
	"millside/plan/times"
)

// A halt is timed from the pass laid to the work confirmed. 37 ends by ten have one: three ends are cut off before pass
// 4, 0.5 + 3 x 0.2 = 1.1 min by the usual weights.
func TestPegPace(t *testing.T) {
	spec := plan.DefaultSpec()
	spec.Ends = 37
	p, err := plan.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	lay := func(seconds, pass int) counter.Event {
		return counter.Event{At: at(seconds), Kind: counter.Laid, Chain: 1, Pass: pass}
	}
	done := func(seconds int) counter.Event {
		return counter.Event{At: at(seconds), Kind: counter.WorkDone, Chain: 1, Pass: 4}
	}
	other := func(kind counter.Kind) counter.Event { return counter.Event{At: at(110), Kind: kind, Chain: 1} }
	for _, tt := range []struct {
		name   string
		events []counter.Event
		took   time.Duration
	}{
		{"nothing", nil, 0},
		{"no halt", []counter.Event{lay(0, 1), lay(30, 2), lay(60, 3)}, 0},
		{"one", []counter.Event{lay(30, 2), lay(100, 3), done(190)}, 90 * time.Second},
		{"a note belongs to it", []counter.Event{lay(100, 3), other(counter.Noted), done(190)}, 90 * time.Second},
		{"a pause in it", []counter.Event{lay(100, 3), other(counter.Paused), other(counter.Resumed), done(190)}, 0},
		{"taken back", []counter.Event{lay(100, 3), other(counter.Undone), done(190)}, 0},
		{"the clock set back", []counter.Event{lay(100, 3), done(90)}, 0},
		{"over an hour", []counter.Event{lay(100, 3), done(3800)}, 0},
		{"not the work of that pass", []counter.Event{lay(100, 2), done(190)}, 0},
	} {
		want := times.PegPace{}
		if tt.took > 0 {
			want = times.PegPace{Took: tt.took, Usual: 66 * time.Second, Halts: 1, Warps: 1}
		}
		if got := counter.PegPace(p, slices.Values(tt.events)); got != want {
			t.Errorf("%s: %+v, want %+v", tt.name, got, want)
		}
	}
}
