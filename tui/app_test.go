package tui

import (
	"reflect"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/plan"
)

// Letters typed in one read arrive as one message; each is a key of its own.
func TestRunesInOneReadAreSplit(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	a := newApp(b.deps)
	a.screen = b.winding(towels(), 4)
	next, _ := a.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("f?")})
	if w := next.(app).screen.(winding); !w.far || w.mode != modeHelp {
		t.Fatalf("far %v, mode %d", w.far, w.mode)
	}
}

// What was pasted is text, never a key.
func TestPasteIsNoKey(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	a := newApp(b.deps)
	a.screen = b.winding(towels(), 4)
	next, cmd := a.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("q"), Paste: true})
	if cmd != nil || next.(app).screen.(winding).busy {
		t.Fatal("a pasted q left the program")
	}
}

func TestInterrupt(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	a := newApp(b.deps)
	a.screen = newForm(b.deps, towels())
	next, cmd := a.Update(keyMsg("ctrl+c"))
	if !next.(app).interrupted || cmd == nil {
		t.Fatal("ctrl+c did not leave")
	}
	if _, ok := cmd().(tea.QuitMsg); !ok {
		t.Fatal("ctrl+c did not quit")
	}
}

// drive runs the whole program's model, with every command to its end.
func drive(b *bench, m tea.Model, msgs ...tea.Msg) tea.Model {
	for _, msg := range msgs {
		b.clock.wait(3 * time.Second)
		var cmd tea.Cmd
		m, cmd = m.Update(msg)
		m = drive(b, m, collect(cmd)...)
	}
	return m
}

// From home to a new warp, wound a little, left, and found again at the head of the list.
func TestFromHomeAndBack(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	a := newApp(b.deps)
	a.screen = newHome(b.deps, nil, nil)
	var m tea.Model = drive(b, a, keyMsg("n"), keyMsg("ctrl+u"))
	for _, r := range "Blue rug" {
		m = drive(b, m, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
	}
	m = drive(b, m, keyMsg("ctrl+s"), keyMsg("space"), keyMsg("p"))
	w, ok := m.(app).screen.(winding)
	if !ok || w.st.Plan.Spec.Name != "Blue rug" || w.st.Laid() != 1 {
		t.Fatalf("screen %T:\n%s", m.(app).screen, m.View())
	}
	m = drive(b, m, goHomeMsg{})
	if v := m.View(); !strings.Contains(v, "Blue rug") || !strings.Contains(v, "1 of 20 passes") {
		t.Fatalf("home:\n%s", v)
	}
	m = drive(b, m, keyMsg("enter"))
	if w := m.(app).screen.(winding); w.mode != modeResume || w.st.Laid() != 1 {
		t.Fatalf("mode %d", w.mode)
	}
	m.(app).close()
}

// The plan of a warp can be copied in two keys: the form opens with it, and begins a warp of its own.
func TestTheSameWarpAgain(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	first := b.winding(towels(), 4)
	list, err := b.deps.store.List()
	if err != nil {
		t.Fatal(err)
	}
	a := newApp(b.deps)
	a.screen = newHome(b.deps, list, nil)
	m := drive(b, a, keyMsg("c"), keyMsg("ctrl+s"))
	w, ok := m.(app).screen.(winding)
	if !ok || !reflect.DeepEqual(w.st.Plan.Spec, first.st.Plan.Spec) || w.st.Laid() != 0 || w.rec.Path() == first.rec.Path() {
		t.Fatalf("%T:\n%s", m.(app).screen, m.View())
	}
	m.(app).close()
}

// A second window on the same warp looks, and doesn't wind.
func TestOpenTwiceLooks(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	first := b.winding(towels(), 4)
	a := newApp(b.deps)
	a.screen = newHome(b.deps, nil, nil)
	m := drive(b, a, openMsg{first.rec.Path()})
	if w, ok := m.(app).screen.(winding); !ok || !w.rec.ReadOnly() {
		t.Fatalf("the second window winds: %T", m.(app).screen)
	}
}

// Enter pressed twice on home opens the warp once, for winding.
func TestOpeningTwiceInARow(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	first := b.winding(towels(), 4)
	path := first.rec.Path()
	if err := first.rec.Close(); err != nil {
		t.Fatal(err)
	}
	a := newApp(b.deps)
	list, err := b.deps.store.List()
	if err != nil {
		t.Fatal(err)
	}
	a.screen = newHome(b.deps, list, nil)
	once, cmd := a.Update(keyMsg("enter"))
	twice, more := once.Update(keyMsg("enter"))
	m := drive(b, twice, append(collect(cmd), collect(more)...)...)
	m = drive(b, m, openMsg{path})
	if w, ok := m.(app).screen.(winding); !ok || w.rec.ReadOnly() {
		t.Fatalf("%T", m.(app).screen)
	}
	m.(app).close()
}

func TestOpeningWhatIsNotThere(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	a := newApp(b.deps)
	a.screen = newHome(b.deps, nil, nil)
	m := drive(b, a, openMsg{b.deps.store.Dir + "/none.millside"})
	if v := m.View(); !strings.Contains(v, "! opening the record") {
		t.Fatalf("no reason given:\n%s", v)
	}
}

// The form says at the field what is wrong, doesn't begin, and goes to the field.
func TestFormErrorsAtTheField(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.press(newForm(b.deps, towels()), "tab", "tab", "tab", "ctrl+u")
	s = b.press(b.typed(s, "7 parsecs"), "tab")
	if v := s.view(120, 40); !strings.Contains(v, "give a number and a unit") || !strings.Contains(v, "not yet: length") {
		t.Fatalf("no error at the field:\n%s", v)
	}
	s = b.press(s, "ctrl+s")
	if f := s.(form); f.busy || f.fields[f.at].name != "length" {
		t.Fatalf("began, or stands at %s", f.fields[f.at].name)
	}
}

// The choices of group can be gone through with one key, and come round.
func TestFormChoices(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.press(newForm(b.deps, towels()), "ctrl+g")
	f := s.(form)
	if f.project == nil || f.current(f.choices()) < 0 || (f.spec.Group == 10 && f.spec.LastPass == plan.ShortLast) {
		t.Fatalf("group %d, last pass %s", f.spec.Group, f.spec.LastPass)
	}
	for range 20 {
		s = b.press(s, "ctrl+g")
		if f := s.(form); f.project == nil {
			t.Fatalf("group %d won't do: %v", f.spec.Group, f.problems)
		}
	}
}

// Every field of the form shows what it takes: what is shown is read back as the same value.
func TestFormFieldsRoundTrip(t *testing.T) {
	spec := towels()
	spec.Dyed, spec.Hand, spec.Dressing, spec.Units, spec.GuardMillis = true, plan.LeftHanded, plan.ReedFirst, plan.Metric, 1500
	spec.LastPass, spec.ReturnOrder, spec.ChainEnds = plan.FullLast, plan.MirroredOrder, 200
	read := func(v interface{ UnmarshalText([]byte) error }, text string) {
		if err := v.UnmarshalText([]byte(text)); err != nil {
			t.Fatal(err)
		}
	}
	spec.Cloth.Used, spec.Cloth.Fit = true, plan.FitPasses
	spec = withClothDefaults(spec)
	spec.Cloth.Width.Repeat, spec.Cloth.Width.Balance, spec.Cloth.Width.Doubled, spec.Cloth.Width.Floating = 12, 5, 2, 2
	spec.Cloth.Width.Finished, spec.Cloth.Length.Piece, spec.Cloth.Length.Pieces = 20*plan.Inch, 28*plan.Inch, 4
	spec.Cloth.Length.Hem, spec.Cloth.Length.Fringe, spec.Cloth.Length.Sample, spec.Cloth.Length.Knotting = plan.Inch, 2*plan.Inch, plan.Foot, plan.Yard
	read(&spec.Loom.Sett, "20 per inch")
	read(&spec.Cloth.Picks, "18 per inch")
	read(&spec.Cloth.Weft, "8/2 cotton")
	read(&spec.Yarn.Size, "2/28 Nm")
	read(&spec.Yarn.Cones, "250 g, 180.5 g")
	read(&spec.Yarn.Tube, "40 g")
	spec.Yarn.Colour, spec.Yarn.Packages = "sea blue", 12
	spec.Mill.Height, spec.Board = plan.Metre, plan.Board{plan.Yard, plan.Yard, plan.Foot}
	spec.Pegs = plan.Pegs{Length: 15 * plan.Centimetre, Layers: 3}
	read(&spec.Loom.Reed, "10 dents an inch")
	spec.Loom.Reed = spec.Loom.Reed.WithWidth(24 * plan.Inch)
	spec.Loom.Raddle = plan.Raddle{Space: plan.Inch / 2, Spaces: 60}
	spec.Loom.WholeGroups, spec.Loom.EdgeDents, spec.Loom.EdgeEnds, spec.Loom.FirstEnd = true, 2, 4, plan.RightSide
	var back plan.Spec
	for _, f := range formFields() {
		if err := f.take(&back, f.show(spec)); err != nil {
			t.Errorf("%s: %v", f.label, err)
		}
	}
	if !reflect.DeepEqual(back, spec) {
		t.Errorf("got  %+v\nwant %+v", back, spec)
	}
}

// Once the stripes can be read again, nothing points at the old mistake; fields that are wrong are named in
// one order.
func TestMendedStripes(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	spec := towels()
	spec.Stripes = "2 red; 2 blue"
	s := b.press(newForm(b.deps, spec), "tab", "tab", "ctrl+u", "pgdown", "ctrl+u")
	s = b.typed(s, "2 red")
	if v := s.view(120, 40); strings.Contains(v, "^") || !strings.Contains(v, "not yet: length") {
		t.Errorf("still points at what was mended:\n%s", v)
	}
	f := s.(form)
	f.problems = map[string]string{"cone 2": "b", "cone 1": "a", "cone 3": "c"}
	for range 20 {
		if got := f.wrongFields(); got != "cone 1: a, cone 2: b, cone 3: c" {
			t.Fatalf("%q", got)
		}
	}
}
