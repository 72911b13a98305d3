package sheet

import (
	"fmt"
	"slices"
	"strings"

	"millside/plan"
	"millside/plan/measure"
	"millside/plan/wind"
)

// ways lists the kinds of pass by pegs and turn, in the order in which they first come. A kind names its
// passes only where another one has the same direction.
func ways(p *plan.Plan) []Way {
	var list []Way
	var passes [][]string // of each way, chain by chain
	var laid []int        // how many passes go each way
	for _, c := range p.Chains {
		numbers := map[int][]int{} // by the place in the list
		for _, pass := range c.Passes {
			w := way(pass)
			at := slices.IndexFunc(list, func(o Way) bool { o.Round = ""; return o == w })
			if at < 0 {
				at = len(list)
				list, passes, laid = append(list, w), append(passes, nil), append(laid, 0)
			}
			list[at].Round = bothRound(list[at].Round, round(c, pass))
			numbers[at] = append(numbers[at], pass.Number)
			laid[at]++
		}
		for at, n := range numbers {
			text := plan.Listed(n)
			if len(p.Chains) > 1 {
				text = fmt.Sprintf("chain %d: %s", c.Number, text)
			}
			passes[at] = append(passes[at], text)
		}
	}
	nameExceptions(list, passes, laid)
	return list
}

// nameExceptions says of each way which passes go so, where there are several in its direction: the way of
// most passes is that of all others.
func nameExceptions(list []Way, passes [][]string, laid []int) {
	for i := range list {
		most, others := true, false
		for k := range list {
			if i == k || list[i].Direction != list[k].Direction {
				continue
			}
			others = true
			most = most && (laid[i] > laid[k] || laid[i] == laid[k] && i < k)
		}
		switch {
		case others && most:
			list[i].Passes = othersPasses
		case others:
			list[i].Passes = strings.Join(passes[i], "; ")
		}
	}
}

// othersPasses stands for the passes that no other way names.
const othersPasses = "all others"

// round says what the paddle does round the near end peg after a pass; empty where it isn't there or where
// nothing is laid afterwards.
func round(c plan.Chain, pass wind.Pass) string {
	switch {
	case pass.Direction.Far() || pass.Number == len(c.Passes):
		return ""
	case c.KeepsOpening(pass.Number):
		return "the paddle keeps its opening"
	}
	return "flick the paddle once more"
}

func bothRound(a, b string) string {
	switch {
	case a == "" || a == b:
		return b
	case b == "":
		return a
	}
	return "keep or flick, as the first opening of the next pass asks"
}

// way is the kind of a pass, but for the numbers of its passes and the way round the near peg.
func way(pass wind.Pass) Way {
	return Way{
		Direction: pass.Direction.String(), First: pass.FirstOpening.String(), FirstPeg: pass.FirstPeg().String(),
		Second: pass.FirstOpening.Other().String(), SecondPeg: pass.FirstPeg().Other().String(),
		Over: pass.CrossOver(), Under: pass.CrossUnder(), Turn: pass.TurnAfter.String(), EndPeg: pass.EndPeg().String(),
		words: pass.Way(),
	}
}

// chain is a chain with its steps folded.
func chain(p *plan.Plan, c plan.Chain) Chain {
	out := Chain{Number: c.Number, First: c.First, Last: c.Last, Ends: p.WoundText(c.First, c.Last),
		Passes: len(c.Passes), Finish: c.Finish().String(), Blocks: fold(steps(p, c))}
	for k := p.NextTie(c, 1); k != 0; k = p.NextTie(c, k+1) {
		if t, ok := p.TieAt(c, k); ok {
			out.Ties = append(out.Ties, Tie{t.Due, t.From, t.To, t.Total})
		}
	}
	return out
}

// steps cuts a chain where there is work at a peg between two passes.
func steps(p *plan.Plan, c plan.Chain) []Step {
	var list []Step
	for _, pass := range c.Passes {
		work := p.WorkBefore(c.Number, pass.Number)
		if len(list) > 0 && !work.Any() {
			last := &list[len(list)-1]
			last.Passes[0] = append(last.Passes[0], pass.Number)
			continue
		}
		step := Step{Work: workText(p, c, pass), Positions: pass.Carried.String(), Ends: pass.Ends(),
			Passes: [][]int{{pass.Number}}}
		if p.Striped() {
			step.Letters = carriedLetters(p.SetUpOf(pass), pass.Carried)
		}
		list = append(list, step)
	}
	return list
}

// workText says what the hands do at the peg before a pass, with the colours that are threaded.
func workText(p *plan.Plan, c plan.Chain, pass wind.Pass) string {
	work := p.WorkBefore(c.Number, pass.Number)
	if c.Number == 1 && work.Starts() {
		return "Thread the paddle. " + measure.Capital(work.Peg.String()) + ": tie on " + work.Tie.String() + "."
	}
	var parts []string
	if work.Cut != 0 {
		parts = append(parts, "cut off "+work.Cut.String())
	}
	if p.Striped() && len(work.Thread) > 0 {
		parts = append(parts, "thread "+p.ThreadText(work.Thread))
	}
	if work.Tie != 0 {
		parts = append(parts, "tie on "+work.Tie.String())
	}
	text := strings.Join(parts, "; ")
	if text == "" {
		return ""
	}
	return measure.Capital(work.Peg.String()) + ": " + text + "."
}

func positionsText(set wind.Positions) string {
	if set.Count() == 1 {
		return "position " + set.String()
	}
	return "positions " + set.String()
}

// carriedLetters writes a set-up as [plan.SetUp.Letters] does, with "-" for a position that is threaded and
// stays parked.
func carriedLetters(set plan.SetUp, carried wind.Positions) string {
	var b strings.Builder
	position := 0
	for _, r := range set.Letters() {
		if r == ' ' {
			b.WriteRune(r)
			continue
		}
		if position++; set[position-1] != 0 && !carried.Has(position) {
			r = '-'
		}
		b.WriteRune(r)
	}
	return b.String()
}
