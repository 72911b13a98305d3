package times

import (
	"math"
	"math/big"
	"testing"
	"time"
)

// A pace whose times are out of range or out of order counts for none.
func TestPaceOutOfOrder(t *testing.T) {
	for _, odd := range []Pace{{}, {Low: -1}, {Low: 5, Middle: 4, High: 6}, {Low: 1, Middle: 1, High: math.MaxInt64}} {
		if got, want := odd.At(PaceTurns()), PublishedPace(); got != want {
			t.Errorf("%+v is %+v", odd, got)
		}
		if got := odd.From(PaceTurns()); got != (Pace{}) {
			t.Errorf("%+v is known as %+v", odd, got)
		}
	}
}

// A pace is scaled by handling and turns: at two turns the usual hand needs 0.27 + 2 x 0.08 = 0.43 min for a
// pass, at three and a half 0.55; so 55 s there are 43 s here, and back again.
func TestPaceAt(t *testing.T) {
	own := Pace{Low: 44 * time.Second, Middle: 55 * time.Second, High: 66 * time.Second, Passes: 39, Warps: 1}
	two := big.NewRat(2, 1)
	if got, want := own.At(two), (Pace{34_400 * time.Millisecond, 43 * time.Second, 51_600 * time.Millisecond, 39,
		1, PegPace{}}); got != want {
		t.Errorf("at two turns %+v, want %+v", got, want)
	}
	if got := own.At(two).From(two); got != own {
		t.Errorf("there and back: %+v", got)
	}
	if got := own.At(PaceTurns()); got != own {
		t.Errorf("at the turns that it is given for: %+v", got)
	}
}

func TestJoinPaces(t *testing.T) {
	// By hand: 10 passes of 30 s and 30 of 50 s are 40 of 45 s.
	got := JoinPaces(Pace{20 * time.Second, 30 * time.Second, 40 * time.Second, 10, 1, PegPace{}}, Pace{},
		PublishedPace(), Pace{40 * time.Second, 50 * time.Second, 60 * time.Second, 30, 2, PegPace{}})
	if want := (Pace{35 * time.Second, 45 * time.Second, 55 * time.Second, 40, 3, PegPace{}}); got != want {
		t.Errorf("got %+v, want %+v", got, want)
	}
	if got.Source() != "your own pace over 40 passes of 3 warps" {
		t.Errorf("%q", got.Source())
	}
	if got := JoinPaces(PublishedPace()); got != (Pace{}) {
		t.Errorf("no own pace gives %+v", got)
	}
}
