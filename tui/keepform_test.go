package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/counter/halfplan"
	"millside/plan"
	"millside/tui/internal/hand"
)

// keptPlans are the half-filled plans on the disk.
func keptPlans(b *bench) []halfplan.Plan {
	b.t.Helper()
	list, err := halves(b.deps.store).List()
	if err != nil {
		b.t.Fatal(err)
	}
	return list
}

// typeInto sends text as single keys.
func typeInto(b *bench, m tea.Model, text string) tea.Model {
	for _, k := range hand.Letters(text) {
		m = drive(b, m, k)
	}
	return m
}

// A plan that is left half-filled is offered on home as it was left, right or wrong, and goes once the warp is made.
func TestHalfFilledPlanIsKept(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := typeInto(b, drive(b, b.app(), hand.Key("n")), "Blue rug")
	m = typeInto(b, drive(b, m, hand.Key("tab"), hand.Key("tab")), "39x")
	form := m.View()
	m = drive(b, m, hand.Key("esc"))
	if v := m.View(); !strings.Contains(v, "half-filled plans (1)") || !strings.Contains(v, "Blue rug") ||
		!strings.Contains(v, "kept as it is, half-filled") {
		t.Fatalf("home:\n%s", v)
	}
	m = drive(b, m, hand.Key("enter")) // it is chosen
	if v := m.View(); v != form {
		t.Fatalf("left as\n%s\nfound as\n%s", form, v)
	}
	m = drive(b, m, hand.Key("backspace"), hand.Key("0"), hand.Key("esc"), hand.Key("enter"))
	if list := keptPlans(b); len(list) != 1 || list[0].Texts["ends"] != "390" {
		t.Fatalf("%+v", list)
	}
	m = drive(b, m, hand.Key("ctrl+s"))
	if st := state(t, m); st.Plan.Spec.Name != "Blue rug" || st.Plan.Spec.Ends != 390 {
		t.Errorf("%+v", st.Plan.Spec)
	}
	if list := keptPlans(b); len(list) != 0 {
		t.Errorf("still there: %+v", list)
	}
	m.(app).close()
}

// A form in which nothing was changed leaves nothing behind.
func TestUntouchedFormLeavesNothing(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := drive(b, b.app(), hand.Key("n"), hand.Key("tab"), hand.Key("pgdown"), hand.Key("esc"))
	if list := keptPlans(b); len(list) != 0 || strings.Contains(m.View(), "half-filled") {
		t.Errorf("%+v:\n%s", list, m.View())
	}
}

// What is typed is kept when a field is left and after a quiet moment; only the last of several quiet moments writes,
// and Update itself never does.
func TestKeptWhileTyping(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	var waiting []tea.Msg
	b.deps.tick = func(d time.Duration, f func(time.Time) tea.Msg) tea.Cmd {
		return func() tea.Msg { waiting = append(waiting, f(b.clock.T.Add(d))); return nil }
	}
	m := typeInto(b, drive(b, b.app(), hand.Key("n")), "Rug")
	if list := keptPlans(b); len(list) != 0 || len(waiting) != 3 {
		t.Fatalf("written while typing: %d, waiting %d", len(list), len(waiting))
	}
	m = drive(b, m, waiting[0], waiting[1])
	if list := keptPlans(b); len(list) != 0 {
		t.Fatal("written though more was typed since")
	}
	next, cmd := m.Update(waiting[2])
	if list := keptPlans(b); len(list) != 0 {
		t.Fatal("Update wrote a file")
	}
	m = drive(b, next, hand.Collect(cmd)...)
	if list := keptPlans(b); len(list) != 1 || list[0].Texts["name"] != "Rug" {
		t.Fatalf("after a quiet moment: %+v", list)
	}
	m = typeInto(b, m, "gy")
	m = drive(b, m, hand.Key("tab"))
	if list := keptPlans(b); len(list) != 1 || list[0].Texts["name"] != "Ruggy" || list[0].At != "planned from" {
		t.Fatalf("after the field was left: %+v", list)
	}
	m = typeInto(b, drive(b, m, hand.Key("tab")), "77")
	if err := m.(app).keepForm(); err != nil { // as at the end of the program
		t.Fatal(err)
	}
	if list := keptPlans(b); len(list) != 1 || list[0].Texts["ends"] != "77" {
		t.Fatalf("at the end of the program: %+v", list)
	}
}

// What the command line gave to the form is kept on leaving too.
func TestGivenOnTheCommandLineIsKept(t *testing.T) {
	for _, given := range []bool{false, true} {
		b := newBench(t, termenv.Ascii)
		spec := b.app().newSpec()
		if given {
			spec.Ends = 396
		}
		drive(b, newApp(b.deps, b.clock.T).started(Options{Spec: &spec}), hand.Key("esc"))
		if list := keptPlans(b); (len(list) == 1) != given {
			t.Errorf("given %v: %+v", given, list)
		}
	}
}

// A plan that can't be read is told, opens nothing and stops nothing; it can be dropped like any other.
func TestBrokenHalfFilledPlan(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	dir := filepath.Join(b.deps.store.Dir, halfplan.Folder)
	if err := os.MkdirAll(dir, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "x.plan"), []byte("{"), 0o600); err != nil {
		t.Fatal(err)
	}
	m := drive(b, newApp(b.deps, b.clock.T).started(Options{}), hand.Key("enter"))
	if v := m.View(); !strings.Contains(v, "x.plan can't be read") {
		t.Fatalf("not told:\n%s", v)
	}
	m = drive(b, m, hand.Key("d"))
	if v := m.View(); strings.Contains(v, "half-filled") || !strings.Contains(v, "brings it back") {
		t.Errorf("not dropped:\n%s", v)
	}
	if m = drive(b, m, hand.Key("n")); !strings.Contains(m.View(), "▸warp") {
		t.Errorf("no form:\n%s", m.View())
	}
}

// A half-filled plan is dropped with one key and brought back with another.
func TestDroppedPlanComesBack(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := typeInto(b, drive(b, b.app(), hand.Key("n")), "Blue rug")
	m = drive(b, m, hand.Key("esc"), hand.Key("d"))
	if v := m.View(); strings.Contains(v, "half-filled plans") {
		t.Fatalf("not dropped:\n%s", v)
	}
	m = drive(b, m, hand.Key("tab"))
	if v := m.View(); !strings.Contains(v, "deleted (1)") || !strings.Contains(v, "Blue rug") {
		t.Fatalf("not on the shelf:\n%s", v)
	}
	m = drive(b, m, hand.Key("b"), hand.Key("esc"))
	if v := m.View(); !strings.Contains(v, "half-filled plans (1)") {
		t.Fatalf("not brought back:\n%s", v)
	}
}

// Where a plan can't be kept the form says so and goes on.
func TestNotKept(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	b.deps.store.Dir = filepath.Join(b.deps.store.Dir, "file")
	if err := os.WriteFile(b.deps.store.Dir, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	m := typeInto(b, drive(b, b.app(), goFormMsg{spec: plan.DefaultSpec()}), "Rug")
	m = drive(b, m, hand.Key("tab"))
	if v := m.View(); !strings.Contains(v, "keeping the half-filled plan") {
		t.Errorf("not told:\n%s", v)
	}
	m = drive(b, m, hand.Key("esc"))
	if v := m.View(); !strings.Contains(v, "keeping the half-filled plan") || !strings.Contains(v, "new warp") {
		t.Errorf("home:\n%s", v)
	}
}
