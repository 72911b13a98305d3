//go:build unix

package main

import (
	"context"
	"fmt"
	"strings"
	"syscall"
	"testing"
	"time"

	"millside/counter"
	"millside/plan"
	"millside/plan/stripe"
	"millside/plan/times"
	"millside/plan/wind"
)

// savedStripes makes a record of a striped warp with the guard off, and gives its path and the colour of
// each end as the notation asks for it.
func savedStripes(t *testing.T, dir, stripes string, change func(*plan.Spec)) (path string, want []int) {
	t.Helper()
	s := plan.DefaultSpec()
	s.Name, s.Stripes, s.Guard = "Striped", stripes, 0
	if change != nil {
		change(&s)
	}
	made, err := stripe.ForPlan(context.Background(), s, stripe.Ask{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	if want, err = made.Order.Ends(); err != nil {
		t.Fatal(err)
	}
	return saved(t, dir, func(s *plan.Spec) { *s = made.Spec }), want
}

// threeStripes has the paddle changed twice where it has four positions, in either return order: before
// pass 7 in all positions, before pass 13 in three.
const threeStripes = "24 white, 24 red, 12 blue where white is #f4f1e8, red is #b03a2e, blue is #1f3a93"

func fourPositions(s *plan.Spec) {
	s.Positions = 4
	quickHands(s)
}

// quickHands ties and threads so fast that it is worth while to change the paddle for a few passes.
func quickHands(s *plan.Spec) {
	s.Times = times.DefaultHandTimes()
	s.Times.Thread, s.Times.Cut, s.Times.Tie = 6*time.Second, 3*time.Second, 3*time.Second
}

// laysStripes checks that the warp of the one record is wound and lies as it was asked for.
func laysStripes(t *testing.T, dir string, want []int) counter.State {
	t.Helper()
	st := onlyRecord(t, dir).State()
	if !st.Wound() || st.EndsStandingAll() != len(want) {
		t.Fatalf("%d of %d ends stand", st.EndsStandingAll(), len(want))
	}
	for i, colour := range want {
		if got := st.Plan.EndColour(i + 1); got != colour {
			t.Fatalf("end %d is %s, asked was %s", i+1, st.Plan.ColourText(got), st.Plan.ColourText(colour))
		}
	}
	return st
}

// stays presses keys that mean nothing on this page, and then pauses and goes on: the page is there again, and no
// pass was counted.
func (term *terminal) stays(page string) {
	term.t.Helper()
	term.see(page)
	for _, k := range []string{"y", "o", "l", "e", "x", "r", "f", "f", "z", "tab", "up"} {
		term.press(k)
	}
	term.press("p")
	term.see("PAUSED")
	term.goes("space", page)
}

// A striped warp from the first thread to the last end, with a kill on the page that asks for the change of
// the paddle: each page that asks for something waits for its key, and is asked again after the kill.
func TestStripedWarp(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	path, want := savedStripes(t, dir, threeStripes, fourPositions)
	const all = 16
	term := start(t, 80, 24, dir, "wind", path)
	term.stays("THREAD THE PADDLE")
	if !strings.Contains(term.screen(), "kind I     C   C   C   C") || !strings.Contains(term.screen(), "white") {
		t.Errorf("the threading is not told:\n%s", term.screen())
	}
	term.goes("space", "0 of 16 passes laid")
	term.wind(0, 5, all)
	term.reads("next stop at the near end peg: cut off 4") // one pass ahead
	term.press("space")
	term.stays("STOP AT THE NEAR END PEG BEFORE PASS 7")
	for _, part := range []string{"white", "red", "kind II    D   D   D   D"} {
		if !strings.Contains(term.screen(), part) {
			t.Errorf("the page doesn't say %q:\n%s", part, term.screen())
		}
	}
	term.signal(syscall.SIGKILL)
	term.exit()
	if st := onlyRecord(t, dir).State(); st.Laid() != 6 || st.EndsStanding() != 24 {
		t.Fatalf("after the kill: %d passes, %d ends", st.Laid(), st.EndsStanding())
	}

	term = start(t, 80, 24, dir, "wind", path)
	term.see("LOOK AT THE MILL")
	term.press("space")
	term.stays("STOP AT THE NEAR END PEG BEFORE PASS 7")
	term.goes("space", "6 of 16 passes laid")
	term.wind(6, 11, all)
	term.press("f") // the far view hides no halt
	term.goes("space", "STOP AT THE NEAR END PEG BEFORE PASS 13")
	term.stays("STOP AT THE NEAR END PEG BEFORE PASS 13")
	term.goes("space", "next")
	term.press("f")
	term.see("12 of 16 passes laid")
	term.wind(12, all, all)
	laysStripes(t, dir, want)
}

// A key held down, or a pedal that bounces, tells the threading of the paddle and lays no pass.
func TestBurstAtThreading(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	path, _ := savedStripes(t, dir, threeStripes, func(s *plan.Spec) {
		fourPositions(s)
		s.Guard = times.Guard(2 * time.Second)
	})
	term := start(t, 80, 24, dir, "wind", path)
	term.see("THREAD THE PADDLE")
	term.press("space", "space", "enter", "pgdown", "space")
	term.see("0 of 16 passes laid")
	term.see("ignored")
	if st := onlyRecord(t, dir).State(); st.Laid() != 0 {
		t.Errorf("%d passes", st.Laid())
	}
}

// Taking back a pass that was laid before a change asks for the old colours first, and the change is asked
// again afterwards.
func TestUndoAcrossChange(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	path, want := savedStripes(t, dir, threeStripes, fourPositions)
	term := start(t, 80, 24, dir, "wind", path)
	term.see("THREAD THE PADDLE")
	term.goes("space", "0 of 16 passes laid")
	term.wind(0, 5, 16)
	term.goes("space", "STOP AT THE NEAR END PEG BEFORE PASS 7")
	term.goes("space", "6 of 16 passes laid")
	term.press("u")
	term.see("STOP AT THE NEAR END PEG BEFORE PASS 7") // the work first, then the pass before it
	term.goes("u", "5 of 16 passes laid")
	term.goes("space", "STOP AT THE NEAR END PEG BEFORE PASS 7")
	term.goes("space", "6 of 16 passes laid")
	term.wind(6, 16, 16)
	laysStripes(t, dir, want)
}

// The lease was turned the other way: a plain warp goes on in the other order, and the ends are numbered by
// it.
func TestOtherOrderPlain(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	term := start(t, 80, 24, dir, "wind", saved(t, dir, func(s *plan.Spec) { s.Ends = 60 }))
	term.see("0 of 6 passes laid")
	term.wind(0, 1, 6)
	term.goes("space", "they alternate")
	term.press("o")
	term.reads("return passes lie in the mirrored order from here on")
	term.reads("pass 2 had the wrong opening first: take it back and lay it anew")
	term.press("u")
	term.see("1 of 6 passes laid")
	term.goes("space", fmt.Sprintf("%d of %d passes laid", 2, 6))
	term.wind(2, 4, 6)
	term.press("b")
	term.see("BROKEN END")
	term.press("1", "tab", "ctrl+u", "4", "enter", "enter")
	term.reads("pass 4, position 1, end 40")
	term.wind(4, 6, 6)
	st := onlyRecord(t, dir).State()
	if st.Plan.Spec.ReturnOrder != wind.MirroredOrder || st.EndsStanding() != 60 || st.Incidents[0].End != 40 {
		t.Errorf("%s order, %d ends, incident %+v", st.Plan.Spec.ReturnOrder, st.EndsStanding(), st.Incidents[0])
	}
}

// A striped warp turns to the schedule for the other order: what was laid counts as far as it is right there
// too, the paddle is threaded anew where the other schedule wants it, and the stripes come out as asked.
func TestOtherOrderStriped(t *testing.T) {
	t.Parallel()
	for _, tt := range []struct {
		stripes   string
		positions int
		kept      int
		page      string // asked after the order was turned, before the next pass
	}{
		// The first passes are the same in both schedules; pass 2 is a return pass, so pass 1 stands.
		{threeStripes, 4, 1, ""},
	} {
		t.Run(fmt.Sprint(tt.kept), func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			path, want := savedStripes(t, dir, tt.stripes, func(s *plan.Spec) {
				s.Positions = tt.positions
				quickHands(s)
			})
			all := onlyRecord(t, dir).State().Plan.Passes()
			term := start(t, 80, 24, dir, "wind", path)
			term.see("THREAD THE PADDLE")
			term.goes("space", fmt.Sprintf("0 of %d passes laid", all))
			term.wind(0, 1, all)
			term.goes("space", "they alternate")
			term.press("o")
			term.reads(fmt.Sprintf("take off what lies beyond pass %d, and lay pass %d anew", tt.kept, tt.kept+1))
			if tt.page != "" {
				term.see(tt.page)
				term.goes("space", "0 of")
			}
			st := onlyRecord(t, dir).State()
			if st.Laid() != tt.kept || st.Plan.Spec.ReturnOrder != wind.MirroredOrder {
				t.Fatalf("%d passes are kept, order %s", st.Laid(), st.Plan.Spec.ReturnOrder)
			}
			all = st.Plan.Passes()
			term.see(fmt.Sprintf("%d of %d passes laid", tt.kept, all))
			for k := tt.kept + 1; k < all; k++ {
				after := fmt.Sprintf("%d of %d passes laid", k, all)
				if st.Plan.WorkBefore(1, k+1).Halt() {
					term.goes("space", fmt.Sprintf("BEFORE PASS %d", k+1))
				}
				term.goes("space", after)
			}
			term.goes("space", "this step is done")
			laysStripes(t, dir, want)
		})
	}
}
