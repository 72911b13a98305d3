package planout

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/sheet"
	"millside/plan/times"
	"millside/plan/wind"

	"pgregory.net/rapid"
)

// The page, the JSON and the sheet tell one ranking of groups, whatever group the plan itself has.
func TestOneRankingOfGroups(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := plan.DefaultSpec()
		s.Ends = rapid.IntRange(1, 3000).Draw(t, "ends")
		s.Positions = rapid.IntRange(1, 24).Draw(t, "positions")
		s.Group = rapid.IntRange(1, s.Positions).Draw(t, "group")
		s.ReturnOrder = wind.ReturnOrder(rapid.IntRange(0, 1).Draw(t, "order"))
		s.LastPass = wind.LastPass(rapid.IntRange(0, 1).Draw(t, "last"))
		s.ChainEnds = rapid.SampledFrom([]int{0, 300}).Draw(t, "chain")
		s.Yarn.Packages = rapid.IntRange(0, 24).Draw(t, "packages")
		pr, err := project.New(s, times.Pace{})
		if err != nil {
			t.Fatal(err)
		}
		first := pr.Choices[0]
		var page bytes.Buffer
		PlanText(&page, pr)
		if !strings.Contains(page.String(), "   1  "+first.Label()) {
			t.Fatalf("the page doesn't begin with %q:\n%s", first.Label(), page.String())
		}
		planned := 0
		out := PlanToJSON(pr)
		for i, c := range out.Choices {
			if want := pr.Choices[i]; c.Label != want.Label() || c.Passes != want.Passes || c.SpareEnds != want.Spares {
				t.Fatalf("JSON has %q as number %d, want %q", c.Label, i+1, want.Label())
			}
			if c.Planned {
				planned = i + 1
			}
		}
		onSheet, err := sheet.New(pr, sheet.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if how := groupHow(t, onSheet); !strings.HasPrefix(how.WithNumbers.String(),
			fmt.Sprintf("number %d of %d ways", planned, len(pr.Choices))) {
			t.Fatalf("JSON has the plan as number %d; the sheet says %q", planned, how.WithNumbers)
		}
	})
}

func groupHow(t *rapid.T, s *sheet.Sheet) measure.How {
	part, _ := s.Part(sheet.PartPlan)
	for _, r := range part.Rows {
		if r.Name == "group" {
			return r.How
		}
	}
	t.Fatal("the sheet doesn't tell the group")
	return measure.How{}
}
