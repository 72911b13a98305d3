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
	s := b.press(newForm(b.deps, towels()), "tab", "tab", "ctrl+u")
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
	if f.plan == nil || f.current(f.choices()) < 0 || (f.spec.Group == 10 && f.spec.LastPass == plan.ShortLast) {
		t.Fatalf("group %d, last pass %s", f.spec.Group, f.spec.LastPass)
	}
	for range 20 {
		s = b.press(s, "ctrl+g")
		if f := s.(form); f.plan == nil {
			t.Fatalf("group %d won't do: %v", f.spec.Group, f.problems)
		}
	}
}

// Every field of the form shows what it takes: what is shown is read back as the same value.
func TestFormFieldsRoundTrip(t *testing.T) {
	spec := towels()
	spec.Dyed, spec.Hand, spec.Dressing, spec.Units, spec.GuardMillis = true, plan.LeftHanded, plan.ReedFirst, plan.Metric, 1500
	spec.LastPass, spec.ReturnOrder, spec.ChainEnds = plan.FullLast, plan.MirroredOrder, 200
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
