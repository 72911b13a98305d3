package session

import (
	"fmt"
	"testing"

	"millside/plan/wind"
)

// A whole warp, from the first pass to the closed record.
func TestWholeWarp(t *testing.T) {
	b := newBench(t, nil)
	for i := 0; b.stage() != Done; i++ {
		if i > 100 {
			t.Fatal("it never ends")
		}
		if b.stage() == AtQuestion {
			b.does(Answer{Yes})
		}
		r := b.press(1)
		if testing.Verbose() {
			fmt.Println("--", r.Cue, "|", r.Short)
			for _, s := range r.Said {
				fmt.Println("   ", s)
			}
		}
		if r.Cue == CueNone || r.Cue == CueRefused {
			t.Fatalf("press %d: %v %q", i, r.Cue, r.Said)
		}
	}
	if st := b.s.State(); !st.Finished || st.EndsStandingAll() != 36 || st.Plan.Spec.ReturnOrder != wind.SameOrder {
		t.Errorf("%+v", st)
	}
}
