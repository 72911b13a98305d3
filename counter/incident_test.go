package counter_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"millside/counter"
	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/wind"
)

// The lines that doc.go describes.
func TestTroubleInTheFile(t *testing.T) {
	want := []string{
		`4 2026-11-25T09:00:03Z incident chain=1 pass=2 position=4 what=knot`,
		`5 2026-11-25T09:00:04Z incident chain=1 pass=3 position=10 what=broken place="4.5 yd" text="mended, \"blue\""`,
		`6 2026-11-25T09:00:05Z incident chain=1 pass=1 position=0 what=missed-opening place="0 m"`,
		`7 2026-11-25T09:00:06Z incident chain=1 pass=2 position=0 what=wrong-peg text="over both"`,
		`8 2026-11-25T09:00:07Z withdrawn line=6`,
		`9 2026-11-25T09:00:08Z wrong-turn chain=1 pass=2`,
		`10 2026-11-25T09:00:09Z righted`,
		`11 2026-11-25T09:00:10Z tie-made chain=1 pass=2`,
		`12 2026-11-25T09:00:11Z new-cone chain=1 pass=3 position=4 weight="250 g"`,
		`13 2026-11-25T09:00:12Z new-cone chain=1 pass=3 position=5`,
	}
	for i, e := range trouble()[2:] {
		line := counter.AppendEvent(nil, i+4, e.Normal())
		if string(line) != want[i] {
			t.Errorf("written %s\n   want %s", line, want[i])
		}
		back, err := counter.ParseEvent([]byte(want[i]), i+4)
		if err != nil || back != e.Normal() {
			t.Errorf("%s: read as %+v, %v", want[i], back, err)
		}
	}
}

// A line that says the same in another way is damage.
func TestTroubleReadStrictly(t *testing.T) {
	for _, line := range []string{
		`2 2026-11-25T09:00:03Z incident chain=1 pass=2 position=4 what=knot `,
		`2 2026-11-25T09:00:03Z incident chain=1 pass=2 position=4`,
		`2 2026-11-25T09:00:03Z incident chain=1 pass=2 position=4 what=knot text=""`,
		`2 2026-11-25T09:00:03Z incident chain=1 pass=2 position=4 what=knot text="a" place="1 yd"`,
		`2 2026-11-25T09:00:03Z incident chain=1 pass=2 position=4 what=knot place="36 in"`,
		`2 2026-11-25T09:00:03Z incident chain=1 pass=2 position=4 what=knot place=1yd`,
		`2 2026-11-25T09:00:03Z incident chain=1 pass=2 position=4 what=knot place="-1 yd"`,
		`2 2026-11-25T09:00:03Z incident chain=1 pass=2 position=04 what=knot`,
		`2 2026-11-25T09:00:03Z withdrawn line=four`,
		`2 2026-11-25T09:00:03Z withdrawn`,
		`2 2026-11-25T09:00:03Z righted chain=1`,
	} {
		if e, err := counter.ParseEvent([]byte(line), 2); err == nil {
			t.Errorf("%s: read as %+v", line, e)
		}
	}
}

func foldOf(t *testing.T, p *plan.Plan, events ...counter.Event) counter.State {
	t.Helper()
	s, err := Fold(p, events)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// An end that broke is known by its number, and the number follows the order seen in the lease: with
// ten ends in the group position 4 of pass 2 lays end 14, or, mirrored, end 17 (design.md, rules 5 and 6).
func TestIncidentNamesTheEnd(t *testing.T) {
	p := testPlan(t, 40, 10, 0)
	events := []counter.Event{laid(1, 1), laid(1, 2),
		{Kind: counter.Incident, Chain: 1, Pass: 2, Position: 4, What: counter.Broken}}
	s := foldOf(t, p, events...)
	if end := s.Incidents[0].End; end != 14 {
		t.Errorf("end %d, want 14", end)
	}
	seen, err := s.Apply(counter.Event{Kind: counter.LeaseSeen, Order: wind.MirroredOrder})
	if err != nil || seen.Incidents[0].End != 17 {
		t.Errorf("mirrored: %+v, %v", seen.Incidents, err)
	}
	if s.Incidents[0].End != 14 {
		t.Error("the state before was changed")
	}
}

func TestIncidentOnUndonePass(t *testing.T) {
	p := testPlan(t, 40, 10, 0)
	knot := counter.Event{Kind: counter.Incident, Chain: 1, Pass: 2, Position: 4, What: counter.Knot}
	undo := counter.Event{Kind: counter.Undone, Chain: 1, Pass: 2}
	recount := func(n int) counter.Event {
		return counter.Event{Kind: counter.Recounted, Chain: 1, Pass: n, Text: "counted"}
	}
	tests := []struct {
		name   string
		events []counter.Event
		undone bool
	}{
		{"laid", []counter.Event{laid(1, 1), laid(1, 2), knot}, false},
		{"being laid", []counter.Event{laid(1, 1), knot}, false},
		{"being laid, then laid", []counter.Event{laid(1, 1), knot, laid(1, 2)}, false},
		{"taken back", []counter.Event{laid(1, 1), laid(1, 2), knot, undo}, true},
		{"being laid, laid and taken back", []counter.Event{laid(1, 1), knot, laid(1, 2), undo}, true},
		{"laid again", []counter.Event{laid(1, 1), laid(1, 2), knot, undo, laid(1, 2)}, false},
		{"noted after the undo", []counter.Event{laid(1, 1), laid(1, 2), undo, knot}, false},
		{"the pass before taken back", []counter.Event{laid(1, 1), knot, {Kind: counter.Undone, Chain: 1, Pass: 1}},
			true},
		{"recounted below", []counter.Event{laid(1, 1), laid(1, 2), knot, recount(1)}, true},
		{"recounted to the same", []counter.Event{laid(1, 1), knot, recount(1)}, false},
		{"recounted above", []counter.Event{laid(1, 1), laid(1, 2), knot, recount(0), recount(3)}, false},
	}
	for _, tt := range tests {
		in := foldOf(t, p, tt.events...).Incidents[0]
		if in.Undone != tt.undone || in.Stands() == tt.undone {
			t.Errorf("%s: undone %v, stands %v", tt.name, in.Undone, in.Stands())
		}
	}
}

func TestWithdrawn(t *testing.T) {
	s := foldOf(t, testPlan(t, 40, 10, 0), trouble()...)
	var withdrawn []int
	for _, in := range s.Incidents {
		if in.Withdrawn {
			withdrawn = append(withdrawn, in.Number)
		}
		if in.Stands() == in.Withdrawn {
			t.Errorf("%+v", in)
		}
	}
	if len(s.Incidents) != 4 || !slices.Equal(withdrawn, []int{6}) {
		t.Errorf("%d incidents, taken back %v", len(s.Incidents), withdrawn)
	}
}

func TestIncidentWords(t *testing.T) {
	s := foldOf(t, testPlan(t, 40, 10, 0), trouble()...)
	want := []string{
		"pass 2, position 4, end 14: knot",
		`pass 3, position 10, end 30: broken end, 4.5 yd from the lease (mended, "blue")`,
		"pass 1: missed opening, 0 yd from the lease",
		"pass 2: wrong peg (over both)",
	}
	for i, in := range s.Incidents {
		if got := in.Words(measure.Imperial); got != want[i] {
			t.Errorf("%q, want %q", got, want[i])
		}
	}
}

// Noting goes on through a pause and through the finishing, on an earlier chain too, until the end.
func TestIncidentsUntilTheEnd(t *testing.T) {
	p := testPlan(t, 40, 10, 20) // two chains of two passes
	all := windAll(p)
	knot := counter.Event{Kind: counter.Incident, Chain: 1, Pass: 1, Position: 1, What: counter.Knot}
	for n := range all {
		if n == 0 {
			continue // no chain has a pass yet but the one being laid
		}
		s := foldOf(t, p, all[:n]...)
		for _, before := range [][]counter.Event{nil, {{Kind: counter.Paused}}} {
			for _, e := range before {
				if next, err := s.Apply(e); err == nil {
					s = next
				}
			}
			if next, err := s.Apply(knot); err != nil || next.Incidents[0].End != 1 {
				t.Fatalf("after %d events, paused %v: %v", n, s.Paused, err)
			}
		}
	}
}

func TestIncidentRefusals(t *testing.T) {
	p := testPlan(t, 36, 10, 20) // chains of 20 and 16 ends: the last pass has 6
	ok := counter.Event{Kind: counter.Incident, Chain: 1, Pass: 1, Position: 1, What: counter.Knot}
	tests := []struct {
		name   string
		change func(*counter.Event)
		words  string
	}{
		{"no chain", func(e *counter.Event) { e.Chain = 0 }, "chain: \"0\" won't do; give 1 to 1"},
		{"chain not begun", func(e *counter.Event) { e.Chain = 2 }, "chain: \"2\""},
		{"no pass", func(e *counter.Event) { e.Pass = 0 }, "pass: \"0\" won't do; give 1 to 2"},
		{"pass not begun", func(e *counter.Event) { e.Pass = 3 }, "pass: \"3\""},
		{"no position", func(e *counter.Event) { e.Position = 0 },
			"position: \"0\" won't do; give one that carries an end on pass 1: 1 to 10"},
		{"position without an end", func(e *counter.Event) { e.Position = 11 }, "1 to 10"},
		{"position of a whole pass", func(e *counter.Event) { e.What = counter.WrongPeg }, "whole pass"},
		{"nothing that goes wrong", func(e *counter.Event) { e.What = "mouse" },
			"broken, knot, missed-opening or wrong-peg"},
		{"before the lease", func(e *counter.Event) { e.HasPlace, e.Place = true, -1 }, "from the lease"},
		{"beyond the warp", func(e *counter.Event) { e.HasPlace, e.Place = true, 5*measure.Yard+1 },
			"0 to 5 yd from the lease"},
		{"text of two lines", func(e *counter.Event) { e.Text = "a\nb" }, "one line"},
		{"text too long", func(e *counter.Event) { e.Text = strings.Repeat("a", 501) }, "at most 500"},
	}
	s := foldOf(t, p, laid(1, 1))
	if _, err := s.Apply(ok); err != nil {
		t.Fatal(err)
	}
	for _, tt := range tests {
		e := ok
		tt.change(&e)
		_, err := s.Apply(e)
		var fe *measure.FieldError
		if !errors.As(err, &fe) || !strings.Contains(err.Error(), tt.words) {
			t.Errorf("%s: %v", tt.name, err)
		}
	}
}

// What the rules refuse; TestRefusals has the other kinds.
func TestTroubleRefusals(t *testing.T) {
	p := testPlan(t, 40, 10, 0)
	two := []counter.Event{laid(1, 1), laid(1, 2)}
	with := func(more ...counter.Event) []counter.Event { return append(slices.Clone(two), more...) }
	knot := counter.Event{Kind: counter.Incident, Chain: 1, Pass: 1, Position: 1, What: counter.Knot}
	turn, tie := counter.Event{Kind: counter.WrongTurn, Chain: 1, Pass: 2},
		counter.Event{Kind: counter.TieMade, Chain: 1, Pass: 2}
	all := []counter.Event{laid(1, 1), laid(1, 2), laid(1, 3), laid(1, 4)}
	fasten := counter.Event{Kind: counter.Ticked, Chain: 1, Step: finishing.StepFasten}
	tests := []struct {
		name   string
		before []counter.Event
		e      counter.Event
		words  string
	}{
		{"withdrawn: no such line", with(knot), counter.Event{Kind: counter.Withdrawn, Line: 3}, `mark: "3" won't do`},
		{"withdrawn: twice", with(knot, counter.Event{Kind: counter.Withdrawn, Line: 4}),
			counter.Event{Kind: counter.Withdrawn, Line: 4}, "taken back already"},
		{"wrong turn before any pass", nil, counter.Event{Kind: counter.WrongTurn, Chain: 1},
			"chain 1 has no pass yet"},
		{"wrong turn at another pass", two, counter.Event{Kind: counter.WrongTurn, Chain: 1, Pass: 1},
			"the last pass laid of chain 1 is 2"},
		{"wrong turn of another chain", two, counter.Event{Kind: counter.WrongTurn, Chain: 2, Pass: 2},
			"not the one on the mill"},
		{"wrong turn twice", with(turn), turn, "noted already"},
		{"wrong turn once the finishing has begun", append(all, fasten),
			counter.Event{Kind: counter.WrongTurn, Chain: 1, Pass: 4}, `untick "fasten" first`},
		{"righted without a wrong turn", two, counter.Event{Kind: counter.Righted}, "no wrong turn is noted"},
		{"righted twice", with(turn, counter.Event{Kind: counter.Righted}), counter.Event{Kind: counter.Righted},
			"no wrong turn is noted"},
		{"tie before any pass", nil, counter.Event{Kind: counter.TieMade, Chain: 1}, "chain 1 has no pass yet"},
		{"tie twice", with(tie), tie, "noted already"},
		{"tie once the finishing has begun", append(all, fasten),
			counter.Event{Kind: counter.TieMade, Chain: 1, Pass: 4}, `untick "fasten" first`},
		{"after the end", windAll(p), knot, "finished"},
	}
	for _, tt := range tests {
		s := foldOf(t, p, tt.before...)
		if next, err := s.Apply(tt.e); err == nil || !strings.Contains(err.Error(), tt.words) {
			t.Errorf("%s: %v", tt.name, err)
		} else if d := cmp.Diff(s, next, same); d != "" {
			t.Errorf("%s: a refused event moved the state: %s", tt.name, d)
		}
	}
}

// A tie is a checkpoint, and is let go of with its last group.
func TestTies(t *testing.T) {
	p := testPlan(t, 45, 10, 0)
	tie := func(pass int) counter.Event {
		return counter.Event{At: at(pass), Kind: counter.TieMade, Chain: 1, Pass: pass}
	}
	events := []counter.Event{laid(1, 1), laid(1, 2), tie(2), laid(1, 3), laid(1, 4), tie(4), laid(1, 5), tie(5)}
	want := []counter.Tie{{4, at(2), 1, 2, 20}, {7, at(4), 1, 4, 40}, {9, at(5), 1, 5, 45}}
	s := foldOf(t, p, events...)
	if d := cmp.Diff(want, s.Ties); d != "" {
		t.Error(d)
	}
	for _, e := range []counter.Event{{Kind: counter.Undone, Chain: 1, Pass: 5},
		{Kind: counter.Recounted, Chain: 1, Pass: 4, Text: "counted"}} {
		if next, err := s.Apply(e); err != nil || len(next.Ties) != 2 {
			t.Errorf("%s: %v, %v", e.Kind, next.Ties, err)
		}
	}
	if next, err := s.Apply(counter.Event{Kind: counter.Recounted, Chain: 1, Pass: 1, Text: "counted"}); err != nil ||
		len(next.Ties) != 0 {
		t.Errorf("recounted to 1: %v, %v", next.Ties, err)
	}
	if len(s.Ties) != 3 {
		t.Error("the state before was changed")
	}
}

// A striped warp has another schedule in the other order, with other passes. What was noted on a pass that
// has to be laid anew is undone, and the numbers of ends follow the schedule.
func TestTroubleFollowsTheSchedule(t *testing.T) {
	setUps := []plan.SetUp{{1, 1, 1, 1}}
	colours := []plan.StripeColour{{Name: "blue"}}
	spec := plan.DefaultSpec()
	spec.Ends, spec.Group, spec.Positions, spec.Stripes = 12, 4, 4, "12 blue"
	four, low, high := plan.ScheduledPass{Carried: wind.Span(1, 4), SetUp: 1},
		plan.ScheduledPass{Carried: wind.Span(1, 2), SetUp: 1}, plan.ScheduledPass{Carried: wind.Span(3, 4), SetUp: 1}
	spec.Schedule = &plan.Schedule{Colours: colours, SetUps: setUps,
		Passes: []plan.ScheduledPass{four, low, four, high}}
	spec.Other = &plan.Schedule{Colours: colours, SetUps: setUps, Passes: []plan.ScheduledPass{four, four, four}}
	p, err := plan.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	knot := func(pass, position int) counter.Event {
		return counter.Event{Kind: counter.Incident, Chain: 1, Pass: pass, Position: position, What: counter.Knot}
	}
	s := foldOf(t, p, laid(1, 1), counter.Event{Kind: counter.TieMade, Chain: 1, Pass: 1}, knot(1, 2), laid(1, 2),
		counter.Event{Kind: counter.TieMade, Chain: 1, Pass: 2}, knot(2, 1), knot(2, 2),
		laid(1, 3), counter.Event{Kind: counter.WrongTurn, Chain: 1, Pass: 3}, laid(1, 4), knot(4, 4))
	turned, err := s.Apply(counter.Event{Kind: counter.LeaseSeen, Order: wind.MirroredOrder})
	if err != nil {
		t.Fatal(err)
	}
	if turned.Laid() != 1 || len(turned.Ties) != 1 || turned.Twist() != -1 || len(turned.Chains[0].WrongTurns) != 0 {
		t.Errorf("%d laid, ties %v, twist %d, wrong turns %v", turned.Laid(), turned.Ties, turned.Twist(),
			turned.Chains[0].WrongTurns)
	}
	for i, want := range []struct {
		undone bool
		end    int
	}{{false, 2}, {true, 8}, {true, 7}, {true, 0}} {
		if in := turned.Incidents[i]; in.Undone != want.undone || in.End != want.end {
			t.Errorf("%+v, want %+v", in, want)
		}
	}
	if words := turned.Incidents[3].Words(measure.Imperial); words != "pass 4, position 4: knot" {
		t.Error(words)
	}
	if s.Incidents[1].Undone || len(s.Ties) != 2 {
		t.Error("the state before was changed")
	}
}
