package project

import (
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/field"
	"millside/plan/internal/loomtest"
	"millside/plan/internal/measuretest"
	"millside/plan/measure"
	"millside/plan/times"
)

// What contradicts the reed is refused in a new plan, and one that was made before is shown as it was.
func TestContradictionsOfSettAndReed(t *testing.T) {
	s := plan.DefaultSpec()
	s.Loom.Sett, s.Loom.Reed = measuretest.Sett(t, "1 an inch"), loomtest.Reed(t, "15 dents an inch")
	_, err := New(s, times.Pace{})
	if all := measure.FieldErrors(err); len(all) != 1 || all[0].Field != field.SettOf.Name {
		t.Errorf("refused with %v", err)
	}
	p, err := plan.New(s)
	if err != nil {
		t.Fatal(err)
	}
	old, err := Of(p, times.Pace{})
	if err != nil || old.Sley == nil {
		t.Fatalf("an old record: %v", err)
	}
	if said := old.Settles(field.Reed); !strings.HasPrefix(said, "the reed decides: 1.25 an inch") ||
		old.SettRows()[0].Warning != said {
		t.Errorf("an old record says %q, and %q", said, old.SettRows()[0].Warning)
	}
	s.Loom.Sett = measuretest.Sett(t, "18.4 an inch")
	near, err := New(s, times.Pace{})
	if err != nil {
		t.Fatal(err)
	}
	if said := near.Settles(field.SettOf); said == "" || said != near.Settles(field.Reed) ||
		near.Settles(field.Raddle) != "" {
		t.Errorf("a near sett says %q and %q", said, near.Settles(field.Reed))
	}
	var none *Project
	if none.Settles(field.Reed) != "" {
		t.Error("nothing says something")
	}
}
