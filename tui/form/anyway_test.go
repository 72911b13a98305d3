package form

import (
	"context"
	"fmt"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/plan"
	"millside/plan/entry"
	"millside/plan/measure"
	"millside/plan/stripe"
	"millside/tui/internal/hand"
)

// mostMessages is far more than any key leads to: what goes on for longer never ends.
const mostMessages = 60

// settle runs what a step asks for until nothing is left to come.
func (b *bench) settle(m Model, cmd tea.Cmd, where string) Model {
	b.t.Helper()
	queue := hand.Collect(cmd)
	for n := 0; len(queue) > 0; n++ {
		if n == mostMessages {
			b.t.Fatalf("%s: it goes on and on", where)
		}
		msg := queue[0]
		queue = queue[1:]
		switch msg.(type) {
		case BackMsg, BeginMsg, KnownMsg:
			continue
		}
		next, more := m.Update(msg)
		m, queue = next, append(queue, hand.Collect(more)...)
	}
	if m.waits() {
		b.t.Fatalf("%s: the passes are being worked out, and nothing works on them:\n%s", where, m.View(80, 24))
	}
	return m
}

// besideNothing looks for nothing beside a plan.
func besideNothing(context.Context, *stripe.Plan, map[int]string) ([]stripe.OtherPaddle, *stripe.Change) {
	return nil, nil
}

// ways are all the ways in which a form is started.
func ways(t *testing.T) map[string]func(Deps) Model {
	t.Helper()
	const order = "8 white, 4 red, 8 white"
	begins := entry.NewSpec(measure.Imperial)
	flags := begins
	flags.Stripes = order
	order3, err := stripe.Parse(order)
	if err != nil {
		t.Fatal(err)
	}
	ask, err := stripe.AskOf(flags, order3.Colours)
	if err != nil {
		t.Fatal(err)
	}
	made, err := searchOnce(t.Context(), flags, ask)
	if err != nil {
		t.Fatal(err)
	}
	record := made.Spec
	copied := record
	copied.Name = "towels 2"
	cloth := begins
	cloth.Cloth.Used, cloth.Cloth.Width.Finished, cloth.Cloth.Length.Piece = true, 20*measure.Inch, measure.Yard
	drafted := begins
	drafted.Stripes, drafted.StripesFrom = order, plan.WrittenFrom(1)
	from := func(spec plan.Spec) func(Deps) Model { return func(d Deps) Model { return New(d, spec) } }
	return map[string]func(Deps) Model{
		"empty": from(begins), "flags": from(flags), "cloth": from(cloth), "a copy": from(copied),
		"a draft": from(drafted), "a plan in the old units": from(plan.DefaultSpec()),
		"an edited record": func(d Deps) Model { d.Of = "towels"; return New(d, record) },
		"half-filled": func(d Deps) Model {
			return Refilled(d, Filled{Spec: flags, At: "group", Texts: map[string]string{"stripes": order + ", 4",
				"name": "", "length": "long"}})
		},
	}
}

// However the form is started, whatever field is typed in, cleared and left: it is drawn, and what is being worked out
// comes to its end.
func TestEveryFieldInEveryForm(t *testing.T) {
	all := ways(t)
	if testing.Short() { // these differ from the others by what they begin with only
		delete(all, "a copy")
		delete(all, "an edited record")
		delete(all, "a plan in the old units")
		delete(all, "flags") // the half-filled one begins with these
		delete(all, "a draft")
	}
	for name, start := range all {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			b := newBench(t, termenv.Ascii)
			b.deps.Beside = besideNothing
			m, cmd := start(b.deps).Init()
			m = b.settle(m, cmd, "the start")
			for i := 0; i < len(m.fields)+2; i++ {
				where := fmt.Sprintf("field %q", m.fields[m.at].Name)
				was := m.text(m.at)
				tries := []string{"3", "x", "-"}
				if testing.Short() {
					tries = []string{"3x"}
				}
				for _, text := range tries {
					for _, key := range []string{text, "backspace", "right", "ctrl+u", "left"} {
						m, cmd = m.Update(hand.Key(key))
						m = b.settle(m, cmd, where+", key "+key)
						_ = m.View(60, 18)
						_ = m.View(120, 40)
					}
				}
				m = m.setField(m.at, was).compute() // so that the fields after it stand in a plan that will do
				m, cmd = m.schedule()
				m = b.settle(m, cmd, where+" as it was")
				m, cmd = m.Update(hand.Key("tab"))
				m = b.settle(m, cmd, where+" left")
			}
		})
	}
}

// The form began once to work out the passes of what the command line gave, and never ended after one change.
func TestInitAndOneChangeEnd(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m, cmd := ways(t)["flags"](b.deps).Init()
	if cmd == nil {
		t.Fatal("nothing is worked out")
	}
	// The change comes before the answer does, and the answer to what was asked first after it.
	m, more := m.Update(tea.KeyMsg{Type: tea.KeyEnd})
	m, last := m.Update(hand.Key("pgdown"))
	m, next := m.setField(m.boxAt, "8 white, 4 red, 9 white").compute().schedule()
	m = b.settle(m, tea.Batch(cmd, more, last, next), "one change")
	if m.project == nil || m.spec.Ends != 21 {
		t.Errorf("%d ends, %v:\n%s", m.spec.Ends, m.problems, m.View(80, 24))
	}
}
