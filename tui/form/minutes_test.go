package form

import (
	"testing"
	"time"

	"millside/plan"
	"millside/plan/times"
)

func fieldOf(t *testing.T, name string) line {
	t.Helper()
	for _, f := range formLines() {
		if f.Name == name {
			return f
		}
	}
	t.Fatalf("no field %q", name)
	return line{}
}

// The fields for the weaver's times show the usual ones, take minutes, and leave the plan as it was where all
// are the usual ones again.
func TestMinutesFields(t *testing.T) {
	s := plan.DefaultSpec()
	halt, pass := fieldOf(t, "minutes a halt"), fieldOf(t, "minutes a pass")
	if halt.Show(s) != "0.5" || pass.Show(s) != "" {
		t.Errorf("shown: halt %q, pass %q", halt.Show(s), pass.Show(s))
	}
	if err := halt.Take(&s, "0,75"); err != nil || s.Times.Halt != 45*time.Second || s.Times.Thread != time.Minute {
		t.Errorf("%v: %+v", err, s.Times)
	}
	if err := pass.Take(&s, "1.5"); err != nil || s.Times.Pass != 90*time.Second || pass.Show(s) != "1.5" {
		t.Errorf("%v: %+v", err, s.Times)
	}
	if err := halt.Take(&s, "soon"); err == nil || s.Times.Halt != 45*time.Second {
		t.Errorf("taken: %+v", s.Times)
	}
	if pass.Take(&s, "") != nil || halt.Take(&s, "0.5") != nil || s.Times != (times.HandTimes{}) {
		t.Errorf("the usual times again: %+v", s.Times)
	}
}
