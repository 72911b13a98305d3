package plan_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/figure"
	"millside/plan/project"
	"millside/plan/sheet"
	"millside/plan/stripe"
	"millside/plan/wind"
)

// handMade is a striped warp of 15 ends with a schedule written by hand: two set-ups, a short pass, and
// position 4 empty at first.
func handMade(t testing.TB) *plan.Plan {
	t.Helper()
	s := plan.DefaultSpec()
	s.Ends, s.Group, s.Positions, s.ReturnOrder = 15, 4, 4, wind.MirroredOrder
	s.Stripes = "by hand"
	s.Schedule = &plan.Schedule{
		Colours: []plan.StripeColour{{Name: "white", Shade: "#f4f1e8"}, {Name: "red"}},
		SetUps:  []plan.SetUp{{1, 1, 2, 0}, {1, 2, 2, 1}},
		Passes: []plan.ScheduledPass{{Carried: wind.Span(1, 3), SetUp: 1}, {Carried: wind.Span(1, 3), SetUp: 1},
			{Carried: wind.Span(1, 4), SetUp: 2}, {Carried: wind.Span(2, 4), SetUp: 2},
			{Carried: wind.Span(1, 2), SetUp: 2}},
	}
	p, err := plan.New(s)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestSetUpWords(t *testing.T) {
	p := handMade(t)
	for _, c := range []struct {
		set           plan.SetUp
		letters, text string
	}{
		{nil, "", "nothing"},
		{plan.SetUp{1, 1, 2, 0}, "CCD·", "1, 2 C white; 3 D red; 4 empty"},
		{plan.SetUp{1, 1, 1, 1, 2, 2}, "CCCC DD", "1 to 4 C white; 5, 6 D red"},
		{plan.SetUp{0, 2, 0, 0, 0, 2, 2, 2, 1}, "·D·· ·DDD C",
			"1 empty; 2 D red; 3 to 5 empty; 6 to 8 D red; 9 C white"},
	} {
		if got := c.set.Letters(); got != c.letters {
			t.Errorf("%v in letters is %q, not %q", c.set, got, c.letters)
		}
		if got := p.SetUpText(c.set); got != c.text {
			t.Errorf("%v is %q, not %q", c.set, got, c.text)
		}
	}
}

func TestChangesText(t *testing.T) {
	p := handMade(t)
	for _, c := range []struct {
		changes []plan.Change
		want    string
	}{
		{nil, "nothing"},
		{[]plan.Change{{Position: 2, From: 1, To: 2}}, "position 2 from C white to D red"},
		{[]plan.Change{{Position: 2, From: 1, To: 2}, {Position: 3, From: 1, To: 2}, {Position: 4, To: 1}},
			"positions 2, 3 from C white to D red; position 4 C white"},
		{[]plan.Change{{Position: 1, From: 2}, {Position: 3, From: 2}}, "positions 1, 3 from D red to empty"},
	} {
		if got := p.ChangesText(c.changes); got != c.want {
			t.Errorf("%+v is %q, not %q", c.changes, got, c.want)
		}
	}
	if got := p.ChangesText(p.ChangesBefore(p.Chains[0],
		3)); got != "position 2 from C white to D red; position 4 C white" {
		t.Errorf("before pass 3: %q", got)
	}
}

// Worked by hand: pass 2 and pass 4 lie from the highest position to the lowest.
func TestRunsByHand(t *testing.T) {
	p := handMade(t)
	var got []string
	for _, pass := range p.Chains[0].Passes {
		got = append(got, plan.RunsText(p.PassRuns(pass)))
	}
	if want := []string{"2 C, 1 D", "1 D, 2 C", "1 C, 2 D, 1 C", "1 C, 2 D", "1 C, 1 D"}; !slices.Equal(got, want) {
		t.Errorf("the passes lie as %q, not %q", got, want)
	}
	// A A B B A A A B B A A B B A B
	want := []plan.EndRun{{1, 2, 1}, {3, 4, 2}, {5, 7, 1}, {8, 9, 2}, {10, 11, 1}, {12, 13, 2}, {14, 14, 1},
		{15, 15, 2}}
	if got := p.EndRuns(); !slices.Equal(got, want) {
		t.Errorf("the ends are %v, not %v", got, want)
	}
	if got, want := p.ColourUses(), []plan.ColourUse{{1, 8, 2}, {2, 7, 2}}; !slices.Equal(got, want) {
		t.Errorf("the colours are %v, not %v", got, want)
	}
}

// For every end the runs say the same as EndColour, in several chains and in both return orders.
func TestRunsAgreeWithEndColour(t *testing.T) {
	for _, text := range []string{"4 red, 3 times (2 white, 1 blue, 5 red), 4 red",
		"mirror (3 red, 1 white, 2 blue, 7 white)", "20 white"} {
		for _, order := range []wind.ReturnOrder{wind.SameOrder, wind.MirroredOrder} {
			s := plan.DefaultSpec()
			s.Stripes, s.Positions, s.ReturnOrder, s.ChainEnds = text, 5, order, 12
			made, err := stripe.ForPlan(context.Background(), s, stripe.Ask{}, nil)
			if err != nil {
				t.Fatal(err)
			}
			p, err := plan.New(made.Spec)
			if err != nil {
				t.Fatal(err)
			}
			end, ends := 0, 0
			for _, run := range p.EndRuns() {
				if run.First != end+1 {
					t.Fatalf("%s: run %+v follows end %d", text, run, end)
				}
				for end < run.Last {
					if end++; p.EndColour(end) != run.Colour {
						t.Fatalf("%s: end %d is %d, the run %+v", text, end, p.EndColour(end), run)
					}
				}
			}
			for _, use := range p.ColourUses() {
				ends += use.Ends
			}
			if end != p.EndsWound() || ends != end {
				t.Errorf("%s: runs up to end %d, colours of %d ends, of %d", text, end, ends, p.EndsWound())
			}
		}
	}
}

func TestPlainWarpHasNoColours(t *testing.T) {
	p, err := plan.New(plan.DefaultSpec())
	if err != nil {
		t.Fatal(err)
	}
	if p.EndRuns() != nil || p.ColourUses() != nil || p.PassRuns(p.Chains[0].Passes[0]) != nil {
		t.Error("a plain warp has colours")
	}
	made, err := sheet.New(&project.Project{Plan: p}, sheet.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, id := range []sheet.PartID{sheet.PartStripes, sheet.PartStripedPasses, sheet.PartEndColours} {
		if _, ok := made.Part(id); ok {
			t.Errorf("the sheet of a plain warp has a part %q", id)
		}
	}
}

func TestSheetOfAStripedWarp(t *testing.T) {
	p := handMade(t)
	made, err := sheet.New(&project.Project{Plan: p}, sheet.Options{AllPasses: true})
	if err != nil {
		t.Fatal(err)
	}
	lines := func(id sheet.PartID) (all []string) {
		part, ok := made.Part(id)
		if !ok || part.Table == nil {
			t.Fatalf("no part %q with a table", id)
		}
		for _, row := range part.Rows {
			all = append(all, row.Name+": "+row.Value.String())
		}
		for _, line := range part.Table.Lines {
			if len(line) != len(part.Table.Columns) {
				t.Errorf("%q: %d cells under %d columns", id, len(line), len(part.Table.Columns))
			}
			all = append(all, figure.Join(line, " | ").String())
		}
		return all
	}
	for id, want := range map[sheet.PartID][]string{
		sheet.PartStripes: {"stripes: by hand", "C white: 8 ends, 2 packages at once, #f4f1e8",
			"D red: 7 ends, 2 packages at once",
			"1 | 1 | 1 | CCD· | thread positions 1, 2 C white; 3 D red; 4 empty",
			"2 | 1 | 3 | CDDC | position 2 from C white to D red; position 4 C white"},
		sheet.PartStripedPasses: {"1 | 1 | outward | 1 | 1 to 3 | 1 to 3 | 2 C, 1 D",
			"1 | 2 | return | 1 | 1 to 3 | 4 to 6 | 1 D, 2 C",
			"1 | 3 | outward | 2 | 1 to 4 | 7 to 10 | 1 C, 2 D, 1 C",
			"1 | 4 | return | 2 | 2 to 4 | 11 to 13 | 1 C, 2 D", "1 | 5 | outward | 2 | 1, 2 | 14 to 15 | 1 C, 1 D"},
		sheet.PartEndColours: {"1 | 2 | 2 | C white", "3 | 4 | 2 | D red", "5 | 7 | 3 | C white", "8 | 9 | 2 | D red",
			"10 | 11 | 2 | C white", "12 | 13 | 2 | D red", "14 | 14 | 1 | C white", "15 | 15 | 1 | D red"},
	} {
		if got := lines(id); !slices.Equal(got, want) {
			t.Errorf("%q has\n%s\nnot\n%s", id, strings.Join(got, "\n"), strings.Join(want, "\n"))
		}
	}
}
