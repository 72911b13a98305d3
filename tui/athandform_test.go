package tui

import (
	"strings"
	"testing"

	"github.com/muesli/termenv"

	"millside/plan/athand"
	fields "millside/plan/entry"
	"millside/plan/measure"
	"millside/tui/internal/hand"
)

// The form of a new warp begins with what there is only one of at hand and says so, until another value is given;
// the page that starts from what is known takes the same.
func TestTheOnlyOneAtHandOnTheScreen(t *testing.T) {
	h, err := athand.Parse("mill floor: circumference 3 yd, peg step 9 in\npaddle short: positions 8\n")
	if err != nil {
		t.Fatal(err)
	}
	b := newBench(t, termenv.Ascii)
	b.deps.atHand = h
	m := drive(b, b.app(), hand.Key("n"))
	spec := m.(app).screen.(planning).Filled().Spec
	if spec.Mill != h.Mills[0].Mill || spec.Positions != 8 || spec.Group != 8 {
		t.Errorf("mill %+v, %d positions, group %d", spec.Mill, spec.Positions, spec.Group)
	}
	for range 4 { // to the page of the paddle
		m = drive(b, m, hand.Key("pgdown"))
	}
	m = drive(b, m, hand.Key("tab"))
	const said = "assumed: the only paddle at hand, short"
	wide := func() string { return strings.Join(strings.Fields(m.(app).screen.view(120, 40)), " ") }
	if v := wide(); !strings.Contains(v, said) {
		t.Fatalf("not said that it is assumed:\n%s", m.(app).screen.view(120, 40))
	}
	if m = drive(b, m, hand.Key("9")); strings.Contains(wide(), said) {
		t.Errorf("still said to be assumed:\n%s", m.(app).screen.view(120, 40))
	}

	m = drive(b, b.app(), hand.Key("f"), hand.Key("tab"), hand.Key("4"), hand.Key("0"), hand.Key("tab"),
		hand.Key("9"), hand.Key("y"), hand.Key("d"))
	if v := strings.Join(strings.Fields(m.(app).screen.view(200, 60)), " "); !strings.Contains(v, said[:9]) ||
		!strings.Contains(v, "the only mill at hand, floor") {
		t.Errorf("the page of what is known doesn't say it:\n%s", m.(app).screen.view(200, 60))
	}
	m = drive(b, m, hand.Key("ctrl+s"))
	if s := m.(app).screen.(planning).Filled().Spec; s.Mill != h.Mills[0].Mill || s.Positions != 8 {
		t.Errorf("from what is known: %+v, %d positions", s.Mill, s.Positions)
	}
	if s := fields.NewSpec(measure.Imperial); s.Positions == 8 {
		t.Fatal("the test shows nothing")
	}
}
