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
	if got := p.KindNumbers(); len(got) != 1 || !slices.Equal(got[0], []int{1, 2, 1, 3, 4}) {
		t.Errorf("kinds of the passes: %v", got)
	}
	if got, want := p.KindText(p.Kinds()[1]), "positions 1, 2 C sand; 7, 8 D reed"; got != want {
		t.Errorf("%q, not %q", got, want)
	}
	if plan.KindName(1) != "I" || plan.KindName(4) != "IV" || plan.KindName(48) != "XLVIII" || plan.KindName(0) != "?" {
		t.Error("names")
	}
	if must(t, plan.DefaultSpec()).Kinds() != nil {
		t.Error("a plain warp has kinds")
	}
}
