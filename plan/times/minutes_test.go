package times_test

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"millside/plan/times"
)

func TestMinutes(t *testing.T) {
	for text, want := range map[string]time.Duration{
		"0": 0, "60": time.Hour, "60.0000": time.Hour, "0.6": 36 * time.Second, "0,9": 54 * time.Second,
		"1.5": 90 * time.Second,
		".25": 15 * time.Second, "2.": 2 * time.Minute, " 1 ": time.Minute, "0.0001": 6 * time.Millisecond,
	} {
		d, err := times.ParseMinutes(text)
		if err != nil || d != want {
			t.Errorf("%q is %v (%v), not %v", text, d, err, want)
		}
	}
	for _, text := range []string{"", ".", "-1", "60.0001", "61", "999", "0.00001", "1:30", "1/2", "36s", "1,200.5",
		"+1", "1e1", "NaN"} {
		if d, err := times.ParseMinutes(text); err == nil {
			t.Errorf("%q was read as %v (%v)", text, d, err)
		}
	}
}

// What is shown of a time that was read is the same time.
func TestMinutesShown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := time.Duration(rapid.IntRange(0, 600_000).Draw(t, "parts")) * (time.Minute / 10_000)
		got, err := times.ParseMinutes(times.MinutesText(want))
		if err != nil || got != want {
			t.Fatalf("%v is shown as %q and read as %v (%v)", want, times.MinutesText(want), got, err)
		}
	})
}
