package plan_test

import (
	"slices"
	"testing"

	"millside/plan"
	"millside/plan/wind"
)

// Three kinds of pass: eight positions, the outer ones of them, and eight again in other colours.
func TestKinds(t *testing.T) {
	s := plan.DefaultSpec()
	s.Stripes, s.Ends, s.Positions, s.Group = "drawn", 24, 8, 6
	s.Schedule = &plan.Schedule{
		Colours: []plan.StripeColour{{Name: "sand"}, {Name: "reed"}},
		SetUps:  []plan.SetUp{{1, 1, 1, 1, 2, 2, 2, 2}, {2, 1, 1, 1, 2, 2, 2, 2}},
		Passes: []plan.ScheduledPass{
			{Carried: wind.Span(1, 6), SetUp: 1}, {Carried: wind.Span(1, 2) | wind.Span(7, 8), SetUp: 1},
			{Carried: wind.Span(1, 6), SetUp: 1}, {Carried: wind.Span(1, 6), SetUp: 2},
			{Carried: wind.Span(7, 8), SetUp: 2},
		},
	}
	p := must(t, s)
	var got []int
	for _, k := range p.Kinds() {
		got = append(got, k.Number, k.Passes)
	}
	if want := []int{1, 2, 2, 1, 3, 1, 4, 1}; !slices.Equal(got, want) {
		t.Errorf("kinds %v, not %v", got, want)
	}
	var numbers []int
	for pass := range 7 {
		numbers = append(numbers, p.KindOf(1, pass))
	}
	if want := []int{0, 1, 2, 1, 3, 4, 0}; !slices.Equal(numbers, want) || p.KindOf(2, 1) != 0 {
		t.Errorf("kinds of the passes: %v, not %v", numbers, want)
	}
	if got, want := p.KindText(p.Kinds()[1]), "positions 1, 2 C sand; 7, 8 D reed"; got != want {
		t.Errorf("%q, not %q", got, want)
	}
	if got, want := p.KindText(p.Kinds()[3]), "positions 7, 8 D reed"; got != want {
		t.Errorf("%q, not %q", got, want)
	}
	if got, want := p.KindText(p.Kinds()[2]), "positions 1, 5, 6 D reed; 2 to 4 C sand"; got != want {
		t.Errorf("%q, not %q", got, want)
	}
	if plan.KindName(1) != "I" || plan.KindName(4) != "IV" || plan.KindName(48) != "XLVIII" || plan.KindName(0) != "?" {
		t.Error("names")
	}
	if plain := must(t, plan.DefaultSpec()); plain.Kinds() != nil || plain.KindOf(1, 1) != 0 {
		t.Error("a plain warp has kinds")
	}
	s.Ends, s.Schedule.Passes = 12, s.Schedule.Passes[:1]
	s.Schedule.Passes = append(s.Schedule.Passes, s.Schedule.Passes[0])
	if one := must(t, s); len(one.Kinds()) != 1 || one.KindOf(1, 1) != 0 {
		t.Error("one kind has a name")
	}
}
