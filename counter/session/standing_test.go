package session

import (
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/stripe/schedule"
)

// Whoever comes back is told which chain is on the mill, and of which colour.
func TestStandingNamesTheChain(t *testing.T) {
	w, ok := newDrawnWarp(t, "3 times (2 navy, 4 white)", schedule.ChainEach, func(s *plan.Spec) { s.Positions = 4 })
	if !ok {
		t.Fatal("no chain for each colour")
	}
	for w.s.State().Chain == 1 || w.laid() == 0 {
		w.press(1)
	}
	w.does(Pause{})
	want := "chain 2 of 2: white"
	if st := w.s.Standing(); "chain "+st.Chain != want || !strings.Contains(strings.Join(st.Words(), " "), want) {
		t.Errorf("%q, %q", st.Chain, st.Words())
	}
	w, _ = newDrawnWarp(t, "3 times (2 navy, 4 white)", schedule.Swapped, func(s *plan.Spec) { s.Positions = 4 })
	if st := w.s.Standing(); st.Chain != "" {
		t.Errorf("a single chain is called %q", st.Chain)
	}
}
