package mill

import (
	"strings"
	"testing"
	"time"

	"github.com/muesli/termenv"

	"millside/counter"
	"millside/counter/session"
	"millside/tui/internal/hand"
)

// A broken end is one key and a number: it becomes a known end. Pass 18 is a return pass that lies in the
// same order, so its position 4 is end 174.
func TestBrokenEnd(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.typed(b.press(b.winding(hand.Towels(), 17), "b"), "4")
	if v := s.View(80, 24); !strings.Contains(v, "end 174 of the warp") {
		t.Fatalf("the end is not named:\n%s", v)
	}
	s = b.typed(b.press(s, "enter", "enter"), "2.5 turns")
	s = b.press(s, "enter")
	w := s
	if len(w.s.State().Incidents) != 1 || w.s.State().Incidents[0].End != 174 ||
		w.s.State().Incidents[0].What != counter.Broken || !w.s.State().Incidents[0].HasPlace {
		t.Fatalf("%+v\n%s", w.s.State().Incidents, s.View(80, 24))
	}
	if s = b.press(s, "d"); !s.s.State().Incidents[0].Withdrawn {
		t.Error("the mark can't be taken back")
	}
	s = b.press(b.typed(b.press(s, "k"), "11"), "enter", "enter", "enter")
	if v := s.View(80, 24); !strings.Contains(v, "carries positions 1 to 10") {
		t.Errorf("position 11 of 10 was taken:\n%s", v)
	}
}

// A wrong turn never blocks the winding; the twist and both ways to put it right are shown until it is out, at any
// size.
func TestWrongTurn(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.press(b.winding(hand.Towels(), 17), "w")
	for _, size := range append(hand.Sizes, hand.Extremes...) {
		if v := hand.Flat(s.View(size.W, size.H)); !strings.Contains(v, s.s.State().TwistAdvice()[1:]) &&
			!strings.Contains(v, s.s.State().TwistBrief()) {
			t.Fatalf("no advice at %s:\n%s", size, s.View(size.W, size.H))
		}
	}
	if s = b.press(s, "space"); laid(t, s) != 18 {
		t.Fatal("a wrong turn blocks the winding")
	}
	if s = b.press(s, "e"); s.s.State().TwistAdvice() != "" {
		t.Error("the twist can't be taken out")
	}
}

func TestMarksOfThePass(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.press(b.winding(hand.Towels(), 17), "m", "g", "t")
	w := s
	if len(w.s.State().Incidents) != 2 || w.s.State().Incidents[0].What != counter.MissedOpening ||
		w.s.State().Incidents[1].What != counter.WrongPeg || len(w.s.State().Ties) != 1 {
		t.Fatalf("%+v, ties %+v", w.s.State().Incidents, w.s.State().Ties)
	}
}

// A cone that runs out is announced one pass ahead, then at the pass; a new one takes it off the screen.
func TestConeRunsOut(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	spec := hand.Towels()
	for v, text := range map[interface{ UnmarshalText([]byte) error }]string{&spec.Yarn.Size: "8/2 cotton",
		&spec.Yarn.Cones: "400 g, 50 g, 400 g", &spec.Yarn.Tube: "30 g"} {
		if err := v.UnmarshalText([]byte(text)); err != nil {
			t.Fatal(err)
		}
	}
	const want = "position 2 runs out in the middle of pass 21"
	// 20 g of 3,360 yd/lb are 148.1 yd; 18 in and 7.06 yd a pass: 20.9 passes.
	if v := b.winding(spec, 18).View(120, 40); strings.Contains(v, want) {
		t.Fatalf("too early:\n%s", v)
	}
	s := b.winding(spec, 19)
	if v := s.View(120, 40); !strings.Contains(v, want) {
		t.Fatalf("not announced:\n%s", v)
	}
	s = b.press(s, "space")
	if v := s.View(120, 40); !strings.Contains(v, "NOW  "+want) {
		t.Fatalf("not said at the pass:\n%s", v)
	}
	s = b.typed(b.press(b.typed(b.press(s, "a"), "2"), "enter"), "400 g")
	if s = b.press(s, "enter"); strings.Contains(s.View(120, 40), "runs out") {
		t.Fatalf("the new cone is not reckoned:\n%s", s.View(120, 40))
	}
}

// After a long break the next press brings up what must be seen, and counts nothing.
func TestLongBreak(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.winding(hand.Towels(), 17)
	b.clock.Wait(20 * time.Minute)
	s = b.send(s, hand.Key("space"))
	if w := s; w.s.Stage(w.at) != session.Looking || w.s.State().Laid() != 17 {
		t.Fatalf("stage %d, laid %d", w.s.Stage(w.at), w.s.State().Laid())
	}
	s = b.press(s, "space", "space")
	if laid(t, s) != 18 {
		t.Fatalf("%d passes, want 18", laid(t, s))
	}
}

// A field that begins with an answer takes what is typed in its place; who moves in it first changes it as it stands.
func TestTypedInPlaceOfWhatStood(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	knot := func(keys ...string) Model {
		return b.press(b.typed(b.press(b.winding(hand.Towels(), 17), "k"), "4"), append([]string{"tab"}, keys...)...)
	}
	if got := knot("1", "2").prompt.texts(); got[0] != "4" || got[1] != "12" {
		t.Errorf("typed in place of the pass in hand: %q", got)
	}
	if got := knot("backspace", "2").prompt.texts()[1]; got != "12" {
		t.Errorf("changed as it stood: %q", got)
	}
	m := b.press(b.typed(knot("tab"), "2 yd"), "enter")
	if in := m.s.State().Incidents; len(in) != 1 || in[0].Pass != 18 || in[0].Position != 4 {
		t.Errorf("%+v", in)
	}
}
