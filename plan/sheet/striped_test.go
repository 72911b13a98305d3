package sheet

import (
	"strings"
	"testing"

	"millside/plan"
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
	if striped, _ := sheet.Part(PartStripedPasses); len(striped.Table.Lines) != 40 {
		t.Errorf("%d passes in the list", len(striped.Table.Lines))
	}
}
