package form

import (
	"context"
	"encoding/json"
	"io"
	"reflect"
	"strings"
	"sync"
	"testing"
	"time"

	"millside/plan/athand"
	"millside/plan/frame"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/stripe"
	"millside/plan/times"
	"millside/plan/wind"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/plan"
	"millside/tui/internal/hand"
	"millside/tui/keys"
	"millside/tui/look"
)

// found is what stands beside a plan.
type found struct {
	paddles []stripe.OtherPaddle
	change  *stripe.Change
}

// besideOnce looks for what stands beside a plan once for each plan.
func besideOnce(ctx context.Context, made *stripe.Plan, names map[int]string) ([]stripe.OtherPaddle, *stripe.Change) {
	if f, ok := searches.Load(made); ok {
		return f.(found).paddles, f.(found).change
	}
	paddles, change := Beside(ctx, made, names)
	if ctx.Err() == nil {
		searches.Store(made, found{paddles, change})
	}
	return paddles, change
}

// bench is what a test of the form stands on.
type bench struct {
	t    *testing.T
	deps Deps
}

func newBench(t *testing.T, profile termenv.Profile) *bench {
	t.Helper()
	return &bench{t: t, deps: Deps{Styles: look.NewStyles(io.Discard, profile), Keys: keys.Default(),
		Search: searchOnce, Beside: besideOnce}}
}

// searches keeps what was found, by what was searched: many tests show the same stripes, and a search takes seconds,
// under the race detector minutes.
var searches sync.Map

// searchOnce searches with a part of the usual effort, and for the same thing only once.
func searchOnce(ctx context.Context, spec plan.Spec, ask stripe.Ask) (*stripe.Plan, error) {
	ask.Limits.Quick = true
	what, err := json.Marshal([]any{spec, ask})
	if err != nil {
		return nil, err
	}
	if made, ok := searches.Load(string(what)); ok {
		return made.(*stripe.Plan), nil
	}
	made, err := Search(ctx, spec, ask)
	if err == nil && ctx.Err() == nil {
		searches.Store(string(what), made)
	}
	return made, err
}

// press sends keys one by one, each followed by what its commands bring.
func (b *bench) press(m Model, names ...string) Model {
	b.t.Helper()
	for _, k := range names {
		m = b.send(m, hand.Key(k))
	}
	return m
}

func (b *bench) send(m Model, msg tea.Msg) Model {
	b.t.Helper()
	next, cmd := m.Update(msg)
	for _, msg := range hand.Collect(cmd) {
		next = b.send(next, msg)
	}
	return next
}

// typed sends text as single keys.
func (b *bench) typed(m Model, text string) Model {
	b.t.Helper()
	for _, k := range hand.Letters(text) {
		m = b.send(m, k)
	}
	return m
}

// The form says at the field what is wrong, doesn't begin, and goes to the field.
// No key at the foot stands without what it does, and where keys are left out a sign says so.
func TestFootKeysHaveLabels(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	for _, w := range []int{60, 80, 120, 200} {
		m := New(b.deps, hand.Towels())
		foot := m.formFoot(w)
		line := foot[len(foot)-1]
		for _, k := range m.Keys.FormKeys() {
			h := k.Help()
			if strings.Contains(line, h.Key) && !strings.Contains(line, h.Key+" "+h.Desc) {
				t.Errorf("%d columns: %s without %q: %s", w, h.Key, h.Desc, line)
			}
			if !strings.Contains(line, h.Key) && !strings.Contains(line, "…") && k.Enabled() {
				t.Errorf("%d columns: %s is hidden without a sign: %s", w, h.Key, line)
			}
		}
	}
}

func TestFormErrorsAtTheField(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.press(New(b.deps, hand.Towels()), "tab", "tab", "tab", "ctrl+u")
	s = b.press(b.typed(s, "7 parsecs"), "tab")
	if v := s.View(120, 40); !strings.Contains(v, "give a number and a unit") ||
		!strings.Contains(v, "not yet: length") {
		t.Fatalf("no error at the field:\n%s", v)
	}
	s = b.press(s, "ctrl+s")
	if f := s; f.busy || f.fields[f.at].Name != "length" {
		t.Fatalf("began, or stands at %s", f.fields[f.at].Name)
	}
}

// The choices of group can be gone through with one key, and come round.
func TestFormChoices(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.press(New(b.deps, hand.Towels()), "ctrl+g")
	f := s
	if f.project == nil || f.current(f.choices()) < 0 || (f.spec.Group == 10 && f.spec.LastPass == wind.ShortLast) {
		t.Fatalf("group %d, last pass %s", f.spec.Group, f.spec.LastPass)
	}
	for range 20 {
		s = b.press(s, "ctrl+g")
		if f := s; f.project == nil {
			t.Fatalf("group %d won't do: %v", f.spec.Group, f.problems)
		}
	}
}

// Every field of the form shows what it takes: what is shown is read back as the same value.
func TestFormFieldsRoundTrip(t *testing.T) {
	spec := hand.Towels()
	spec.Dyed, spec.Hand, spec.Dressing, spec.Units, spec.Guard = true, wind.LeftHanded, plan.ReedFirst,
		measure.Metric, times.Guard(1500*time.Millisecond)
	spec.LastPass, spec.ReturnOrder, spec.ChainEnds = wind.FullLast, wind.MirroredOrder, 200
	read := func(v interface{ UnmarshalText([]byte) error }, text string) {
		if err := v.UnmarshalText([]byte(text)); err != nil {
			t.Fatal(err)
		}
	}
	spec.Cloth.Used, spec.Cloth.Fit = true, plan.FitPasses
	spec = withClothDefaults(spec)
	spec.Cloth.Width.Repeat, spec.Cloth.Width.Balance, spec.Cloth.Width.Doubled, spec.Cloth.Width.Floating = 12, 5, 2, 2
	spec.Cloth.Width.Finished, spec.Cloth.Length.Piece, spec.Cloth.Length.Pieces = 20*measure.Inch, 28*measure.Inch, 4
	spec.Cloth.Length.Hem, spec.Cloth.Length.Fringe, spec.Cloth.Length.Sample,
		spec.Cloth.Length.Knotting = measure.Inch, 2*measure.Inch, measure.Foot, measure.Yard
	read(&spec.Loom.Sett, "20 per inch")
	read(&spec.Cloth.Picks, "18 per inch")
	read(&spec.Cloth.Weft, "8/2 cotton")
	read(&spec.Yarn.Size, "2/28 Nm")
	read(&spec.Yarn.Cones, "250 g, 180.5 g")
	read(&spec.Yarn.Tube, "40 g")
	spec.Yarn.Colour, spec.Yarn.Packages = "sea blue", 12
	spec.Mill.Height, spec.Board = measure.Metre, frame.Board{measure.Yard, measure.Yard, measure.Foot}
	spec.Pegs = plan.Pegs{Length: 15 * measure.Centimetre, Layers: 3}
	read(&spec.Loom.Reed, "10 dents an inch")
	spec.Loom.Reed = spec.Loom.Reed.WithWidth(24 * measure.Inch)
	spec.Loom.Raddle = loom.Raddle{Space: measure.Inch / 2, Spaces: 60}
	spec.Loom.SplitGroups, spec.Loom.EdgeDents, spec.Loom.EdgeEnds, spec.Loom.FirstEnd = true, 2, 4, loom.RightSide
	var back plan.Spec
	for _, f := range formLines() {
		if err := f.Take(&back, f.Show(spec)); err != nil {
			t.Errorf("%s: %v", f.Label, err)
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
	spec := hand.Towels()
	spec.Stripes = "2 red; 2 blue"
	s := b.press(New(b.deps, spec), "tab", "tab", "ctrl+u", "pgdown", "ctrl+u")
	s = b.typed(s, "2 red")
	if v := s.View(120, 40); strings.Contains(v, "^") || !strings.Contains(v, "not yet: length") {
		t.Errorf("still points at what was mended:\n%s", v)
	}
	f := s
	f.problems = map[string]string{"cone 2": "b", "cone 1": "a", "cone 3": "c"}
	for range 20 {
		if got := f.wrongFields(); got != "cone 1: a, cone 2: b, cone 3: c" {
			t.Fatalf("%q", got)
		}
	}
}

// What is at hand can be taken over with one key, round after the last.
func TestAtHand(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	small, large := frame.Mill{Circumference: 2 * measure.Metre, PegStep: 50 * measure.Centimetre},
		frame.Mill{Circumference: 4 * measure.Yard, PegStep: measure.Yard}
	b.deps.AtHand = athand.AtHand{Mills: []athand.NamedMill{{Name: "table mill", Mill: small},
		{Name: "floor mill", Mill: large}}}
	s := b.press(New(b.deps, hand.Towels()), "pgup", "pgup", "pgup", "pgup")
	if !strings.Contains(s.View(120, 40), "2 at hand") {
		t.Fatalf("not offered:\n%s", s.View(120, 40))
	}
	for _, want := range []frame.Mill{small, large, small} {
		s = b.press(s, "ctrl+n")
		if got := s.spec.Mill; got != want {
			t.Errorf("mill %+v, want %+v", got, want)
		}
	}
}

// The form's first choice is the plan's, whatever group stands in it, and the key goes through the ranking.
func TestFormRanksAsThePlanDoes(t *testing.T) {
	for _, group := range []int{10, 7, 1} {
		spec := plan.DefaultSpec()
		spec.Ends, spec.Positions, spec.Group = 250, 20, group
		b := newBench(t, termenv.Ascii)
		m := New(b.deps, spec)
		want, err := project.Choices(m.project.Plan, times.Pace{})
		if err != nil {
			t.Fatal(err)
		}
		m = m.turnTo(secPaddle)
		if v := m.View(120, 40); !strings.Contains(v, want[0].Label()) {
			t.Errorf("group %d: the first choice %q isn't shown:\n%s", group, want[0].Label(), v)
		}
		for range len(want) {
			at := m.current(m.choices())
			m = b.press(m, "ctrl+g")
			if next := m.current(m.choices()); next != (at+1)%len(want) ||
				m.choices()[next].Label() != want[next].Label() {
				t.Fatalf("group %d: from choice %d to %d", group, at+1, next+1)
			}
		}
	}
}
