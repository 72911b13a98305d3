package beside_test

import (
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/beside"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/times"
)

func warp(t *testing.T, change func(*plan.Spec)) *project.Project {
	t.Helper()
	s := plan.DefaultSpec()
	s.Cloth.Used, s.Cloth.Length.Pieces = true, 1
	s.Cloth.Width.Finished, s.Cloth.Length.Piece = 20*measure.Inch, 5*measure.Yard
	if err := s.Loom.Sett.UnmarshalText([]byte("20 an inch")); err != nil {
		t.Fatal(err)
	}
	if err := s.Yarn.Size.UnmarshalText([]byte("3360 yd/lb")); err != nil {
		t.Fatal(err)
	}
	change(&s)
	pr, err := project.New(s, times.Pace{})
	if err != nil {
		t.Fatal(err)
	}
	return pr
}

// Own example, by hand: 20 in at 20 an inch are 400 ends. Two doubled ends at each edge make 404, and two floating
// selvedges 406; wound apart they leave 404, and take 2 x (5 yd + 2 in + 18 in) = 11 yd and 4 in of yarn, at 3,360 yd
// a pound 0.053 oz, rounded up.
func TestSelvedges(t *testing.T) {
	with := warp(t, func(s *plan.Spec) { s.Cloth.Width.Doubled, s.Cloth.Width.Floating = 2, 2 })
	apart := warp(t, func(s *plan.Spec) {
		s.Cloth.Width.Doubled, s.Cloth.Width.Floating, s.Cloth.Width.FloatingApart = 2, 2, true
	})
	if with.Plan.EndsWound() != 406 || apart.Plan.EndsWound() != 404 {
		t.Errorf("%d ends with them, %d without, want 406 and 404", with.Plan.EndsWound(), apart.Plan.EndsWound())
	}
	for _, c := range []struct {
		pr   *project.Project
		want string
	}{
		{with, "two in a heddle and two in a dent, so they add 4 ends and no width"},
		{with, "2 ends of the warp, wound with it: 1 on the left and 1 on the right, in no heddle"},
		{apart, "2 ends, wound apart and not among the 404 ends: 1 on the left and 1 on the right"},
		{apart, "11.1 yd, 0.1 oz"},
		{apart, "a weight on each behind the loom"},
	} {
		text := ""
		for _, row := range beside.Selvedges(c.pr.Plan) {
			text += row.Value.String() + "\n"
		}
		if !strings.Contains(text, c.want) {
			t.Errorf("%q isn't in\n%s", c.want, text)
		}
	}
	if lines := beside.AtTheMill(apart.Plan); len(lines) != 1 || beside.AtTheMill(with.Plan) != nil {
		t.Errorf("at the mill: %q", lines)
	}
	none := warp(t, func(*plan.Spec) {})
	if rows := beside.Selvedges(none.Plan); rows != nil {
		t.Errorf("a warp without any: %v", rows)
	}
}

// Floating selvedges that are wound apart go through no heddle, and the warp's own ends through one each.
func TestFloatingApartLeavesTheThreading(t *testing.T) {
	pr := warp(t, func(s *plan.Spec) {
		s.Cloth.Width.Floating, s.Cloth.Width.FloatingApart = 2, true
		if err := s.Loom.Threading.UnmarshalText([]byte("1, 2, 3, 4")); err != nil {
			t.Fatal(err)
		}
	})
	if got := pr.Whereabouts(1); got != ", shaft 1" {
		t.Errorf("end 1 lies%s", got)
	}
	pr = warp(t, func(s *plan.Spec) {
		s.Cloth.Width.Floating, s.Loom.Threading = 2, pr.Plan.Spec.Loom.Threading
	})
	if got, second := pr.Whereabouts(1), pr.Whereabouts(2); got != ", through no heddle" || second != ", shaft 1" {
		t.Errorf("end 1 lies%s, end 2%s", got, second)
	}
}
