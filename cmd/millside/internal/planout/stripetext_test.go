package planout

import (
	"testing"
	"time"
)

func TestTimeText(t *testing.T) {
	for d, want := range map[time.Duration]string{
		0: "0 s", time.Second: "1 s", 90 * time.Second: "1 min 30 s", time.Hour: "1 h", 2*time.Hour +
			3*time.Second: "2 h 3 s",
		100 * time.Millisecond: "about 0 s", time.Minute - time.Millisecond: "about 1 min",
		1500 * time.Millisecond: "about 2 s",
	} {
		if got := timeText(d); got != want {
			t.Errorf("%v is %q, not %q", d, got, want)
		}
	}
}
