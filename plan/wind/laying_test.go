package wind

import (
	"testing"

	"pgregory.net/rapid"
)

// Worked by hand: stripes of 20 ends where 473 or 12 are wanted.
func TestLaying(t *testing.T) {
	for _, c := range []struct {
		l    Laying
		ends int
		text string
	}{
		{Laying{Written: 20}, 20, ""},
		{Laying{Written: 20, Wanted: 20}, 20, ""},
		{Laying{Written: 20, Wanted: 473}, 20, "20 ends as written, 453 fewer than the 473 that are wanted"},
		{Laying{Written: 20, Wanted: 12}, 20, "20 ends as written, 8 more than the 12 that are wanted"},
		{Laying{Repeated, 20, 473}, 473,
			"20 ends 23 times, and the first 13 once more: the other 7 of the last time are left out"},
		{Laying{Repeated, 20, 40}, 40, "20 ends 2 times"},
		{Laying{Repeated, 20, 12}, 12, "cut from 20 ends to the first 12: the other 8 are left out"},
		{Laying{WholeRepeats, 20, 473}, 460, "20 ends 23 times, 13 fewer than the 473 that are wanted"},
		{Laying{WholeRepeats, 20, 400}, 400, "20 ends 20 times"},
		{Laying{CutToEnds, 20, 12}, 12, "cut from 20 ends to the first 12: the other 8 are left out"},
		{Laying{CutToEnds, 20, 473}, 20, "20 ends as written, 453 fewer than the 473 that are wanted"},
	} {
		if c.l.Ends() != c.ends || c.l.Text() != c.text {
			t.Errorf("%+v: %d ends, %q", c.l, c.l.Ends(), c.l.Text())
		}
	}
	var l Laid
	if err := l.UnmarshalText([]byte("whole-repeats")); err != nil || l != WholeRepeats {
		t.Errorf("whole-repeats: %v, %v", l, err)
	}
}

// Repeated and cut never lay more than is wanted, and whole repeats leave less than one over.
func TestLayingNeverOver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		written, wanted := rapid.IntRange(1, 500).Draw(t, "written"), rapid.IntRange(1, 2000).Draw(t, "wanted")
		if n := (Laying{Repeated, written, wanted}).Ends(); n != wanted {
			t.Fatalf("repeated: %d", n)
		}
		if n := (Laying{WholeRepeats, written, wanted}).Ends(); n%written != 0 || n > wanted || wanted-n >= written {
			t.Fatalf("whole repeats: %d", n)
		}
		if n := (Laying{CutToEnds, written, wanted}).Ends(); n != min(written, wanted) {
			t.Fatalf("cut: %d", n)
		}
	})
}
