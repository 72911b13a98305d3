package athand

import (
	"testing"

	"millside/plan"
	"millside/plan/field"
)

// What there is only one of is taken, unless something was given in its place, there are two of it, or it would make
// the plan wrong.
func TestTheOnlyOneIsAssumed(t *testing.T) {
	const one = `mill floor: circumference 3 yd, peg step 9 in, rise 3 in
paddle short: positions 8
reed ten: 10 dents an inch
loom old: heddles 100 on 4 shafts
`
	sett := func(text string) func(*plan.Spec) {
		return func(s *plan.Spec) {
			if err := s.Loom.Sett.UnmarshalText([]byte(text)); err != nil {
				t.Fatal(err)
			}
		}
	}
	none := func(*plan.Spec) {}
	const mill, paddle, loom, reed = "the only mill at hand, floor", "the only paddle at hand, short",
		"the only loom at hand, old", "the only reed at hand, ten"
	for _, c := range []struct {
		name, more string
		give       func(*plan.Spec)
		given      []*field.Field
		want       string
	}{
		{"nothing given", "", none, nil, mill + "; " + paddle + "; " + loom + "; " + reed},
		{"two of each", "mill b: circumference 2 yd, peg step 1 ft\npaddle b: positions 6\nreed b: 8 dents an inch\n" +
			"loom b: heddles 9\n", none, nil, ""},
		{"another of each", "", none, []*field.Field{field.MillName, field.PaddleName, field.LoomName, field.Reed}, ""},
		{"other figures", "", none,
			[]*field.Field{field.Circumference, field.Positions, field.Heddles, field.Dents}, ""},
		{"a board", "", none, []*field.Field{field.Board}, paddle + "; " + loom + "; " + reed},
		{"groups that are too large", "", func(s *plan.Spec) { s.Group = 9 }, []*field.Field{field.Group},
			mill + "; " + loom + "; " + reed},
		{"a sett that the reed gives", "", sett("20 an inch"), nil, mill + "; " + paddle + "; " + loom + "; " + reed},
		{"a sett that it doesn't give", "", sett("2 in 10 cm"), nil, mill + "; " + paddle + "; " + loom},
	} {
		h, err := Parse(one + c.more)
		if err != nil {
			t.Fatal(err)
		}
		begin := plan.DefaultSpec()
		c.give(&begin)
		s, list := h.Assume(begin, func(f *field.Field) bool {
			for _, g := range c.given {
				if g == f {
					return true
				}
			}
			return false
		})
		want := c.want
		if want != "" {
			want = "assumed: " + want
		}
		if got := AssumedText(list); got != want {
			t.Errorf("%s: %q, want %q", c.name, got, want)
		}
		if err := s.Check(); err != nil {
			t.Errorf("%s: the plan is refused: %v", c.name, err)
		}
		for _, a := range list {
			if a.Kind == kindMill && s.Mill != h.Mills[0].Mill || a.Kind == kindPaddle && s.Positions != 8 ||
				a.Kind == kindReed && s.Loom.Reed != h.Reeds[0].Reed || a.Kind == kindLoom && len(s.Loom.Heddles) != 4 {
				t.Errorf("%s: %s isn't taken: %+v", c.name, a, s)
			}
		}
	}
}

// A figure that is given goes before that of the mill that is assumed.
func TestAGivenFigureStaysInAnAssumedMill(t *testing.T) {
	h, err := Parse("mill floor: circumference 3 yd, peg step 9 in, rise 3 in\n")
	if err != nil {
		t.Fatal(err)
	}
	begin := plan.DefaultSpec()
	begin.Mill.Rise = 5
	s, list := h.Assume(begin, func(f *field.Field) bool { return f == field.Rise })
	if s.Mill.Rise != 5 || s.Mill.Circumference != h.Mills[0].Mill.Circumference || len(list) != 1 {
		t.Errorf("%+v, %v", s.Mill, list)
	}
}
