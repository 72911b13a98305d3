package counter_test

import (
	"millside/counter"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func TestGuard(t *testing.T) {
	const s = 1000 // milliseconds
	tests := []struct {
		name     string
		shortest int
		presses  []int // milliseconds
		counts   []bool
	}{
		{"first press", 2 * s, []int{0}, []bool{true}},
		{"hit twice", 2 * s, []int{0, 150}, []bool{true, false}},
		{"exactly the shortest", 2 * s, []int{0, 2 * s}, []bool{true, true}},
		{"just under it", 2 * s, []int{0, 2*s - 1}, []bool{true, false}},
		{"a refused press doesn't put the next one off", 2 * s, []int{0, 1500, 2 * s}, []bool{true, false, true}},
		{"but one just before does", 2 * s, []int{0, 1700, 2 * s}, []bool{true, false, false}},
		{"400 ms after the last press", 2 * s, []int{0, 1600, 2 * s}, []bool{true, false, true}},
		{"a guard under 400 ms", 100, []int{0, 99, 199, 298}, []bool{true, false, true, false}},
		{"off", 0, []int{0, 0, 1}, []bool{true, true, true}},
		{"less than nothing is off", -5, []int{0, 0}, []bool{true, true}},
		{"clock set back", 2 * s, []int{3600 * s, s, 2 * s, 3 * s}, []bool{true, true, false, true}},
	}
	for _, tt := range tests {
		g := counter.NewGuard(time.Duration(tt.shortest) * time.Millisecond)
		for i, ms := range tt.presses {
			var ok bool
			if g, ok = g.Press(at(0).Add(time.Duration(ms) * time.Millisecond)); ok != tt.counts[i] {
				t.Errorf("%s: press at %d ms counts: %v", tt.name, ms, ok)
			}
		}
	}
}

// A key held down for a minute, with the repeat of common keyboards (from memory: the first repeat
// after half a second, then 30 a second).
func TestGuardHeldKey(t *testing.T) {
	g, n := counter.NewGuard(2*time.Second), 0
	press := func(ms int) {
		var ok bool
		if g, ok = g.Press(at(0).Add(time.Duration(ms) * time.Millisecond)); ok {
			n++
		}
	}
	press(0)
	for ms := 500; ms < 60_000; ms += 33 {
		press(ms)
	}
	if n != 1 {
		t.Errorf("a held key counted %d times", n)
	}
}

func TestGuardCounted(t *testing.T) {
	g := counter.NewGuard(2 * time.Second).Counted(at(0))
	if _, ok := g.Press(at(1)); ok {
		t.Error("a press one second after something counted counts")
	}
	if _, ok := g.Press(at(2)); !ok {
		t.Error("a press two seconds after something counted doesn't count")
	}
}

// Presses that count are the shortest time apart as long as the clock runs forwards; and whatever the
// clock did, a press counts when the shortest time has gone since the press before it.
func TestGuardProperty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shortest := time.Duration(rapid.IntRange(0, 3000).Draw(t, "shortest")) * time.Millisecond
		lowest := rapid.SampledFrom([]int{0, -5000}).Draw(t, "lowest gap")
		g, now := counter.NewGuard(shortest), at(0)
		var last time.Time
		for range rapid.IntRange(1, 40).Draw(t, "presses") {
			now = now.Add(time.Duration(rapid.IntRange(lowest, 4000).Draw(t, "gap")) * time.Millisecond)
			var ok bool
			if g, ok = g.Press(now); ok {
				if lowest == 0 && !last.IsZero() && now.Sub(last) < shortest {
					t.Fatalf("counted %v after the last that counted, shortest %v", now.Sub(last), shortest)
				}
				last = now
			}
			if _, ok := g.Press(now.Add(shortest)); !ok {
				t.Fatalf("blocked for longer than %v", shortest)
			}
		}
	})
}
