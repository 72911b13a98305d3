package sheet

import (
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/figure"
	"millside/plan/project"
	"millside/plan/times"
	"millside/plan/wind"
)

// The sheet of a striped warp lists each pass once: by way in a few lines, and what it carries in one list.
// No note says of every pass that it is a short one.
func TestStripedSheetListsPassesOnce(t *testing.T) {
	s := plan.DefaultSpec()
	s.Positions, s.Group, s.Ends = 4, 4, 0
	set := plan.SetUp{1, 1, 2, 2}
	s.Schedule = &plan.Schedule{Colours: []plan.StripeColour{{Name: "red"}, {Name: "white"}}, SetUps: []plan.SetUp{set}}
	for i := range 40 {
		carried := wind.FirstPositions(2 + 2*(i%2))
		s.Schedule.Passes = append(s.Schedule.Passes, plan.ScheduledPass{Carried: carried, SetUp: 1})
		s.Ends += carried.Count()
	}
	p, err := plan.New(s)
	if err != nil {
		t.Fatal(err)
	}
	pr, err := project.Of(p, times.PublishedPace())
	if err != nil {
		t.Fatal(err)
	}
	sheet, err := New(pr, Options{})
	if err != nil {
		t.Fatal(err)
	}
	passes, _ := sheet.Part(PartPasses)
	if n := len(passes.Table.Lines); n > 4 {
		t.Errorf("%d lines of ways for 40 passes: %v", n, passes.Table.Lines)
	}
	for _, note := range passes.Notes {
		if strings.Contains(note, "carries only") {
			t.Errorf("a note for a pass: %s", note)
		}
	}
	// What is alike stands once, with the numbers of its passes; the work at the pegs too.
	ends := 0
	striped, _ := sheet.Part(PartStripedPasses)
	for _, line := range striped.Table.Lines {
		each, ok := line[5].Only()
		if !ok {
			t.Fatalf("ends %q", line[5])
		}
		for _, pass := range line[1] {
			switch pass := pass.(type) {
			case figure.Count:
				ends += each.N
			case figure.List:
				ends += len(pass) * each.N
			}
		}
	}
	if n := len(striped.Table.Lines); n != 2 || ends != p.EndsWound() {
		t.Errorf("%d kinds of pass of two, with %d of %d ends: %v", n, ends, p.EndsWound(), striped.Table.Lines)
	}
	if work, _ := sheet.Part(PartWork); len(work.Table.Lines) > 5 {
		t.Errorf("%d lines of work at the pegs: %v", len(work.Table.Lines), work.Table.Lines)
	}
	all, err := New(pr, Options{AllPasses: true})
	if err != nil {
		t.Fatal(err)
	}
	if striped, _ := all.Part(PartStripedPasses); len(striped.Table.Lines) != 40 {
		t.Errorf("%d passes in the whole list", len(striped.Table.Lines))
	}
	if work, _ := all.Part(PartWork); len(work.Table.Lines) < 40 {
		t.Errorf("%d lines in the whole list of work", len(work.Table.Lines))
	}
}
