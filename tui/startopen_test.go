package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/tui/internal/hand"
)

// What is known is typed from home, and the warp that was found stands in the form and is kept.
func TestFromWhatIsKnownOnTheScreen(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := drive(b, b.app(), hand.Key("f"), hand.Key("tab"), hand.Key("4"), hand.Key("0"), hand.Key("0"),
		hand.Key("tab"), hand.Key("9"), hand.Key("y"), hand.Key("d"))
	if v := m.View(); !strings.Contains(v, "yarn: ") {
		t.Fatalf("no answer:\n%s", v)
	}
	m = drive(b, m, hand.Key("ctrl+s"))
	p, ok := m.(app).screen.(planning)
	if !ok {
		t.Fatalf("no form:\n%s", m.View())
	}
	if s := p.Filled().Spec; s.Ends != 400 || s.Length.String() != "9 yd" {
		t.Errorf("%d ends of %s", s.Ends, s.Length)
	}
	if m = drive(b, m, hand.Key("esc")); !strings.Contains(m.View(), "half-filled plans (1)") {
		t.Errorf("not kept:\n%s", m.View())
	}
}

// The page opens from the form too: what was filled in there is kept, half-filled.
func TestFromTheFormToWhatIsKnown(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := typeInto(b, drive(b, b.app(), hand.Key("n")), "blanket")
	m = drive(b, m, tea.KeyMsg{Type: tea.KeyF2})
	if _, ok := m.(app).screen.(starting); !ok {
		t.Fatalf("%T is shown", m.(app).screen)
	}
	if m = drive(b, m, hand.Key("esc")); !strings.Contains(m.View(), "blanket") {
		t.Errorf("not kept:\n%s", m.View())
	}
}

// What was typed on the page of what is known is there again after Esc.
func TestWhatIsKnownIsKept(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := drive(b, b.app(), hand.Key("f"), hand.Key("tab"), hand.Key("4"), hand.Key("1"), hand.Key("7"))
	if m = drive(b, m, hand.Key("esc"), hand.Key("f")); !strings.Contains(m.View(), "417") {
		t.Errorf("the ends are gone:\n%s", m.View())
	}
}
