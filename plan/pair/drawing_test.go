package pair_test

import (
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/pair"
)

// Drawn by hand: 24 ends of the ground at 12 an inch and 12 of the second at 6, in a reed of 9 dents an inch: two ends
// in each dent, an inch of the raddle holds 12 and 6. Order 2 and 1: the dents are GG, SG, GS and again.
func TestPictures(t *testing.T) {
	with := func(s *plan.Spec) { s.Loom.Reed = reed(t, "9 dents an inch") }
	j, err := pair.New(warp(t, "ground", 24, 6, "12 an inch", with), warp(t, "second", 12, 4, "6 an inch", with),
		pair.Ask{Order: "2 ground, 1 second"})
	if err != nil {
		t.Fatal(err)
	}
	want := "G is an end of the ground, S one of the second, | a wire of the reed.\n" +
		"dents 1 to 18, 6 times over:\n" +
		"  |GG|SG|GS|"
	if got := strings.Join(j.ReedPicture(76), "\n"); got != want {
		t.Errorf("the reed:\n%s", got)
	}
	want = "from the middle |1L |1R |\n" +
		"ground, ends    |12 |12 |\n" +
		"its groups      |1-2|3-4|\n" +
		"second, ends    | 4 | 8 |\n" +
		"its groups      | 1 |2-3|\n" +
		"L and R: left and right of the middle, | a tooth of the raddle."
	if got := strings.Join(j.RaddlePicture(76), "\n"); got != want {
		t.Errorf("the raddle:\n%s", got)
	}
	d := j.Sheet().Drawings
	if d.JointRaddle == nil || len(d.JointRaddle.Sections) != 2 ||
		d.JointRaddle.Sections[1].Second.GroupNumbers != "2-3" {
		t.Errorf("the raddle drawn: %+v", d.JointRaddle)
	}
	if d.JointReed == nil || len(d.JointReed.Runs) != 1 || d.JointReed.Runs[0].Times != 6 {
		t.Errorf("the reed drawn: %+v", d.JointReed)
	}
}

// However narrow the screen, no line of a picture is wider, and dents that don't repeat stand together.
func TestPicturesFit(t *testing.T) {
	with := func(s *plan.Spec) { s.Loom.Reed = reed(t, "12 dents an inch") }
	j, err := pair.New(warp(t, "ground", 728, 12, "24 an inch", with), warp(t, "second", 240, 7, "8 an inch", with),
		pair.Ask{Order: "4 ground, 240 times (1 second, 3 ground), 4 ground"})
	if err != nil {
		t.Fatal(err)
	}
	for _, width := range []int{40, 56, 76, 150} {
		for _, line := range append(j.ReedPicture(width), j.RaddlePicture(width)...) {
			if len(line) > width {
				t.Errorf("%d: %q", width, line)
			}
		}
	}
	if got := strings.Join(j.ReedPicture(76), "\n"); !strings.Contains(got, "dent 1:\n  |GG|\n"+
		"dents 2 to 361, 120 times over:\n  |GGS|GGG|SG|\ndents 362 to 363, 2 times over:\n  |GGG|") {
		t.Errorf("the reed:\n%s", got)
	}
}
