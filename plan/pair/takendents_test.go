package pair_test

import (
	"slices"
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/loom"
	"millside/plan/pair"
)

func crammed(t *testing.T, text string) func(*plan.Spec) {
	return func(s *plan.Spec) {
		s.Loom.Reed = reed(t, "10 dents an inch")
		var err error
		if s.Loom.Dents, err = loom.ParseDentSections(text); err != nil {
			t.Fatal(err)
		}
	}
}

// By hand (common practice, no source): a ground of 2 in each of two dents and 4 in the third, over and over, and one
// end of a second after every second one of the ground. Each end of the second lies in the dent of the end before it:
// 3, 3 and 6.
func TestCrammedGroundIsTakenOver(t *testing.T) {
	ground := warp(t, "ground", 80, 8, "26.67 an inch", crammed(t, "2 dents of 2, 1 of 4"))
	second := warp(t, "second", 40, 8, "13.33 an inch", nil)
	j, err := pair.New(ground, second, pair.Ask{Order: "2 ground, 1 second"})
	if err != nil {
		t.Fatal(err)
	}
	if len(j.Sley.Dents) != 30 || !slices.Equal(j.Sley.Dents[:6], []int{3, 3, 6, 3, 3, 6}) ||
		j.Sett.String() != "40 an inch" {
		t.Errorf("%v at %v", j.Sley.Dents, j.Sett)
	}
	for end := 1; end <= 80; end++ { // the ground lies as it would alone
		if got, want := j.DentOf(pair.Ground, end), ground.Sley.DentOf(end); got != want {
			t.Fatalf("end %d lies in dent %d, alone in %d", end, got, want)
		}
	}
	part, _ := j.Sheet().Part("reed")
	if text := strings.Join(part.Notes, " "); !strings.Contains(text, "The ground alone is crammed and "+
		"spaced, and keeps its dents: each end of the second goes into the dent of the end on its left") {
		t.Errorf("not said: %s", text)
	}
}

// What can't be kept is refused, and the dents of both settle it.
func TestCrammedWarpsThatContradict(t *testing.T) {
	ground := warp(t, "ground", 80, 8, "26.67 an inch", crammed(t, "2 dents of 2, 1 of 4"))
	plain := warp(t, "second", 40, 8, "13.33 an inch", nil)
	both := warp(t, "second", 40, 8, "13.33 an inch", crammed(t, "2 dents of 1, 1 of 2"))
	for name, c := range map[string]struct {
		second func() (*pair.Joint, error)
		want   string
	}{
		"both": {func() (*pair.Joint, error) {
			return pair.New(ground, both, pair.Ask{Order: "2 ground, 1 second"})
		}, "each warp is crammed and spaced by itself"},
		"beside": {func() (*pair.Joint, error) {
			return pair.New(ground, plain, pair.Ask{Order: "2 ground, 1 second", Beside: true})
		}, "the other warp lies beside it"},
	} {
		if _, err := c.second(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", name, err)
		}
	}
	dents, err := loom.ParseDentSections("30 dents of 4")
	if err != nil {
		t.Fatal(err)
	}
	if j, err := pair.New(ground, both, pair.Ask{Order: "2 ground, 1 second", Dents: dents}); err != nil ||
		len(j.Sley.Dents) != 30 || j.Sley.Dents[2] != 4 {
		t.Errorf("dents of both: %v", err)
	}
}
