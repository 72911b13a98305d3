package plan_test

import (
	"fmt"
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/times"
	"millside/plan/wind"
)

// workLine writes one line of the ledger, so that a table can be worked out by hand: the pass that it comes
// before, the peg, and what is cut off, threaded with its colour, and tied on.
func workLine(p *plan.Plan, w plan.PegWork) string {
	var thread []string
	for _, t := range w.Thread {
		thread = append(thread, fmt.Sprintf("%d=%d", t.Position, t.To))
	}
	peg := "near"
	if w.Peg == wind.FarPeg {
		peg = "far"
	}
	return fmt.Sprintf("%d.%d %s cut %v thread %s tie %v", w.Chain, w.Before, peg, w.Cut, strings.Join(thread, " "),
		w.Tie)
}

func checkByHand(t *testing.T, p *plan.Plan, want []string, sum times.WorkSum) {
	t.Helper()
	var got []string
	for w := range p.Work() {
		got = append(got, workLine(p, w))
	}
	for i := range max(len(got), len(want)) {
		var g, w string
		if i < len(got) {
			g = got[i]
		}
		if i < len(want) {
			w = want[i]
		}
		if g != w {
			t.Errorf("got  %s\nwant %s", g, w)
		}
	}
	if p.WorkSum() != sum {
		t.Errorf("got %+v, want %+v", p.WorkSum(), sum)
	}
}

const tenThreaded = "thread 1=0 2=0 3=0 4=0 5=0 6=0 7=0 8=0 9=0 10=0"

// Worked out with a paddle on paper.
func TestWorkByHandPlain(t *testing.T) {
	for _, tt := range []struct {
		name string
		set  func(*plan.Spec)
		want []string
		sum  times.WorkSum
	}{
		// Passes of 10, 10, 10, 7. Pass 4 is a return, so the paddle stands at the far peg before it.
		{"37 by 10", func(s *plan.Spec) { s.Ends, s.Group = 37, 10 }, []string{
			"1.1 near cut  " + tenThreaded + " tie 1 to 10",
			"1.4 far cut 8 to 10 thread  tie ",
			"1.5 near cut 1 to 7 thread  tie ",
		}, times.WorkSum{Passes: 4, Halts: 1, Cuts: 10, Ties: 10, Threads: 10}},
		// Passes of 9, 9, 9, 9, 4, mirrored: the last is outward, so the five are cut off at the near peg, and
		// the chain stops at the far one. Which end lies at the foot changes no work.
		{"a mirrored one by 9", func(s *plan.Spec) { s.Ends, s.Group, s.ReturnOrder = 40, 9, wind.MirroredOrder },
			[]string{
				"1.1 near cut  thread 1=0 2=0 3=0 4=0 5=0 6=0 7=0 8=0 9=0 tie 1 to 9",
				"1.5 near cut 5 to 9 thread  tie ",
				"1.6 far cut 1 to 4 thread  tie ",
			}, times.WorkSum{Passes: 5, Halts: 1, Cuts: 9, Ties: 9, Threads: 9, FarFinishes: 1}},
		{"the same with the last position at the foot", func(s *plan.Spec) {
			s.Ends, s.Group, s.ReturnOrder, s.Foot = 40, 9, wind.MirroredOrder, wind.FootLast
		}, []string{
			"1.1 near cut  thread 1=0 2=0 3=0 4=0 5=0 6=0 7=0 8=0 9=0 tie 1 to 9",
			"1.5 near cut 5 to 9 thread  tie ",
			"1.6 far cut 1 to 4 thread  tie ",
		}, times.WorkSum{Passes: 5, Halts: 1, Cuts: 9, Ties: 9, Threads: 9, FarFinishes: 1}},
		// Two chains: passes of 10, 10 and 10, 10, 10, 5. The packages stay threaded between the chains; all
		// that was carried is cut off after the first and tied on for the second.
		{"a left-handed one in two chains",
			func(s *plan.Spec) { s.Ends, s.Group, s.ChainEnds, s.Hand = 75, 10, 40, wind.LeftHanded }, []string{
				"1.1 near cut  " + tenThreaded + " tie 1 to 10",
				"1.5 near cut 1 to 10 thread  tie ",
				"2.1 near cut  thread  tie 1 to 10",
				"2.4 far cut 6 to 10 thread  tie ",
				"2.5 near cut 1 to 5 thread  tie ",
			}, times.WorkSum{Passes: 8, Halts: 1, Cuts: 20, Ties: 20, Threads: 10}},
		{"a warp smaller than the group", func(s *plan.Spec) { s.Ends, s.Group = 3, 10 }, []string{
			"1.1 near cut  thread 1=0 2=0 3=0 tie 1 to 3",
			"1.2 far cut 1 to 3 thread  tie ",
		}, times.WorkSum{Passes: 1, Cuts: 3, Ties: 3, Threads: 3, FarFinishes: 1}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s := plan.DefaultSpec()
			tt.set(&s)
			checkByHand(t, must(t, s), tt.want, tt.sum)
		})
	}
}

// byHandStripes is a striped spec with the passes given, in the notation that records keep.
func byHandStripes(t *testing.T, colours int, setUps []plan.SetUp, passes ...string) plan.Spec {
	t.Helper()
	s := plan.DefaultSpec()
	s.Stripes, s.Ends, s.Group = "by hand", 0, 1
	s.Schedule = &plan.Schedule{SetUps: setUps}
	for i := range colours {
		s.Schedule.Colours = append(s.Schedule.Colours, plan.StripeColour{Name: []string{"blue", "white", "red"}[i]})
	}
	for _, text := range passes {
		var p plan.ScheduledPass
		if err := p.UnmarshalText([]byte(text)); err != nil {
			t.Fatal(err)
		}
		s.Schedule.Passes = append(s.Schedule.Passes, p)
		s.Ends += p.Ends()
		s.Group = max(s.Group, p.Ends())
	}
	return s
}

// "20 times (10 blue, 10 white)" on 12 positions, wound one stripe after the other with the colours side by
// side: six positions of blue, then six of white. A stripe of ten takes six and four. So pass by pass 1 to
// 6, 1 to 4, 7 to 12, 7 to 10, and again from the start: every pass but those that go from six to four of
// one colour ties something on.
func TestWorkByHandTwentyStripes(t *testing.T) {
	set := plan.SetUp{1, 1, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2}
	var passes []string
	for range 20 {
		passes = append(passes, "1-6 of 1", "1-4 of 1", "7-12 of 1", "7-10 of 1")
	}
	p := must(t, byHandStripes(t, 2, []plan.SetUp{set}, passes...))
	want := []string{
		"1.1 near cut  thread 1=1 2=1 3=1 4=1 5=1 6=1 7=2 8=2 9=2 10=2 11=2 12=2 tie 1 to 6",
		"1.2 far cut 5, 6 thread  tie ",
		"1.3 near cut 1 to 4 thread  tie 7 to 12",
		"1.4 far cut 11, 12 thread  tie ",
	}
	for k := 5; k <= 80; k += 4 {
		want = append(want,
			fmt.Sprintf("1.%d near cut 7 to 10 thread  tie 1 to 6", k),
			fmt.Sprintf("1.%d far cut 5, 6 thread  tie ", k+1),
			fmt.Sprintf("1.%d near cut 1 to 4 thread  tie 7 to 12", k+2),
			fmt.Sprintf("1.%d far cut 11, 12 thread  tie ", k+3))
	}
	want = append(want, "1.81 near cut 7 to 10 thread  tie ")
	// 79 halts, one between any two of 80 passes; 40 stripes of six tied on and cut off.
	checkByHand(t, p, want, times.WorkSum{Passes: 80, Halts: 79, Cuts: 240, Ties: 240, Threads: 12})
	for end := 1; end <= 400; end++ {
		if colour := 1 + (end-1)/10%2; p.EndColour(end) != colour {
			t.Fatalf("end %d is of colour %d, want %d", end, p.EndColour(end), colour)
		}
	}
}

// Threading on the way: positions 3 and 4 change while they are carried, 7 and 8 while they are parked, 1 is
// emptied; passes leave holes and slots in turn where they leave out what lies between.
func TestWorkByHandChanges(t *testing.T) {
	p := must(t, byHandStripes(t, 3, []plan.SetUp{
		{1, 1, 1, 1, 2, 2, 2, 2},
		{0, 1, 3, 3, 2, 2, 3, 3},
	}, "1-4 of 1", "1-2,5-6 of 1", "3-6 of 2", "2-3,8-8 of 2", "7-8 of 2"))
	checkByHand(t, p, []string{
		"1.1 near cut  thread 1=1 2=1 3=1 4=1 5=2 6=2 7=2 8=2 tie 1 to 4",
		"1.2 far cut 3, 4 thread  tie 5, 6",
		"1.3 near cut 1, 2 thread 1=0 3=3 4=3 7=3 8=3 tie 3, 4",
		"1.4 far cut 4 to 6 thread  tie 2, 8",
		"1.5 near cut 2, 3 thread  tie 7",
		"1.6 far cut 7, 8 thread  tie ",
	}, times.WorkSum{Passes: 5, Halts: 4, Cuts: 11, Ties: 11, Threads: 12, FarFinishes: 1})
	if got := p.ThreadText(p.WorkBefore(1, 3).Thread); got != "3, 4, 7, 8 E red; take the yarn out of 1" {
		t.Errorf("threaded: %q", got)
	}
	// By hand: ends 1 to 4 begin at the near peg, 3 and 4 finish at the far one, where 7 and 8 begin (the
	// fifth and sixth position on pass 2, which lays ends 5 to 8), and so on.
	want := map[string]string{
		"begin at near peg":  "7 ends: 1 to 4, 9, 10, 16",
		"finish at near peg": "4 ends: 5, 6, 13, 14",
		"begin at far peg":   "4 ends: 7, 8, 13, 15",
		"finish at far peg":  "7 ends: 3, 4, 10 to 12, 16, 17",
	}
	rows := finishing.KnotRows(p)
	for _, row := range rows {
		if row.Value.String() != want[row.Name] {
			t.Errorf("%s: %s, want %s", row.Name, row.Value, want[row.Name])
		}
	}
	if len(rows) != len(want) {
		t.Errorf("%d rows", len(rows))
	}
}
