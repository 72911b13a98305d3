package session

import (
	"strings"
	"testing"

	"millside/plan/stripe/schedule"
)

// Whoever comes back is told which chain is on the mill, and of which colour.
func TestStandingNamesTheChain(t *testing.T) {
	b := newBench(t, stripedWay("3 times (2 navy, 4 white)", 4, schedule.ChainEach))
	for b.s.State().Chain == 1 || b.laid() == 0 {
		b.press(1)
	}
	b.does(Pause{})
	want := "chain 2 of 2: white"
	if st := b.s.Standing(); "chain "+st.Chain != want || !strings.Contains(strings.Join(st.Words(), " "), want) {
		t.Errorf("%q, %q", st.Chain, st.Words())
	}
	b = newBench(t, stripedWay("3 times (2 navy, 4 white)", 4, schedule.Swapped))
	if st := b.s.Standing(); st.Chain != "" {
		t.Errorf("a single chain is called %q", st.Chain)
	}
}
