package form

import (
	"context"
	"slices"
	"strings"
	"testing"
	"time"

	"millside/plan"
	"millside/plan/athand"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/stripe"
	"millside/plan/wind"
	"millside/tui/internal/hand"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"
)

// stripesPage is the form at its stripes.
func (b *bench) stripesPage(text string) Model {
	spec := plan.DefaultSpec()
	spec.Stripes, spec.Positions = text, 6
	return b.at(New(b.deps, spec), field.StripesOf)
}

// at goes to a field.
func (b *bench) at(m Model, f *field.Field) Model {
	b.t.Helper()
	i := slices.IndexFunc(m.fields, func(l line) bool { return l.Field == f })
	if i < 0 {
		b.t.Fatalf("no field %s", f.Name)
	}
	return m.focus(i)
}

// What is pasted into the stripes stays there, line by line, whether the terminal says that it is pasted or not, and
// what is begun is one line.
func TestLinesStayInTheStripes(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	read := func(text string) tea.KeyMsg { return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text)} }
	pasted := read("4 red\r\n2 left")
	pasted.Paste = true
	for _, msgs := range [][]tea.KeyMsg{{read("4 red"), {Type: tea.KeyEnter}, read("2 left")}, {pasted}} {
		m := b.stripesPage("")
		for _, msg := range msgs {
			m = b.send(m, msg)
		}
		if m.text(m.boxAt) != "4 red\n2 left" || !m.inBox() || m.order.Size() != 6 {
			t.Fatalf("%q, %d ends", m.text(m.boxAt), m.order.Size())
		}
		_, cmd := m.Update(hand.Key("ctrl+s"))
		begun := false
		for _, msg := range hand.Collect(cmd) {
			if begin, ok := msg.(BeginMsg); ok {
				begun = begin.Spec.Stripes == "4 red, 2 left"
			}
		}
		if !begun {
			t.Errorf("not begun: %v", m.problems)
		}
	}
}

// Up and down go from row to row and leave the stripes at their first and at their last; tab leaves them anywhere.
func TestKeysInTheStripes(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	long := strings.TrimSuffix(strings.Repeat("4 red, 2 blue, ", 12), ", ")
	m := b.stripesPage(long).Sized(60)
	rows := 0
	for ; m.inBox(); rows++ {
		m = b.press(m, "up")
	}
	if rows < 3 {
		t.Errorf("left after %d rows", rows)
	}
	m = b.press(m, "down") // and back, to the first row
	for range rows - 1 {
		m = b.press(m, "down")
	}
	if !m.inBox() {
		t.Error("left before the last row")
	}
	if m = b.press(m, "down"); m.fields[m.at].Field != field.StripesFrom {
		t.Errorf("went to %s", m.fields[m.at].Label)
	}
	if m = b.press(m, "shift+tab", "up", "tab"); m.fields[m.at].Field != field.StripesFrom {
		t.Errorf("tab went to %s", m.fields[m.at].Label)
	}
	if m.text(m.boxAt) != long {
		t.Errorf("the text became %q", m.text(m.boxAt))
	}
}

// A mistake is pointed at where it stands, in a text that is wrapped too, and one key, which is shown, mends it.
func TestAdviceIsTaken(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := b.stripesPage("  " + strings.Repeat("4 red, 2 blue, ", 8) + "4 red; 2 blue").Sized(60)
	v := strings.Split(m.View(60, 18), "\n")
	at := slices.IndexFunc(v, func(l string) bool { return strings.TrimSpace(l) == "^" })
	if at < 1 || len(v[at])-1 != strings.Index(v[at-1], ";") {
		t.Fatalf("doesn't point at the mistake:\n%s", strings.Join(v, "\n"))
	}
	if flat := hand.Flat(m.View(60, 18)); !strings.Contains(flat, "ctrl+t take it") {
		t.Errorf("the key isn't shown:\n%s", flat)
	}
	m = b.press(m, "ctrl+t")
	if m.order.Size() != 54 || m.problems["stripes"] != "" {
		t.Errorf("%q: %v", m.text(m.boxAt), m.problems)
	}
	if flat := hand.Flat(m.View(60, 18)); strings.Contains(flat, "ctrl+t") {
		t.Errorf("advises still:\n%s", flat)
	}
}

// The first letter typed takes the place of what stands in the other fields of the page; the stripes stay.
func TestFirstLetterOnTheStripesPage(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := b.stripesPage("4 red, 2 blue")
	m.spec.Asked.Packages = "red 2"
	m = b.typed(b.at(m.setFields(m.spec, field.PackagesOf.Name), field.PackagesOf), "blue 3")
	if m.spec.Asked.Packages != "blue 3" {
		t.Errorf("packages of %q", m.spec.Asked.Packages)
	}
	if m = b.typed(b.at(m, field.StripesOf), "s"); m.spec.Stripes != "4 red, 2 blues" {
		t.Errorf("stripes %q", m.spec.Stripes)
	}
}

// The ways to wind stand beside the plan with their minutes, and one key takes the next, as the field does.
func TestWaysAreChosen(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	b.deps.Beside = nothingBeside
	m := b.send(b.stripesPage("4 red, 2 blue, 4 red"), tea.KeyMsg{Type: tea.KeyEnd})
	list, at := m.made.made.Choices()
	if at < 0 || list[at].Choose != "searched" {
		t.Fatalf("%d of %v", at, list)
	}
	var taken []string
	for range list {
		m = b.press(m, "ctrl+g")
		flat := hand.Flat(m.View(200, 60))
		now := field.Way.Words[0]
		if m.spec.Asked.Way != "" {
			now = m.spec.Asked.Way
		}
		if !strings.Contains(flat, "▸ "+now+": ") || !strings.Contains(flat, " min") {
			t.Errorf("%s isn't marked:\n%s", now, flat)
		}
		if m.project == nil || m.project.Plan.EndsWound() != 10 {
			t.Errorf("%s: %v", now, m.problems)
		}
		if now == "searched" {
			break
		}
		taken = append(taken, now)
	}
	if !slices.Contains(taken, "side-by-side") || !slices.Contains(taken, "chain-each-colour") {
		t.Errorf("took %v", taken)
	}
	m = b.press(b.at(m, field.Way), "left")
	if m.spec.Asked.Way != "chain-each-colour" || m.project == nil || m.project.Plan.Spec.Schedule.Order == nil {
		t.Errorf("way %q, %v", m.spec.Asked.Way, m.problems)
	}
}

// Other paddles and a small change stand there once they were looked for, for the stripes as they stand only, and the
// change is made by one key.
func TestBesides(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	changed, err := stripe.Parse("8 red, 8 blue")
	if err != nil {
		t.Fatal(err)
	}
	b.deps.Beside = func(_ context.Context, made *stripe.Plan, names map[int]string) ([]stripe.OtherPaddle,
		*stripe.Change) {
		if made.Order.Size() != 18 {
			return nil, nil
		}
		return []stripe.OtherPaddle{{Positions: 16, Name: names[16], Packages: []int{8, 8}, Passes: 2,
				Total: 9 * time.Minute}},
			&stripe.Change{Words: "each stripe of 9 made 8", Order: changed, Ends: 16, Total: 4 * time.Minute,
				Saved: 20 * time.Minute}
	}
	b.deps.AtHand.Paddles = []athand.NamedPaddle{{Name: "long paddle", Positions: 16}}
	m := b.stripesPage("9 red, 9 blu")
	m, cmd := m.Update(hand.Letters("e")[0])
	for _, msg := range hand.Collect(cmd) {
		m = b.send(m, msg)
	}
	flat := hand.Flat(m.View(200, 60))
	for _, want := range []string{"9 min; 16 positions (long paddle, at hand): 2 passes",
		"each stripe of 9 made 8: 16 ends",
		"ctrl+t take it"} {
		if !strings.Contains(flat, want) {
			t.Errorf("no %q:\n%s", want, flat)
		}
	}
	if m = b.press(m, "ctrl+t"); m.spec.Stripes != "8 red, 8 blue" || m.beside.change != nil {
		t.Errorf("%q, %v", m.spec.Stripes, m.beside.change)
	}
}

// A way that was worked out already is there at once when the keys come round to it again.
func TestKnownWayIsThereAtOnce(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	b.deps.Beside = nothingBeside
	m := b.send(b.stripesPage("4 red, 2 blue, 4 red"), tea.KeyMsg{Type: tea.KeyEnd})
	for round := range 2 {
		for range 9 {
			m = b.press(m, "ctrl+g")
			if m.waits() {
				t.Fatalf("round %d: %s isn't there", round, m.spec.Asked.Way)
			}
		}
	}
	m, cmd := m.Update(hand.Key("ctrl+g")) // and nothing that a command brings is heard
	if m.waits() || m.project == nil || m.made.made.Way.String() != m.spec.Asked.Way {
		t.Errorf("%q waits again", m.spec.Asked.Way)
	}
	for _, msg := range hand.Collect(cmd) {
		if _, again := msg.(stripesMsg); again {
			t.Error("it is worked out again")
		}
	}
}

// Stripes that are laid to a width don't wait for the length of the cloth; where they wait for its sett, the page of
// the cloth says what it lacks, and nothing is asked of the stripes.
func TestStripesLaidOnAHalfSaidCloth(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	spec := hand.Towels()
	spec.Stripes, spec.Asked.Laid.How = "4 red, 2 white", wind.Repeated
	spec.Cloth.Used, spec.Cloth.Width.Finished = true, 2*measure.Inch
	f := New(b.deps, spec)
	if f.problems["stripes"] != "" || f.problems["sett"] == "" {
		t.Errorf("without a sett: %v", f.problems)
	}
	spec.Loom.Sett = testSett(t, "10 an inch")
	if f = New(b.deps, spec); f.problems["stripes"] != "" || f.order.Size() < 20 {
		t.Errorf("without a length: %v, %d ends laid", f.problems, f.order.Size())
	}
}

func testSett(t *testing.T, text string) measure.Sett {
	t.Helper()
	sett, err := measure.ParseSett(text)
	if err != nil {
		t.Fatal(err)
	}
	return sett
}
