package counter

import (
	"slices"
	"strings"
	"testing"
	"time"

	"millside/plan"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/sheet"
	"millside/plan/times"
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
	events := []Event{
		laid(1, 1), laid(1, 2), {At: at(2), Kind: WrongTurn, Chain: 1, Pass: 2}, laid(1, 3),
		{At: at(4), Kind: Incident, Chain: 1, Pass: 3, Position: 4, What: Broken, Place: 2 * measure.Yard, HasPlace: true, Text: "mended"},
		{At: at(5), Kind: Incident, Chain: 1, Pass: 2, Position: 1, What: Knot},
		{At: at(6), Kind: Withdrawn, Line: 7},
		{At: at(7), Kind: Incident, Chain: 1, Pass: 2, What: MissedOpening},
		{At: at(9), Kind: Incident, Chain: 1, Pass: 3, Position: 9, What: Knot},
		{At: at(10), Kind: Recounted, Chain: 1, Pass: 2, Text: "counted at the pegs"},
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
	part := HandOver(foldOf(t, p, events...), events)
	got := rowsOf(part)
	slices.Sort(got)
	slices.Sort(want)
	if part.Title != "At the mill" || part.ID != sheet.PartRecord || !slices.Equal(got, want) {
		t.Errorf("%s:\n%s\nwant\n%s", part.Title, strings.Join(got, "\n"), strings.Join(want, "\n"))
	}

	// The count comes to pass 3 again, and its end is in the warp: with its raddle section and its dent.
	events = append(events, Event{At: at(11), Kind: Laid, Chain: 1, Pass: 3}, Event{At: at(12), Kind: Righted})
	got = rowsOf(HandOver(foldOf(t, p, events...), events))
	for _, want := range []string{
		"broken end: pass 3, position 4, end 24: broken end, 2 yd from the lease (mended), raddle section 2 left, dent 12 of the warp from the left",
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
	if part := HandOver(foldOf(t, p, events...), events); part.Title != "Hand-over" {
		t.Errorf("finished: %q", part.Title)
	}
	for _, s := range []State{{}, NewState(p)} {
		if part := HandOver(s, nil); len(part.Rows) > 0 {
			t.Errorf("nothing happened, and yet: %v", rowsOf(part))
		}
	}
}

func TestOwnPace(t *testing.T) {
	timed := func(passes int, perPass time.Duration) PaceResult {
		return PaceResult{PerPass: perPass, Low: perPass - time.Second, High: perPass + time.Second, Passes: passes}
	}
	spec := plan.DefaultSpec()
	spec.Length = 7 * measure.Yard // three and a half turns, for which a pace is given
	finished := func(name string, day int, pace PaceResult) Summary {
		return Summary{Name: name, Finished: true, Last: at(day * 86400), Pace: pace, Spec: spec}
	}
	older, newer := finished("older", 1, timed(40, 40*time.Second)), finished("newer", 2, timed(4, 35*time.Second))
	practice := finished("practice", 9, timed(11, 2*time.Second))
	short := finished("short", 9, timed(3, 50*time.Second))
	damaged := finished("damaged", 9, timed(40, 50*time.Second))
	damaged.Err = ErrNewer
	half := Summary{Name: "half", Last: at(9 * 86400), Pace: timed(20, 50*time.Second)}
	days := finished("clock set wrong", 9, timed(20, 100*24*time.Hour))
	own := times.Pace{Low: 34 * time.Second, Middle: 35 * time.Second, High: 36 * time.Second, Passes: 4, Warps: 1}
	// 40 passes of 40 s and 4 of 35 s are 44 of 39.545454545 s.
	both := times.Pace{Low: 38_545_454_545, Middle: 39_545_454_545, High: 40_545_454_545, Passes: 44, Warps: 2}
	// Five turns take the usual hand 0.27 + 5 x 0.08 = 0.67 min, so 67 s there are 55 s at three and a half.
	long := finished("long", 3, PaceResult{PerPass: 67 * time.Second, Low: 67 * time.Second, High: 67 * time.Second, Passes: 9})
	long.Spec.Length = 10 * measure.Yard
	scaled := times.Pace{Low: 55 * time.Second, Middle: 55 * time.Second, High: 55 * time.Second, Passes: 9, Warps: 1}
	var six []Summary
	for day := range 6 {
		six = append(six, finished("one of six", day, timed(10, time.Duration(day+1)*10*time.Second)))
	}
	for _, tt := range []struct {
		name string
		list []Summary
		want times.Pace
	}{
		{"nothing wound", nil, times.PublishedPace()},
		{"nothing that counts", []Summary{half, practice, short, damaged, days}, times.PublishedPace()},
		{"one", []Summary{half, practice, short, damaged, days, newer}, own},
		{"two, weighed by their passes", []Summary{older, half, newer}, both},
		{"in any order", []Summary{newer, older}, both},
		{"a longer warp", []Summary{long}, scaled},
		{"the latest five", six, times.Pace{Low: 39 * time.Second, Middle: 40 * time.Second, High: 41 * time.Second, Passes: 50, Warps: 5}},
	} {
		if got := OwnPace(tt.list, "practice"); got != tt.want {
			t.Errorf("%s: %+v, want %+v", tt.name, got, tt.want)
		}
	}
}

func TestPaceInWords(t *testing.T) {
	for want, r := range map[string]PaceResult{
		"34 s a pass, mostly 30 to 38 s": {PerPass: 33_750 * time.Millisecond, Low: 30 * time.Second, High: 37_500 * time.Millisecond, Passes: 9},
		"30 s a pass":                    {PerPass: 30 * time.Second, Low: 30 * time.Second, High: 30_400 * time.Millisecond, Passes: 3},
	} {
		if got := r.String(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
