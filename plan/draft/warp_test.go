package draft

import (
	"context"
	"slices"
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/field"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/stripe"
	"millside/plan/times"
	"millside/plan/wind"
)

// The draft of testdata/plain.wif: six threads of the colours 1 1 2 2 2 3 on the shafts 1 2 3 4 1 -.
func TestWarp(t *testing.T) {
	for name, c := range map[string]struct {
		use       Use
		order     string
		threading string
		said      string
	}{
		"thread 1 on the left": {Use{Side: FromLeft}, "2 colour-1, 3 colour-2, 1 colour-3", "1, 2, 3, 4, 1, 0", ""},
		"on the right":         {Use{}, "1 colour-3, 3 colour-2, 2 colour-1", "0, 1, 4, 3, 2, 1", ""},
		"not threaded": {Use{Side: FromLeft, LeaveOut: true}, "2 colour-1, 3 colour-2", "1, 2, 3, 4, 1",
			"1 thread through no shaft left out"},
		"a part": {Use{Side: FromLeft, First: 2, Last: 4}, "1 colour-1, 2 colour-2", "2, 3, 4",
			"threads 2 to 4 of 6 are taken"},
		"a part from right": {Use{First: 2, Last: 4}, "2 colour-2, 1 colour-1", "4, 3, 2",
			"threads 2 to 4 of 6 are taken"},
		"twice": {Use{Side: FromLeft, First: 1, Last: 4, Times: 2}, "2 times (2 colour-1, 2 colour-2)",
			"2 times (1, 2, 3, 4)", "threads 1 to 4 of 6 are taken; 4 threads 2 times"},
		"to 10 ends": {Use{Side: FromLeft, First: 1, Last: 4, Ends: 10, Laid: wind.Repeated},
			"point (2 colour-1, 2 colour-2, 2 colour-1)", "2 times (1, 2, 3, 4), 1, 2",
			"threads 1 to 4 of 6 are taken; 4 threads 2 times and 2 of them once more, on the right: the other 2 of " +
				"the last time are left out"},
		"cut to 3": {Use{Side: FromLeft, Ends: 3, Laid: wind.Repeated}, "2 colour-1, 1 colour-2", "1, 2, 3",
			"cut from 6 threads to the 3 on the left: the other 3 are left out"},
		"cut to 5": {Use{Side: FromLeft, Ends: 5, Laid: wind.CutToEnds}, "2 colour-1, 3 colour-2", "1, 2, 3, 4, 1",
			"cut from 6 threads to the 5 on the left: the other one is left out"},
		"cut to more": {Use{Side: FromLeft, Ends: 8, Laid: wind.CutToEnds}, "2 colour-1, 3 colour-2, 1 colour-3",
			"1, 2, 3, 4, 1, 0", "6 ends, 2 fewer than the 8 that are wanted"},
		"whole repeats": {Use{Side: FromLeft, Last: 4, Ends: 11, Laid: wind.WholeRepeats},
			"2 times (2 colour-1, 2 colour-2)", "2 times (1, 2, 3, 4)",
			"threads 1 to 4 of 6 are taken; 4 threads 2 times; 8 ends, 3 fewer than the 11 that are wanted"},
		"whole repeats and the rest as selvedges": {
			Use{Side: FromLeft, Last: 4, Ends: 11, Laid: wind.WholeRepeats, EdgeRest: true},
			"3 colour-1, 2 colour-2, 2 colour-1, 4 colour-2", "2, 2 times (1, 2, 3, 4), 3, 4",
			"threads 1 to 4 of 6 are taken; 4 threads 2 times; 1 end added on the left, 2 on the right"},
		"as drawn and one more": {Use{Side: FromLeft, Last: 4, Ends: 5, EdgeRest: true}, "2 colour-1, 3 colour-2",
			"1, 2, 3, 4, 3", "threads 1 to 4 of 6 are taken; 1 end added on the right"},
		"twice and the rest": {Use{Side: FromLeft, Last: 4, Times: 2, Ends: 10, EdgeRest: true},
			"3 colour-1, 2 colour-2, 2 colour-1, 3 colour-2", "2, 2 times (1, 2, 3, 4), 3",
			"threads 1 to 4 of 6 are taken; 4 threads 2 times; 1 end added at each side"},
		"as drawn, and too wide": {Use{Side: FromLeft, Ends: 5, EdgeRest: true}, "2 colour-1, 3 colour-2, 1 colour-3",
			"1, 2, 3, 4, 1, 0", "6 ends, 1 more than the 5 that are wanted"},
		// The added ends go on with the plain change of the two outermost threads, outwards.
		"edges": {Use{Side: FromLeft, Last: 4, Edge: 3}, "5 colour-1, 5 colour-2", "2, 1, 2, 1, 2, 3, 4, 3, 4, 3",
			"threads 1 to 4 of 6 are taken; 3 ends added at each side"},
		"named": {Use{Side: FromLeft, Names: map[int]string{1: "navy", 3: "8/2 red"}},
			`2 navy, 3 colour-2, 1 "8/2 red"`, "1, 2, 3, 4, 1, 0", ""},
		// One name for two numbers is one yarn.
		"one name": {Use{Side: FromLeft, Names: map[int]string{1: "navy", 2: "Navy"}}, "5 navy, 1 colour-3",
			"1, 2, 3, 4, 1, 0", ""},
	} {
		w, err := plainDraft().Warp(c.use)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		order, _, _ := strings.Cut(w.Order.String(), " where ")
		if order != c.order || w.Threading.String() != c.threading || strings.Join(w.Said, "; ") != c.said ||
			w.Order.Size() != w.Ends {
			t.Errorf("%s: %s; %s; %q", name, order, w.Threading, w.Said)
		}
	}
	for name, u := range map[string]Use{
		"no such thread": {First: 5, Last: 7}, "backwards": {First: 4, Last: 2}, "too many": {Times: 100_000},
		"no room": {Ends: 4, Edge: 2},
		"both":    {Times: 2, Ends: 12, Laid: wind.Repeated}, "no rest": {EdgeRest: true},
		"not once": {Ends: 5, Laid: wind.WholeRepeats}, "only what is not threaded": {First: 6, LeaveOut: true},
		"name": {Names: map[int]string{1: `a "b"`}},
	} {
		if w, err := plainDraft().Warp(u); len(measure.FieldErrors(err)) != 1 {
			t.Errorf("%s: %+v, %v", name, w, err)
		}
	}
}

// A draft without colours, or of one, makes a plain warp with all that a plain warp has.
func TestPlainWarp(t *testing.T) {
	d := plainDraft()
	d.Colours, d.Coloured = slices.Repeat([]int{NoColour}, 6), false
	bare, err := d.Warp(Use{Side: FromLeft})
	if err != nil || !bare.Plain() || bare.Colour != "" || bare.Ends != 6 {
		t.Errorf("%+v, %v", bare, err)
	}
	d.Colours, d.Coloured = slices.Repeat([]int{2}, 6), true
	one, err := d.Warp(Use{Side: FromLeft, Names: map[int]string{2: "linen"}})
	if err != nil || !one.Plain() || one.Colour != "linen" {
		t.Fatalf("%+v, %v", one, err)
	}
	spec := plan.DefaultSpec()
	spec.Group = 2
	p, err := plan.New(one.Into(spec, false))
	if err != nil {
		t.Fatal(err)
	}
	if s := p.Spec; s.Name != d.Title || s.Ends != 6 || s.Yarn.Colour != "linen" || s.Stripes != "" || p.Passes() != 3 {
		t.Errorf("%+v", s)
	}
}

// What a draft says goes into the plan from end 1 on, on whichever side that lies: end for end the colours
// and the shafts are those of the draft's threads.
func TestWarpIntoPlan(t *testing.T) {
	d := plainDraft()
	for _, side := range []Side{FromRight, FromLeft} {
		for _, first := range []loom.Side{loom.LeftSide, loom.RightSide} {
			w, err := d.Warp(Use{Side: side})
			if err != nil {
				t.Fatal(err)
			}
			spec := plan.DefaultSpec()
			spec.Loom.FirstEnd = first
			made, err := stripe.ForPlan(context.Background(), w.Into(spec, true), stripe.Ask{}, nil)
			if err != nil {
				t.Fatal(err)
			}
			p, err := plan.New(made.Spec)
			if err != nil {
				t.Fatal(err)
			}
			if p.Spec.Name != spec.Name {
				t.Errorf("the warp is called %s", p.Spec.Name)
			}
			for end := 1; end <= 6; end++ {
				thread := end
				if (side == FromLeft) != (first == loom.LeftSide) {
					thread = 7 - end
				}
				c, _ := p.Colour(p.EndColour(end))
				if want := d.NameOf(d.Colours[thread-1], nil); c.Name != want {
					t.Errorf("thread 1 on the %v, end 1 on the %v: end %d is %s, not %s", side, first, end, c.Name,
						want)
				}
				if got := p.Spec.Loom.Threading.At(end); !slices.Equal(got, loom.Shafts(d.Threading[thread-1])) {
					t.Errorf("thread 1 on the %v, end 1 on the %v: end %d is on %v", side, first, end, got)
				}
			}
			if text := (&project.Project{Plan: p}).Whereabouts(3); !strings.Contains(text, "shaft 3") &&
				!strings.Contains(text, "shaft 4") {
				t.Errorf("end 3 is %s", text)
			}
		}
	}
}

func TestTitleIsCutToAName(t *testing.T) {
	w := &Warp{Ends: 4, Title: strings.Repeat("é", 80)}
	if got := w.Into(plan.DefaultSpec(), false); got.Name != strings.Repeat("é", 60) || plan.Spec.Check(got) != nil {
		t.Errorf("%s: %v", got.Name, got.Check())
	}
}

func TestNotThreaded(t *testing.T) {
	for _, c := range []struct {
		shafts        []int
		atEnd, before int
	}{{[]int{1, 2, 0}, 1, 0}, {[]int{0, 1, 2, 0, 0}, 2, 1}, {[]int{1, 2}, 0, 0}, {[]int{0, 0}, 0, 0}, {nil, 0, 0}} {
		d := &Draft{Threads: len(c.shafts)}
		for _, n := range c.shafts {
			d.Threading = append(d.Threading, slices.Repeat([]int{n}, min(n, 1)))
		}
		if atEnd, before := d.NotThreaded(); atEnd != c.atEnd || before != c.before {
			t.Errorf("%v: %d at the end, %d before", c.shafts, atEnd, before)
		}
	}
}

func TestTooManyColours(t *testing.T) {
	many := &Draft{Threads: stripe.MaxColours + 1, Coloured: true}
	for i := range many.Threads {
		many.Colours = append(many.Colours, i)
	}
	if _, err := many.Warp(Use{}); len(measure.FieldErrors(err)) != 1 {
		t.Errorf("%v", err)
	}
}

// A draft whose threads are crammed and spaced goes into the reed as it says: at 0.25 cm and 0.125 cm a
// thread, 40 dents in 10 cm hold one and two a dent, from whichever side end 1 is counted.
func TestDraftIsDented(t *testing.T) {
	d, err := read(t, "warp-spacing")
	if err != nil {
		t.Fatal(err)
	}
	for _, first := range []loom.Side{loom.LeftSide, loom.RightSide} {
		w, err := d.Warp(Use{Side: FromLeft, Last: 5})
		if err != nil {
			t.Fatal(err)
		}
		w.Order, w.Colour = stripe.Order{}, ""
		spec := plan.DefaultSpec()
		spec.Loom.FirstEnd = first
		spec = w.Into(spec, true)
		if spec.Loom.Sett, err = measure.ParseSett("80 in 10 cm"); err != nil {
			t.Fatal(err)
		}
		if spec.Loom.Reed, err = loom.ParseReed("40 in 10 cm"); err != nil {
			t.Fatal(err)
		}
		pr, err := project.New(spec, times.Pace{})
		if err != nil {
			t.Fatal(err)
		}
		if !slices.Equal(pr.Sley.Dents, []int{1, 1, 1, 2}) {
			t.Errorf("end 1 on the %v: %v", first, pr.Sley.Dents)
		}
	}
}

// The colours of the weft come along by name.
func TestWeftOfDraft(t *testing.T) {
	d, err := read(t, "weft")
	if err != nil {
		t.Fatal(err)
	}
	w, err := d.Warp(Use{Names: map[int]string{2: "bone"}})
	if err != nil {
		t.Fatal(err)
	}
	got := w.Into(plan.DefaultSpec(), false).Cloth.WeftColours
	if len(got) != 3 || got[0].Name != "bone" || got[0].Picks != 5 || got[1].Name != "colour-3" {
		t.Errorf("%+v", got)
	}
}

// A warp of one colour has all the ends that its width takes: a draft that makes another number is refused.
func TestPlainWarpOfAWidth(t *testing.T) {
	d := plainDraft()
	d.Colours = slices.Repeat([]int{1}, 6)
	for laid, ends := range map[wind.Laid]int{wind.Repeated: 10, wind.WholeRepeats: 0, wind.AsWritten: 0} {
		u := Use{}
		u.FitTo(10, true, laid, true)
		w, err := d.Warp(u)
		wrong := measure.FieldErrors(err)
		refused := len(wrong) == 1 && wrong[0].Field == field.StripesLaid.Name
		if refused != (ends == 0) || !refused && w.Ends != ends {
			t.Errorf("%s: %+v, %v", laid, w, err)
		}
	}
}

// What a crammed draft says of its spacing, its heddles and its weft, counted by hand.
func TestSaysWhatItHolds(t *testing.T) {
	d := plainDraft()
	d.Colours = slices.Repeat([]int{1}, 6)
	d.Weft = []Picks{{1, 9}, {3, 3}}
	if !d.Symmetric(Use{}) {
		t.Error("one colour, not crammed: it matters where thread 1 is")
	}
	mm := measure.Millimetre
	d.Widths = []measure.Length{mm, mm, mm, mm / 2, mm / 2, mm}
	w, err := d.Warp(Use{Side: FromLeft, Names: map[int]string{3: "rust"}})
	if err != nil {
		t.Fatal(err)
	}
	for got, want := range map[string]string{
		w.SpacingText(): "crammed and spaced: 3 ends of 1 mm, 2 ends of 0.5 mm, 1 end of 1 mm; the reed takes them so",
		w.HeddlesText(): "2 on shaft 1, 1 on shaft 2, 1 on shaft 3, 1 on shaft 4, none for 1 end",
		d.WeftText(map[int]string{1: "sand", 3: "rust"}): "picks in the draft: 9 sand, 3 rust",
	} {
		if got != want {
			t.Errorf("%s\nwant %s", got, want)
		}
	}
	if d.Symmetric(Use{}) {
		t.Error("it is crammed on one side, and isn't asked where thread 1 is")
	}
	for i := range 40 {
		d.Widths = append(d.Widths, mm+measure.Length(i%2))
	}
	w.Widths = d.Widths
	if text := w.SpacingText(); !strings.Contains(text, "and so on, 46 ends in all") {
		t.Error(text)
	}
}

// A draft with floating selvedges that is repeated has them inside the warp too: that is said.
func TestSelvedgesInsideTheWarp(t *testing.T) {
	d := plainDraft() // its last thread goes through no shaft
	for times, want := range map[int]string{
		1: "", 2: "1 end through no shaft lies inside the warp", 3: "2 ends through no shaft lie inside the warp",
	} {
		w, err := d.Warp(Use{Times: times})
		if err != nil {
			t.Fatal(err)
		}
		said := strings.Join(w.Said, "; ")
		if !strings.Contains(said, want) || strings.Contains(said, "inside") != (want != "") {
			t.Errorf("%d times: %s", times, said)
		}
	}
}
