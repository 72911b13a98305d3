package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/counter/journal"
	"millside/plan"
	"millside/tui/internal/hand"
)

// atHome is home with a warp that has so many passes laid.
func atHome(b *bench, laid int) app {
	b.t.Helper()
	b.winding(hand.Towels(), laid).close()
	a := b.app()
	a.screen = newHome(b.deps, listAll(b.deps.store), b.clock.T)
	return a
}

// records are the records on the disk.
func records(b *bench) []journal.Summary {
	b.t.Helper()
	list, err := b.deps.store.List()
	if err != nil {
		b.t.Fatal(err)
	}
	return list
}

// A warp gets another name at home, whether it is begun or not; a name that won't do is told, and Esc leaves it.
func TestRenameAtHome(t *testing.T) {
	for _, laid := range []int{0, 4} {
		b := newBench(t, termenv.Ascii)
		m := drive(b, atHome(b, laid), hand.Key("r"), hand.Key("ctrl+u"), hand.Key("enter"))
		if v := m.View(); !strings.Contains(v, "new name:") || !strings.Contains(v, "! name") {
			t.Fatalf("an empty name:\n%s", v)
		}
		m = drive(b, m, hand.Key("esc"), hand.Key("r"), hand.Key("ctrl+u"))
		m = drive(b, typeInto(b, m, "quiet blue"), hand.Key("enter"))
		if v := m.View(); !strings.Contains(v, "is called quiet blue now") {
			t.Fatalf("renamed:\n%s", v)
		}
		if list := records(b); len(list) != 1 || list[0].Name != "quiet blue" || list[0].Laid != laid {
			t.Errorf("%+v", list)
		}
		m = drive(b, m, hand.Key("enter"))
		if state(t, m).Laid() != laid {
			t.Errorf("%d laid", state(t, m).Laid())
		}
		m.(app).close()
	}
}

// The plan of a warp that isn't begun is changed in its own record; one that is begun stays.
func TestEditAtHome(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := drive(b, atHome(b, 4), hand.Key("e"))
	if v := m.View(); !strings.Contains(v, "is begun, so its plan stays") {
		t.Fatalf("a warp that is begun:\n%s", v)
	}
	b = newBench(t, termenv.Ascii)
	m = drive(b, atHome(b, 0), hand.Key("e"))
	if v := m.View(); !strings.Contains(v, "changes the plan of Kitchen towels") {
		t.Fatalf("edit:\n%s", v)
	}
	path := records(b)[0].Path
	m = typeInto(b, drive(b, m, hand.Key("tab"), hand.Key("tab")), "384")
	m = drive(b, m, hand.Key("esc"), hand.Key("enter")) // left half-way, and gone on with
	if list := records(b); len(list) != 1 || list[0].Spec.Ends == 384 {
		t.Fatalf("changed on leaving: %+v", list)
	}
	m = drive(b, m, hand.Key("ctrl+s"))
	if st := state(t, m); st.Plan.Spec.Ends != 384 || m.(app).path() != path {
		t.Fatalf("%d ends, %s", st.Plan.Spec.Ends, m.(app).path())
	}
	m.(app).close()
	if list := records(b); len(list) != 1 || len(keptPlans(b)) != 0 {
		t.Errorf("%+v", list)
	}
}

// Where the warp was begun meanwhile, its plan stays, and the key pressed again makes a new warp.
func TestEditedTooLate(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := drive(b, atHome(b, 0), hand.Key("e"))
	path := records(b)[0].Path
	other := drive(b, b.app(), openMsg{path}, hand.Key("space"))
	other.(app).close()
	m = drive(b, m, hand.Key("ctrl+s"))
	if v := m.View(); !strings.Contains(v, "is begun: its plan stays") || strings.Contains(v, "changes the plan") {
		t.Fatalf("too late:\n%s", v)
	}
	m = drive(b, m, hand.Key("ctrl+s"))
	if st := state(t, m); st.Begun() || m.(app).path() == path || len(records(b)) != 2 {
		t.Errorf("%+v", records(b))
	}
	m.(app).close()
}

// A copy has a name of its own and the unit that the plan was written in.
func TestCopyHasItsOwnName(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	b.deps.settings.LocaleUnits = 0
	spec := hand.Towels()
	spec.Name, spec.Units = "Schal", 1-plan.DefaultSpec().Units
	b.winding(spec, 0).close()
	var m tea.Model = b.app()
	m = drive(b, m, mustList(b), hand.Key("c"), hand.Key("enter"), hand.Key("ctrl+s"))
	if st := state(t, m); st.Plan.Spec.Name != "Schal 2" || st.Plan.Spec.Units != spec.Units {
		t.Errorf("%+v", st.Plan.Spec)
	}
	m.(app).close()
}

func mustList(b *bench) tea.Msg { return listedMsg{listing: listAll(b.deps.store)} }

func TestCopyName(t *testing.T) {
	list := []journal.Summary{{Name: "Rug"}, {Name: "rug 2"}, {Name: "Scarf 2026"}}
	for name, want := range map[string]string{"Rug": "Rug 3", "Rug 2": "Rug 3", "Scarf 2026": "Scarf 2026 2",
		"8/2":                   "8/2 2",
		strings.Repeat("a", 60): strings.Repeat("a", 58) + " 2"} {
		if got := journal.CopyName(name, list); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
}

// The warp that got another name stays the one that is chosen, wherever its name puts it.
func TestRenamedStaysChosen(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	for _, name := range []string{"a scarf", "b scarf", "c scarf"} {
		spec := hand.Towels()
		spec.Name = name
		b.winding(spec, 0).close()
	}
	a := b.app()
	a.screen = newHome(b.deps, listAll(b.deps.store), b.clock.T)
	m := drive(b, a, hand.Key("down"), hand.Key("r"), hand.Key("ctrl+u"))
	m = drive(b, typeInto(b, m, "z scarf"), hand.Key("enter"))
	e, ok := m.(app).screen.(home).current()
	if !ok || e.summary == nil || e.summary.Name != "z scarf" {
		t.Errorf("chosen now:\n%s", m.View())
	}
}

// The copy's name is asked for at home, with a free one proposed; one that won't do is told, and Esc leaves it.
func TestCopyAsksForTheName(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := drive(b, atHome(b, 4), hand.Key("c"))
	if v := m.View(); !strings.Contains(v, "name of the copy: Kitchen towels, undyed 2") {
		t.Fatalf("no name is asked for:\n%s", v)
	}
	m = drive(b, m, hand.Key("ctrl+u"), hand.Key("enter"))
	if v := m.View(); !strings.Contains(v, "! name") {
		t.Fatalf("an empty name:\n%s", v)
	}
	m = drive(b, m, hand.Key("esc"))
	if _, home := m.(app).screen.(home); !home || strings.Contains(m.View(), "name of the copy") {
		t.Fatalf("left:\n%s", m.View())
	}
	m = drive(b, m, hand.Key("c"), hand.Key("ctrl+u"))
	m = drive(b, typeInto(b, m, "towels for Ane"), hand.Key("enter"))
	p, ok := m.(app).screen.(planning)
	if !ok || p.Filled().Spec.Name != "towels for Ane" || p.Filled().Spec.Ends != hand.Towels().Ends {
		t.Errorf("the form:\n%s", m.View())
	}
	if len(records(b)) != 1 {
		t.Error("a record is made before the plan is settled")
	}
}

// A plan that is changed is that of its record, also where it is just what a new warp began with.
func TestEditOfAPlanAsItBegins(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	b.winding(plan.DefaultSpec(), 0).close()
	m := drive(b, b.app(), mustList(b), hand.Key("e"))
	if p, ok := m.(app).screen.(planning); !ok || p.changing() == "" {
		t.Errorf("it isn't the record's:\n%s", m.View())
	}
}
