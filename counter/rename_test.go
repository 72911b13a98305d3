package counter_test

import (
	"testing"

	"millside/counter"
	"millside/counter/internal/countertest"
	"millside/plan"
)

// A new name begins nothing, moves no time, survives the other return order, and comes after the end too.
func TestRenamed(t *testing.T) {
	p, err := plan.New(plan.DefaultSpec())
	if err != nil {
		t.Fatal(err)
	}
	s := counter.NewState(p)
	name := func(text string) counter.Event {
		return counter.Event{At: countertest.At(9), Kind: counter.Renamed, Text: text}
	}
	take := func(e counter.Event) {
		t.Helper()
		if s, err = s.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
	take(name("Blue rug"))
	if s.Begun() || !s.Started.IsZero() || !s.Last.IsZero() ||
		s.Plan.Spec.Name != "Blue rug" || p.Spec.Name == "Blue rug" {
		t.Fatalf("%+v", s)
	}
	for _, e := range countertest.Sample()[:3] { // the third shows the other return order
		take(e)
	}
	if s.Plan.Spec.Name != "Blue rug" || s.Started != countertest.At(1) || !s.Begun() {
		t.Fatalf("%q, begun at %s", s.Plan.Spec.Name, s.Started)
	}
	last := s.Last
	take(name("Red rug"))
	if s.Last != last || len(s.Renames) != 2 || s.Renames[1].From != "Blue rug" {
		t.Errorf("%+v, last %s", s.Renames, s.Last)
	}
	for _, bad := range []string{"", "  ", "a\nb", string(make([]rune, 99))} {
		if _, err := s.Apply(name(bad)); err == nil {
			t.Errorf("%q is a name", bad)
		}
	}
}

// Another warp beside it begins nothing and moves no time, survives the other return order, comes after the end too,
// and is taken back. The hand-over tells it, and then no section and no dent as if the warp lay alone.
func TestJoined(t *testing.T) {
	p, err := plan.New(plan.DefaultSpec())
	if err != nil {
		t.Fatal(err)
	}
	s := counter.NewState(p)
	take := func(e counter.Event) {
		t.Helper()
		if s, err = s.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
	with := func(text string) counter.Event {
		return counter.Event{At: countertest.At(9), Kind: counter.Joined, Text: text}
	}
	take(with("the second pile"))
	if s.Begun() || !s.Started.IsZero() || s.Plan.Spec.GoesWith != "the second pile" || p.Spec.GoesWith != "" {
		t.Fatalf("%+v", s)
	}
	for _, e := range countertest.Sample()[:3] {
		take(e)
	}
	if s.Plan.Spec.GoesWith != "the second pile" || s.Started != countertest.At(1) {
		t.Fatalf("%q, begun at %s", s.Plan.Spec.GoesWith, s.Started)
	}
	part := counter.HandOver(s, func(func(counter.Event) bool) {})
	if len(part.Rows) == 0 || part.Rows[0].Value.String() != "the second pile" {
		t.Errorf("%+v", part)
	}
	take(with(counter.Apart))
	if s.Plan.Spec.GoesWith != "" || s.Joins != 2 || !s.Begun() {
		t.Errorf("%+v", s)
	}
	for _, bad := range []string{"", "  ", "a\nb", string(make([]rune, 99))} {
		if _, err := s.Apply(with(bad)); err == nil {
			t.Errorf("%q is taken", bad)
		}
	}
}
