package plan

import "testing"

// Chains that stop at the counting cross each end with a pass that no return pass follows, though the
// passes of all chains together may be even.
func TestBouts(t *testing.T) {
	for _, c := range []struct {
		ends, group, chain int
		want               string
	}{
		{60, 10, 30, "2 bouts and 2 passes"},
		{60, 10, 0, "3 bouts"},
		{400, 10, 0, "20 bouts"}, // 40 passes, 20 bouts (common practice, no source)
		{50, 10, 0, "2 bouts and a pass"},
		{10, 10, 0, "0 bouts and a pass"},
		{120, 10, 40, "6 bouts"},
		{90, 10, 30, "3 bouts and 3 passes"},
	} {
		s := DefaultSpec()
		s.Ends, s.Group, s.ChainEnds = c.ends, c.group, c.chain
		p, err := New(s)
		if err != nil {
			t.Fatal(err)
		}
		if got := p.BoutsText(); got != c.want {
			t.Errorf("%d ends by %d in chains of %d: %q, want %q", c.ends, c.group, c.chain, got, c.want)
		}
		if bouts, single := p.Bouts(); 2*bouts+single != p.Passes() {
			t.Errorf("%d bouts and %d passes of %d", bouts, single, p.Passes())
		}
	}
}
