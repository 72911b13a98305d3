package plan

import (
	"fmt"

	"millside/plan/measure"
	"millside/plan/wind"
)

// TaskKind says what sort of thing has to be done around a pass.
type TaskKind uint8

// The kinds of task.
const (
	ThreadPaddle   TaskKind = iota // before the first pass of all: one end in every hole and slot
	FastenStart                    // before the first pass of a chain: the group is tied to the near peg
	LeaveOut                       // on a short pass: positions that carry no end
	CheckLease                     // after the first even return pass: do neighbours alternate at the seam?
	CountTie                       // after an outward pass that arrives where a count tie is to be made
	ChangeSetUp                    // before a pass for which positions get another yarn
	CarryOnly                      // on a striped pass that leaves threaded positions parked
	TwoPassesLeft                  // after the last pass but two
	LastPassIsNext                 // after the last pass but one
	TieOff                         // after the last pass
	CheckFoot                      // after the first return pass, all of them odd: where does position 1 lie?
	CutOff                         // before a pass that doesn't carry what the pass before it carried
	TieOn                          // before a pass that carries what the pass before it didn't
)

// Task is one thing to do before or after a pass.
type Task struct {
	Kind TaskKind
	// Text says in plain words what to do.
	Text string
	// Total is, for a count tie, the number of ends of the chain that lie in it and in the ties before it.
	Total int
}

// Before lists what has to be done before a pass of a chain, counted from 1. A number that is no pass
// of the chain has nothing before it. The work at the peg is that of [Plan.WorkBefore].
func (p *Plan) Before(c Chain, number int) []Task {
	if number < 1 || number > len(c.Passes) {
		return nil
	}
	w := p.WorkBefore(c.Number, number)
	pass := c.Passes[number-1]
	out := p.LeftOut(pass)
	if !p.Striped() && w.Halt() && w.Cut == out && w.Tie == 0 {
		// A plain warp that gets narrower: one sentence for the hands and the eye.
		text := fmt.Sprintf("cut off %s at the %s and leave %s out", wind.PositionsText(out), w.Peg, them(out))
		return []Task{{Kind: LeaveOut, Text: text}}
	}
	tasks := p.workTasks(w)
	switch {
	case out == 0:
	case p.Striped() && number > 1 && c.Passes[number-2].Carried == pass.Carried:
		// The same positions as on the pass before: nothing to be told.
	case p.Striped():
		tasks = append(tasks, Task{Kind: CarryOnly, Text: "carry only " + wind.PositionsText(pass.Carried)})
	default:
		tasks = append(tasks, Task{Kind: LeaveOut, Text: "leave out " + wind.PositionsText(out)})
	}
	return tasks
}

// workTasks puts the work before a pass into words, in the order of the hands: cut off, thread, tie on.
// The first says at which peg.
func (p *Plan) workTasks(w PegWork) []Task {
	at := " at the " + w.Peg.String()
	var tasks []Task
	add := func(kind TaskKind, text string) {
		tasks = append(tasks, Task{Kind: kind, Text: text + at})
		at = ""
	}
	threaded := w.Threaded()
	switch {
	case w.Chain == 1 && w.Starts():
		tasks = append(tasks, Task{Kind: ThreadPaddle, Text: fmt.Sprintf("thread the paddle: %s, one end in each",
			measure.Counted(threaded.Count(), "position", "positions"))})
	case w.Halt() && w.Cut == threaded && w.Tie == threaded:
		add(ChangeSetUp, "cut off, thread anew and tie on "+wind.PositionsText(threaded))
		return tasks
	default:
		if w.Cut != 0 {
			add(CutOff, "cut off "+wind.PositionsText(w.Cut))
		}
		if threaded != 0 {
			add(ChangeSetUp, "thread "+wind.PositionsText(threaded)+" anew")
		}
	}
	switch {
	case w.Tie == 0:
	case w.Starts():
		tasks = append(tasks, Task{Kind: FastenStart,
			Text: "tie on " + p.groupText(w) + " at the near end peg, beside the lease"})
	default:
		add(TieOn, "tie on "+wind.PositionsText(w.Tie))
	}
	return tasks
}

// groupText names what is tied on at the start of a chain.
func (p *Plan) groupText(w PegWork) string {
	if p.LeftOut(p.Chains[w.Chain-1].Passes[0]) != 0 {
		return wind.PositionsText(w.Tie)
	}
	return "the group"
}

// LeftOut is the set of positions that are threaded and carry no end on a pass: they are parked.
func (p *Plan) LeftOut(pass wind.Pass) wind.Positions {
	if p.Striped() {
		return p.SetUpOf(pass).Threaded().Without(pass.Carried)
	}
	return p.threaded.Without(pass.Carried)
}

// After lists what has to be done, or is worth knowing, after a pass of a chain, counted from 1. A count
// tie stands here where it falls due; it stays due until the record says that it was made ([Plan.TieDue]).
func (p *Plan) After(c Chain, number int) []Task {
	if number < 1 || number > len(c.Passes) {
		return nil
	}
	var tasks []Task
	last := len(c.Passes)
	if l := p.look; l.Chain == c.Number && l.Pass == number {
		tasks = append(tasks, Task{Kind: l.Kind, Text: l.text()})
	}
	if t, ok := p.TieAt(c, number); ok {
		tasks = append(tasks, Task{Kind: CountTie, Total: t.Total, Text: t.String()})
	}
	switch last - number {
	case 0:
		tasks = append(tasks, Task{Kind: TieOff, Text: "stop here: the chain is wound; tie it off"})
	case 1:
		tasks = append(tasks, Task{Kind: LastPassIsNext,
			Text: fmt.Sprintf("last pass: %s, then tie off", measure.Counted(c.Passes[last-1].Ends(), "end", "ends"))})
	case 2:
		tasks = append(tasks, Task{Kind: TwoPassesLeft, Text: "two passes left"})
	}
	return tasks
}

func them(p wind.Positions) string {
	if p.Count() == 1 {
		return "it"
	}
	return "them"
}

// Look is when the winder is asked to look at the lease, and what for.
type Look struct {
	// Chain and Pass say after which return pass, both counted from 1; 0 where nothing is to be seen.
	Chain, Pass int
	// Kind is [CheckLease] where the seam between two groups shows the return order, else [CheckFoot].
	Kind TaskKind
}

// LeaseLook is the look at the lease that a warp asks for: after the first return pass with an even
// number of ends, since only there do the two return orders put different ends side by side where the
// groups meet on a lease that one of them makes wrong. Where no return pass is even the lease is right
// either way; then it is asked after the first return pass of more than one end where position 1 lies,
// on which every end's number depends. A warp without either asks for no look: Pass is 0.
func (p *Plan) LeaseLook() Look { return p.look }

// text asks the question in a few words.
func (l Look) text() string {
	if l.Kind == CheckFoot {
		return "look at the lease: where does position 1 lie in the group just laid?"
	}
	return "look at the lease: do neighbours alternate where the last two groups meet?"
}

// findLook finds the first return pass that shows the order: by its openings where it has an even number of ends, else
// by where position 1 lies. Stripes follow the order from the first chain on that shows it, so they don't wait for a
// later one.
func (p *Plan) findLook() Look {
	var odd Look
	for _, c := range p.Chains {
		for k := 1; k < len(c.Passes); k += 2 {
			switch n := c.Passes[k].Ends(); {
			case n%2 == 0:
				return Look{Chain: c.Number, Pass: k + 1, Kind: CheckLease}
			case n > 1 && odd.Pass == 0:
				odd = Look{Chain: c.Number, Pass: k + 1, Kind: CheckFoot}
			}
		}
		if odd.Pass > 0 && p.Striped() && !p.ByColour() {
			break
		}
	}
	return odd
}
