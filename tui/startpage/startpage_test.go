package startpage

import (
	"io"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/plan/entry"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/tui/internal/hand"
	"millside/tui/keys"
	"millside/tui/look"
)

// bench is the page, and what it gave to whoever shows it.
type bench struct {
	Model
	gave []tea.Msg
}

func newBench(p termenv.Profile) *bench {
	return &bench{Model: New(Deps{Styles: look.NewStyles(io.Discard, p), Keys: keys.Default()},
		entry.NewSpec(measure.Imperial))}
}

func (b *bench) tell(msgs ...tea.Msg) {
	for _, msg := range msgs {
		switch msg.(type) {
		case BackMsg, MadeMsg:
			b.gave = append(b.gave, msg)
			continue
		}
		next, cmd := b.Update(msg)
		b.Model = next
		b.tell(hand.Collect(cmd)...)
	}
}

func (b *bench) press(names ...string) *bench {
	for _, name := range names {
		b.tell(hand.Key(name))
	}
	return b
}

// fill types a text into the line of a field.
func (b *bench) fill(f *field.Field, text string) *bench {
	for b.lines.At() != f {
		b.press("tab")
	}
	b.tell(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true})
	return b
}

// By hand: each of 10 packages of 200 yd feeds 40 passes of 400 ends, so that 200 / 40 = 5 yd without tails; those of
// the usual extras take it below that, down to the next peg.
func TestLengthFromYarn(t *testing.T) {
	b := newBench(termenv.Ascii).fill(field.Ends, "400").fill(field.OnHand, "10 of 200 yd")
	if v := b.View(80, 24); !strings.Contains(v, "length: 4.5 yd") || !strings.Contains(v, "packages 1 to 10: ") {
		t.Fatalf("no answer:\n%s", v)
	}
	b.press("ctrl+s")
	if len(b.gave) != 1 {
		t.Fatalf("gave %v", b.gave)
	}
	if s := b.gave[0].(MadeMsg).Spec; s.Ends != 400 || s.Length != 9*measure.Yard/2 || s.Group != 10 {
		t.Errorf("%d ends of %s in groups of %d", s.Ends, s.Length, s.Group)
	}
}

// What is missing is said, and the key that plans goes to it; letters of key names are text; esc gives nothing.
func TestMissingIsNamed(t *testing.T) {
	b := newBench(termenv.Ascii).fill(field.FinishedWidth, "20 in")
	if v := b.View(80, 24); !strings.Contains(v, "sett") || b.result != nil {
		t.Errorf("not said:\n%s", v)
	}
	b.press("ctrl+s")
	if b.problem == "" || len(b.gave) != 0 {
		t.Errorf("planned without an answer: %v", b.gave)
	}
	b.fill(field.StripesOf, "esc left")
	if got := b.lines.Said()[field.StripesOf]; got != "esc left" {
		t.Errorf("typed %q", got)
	}
	if b.press("esc"); len(b.gave) != 1 || b.gave[0] != (BackMsg{}) {
		t.Errorf("esc gave %v", b.gave)
	}
}

// An answer to a question that has been changed since is left aside.
func TestOldAnswerIsLeftAside(t *testing.T) {
	b := newBench(termenv.Ascii).fill(field.Ends, "400").fill(field.Length, "5 yd")
	b.tell(solvedMsg{asked: b.asked - 1})
	if b.result == nil {
		t.Error("an old answer took the place of the new one")
	}
}

func goldens() []hand.Page {
	page := func(name string, fill func(*bench)) hand.Page {
		return hand.Page{Name: name, Make: func(_ *testing.T, p termenv.Profile) func(w, h int) string {
			b := newBench(p)
			fill(b)
			return b.View
		}}
	}
	return []hand.Page{
		page("empty", func(*bench) {}),
		page("yarn", func(b *bench) {
			b.fill(field.Ends, "400").fill(field.YarnOf, "cotton 8/2").fill(field.OnHand, "10 of 100 g")
		}),
		page("missing", func(b *bench) { b.fill(field.FinishedWidth, "20 in") }),
	}
}

func TestGolden(t *testing.T) { hand.Golden(t, goldens()) }

func TestColourRepeatsThePlainPage(t *testing.T) { hand.ColourRepeats(t, goldens()) }

func TestDecimalComma(t *testing.T) { hand.DecimalComma(t, goldens()) }

func TestPagesFitEverySize(t *testing.T) {
	hand.FitEverySize(t, goldens(), hand.Size{W: 23, H: 9}, hand.Size{W: look.MinWidth, H: look.MinHeight})
}

// While stripes are cut into passes the page says so and takes keys.
func TestThePageSaysThatItWorks(t *testing.T) {
	b := newBench(termenv.Ascii).fill(field.StripesOf, "8 white, 4 red")
	m, cmd := b.Update(hand.Key("9"))
	if cmd == nil || !m.waits {
		t.Fatal("nothing is worked out")
	}
	for _, size := range [][2]int{{60, 18}, {80, 24}, {120, 40}} {
		if v := strings.Join(strings.Fields(m.View(size[0], size[1])), " "); !strings.Contains(v, "cut into passes") {
			t.Errorf("%v:\n%s", size, m.View(size[0], size[1]))
		}
	}
	if next, _ := m.Update(hand.Key("tab")); next.View(80, 24) == m.View(80, 24) {
		t.Error("it takes no key meanwhile")
	}
	m.end()
}
