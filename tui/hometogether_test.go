package tui

import (
	"strings"
	"testing"

	"github.com/muesli/termenv"

	"millside/plan"
	"millside/tui/internal/hand"
)

// Two warps are chosen at home, seen together, and kept in both records; then one key shows them again.
func TestTwoWarpsTogether(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	for _, w := range []struct {
		name string
		ends int
		sett string
	}{{"pile", 150, "15 an inch"}, {"ground", 300, "30 an inch"}} {
		s := plan.DefaultSpec()
		s.Name, s.Ends = w.name, w.ends
		if err := s.Loom.Sett.UnmarshalText([]byte(w.sett)); err != nil {
			t.Fatal(err)
		}
		p, err := plan.New(s)
		if err != nil {
			t.Fatal(err)
		}
		rec, err := b.deps.store.Create(p)
		if err != nil {
			t.Fatal(err)
		}
		if err := rec.Close(); err != nil {
			t.Fatal(err)
		}
	}
	m := drive(b, b.app(), listedMsg{listing: listAll(b.deps.store)})
	h := m.(app).screen.(home)
	for h.list[h.chosen].Name != "ground" {
		m = drive(b, m, hand.Key("down"))
		h = m.(app).screen.(home)
	}
	m = drive(b, m, hand.Key("t"), hand.Key("t"))
	if v := m.View(); !strings.Contains(v, "that is the ground itself") || !strings.Contains(v, "choose the second") {
		t.Fatalf("not asked for the second:\n%s", v)
	}
	m = drive(b, m, hand.Key("esc"))
	if v := m.View(); strings.Contains(v, "choose the second") {
		t.Fatalf("esc doesn't leave it:\n%s", v)
	}
	m = drive(b, m, hand.Key("t"), hand.Key("up"), hand.Key("up"))
	if m.(app).screen.(home).list[0].Name == "ground" {
		m = drive(b, m, hand.Key("down"))
	}
	m = drive(b, m, hand.Key("enter"))
	if v := m.View(); !strings.Contains(v, "together: ground and pile") || !strings.Contains(v, "150 times") {
		t.Fatalf("not together:\n%s", v)
	}
	m = drive(b, m, hand.Key("ctrl+s"))
	if v := m.View(); !strings.Contains(v, "both records know") {
		t.Fatalf("not kept:\n%s", v)
	}
	for _, sum := range m.(app).screen.(home).list {
		if sum.Begun || !strings.HasPrefix(sum.Spec.GoesWith, "the ") {
			t.Errorf("%s: begun %v, goes with %q", sum.Name, sum.Begun, sum.Spec.GoesWith)
		}
	}
	m = drive(b, m, hand.Key("t"))
	if v := m.View(); !strings.Contains(v, "together: ground and pile") {
		t.Fatalf("not shown again:\n%s", v)
	}
}
