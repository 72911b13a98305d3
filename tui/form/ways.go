package form

import (
	"context"
	"fmt"
	"time"

	"millside/plan/measure"
	"millside/plan/stripe"
	"millside/tui/look"

	tea "github.com/charmbracelet/bubbletea"
)

// nextWay takes the next of the ways to wind that are possible, round after the last.
func (m Model) nextWay() Model {
	if m.made.key != m.key() || m.made.made == nil {
		return m
	}
	list, at := m.made.made.Choices()
	for i := range list {
		if way := list[(at+1+i)%len(list)]; way.Possible {
			spec := m.spec
			spec.Asked.Way = way.Choose
			return m.setFields(spec, "way")
		}
	}
	return m
}

// wayLines lists the ways to wind with their minutes, that of the plan marked.
func (m Model) wayLines(w int) []string {
	s := m.Styles
	list, at := m.made.made.Choices()
	out := []string{s.Dim.Render(look.Fit("ways to wind; "+m.Keys.Choice.Help().Key+": the next", w))}
	for i, way := range list {
		text := way.Choose + ": not with these stripes, this paddle and these packages"
		switch {
		case i == at:
			text = fmt.Sprintf("%s: %s", way.Choose, look.Roughly(way.Total))
		case way.Possible:
			text = fmt.Sprintf("%s: %s, %s", way.Choose, look.Roughly(way.Total), saved(way.Saved))
		}
		for k, l := range look.Wrap(text, w-2) {
			if i == at {
				l = s.Strong.Render(l)
			}
			out = append(out, []string{"  ", "▸ "}[one(i == at && k == 0)]+l)
		}
		words := way.Words
		if way.Possible && way.Loom != "" {
			words += "; " + way.Loom
		}
		out = append(out, look.Indent(look.Painted(look.Wrap(words, w-4), s.Dim), 4)...)
	}
	return out
}

func one(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

func saved(d time.Duration) string {
	switch {
	case d > 0:
		return look.Roughly(d) + " more"
	case d < 0:
		return look.Roughly(-d) + " less"
	default:
		return "no difference"
	}
}

// besides is what else there would be for the stripes: other paddles, and a small change that winds far faster. It is
// looked for once their schedule is there.
type besides struct {
	key     stripeKey
	paddles []stripe.OtherPaddle
	change  *stripe.Change
	came    bool
	stop    func() // ends the work, unless it is nil
}

// besidesMsg brings it.
type besidesMsg besides

// lookBeside is the command that looks for it.
func (m Model) lookBeside() (Model, tea.Cmd) {
	made, key := m.made.made, m.made.key
	if made == nil || m.beside.key == key || key != m.key() {
		return m, nil
	}
	ctx, stop := context.WithCancel(context.Background())
	m.beside = besides{key: key, stop: stop}
	names := m.AtHand.PaddleNames()
	return m, func() tea.Msg {
		defer stop()
		paddles, change := m.Beside(ctx, made, names)
		return besidesMsg{key: key, paddles: paddles, change: change, came: true}
	}
}

// Beside looks for what another paddle would give, and for a small change that winds far faster, until ctx ends.
func Beside(ctx context.Context, made *stripe.Plan, names map[int]string) ([]stripe.OtherPaddle, *stripe.Change) {
	return made.OtherPaddles(ctx, names), made.SmallerChange(ctx)
}

// leaveBesides ends the work for stripes that are no longer there.
func (m Model) leaveBesides() Model {
	if m.beside.stop != nil {
		m.beside.stop()
	}
	m.beside = besides{}
	return m
}

// besidesCame takes what was found, if it is still for the stripes as they stand.
func (m Model) besidesCame(msg besidesMsg) Model {
	if msg.key == m.beside.key {
		m.beside = besides(msg)
	}
	return m
}

// besideLines says what else there would be.
func (m Model) besideLines(w int) []string {
	s, b := m.Styles, m.beside
	if b.key != m.made.key {
		return nil
	}
	if !b.came {
		return []string{"", s.Dim.Render(look.Fit("other paddles are being tried", w))}
	}
	var out []string
	add := func(text string) {
		for i, l := range look.Wrap(text, w-4) {
			out = append(out, []string{"  ", "    "}[min(i, 1)]+l)
		}
	}
	if len(b.paddles) > 0 {
		out = append(out, "")
		head := "on another paddle; quick figures, a plan for it may take less"
		out = append(out, look.Painted(look.Wrap(head, w), s.Dim)...)
		for _, o := range b.paddles {
			add(look.Roughly(o.Total) + "; " + m.made.made.PaddleWords(o))
		}
	}
	if c := b.change; c != nil {
		out = append(out, "")
		out = append(out, look.Painted(look.Wrap("a small change that winds far faster, only if you like it; "+
			m.Keys.Take.Help().Key+" makes it", w), s.Dim)...)
		add(fmt.Sprintf("%s: %s, about %s, %s less", c.Words, measure.Counted(c.Ends, "end", "ends"),
			look.Roughly(c.Total), look.Roughly(c.Saved)))
	}
	return out
}
