package plan

import (
	"fmt"
	"sort"
)

// TaskKind says what sort of thing has to be done around a pass.
type TaskKind uint8

// The kinds of task.
const (
	ThreadPaddle   TaskKind = iota // before the first pass of all: one end in every hole and slot
	FastenStart                    // before the first pass of a chain: the group is tied to the near peg
	LeaveOut                       // before a short pass: positions that carry no end
	CheckLease                     // after pass 2: is the return order as the plan says?
	CountTie                       // after a pass that completes a count
	ChangeSetUp                    // before a pass for which positions get another colour
	CarryOnly                      // before a striped pass that leaves threaded positions parked
	TwoPassesLeft                  // after the last pass but two
	LastPassIsNext                 // after the last pass but one
	TieOff                         // after the last pass
)

// Task is one thing to do before or after a pass.
type Task struct {
	Kind TaskKind
	// Text says in plain words what to do.
	Text string
	// Total is, for a count tie, the number of ends of the chain that stand when it is made.
	Total int
}

// Before lists what has to be done before a pass of a chain, counted from 1. A number that is no pass
// of the chain has nothing before it.
func (p *Plan) Before(c Chain, number int) []Task {
	if number < 1 || number > len(c.Passes) {
		return nil
	}
	pass := c.Passes[number-1]
	var tasks []Task
	if number == 1 && c.Number == 1 {
		tasks = append(tasks, Task{Kind: ThreadPaddle, Text: fmt.Sprintf("thread the paddle: %s, one end in each", Counted(p.threadedFor(pass), "position", "positions"))})
	}
	if number == 1 {
		tasks = append(tasks, Task{Kind: FastenStart, Text: "tie the group to the near end peg, beside the lease"})
	}
	if changes := p.ChangesBefore(c, number); len(changes) > 0 {
		tasks = append(tasks, Task{Kind: ChangeSetUp, Text: fmt.Sprintf("change %s of the paddle", Counted(len(changes), "position", "positions"))})
	}
	out := p.LeftOut(pass)
	switch {
	case out.Count() == 0:
	case p.Striped() && number > 1 && c.Passes[number-2].Carried == pass.Carried:
		// The same positions as on the pass before: nothing to be told.
	case p.Striped():
		tasks = append(tasks, Task{Kind: CarryOnly, Text: "carry only " + positionsText(pass.Carried)})
	case number > 1 || c.Number > 1:
		// A paddle that is threaded for the first pass has no ends to cut; on a later chain it is threaded still.
		tasks = append(tasks, Task{Kind: LeaveOut, Text: fmt.Sprintf("leave out %s (cut and park %s)", positionsText(out), theseEnds(out.Count()))})
	}
	return tasks
}

// threadedFor is how many positions are threaded for the first pass.
func (p *Plan) threadedFor(pass Pass) int {
	if p.Striped() {
		return p.SetUpOf(pass).Threaded().Count()
	}
	return pass.Ends()
}

// LeftOut is the set of positions that are threaded and carry no end on a pass.
func (p *Plan) LeftOut(pass Pass) Positions {
	if p.Striped() {
		return p.SetUpOf(pass).Threaded().Without(pass.Carried)
	}
	return FirstPositions(p.Spec.Group).Without(pass.Carried)
}

// After lists what has to be done, or is worth knowing, after a pass of a chain, counted from 1.
func (p *Plan) After(c Chain, number int) []Task {
	if number < 1 || number > len(c.Passes) {
		return nil
	}
	var tasks []Task
	last := len(c.Passes)
	if number == 2 && c.Number == 1 && c.Passes[1].Ends() > 1 {
		tasks = append(tasks, Task{Kind: CheckLease, Text: "look at the lease: does the second group lie as drawn?"})
	}
	if t, ok := p.tieAfter(c, number); ok {
		tasks = append(tasks, t)
	}
	switch last - number {
	case 0:
		tasks = append(tasks, Task{Kind: TieOff, Text: "stop here: the chain is wound; tie it off"})
	case 1:
		tasks = append(tasks, Task{Kind: LastPassIsNext,
			Text: fmt.Sprintf("last pass: %s, then tie off", Counted(c.Passes[last-1].Ends(), "end", "ends"))})
	case 2:
		tasks = append(tasks, Task{Kind: TwoPassesLeft, Text: "two passes left"})
	}
	return tasks
}

// tieAfter says whether a count tie is due after a pass: when the ends of the chain pass a multiple of
// the interval. The last pass needs none, since the whole chain is tied then.
func (p *Plan) tieAfter(c Chain, number int) (Task, bool) {
	every := p.Spec.TieEvery
	if every == 0 || number >= len(c.Passes) {
		return Task{}, false
	}
	before, now := c.EndsAfter(number-1), c.EndsAfter(number)
	if before/every == now/every {
		return Task{}, false
	}
	groups := number - lastTiePass(c, number, every)
	round := "the last group"
	if groups > 1 {
		round = fmt.Sprintf("the last %d groups", groups)
	}
	return Task{Kind: CountTie, Total: now, Text: fmt.Sprintf("count tie round %s at the counting cross, %d ends stand", round, now)}, true
}

// lastTiePass is the pass of the tie before the one due after a pass, 0 if there was none.
func lastTiePass(c Chain, number, every int) int {
	return c.passReaching(c.EndsAfter(number-1) / every * every)
}

// passReaching is the first pass after which so many ends of the chain stand, 0 for none.
func (c Chain) passReaching(ends int) int {
	if ends == 0 {
		return 0
	}
	return 1 + sort.Search(len(c.Passes), func(i int) bool { return c.EndsAfter(i+1) >= ends })
}

// NextTie is the number of the first pass at or after a pass that a count tie follows, 0 if none does.
func (p *Plan) NextTie(c Chain, number int) int {
	every := p.Spec.TieEvery
	if every == 0 || len(c.Passes) == 0 {
		return 0
	}
	if k := c.passReaching((c.EndsAfter(number-1)/every + 1) * every); k < len(c.Passes) {
		return k
	}
	return 0
}

// Counted writes a number with its noun: "1 pass", "40 passes".
func Counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

func positionsText(p Positions) string {
	if p.Count() == 1 {
		return "position " + p.String()
	}
	return "positions " + p.String()
}

func theseEnds(n int) string {
	if n == 1 {
		return "that end"
	}
	return "those ends"
}
