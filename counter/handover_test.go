package counter_test

import (
	"slices"
	"strings"
	"testing"

	"millside/counter"
	"millside/plan"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/sheet"
)

// forTheLoom is a plan that knows its raddle and its reed: 80 ends by ten at 20 an inch, so 4 in, in a
// raddle of half inches (10 ends in each) and a reed of ten dents an inch (2 ends in each).
func forTheLoom(t *testing.T) *plan.Plan {
	t.Helper()
	spec := plan.DefaultSpec()
	spec.Name, spec.Ends, spec.Group = "for the loom", 80, 10
	if err := spec.Loom.Sett.UnmarshalText([]byte("20 an inch")); err != nil {
		t.Fatal(err)
	}
	reed, err := loom.ParseReed("10 dents an inch")
	if err != nil {
		t.Fatal(err)
	}
	spec.Loom.Reed, spec.Loom.Raddle.Space = reed, measure.Inch/2
	spec.Loom.FirstEnd = loom.LeftSide
	p, err := plan.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// rowsOf are the rows of a hand-over as "name: value".
func rowsOf(part sheet.Part) []string {
	var rows []string
	for _, r := range part.Rows {
		rows = append(rows, r.Name+": "+r.Value.String())
	}
	return rows
}

// Position 4 of pass 3 lays end 24, which is the 4th end of the third raddle space from the left, and is
// one of the two ends of dent 12.
func TestHandOver(t *testing.T) {
	p := forTheLoom(t)
	events := []counter.Event{
		laid(1, 1), laid(1, 2), {At: at(2), Kind: counter.WrongTurn, Chain: 1, Pass: 2}, laid(1, 3),
		{At: at(4), Kind: counter.Incident, Chain: 1, Pass: 3, Position: 4, What: counter.Broken,
			Place: 2 * measure.Yard, HasPlace: true, Text: "mended"},
		{At: at(5), Kind: counter.Incident, Chain: 1, Pass: 2, Position: 1, What: counter.Knot},
		{At: at(6), Kind: counter.Withdrawn, Line: 7},
		{At: at(7), Kind: counter.Incident, Chain: 1, Pass: 2, What: counter.MissedOpening},
		{At: at(9), Kind: counter.Incident, Chain: 1, Pass: 3, Position: 9, What: counter.Knot},
		{At: at(10), Kind: counter.Recounted, Chain: 1, Pass: 2, Text: "counted at the pegs"},
	}
	want := []string{
		"not on the mill: pass 3, position 4, end 24: broken end, 2 yd from the lease (mended)",
		"missed opening: pass 2: missed opening, ends 11 to 20",
		"wrong turn: round the end peg after pass 2",
		"not on the mill: pass 3, position 9, end 29: knot",
		"recounted: from 3 to 2: counted at the pegs",
		"pace: 1 s a pass",
		"from first to last: 1 min, with all pauses",
	}
	part := counter.HandOver(foldOf(t, p, events...), slices.Values(events))
	got := rowsOf(part)
	slices.Sort(got)
	slices.Sort(want)
	if part.Title != "At the mill" || part.ID != sheet.PartRecord || !slices.Equal(got, want) {
		t.Errorf("%s:\n%s\nwant\n%s", part.Title, strings.Join(got, "\n"), strings.Join(want, "\n"))
	}

	// The count comes to pass 3 again, and its end is in the warp: with its raddle section and its dent.
	events = append(events, counter.Event{At: at(11), Kind: counter.Laid, Chain: 1, Pass: 3},
		counter.Event{At: at(12), Kind: counter.Righted})
	got = rowsOf(counter.HandOver(foldOf(t, p, events...), slices.Values(events)))
	for _, want := range []string{
		"broken end: pass 3, position 4, end 24: broken end, 2 yd from the lease (mended), raddle section 2 left, " +
			"dent 12 of the warp from the left",
		"wrong turn: round the end peg after pass 2, put right",
	} {
		if !slices.Contains(got, want) {
			t.Errorf("%q is missing:\n%s", want, strings.Join(got, "\n"))
		}
	}
}

// Once the warp is finished it is the hand-over; a warp of which nothing is known has none, and neither
// has the zero state.
func TestHandOverTitle(t *testing.T) {
	p := testPlan(t, 40, 10, 0)
	events := windAll(p)
	if part := counter.HandOver(foldOf(t, p, events...), slices.Values(events)); part.Title != "Hand-over" {
		t.Errorf("finished: %q", part.Title)
	}
	for _, s := range []counter.State{{}, counter.NewState(p)} {
		if part := counter.HandOver(s, slices.Values[[]counter.Event](nil)); len(part.Rows) > 0 {
			t.Errorf("nothing happened, and yet: %v", rowsOf(part))
		}
	}
}
