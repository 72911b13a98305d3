package pairpage

import (
	"io"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/plan"
	"millside/plan/field"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/pair"
	"millside/plan/project"
	"millside/plan/times"
	"millside/tui/internal/hand"
	"millside/tui/keys"
	"millside/tui/look"
)

// bench is the page, and what it gave to whoever shows it.
type bench struct {
	Model
	gave []tea.Msg
}

// warp is a warp of so many ends at a sett, in a reed of 15 dents an inch and a raddle of an inch.
func warp(t *testing.T, name string, ends, group int, sett string) *project.Project {
	t.Helper()
	s := plan.DefaultSpec()
	s.Name, s.Ends, s.Group = name, ends, group
	var err error
	if s.Loom.Sett, err = measure.ParseSett(sett); err != nil {
		t.Fatal(err)
	}
	if s.Loom.Reed, err = loom.ParseReed("15 dents an inch"); err != nil {
		t.Fatal(err)
	}
	s.Loom.Raddle = loom.Raddle{Space: measure.Inch}
	pr, err := project.New(s, times.Pace{})
	if err != nil {
		t.Fatal(err)
	}
	return pr
}

func newBench(t *testing.T, p termenv.Profile) *bench {
	return &bench{Model: New(Deps{Styles: look.NewStyles(io.Discard, p), Keys: keys.Default()},
		[2]*project.Project{warp(t, "fine ground", 300, 10, "30 an inch"), warp(t, "pile", 150, 5, "15 an inch")}, nil)}
}

func (b *bench) press(names ...string) *bench {
	for _, name := range names {
		next, cmd := b.Update(hand.Key(name))
		b.Model = next
		b.gave = append(b.gave, hand.Collect(cmd)...)
	}
	return b
}

// fill types a text into the line of a field.
func (b *bench) fill(f *field.Field, text string) *bench {
	for b.lines.At() != f {
		b.press("tab")
	}
	next, _ := b.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true})
	b.Model = next
	return b
}

// The order of both is seen as it is typed, what can't be one cloth is said, and what was said is given to be kept.
func TestTogether(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	if v := b.View(60, 18); !strings.Contains(v, "2 ground, 1 second: 150 times") {
		t.Errorf("no order of its own:\n%s", v)
	}
	if v := b.View(120, 40); !strings.Contains(v, "5 left   30      1 to 30") {
		t.Errorf("no raddle:\n%s", v)
	}
	b.fill(pair.OrderField, "3 ground, 1 second")
	if v := strings.Join(strings.Fields(b.View(60, 18)), " "); !strings.Contains(v, "50 ends of the second are left "+
		"over") {
		t.Errorf("not refused:\n%s", v)
	}
	if b.press("ctrl+s"); len(b.gave) != 0 || b.problem == "" {
		t.Errorf("kept %v", b.gave)
	}
	for range len("3 ground, 1 second") {
		b.press("backspace")
	}
	b.fill(pair.OrderField, "2 ground, 1 second").fill(pair.TakeUpField, "40%")
	for b.lines.At() != pair.HeldField {
		b.press("tab")
	}
	b.press("right", "ctrl+s")
	said := b.gave[0].(KeepMsg).Said
	if len(said) != 3 || said[pair.OrderField] != "2 ground, 1 second" || said[pair.HeldField] != "one beam" {
		t.Errorf("gave %v", said)
	}
	if v := New(b.Deps, b.warps, said); v.joint == nil || v.joint.Held != pair.OneBeam {
		t.Errorf("not shown as it was kept: %v", v.err)
	}
	if b.press("esc"); b.gave[1] != (BackMsg{}) {
		t.Errorf("esc gave %v", b.gave[1])
	}
}

func goldens() []hand.Page {
	page := func(name string, fill func(*bench)) hand.Page {
		return hand.Page{Name: name, Make: func(t *testing.T, p termenv.Profile) func(w, h int) string {
			b := newBench(t, p)
			fill(b)
			return b.View
		}}
	}
	return []hand.Page{
		page("pile", func(*bench) {}),
		page("turned", func(b *bench) { b.press("pgdown", "pgdown", "pgup") }),
		page("left-over", func(b *bench) { b.fill(pair.OrderField, "3 ground, 1 second").press("ctrl+s") }),
	}
}

func TestGolden(t *testing.T) { hand.Golden(t, goldens()) }

func TestColourRepeatsThePlainPage(t *testing.T) { hand.ColourRepeats(t, goldens()) }

func TestDecimalComma(t *testing.T) { hand.DecimalComma(t, goldens()) }

func TestPagesFitEverySize(t *testing.T) {
	hand.FitEverySize(t, goldens(), hand.Size{W: 23, H: 9}, hand.Size{W: look.MinWidth, H: look.MinHeight})
}
