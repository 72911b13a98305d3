package plan

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"millside/plan/measure"
)

func TestTimeForAWarp(t *testing.T) {
	// 400 ends are 40 passes, 20 bouts; a practised hand needs 20 to 25 minutes for it (common practice,
	// no source).
	if got := PublishedPace().For(40).String(); got != "20 to 25 min" {
		t.Errorf("40 passes take %s, want 20 to 25 min", got)
	}
	// 600 ends, 3 or 4 at once, about two hours (sweetleafnotes web log, 2022): between 150 and 200
	// passes, and the range holds it.
	if low, high := PublishedPace().For(150).Low, PublishedPace().For(200).High; low > 2*time.Hour || high < 2*time.Hour {
		t.Errorf("600 ends at 3 or 4 take %v to %v, want two hours within", low, high)
	}
	for _, c := range []struct {
		span TimeSpan
		want string
	}{
		{TimeSpan{Low: time.Second, High: time.Minute}, "1 min"},
		{TimeSpan{Low: 110 * time.Minute, High: 2*time.Hour + 4*time.Minute + time.Second}, "1 h 50 min to 2 h 5 min"},
		{TimeSpan{Low: 50 * time.Minute, High: 60 * time.Minute}, "50 min to 1 h"},
		{TimeSpan{}, "0 min"},
	} {
		if got := c.span.String(); got != c.want {
			t.Errorf("%v to %v reads %q, want %q", c.span.Low, c.span.High, got, c.want)
		}
	}
}

func TestPaceOf(t *testing.T) {
	p, err := PaceOf([]time.Duration{40 * time.Second, 20 * time.Second, 30 * time.Second, 90 * time.Second})
	if err != nil || p != (Pace{20 * time.Second, 30 * time.Second, 40 * time.Second, 4}) {
		t.Errorf("pace %+v, %v", p, err)
	}
	if p, err = PaceOf([]time.Duration{time.Second}); err != nil || p.Low != time.Second || p.High != time.Second {
		t.Errorf("the pace of one pass: %+v, %v", p, err)
	}
	for _, bad := range [][]time.Duration{nil, {0}, {-1}, {math.MaxInt64}} {
		if _, err := PaceOf(bad); err == nil {
			t.Errorf("PaceOf(%v) is no error", bad)
		}
	}
	for _, odd := range []Pace{{}, {Low: -1}, {Low: 5, Middle: 4, High: 6}, {Low: 1, Middle: 1, High: math.MaxInt64}} {
		if got, want := odd.For(math.MaxInt), PublishedPace().For(measure.MaxEnds); got.High != want.High {
			t.Errorf("%+v takes %v", odd, got)
		}
	}
	if PublishedPace().For(-5).High != 0 {
		t.Error("fewer passes than none take time")
	}
	rapid.Check(t, func(t *rapid.T) {
		list := rapid.SliceOfN(rapid.Map(rapid.Int64Range(1, int64(longestPass)), func(n int64) time.Duration { return time.Duration(n) }), 1, 40).Draw(t, "passes")
		p, err := PaceOf(list)
		if err != nil || p.Low > p.Middle || p.Middle > p.High {
			t.Fatalf("pace %+v, %v", p, err)
		}
		below, above := 0, 0
		for _, d := range list {
			if d < p.Middle {
				below++
			}
			if d > p.Middle {
				above++
			}
		}
		if below > len(list)/2 || above > len(list)/2 {
			t.Fatalf("%v is no median: %d below, %d above of %d", p.Middle, below, above, len(list))
		}
	})
}
