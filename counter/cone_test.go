package counter_test

import (
	"testing"

	"millside/counter"
	"millside/plan"
	"millside/plan/measure"
)

// A new cone splits the passes of a position between the old cone and itself, and the reckoning of what
// is left follows: with 20 passes of 5 yd and 2 in at the pegs each, a cone that holds enough for ten and
// a bit runs out on pass 11; changed before pass 11 it doesn't, and the new one is reckoned from there.
func TestNewCone(t *testing.T) {
	spec := plan.DefaultSpec()
	for v, text := range map[interface{ UnmarshalText([]byte) error }]string{&spec.Yarn.Size: "8/2 cotton",
		&spec.Yarn.Cones: "20 g", &spec.Yarn.Tube: "10 g"} {
		if err := v.UnmarshalText([]byte(text)); err != nil {
			t.Fatal(err)
		}
	}
	p, err := plan.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	var events []counter.Event
	for k := 1; k <= 10; k++ {
		events = append(events, laid(1, k))
	}
	s, err := Fold(p, events)
	if err != nil {
		t.Fatal(err)
	}
	use, err := p.Yarn(s.ConesInUse(), plan.DefaultExtras())
	if err != nil {
		t.Fatal(err)
	}
	// 10 g of 3,360 yd/lb are 74.07 yd; 18 in to begin and 5 yd 2 in a pass: 14.3 passes.
	if at := use.Cones[3].RunsOut; at == nil || at.Pass != 15 {
		t.Fatalf("runs out at %+v, want pass 15", at)
	}
	s, err = s.Apply(counter.Event{Kind: counter.NewCone, Chain: 1, Pass: 11, Position: 4, Weight: 300 * measure.Gram})
	if err != nil {
		t.Fatal(err)
	}
	cones := s.ConesInUse()
	use, err = p.Yarn(cones, plan.DefaultExtras())
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range use.Cones {
		if c.Cone.Position != 4 {
			continue
		}
		if c.RunsOut != nil || c.Passes != 10 {
			t.Errorf("%+v feeds %d passes, runs out at %+v", c.Cone, c.Passes, c.RunsOut)
		}
	}
	for name, e := range map[string]counter.Event{
		"position 0":     {Kind: counter.NewCone, Chain: 1, Pass: 11},
		"position 13":    {Kind: counter.NewCone, Chain: 1, Pass: 11, Position: 13},
		"pass 12":        {Kind: counter.NewCone, Chain: 1, Pass: 12, Position: 1},
		"another chain":  {Kind: counter.NewCone, Chain: 2, Pass: 1, Position: 1},
		"a heavy weight": {Kind: counter.NewCone, Chain: 1, Pass: 11, Position: 1, Weight: 101 * measure.Kilogram},
	} {
		if _, err := s.Apply(e); err == nil {
			t.Errorf("%s was taken", name)
		}
	}
}
