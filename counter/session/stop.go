package session

import (
	"fmt"
	"strings"

	"millside/counter"
	"millside/plan"
	"millside/plan/measure"
	"millside/plan/wind"
)

// Stop is the work at an end peg that is to be done before the pass in hand.
type Stop struct {
	Work plan.PegWork
	// Title says in a few words what it is: "cut off 2 ends, tie on 3 ends".
	Title string
	// Lines says position by position, in the order of the work, what is done.
	Lines []StopLine
	// Stays says in words what is left alone; empty where nothing is.
	Stays string
	// Kind is the number of the kind of pass that follows, Then says what that carries; 0 and empty where all passes
	// are of one kind.
	Kind int
	Then string
	// How says how it is done.
	How string
}

// StopLine is the work on one position or on several alike.
type StopLine struct {
	// Verb is "cut off", "thread" or "tie on".
	Verb string
	// Positions are those that it is done to.
	Positions wind.Positions
	// From and To are colours, counted from 1; 0 where there is none or where it doesn't matter.
	From, To int
	// Text is the whole line in words.
	Text string
}

// Stop is the work at the peg that waits to be confirmed; false where there is none.
func (s Session) Stop() (Stop, bool) {
	w, ok := s.stopWork()
	if !ok {
		return Stop{}, false
	}
	return s.stopOf(w), true
}

// stopWork is the work that has a page of its own: a halt between two passes, and the threading of a striped warp.
func (s Session) stopWork() (plan.PegWork, bool) {
	w, ok := s.work()
	again := w.Starts() && s.st.Laid() == 0 && s.st.Paddle.Carried != 0 // all that lay was taken off
	return w, ok && (w.Halt() || again || s.st.Plan.Striped() && w.Starts() && len(w.Thread) > 0)
}

// work is what has to be done at the peg before the pass in hand. What the paddle holds counts: after a recount, or
// where the stripes follow another order, that may be something else than the pass before left in it.
func (s Session) work() (plan.PegWork, bool) {
	next, more := s.st.NextPass()
	if !more || s.st.Finished {
		return plan.PegWork{}, false
	}
	has, wants := s.st.Paddle, counter.Paddle{Dressed: true, Carried: next.Carried, SetUp: s.st.Plan.SetUpOf(next)}
	if samePaddle(has, wants) && has.Beyond(next.Number) == 0 {
		return plan.PegWork{}, false
	}
	w := s.st.Plan.WorkBefore(s.st.Chain, next.Number)
	if has.Dressed && (!samePaddle(has, s.planned(next.Number-1)) || has.Beyond(next.Number) != 0) {
		w = between(w, has, wants)
	}
	return w, w.Any()
}

// planned is what the paddle holds by the plan after so many passes of the chain in hand.
func (s Session) planned(passes int) counter.Paddle {
	chain := s.st.Chain
	if passes == 0 && chain == 1 {
		return counter.Paddle{}
	}
	var last wind.Pass
	if passes > 0 {
		last = s.st.Current().Passes[passes-1]
	} else {
		before := s.st.Plan.Chains[chain-2].Passes
		last = before[len(before)-1]
		last.Carried = 0 // all that was carried has been cut off
	}
	return counter.Paddle{Dressed: true, Carried: last.Carried, SetUp: s.st.Plan.SetUpOf(last)}
}

func samePaddle(a, b counter.Paddle) bool {
	return a.Dressed == b.Dressed && a.Carried == b.Carried && len(a.SetUp.ChangesTo(b.SetUp)) == 0
}

// between is the work that makes what the paddle is to hold out of what it holds.
func between(w plan.PegWork, has, wants counter.Paddle) plan.PegWork {
	w.Thread = nil
	for _, c := range has.SetUp.ChangesTo(wants.SetUp) {
		w.Thread = append(w.Thread, plan.Threading(c))
	}
	w.Stay = has.Stays(wants.Carried, wants.SetUp, w.Before)
	w.Cut, w.Tie = has.Carried.Without(w.Stay), wants.Carried.Without(w.Stay)
	return w
}

// at is the set of one position.
func at(position int) wind.Positions {
	return wind.FirstPositions(position).Without(wind.FirstPositions(position - 1))
}

// stopOf puts work at a peg into lines.
func (s Session) stopOf(w plan.PegWork) Stop {
	stop := Stop{Work: w, Title: workWords(w)}
	add := func(verb string, set wind.Positions, from, to int, text string) {
		stop.Lines = append(stop.Lines, StopLine{verb, set, from, to, text})
	}
	if w.Cut != 0 {
		add("cut off", w.Cut, 0, 0, "cut off "+positionsWords(w.Cut))
	}
	stop.Lines = append(stop.Lines, s.threadLines(w)...)
	if w.Tie != 0 {
		add("tie on", w.Tie, 0, 0, "tie on "+positionsWords(w.Tie))
	}
	if next, ok := s.st.NextPass(); ok {
		stop.Kind, stop.Then = s.st.Plan.KindOf(s.st.Chain, next.Number), s.kindInHand()
	}
	if w.Stay != 0 {
		stop.Stays = positionsWords(w.Stay) + " stay as they are"
		if w.Stay.Count() == 1 {
			stop.Stays = positionsWords(w.Stay) + " stays as it is"
		}
	}
	stop.How = fmt.Sprintf("The mill stands at the %s.", w.Peg)
	if w.Cut != 0 {
		stop.How += " Make each end that you cut fast there; its tail stays in the paddle, parked."
	}
	if w.Tie != 0 {
		stop.How += " Tie on at the same peg."
	}
	if w.Starts() {
		stop.How = fmt.Sprintf("One end in each position, from packages in the order of the positions. Then tie on "+
			"at the %s, beside the lease.", w.Peg)
	}
	return stop
}

// threadLines draws positions together that lose and get the same yarn.
func (s Session) threadLines(w plan.PegWork) []StopLine {
	type change struct{ from, to int }
	var order []change
	sets := map[change]wind.Positions{}
	for _, t := range w.Thread {
		c := change{t.From, t.To}
		if sets[c] == 0 {
			order = append(order, c)
		}
		sets[c] |= at(t.Position)
	}
	var lines []StopLine
	for _, c := range order {
		line := StopLine{Verb: "thread", Positions: sets[c], From: c.from, To: c.to, Text: "thread " +
			positionsWords(sets[c])}
		switch {
		case c.to != 0 && c.from != 0:
			line.Text += fmt.Sprintf(" with %s in place of %s", s.st.Plan.ColourText(c.to),
				s.st.Plan.ColourText(c.from))
		case c.to != 0:
			line.Text += " with " + s.st.Plan.ColourText(c.to)
		case c.from != 0:
			line.Verb, line.Text = "take out",
				fmt.Sprintf("take %s out of %s", s.st.Plan.ColourText(c.from), positionsWords(sets[c]))
		}
		lines = append(lines, line)
	}
	return lines
}

// workWords says in a few words how much work there is: "cut off 2 ends, thread 2 positions, tie on 4 ends".
func workWords(w plan.PegWork) string {
	var parts []string
	for _, p := range []struct {
		verb, one, many string
		n               int
	}{{"cut off", "end", "ends", w.Cut.Count()}, {"thread", "position", "positions", len(w.Thread)},
		{"tie on", "end", "ends", w.Tie.Count()}} {
		if p.n > 0 {
			parts = append(parts, p.verb+" "+measure.Counted(p.n, p.one, p.many))
		}
	}
	return strings.Join(parts, ", ")
}

func positionsWords(set wind.Positions) string {
	if set.Count() == 1 {
		return "position " + set.String()
	}
	return "positions " + set.String()
}
