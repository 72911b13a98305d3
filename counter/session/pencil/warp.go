package pencil

import (
	"strings"
	"testing"
	"time"

	"millside/counter"
	"millside/counter/session"
	"millside/plan"
)

// Warp is a warp to follow: a conversation over a record in memory, a clock, and the colours that were ordered.
type Warp struct {
	// Order is the name of every end's colour as it was ordered, from end 1 on.
	Order []string
	// Picks says that each colour lies in chains of its own: the ends come together at the loom, in the order.
	Picks bool

	t        testing.TB
	plan     *plan.Plan // the plan that winding began with
	s        session.Session
	events   []counter.Event
	clock    time.Time
	last     session.Reply // the last one that said something
	knots    map[inYarn]counter.What
	told     bool     // to lay return passes the other way round
	packages []string // as the hand-over tells of them, in their order
}

// inYarn is where a knot is in the yarn: a pass that is taken off and laid anew lays it once more.
type inYarn struct{ chain, pass, position int }

// NewWarp is the warp of a plan at its beginning; its order is the names of the ends' colours, from end 1 on.
func NewWarp(t testing.TB, p *plan.Plan, order []string, picks bool) *Warp {
	t.Helper()
	w := &Warp{Order: order, Picks: picks, t: t, plan: p, clock: time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC),
		s: session.New(session.Opening{State: counter.NewState(p)}), knots: map[inYarn]counter.What{}}
	w.last = w.s.Begin(w.clock)
	return w
}

// does hands an intent over half a minute after the one before, and writes what it asks for as a record does.
func (w *Warp) does(in session.Intent) {
	w.t.Helper()
	w.clock = w.clock.Add(30 * time.Second)
	next, r := w.s.Take(in, w.clock)
	if r.Writes() {
		e := r.Event
		st, err := next.State().Apply(e)
		if err != nil {
			w.t.Fatalf("%#v: %v", in, err)
		}
		w.events = append(w.events, e)
		next, r = next.Saved(e, st)
	}
	w.s, w.last = next, r
}

// Laid is how many passes of the chain in hand lie on the pegs.
func (w *Warp) Laid() int { return w.s.State().Laid() }

// Follow winds the warp to its end with paper and pencil. Between two passes happens is asked; where it says true the
// last pass is taken back.
func (w *Warp) Follow(p *Pencil, happens func() bool) {
	w.t.Helper()
	for range 4000 {
		said, stage := w.s.Announce(w.clock), w.s.Stage(w.clock)
		if w.Laid() > 0 && (stage == session.Winding || stage == session.AtPeg) && happens() {
			w.takesBack(p)
			continue
		}
		switch stage {
		case session.Winding:
			p.pass(said)
			w.does(session.Press{})
		case session.AtPeg:
			stop, _ := w.s.Stop()
			p.stop(said, stop)
			w.does(session.Press{})
		case session.AtQuestion:
			w.answers(p)
		case session.Finishing:
			chain := w.s.State().Chain
			p.step(strings.Join(said, " "))
			if w.does(session.Press{}); w.s.State().Chain != chain {
				p.nextChain()
			}
		case session.Done:
			return
		default:
			p.t.Fatalf("stage %d: %q", stage, said)
		}
	}
	p.t.Fatalf("it never ends: %q", w.s.Announce(w.clock))
}

// takesBack takes the last pass off, if that is what the key does here.
func (w *Warp) takesBack(p *Pencil) {
	w.t.Helper()
	laid := w.Laid()
	w.does(session.TakeBack{})
	if w.Laid() < laid {
		p.takeOff(w.Laid())
		return
	}
	if last := w.events[len(w.events)-1]; last.Kind == counter.WorkUndone {
		w.does(session.Press{}) // the work was done, and stays so
	}
}

// answers says what lies at the lease, and takes off what is to come off then.
func (w *Warp) answers(p *Pencil) {
	w.t.Helper()
	q, _ := w.s.Question()
	says := p.looks(q)
	w.does(session.Answer{Says: says})
	if strings.Contains(strings.Join(w.last.Said, " "), "answer once more") {
		w.does(session.Answer{Says: says})
	}
	if m := otherWay.FindStringSubmatch(strings.Join(w.last.Said, " ")); m != nil {
		w.told = true
		p.mirrored = !p.mirrored // the hands do it as they are told, from here on
		for w.Laid() >= number(m[1]) {
			w.takesBack(p)
		}
		return
	}
	if w.last.Cue == session.CueRefused {
		p.t.Fatalf("%v is what lies there, but %q", says, w.last.Said)
	}
	text := strings.Join(w.last.Said, " ")
	if m := offWords.FindStringSubmatch(text); m != nil {
		p.takeOff(number(m[2]))
	} else if strings.Contains(text, "take it back and lay it anew") {
		w.takesBack(p)
	}
}

// named is a colour's name without the letter that stands before it on the pages.
func named(yarn string) string {
	if letter, name, found := strings.Cut(yarn, " "); found && len(letter) == 1 {
		return name
	}
	return yarn
}
