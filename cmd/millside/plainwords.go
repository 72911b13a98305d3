package main

import (
	"fmt"
	"strings"
	"time"

	"millside/counter"
	"millside/plan"
)

// announce says what the winder needs to know now, in the order in which it is needed.
func (p *plain) announce() []string {
	switch p.stage() {
	case stageDone:
		return []string{fmt.Sprintf("The warp is finished and off the mill: %s.", count(p.st.EndsStandingAll(), "end"))}
	case stageLook:
		return append(p.mustBeSeen(), "If it is so, press Enter and go on. If not, count at the pegs: type pegs, with the groups over peg 1 and over peg 2.")
	case stageLease:
		return p.leaseWords()
	case stageFinish:
		return p.stepWords()
	}
	return p.passWords()
}

// passWords is the pass to be laid, what is due before it and what comes after it.
func (p *plain) passWords() []string {
	pass, _ := p.st.NextPass()
	c := p.st.Current()
	chain := ""
	if len(p.st.Chains) > 1 {
		chain = fmt.Sprintf(" of chain %d", p.st.Chain)
	}
	var said []string
	if k := p.st.Laid(); k > 0 {
		said = append(said, fmt.Sprintf("Pass %d is laid, %s stand.", k, count(p.st.EndsStanding(), "end")))
	}
	said = append(said, fmt.Sprintf("Pass %d of %d%s, %s: %s.", pass.Number, len(c.Passes), chain, pass.Direction, wayText(pass)))
	if round := openingRound(c, pass); round != "" {
		said = append(said, round)
	}
	if due := p.tasks(pass.Number-1, pass.Number); len(due) > 0 {
		said = append(said, "Now: "+strings.Join(due, "; ")+".")
	}
	said = append(said, p.setUpWords(pass)...)
	if twist := p.st.TwistAdvice(); twist != "" {
		said = append(said, twist)
	}
	return append(said, "Next: "+strings.Join(p.coming(pass), "; ")+".")
}

// openingRound says what to do with the paddle on the way round the near peg.
func openingRound(c plan.Chain, pass plan.Pass) string {
	switch {
	case pass.Direction.Far() || pass.Number == len(c.Passes):
		return ""
	case c.KeepsOpening(pass.Number):
		return "Keep the opening round the peg, no flick."
	}
	return "Flick once more round the peg."
}

// tasks lists what comes after one pass and before the next.
func (p *plain) tasks(after, before int) []string {
	var all []string
	for _, t := range append(p.st.Plan.After(p.st.Current(), after), p.st.Plan.Before(p.st.Current(), before)...) {
		if t.Kind != plan.CheckLease { // asked as a question of its own
			all = append(all, t.Text)
		}
	}
	return all
}

// coming announces what follows the pass that is being laid.
func (p *plain) coming(pass plan.Pass) []string {
	c, next := p.st.Current(), pass.Number+1
	all := p.tasks(pass.Number, next)
	if p.asksLeaseAfter(pass.Number) {
		all = append([]string{"a look at the lease"}, all...)
	}
	if len(all) == 0 {
		all = []string{fmt.Sprintf("pass %d, %s", next, c.Passes[pass.Number].Direction)}
		if tie := p.st.Plan.NextTie(c, pass.Number); tie > 0 {
			all = append(all, fmt.Sprintf("count tie after pass %d", tie))
		}
	}
	return all
}

// mustBeSeen is what stands on the mill if the count is right.
func (p *plain) mustBeSeen() []string {
	s := p.st
	state := ""
	switch {
	case s.Paused:
		state = "Paused at " + when(s.Last) + ": "
	case p.look:
		state = "Stopped at " + when(s.Last) + ": "
	}
	said := []string{fmt.Sprintf("%s%d of %s laid, %s stand.", state, s.Laid(), count(len(s.Current().Passes), "pass"), count(s.EndsStanding(), "end"))}
	if len(s.Chains[s.Chain-1].Ticked) > 0 {
		return append(said, fmt.Sprintf("%s done.", count(len(s.Chains[s.Chain-1].Ticked), "finishing step")))
	}
	m := seenOnMill(s)
	if m.PassesLaid > 0 {
		said = append(said, fmt.Sprintf("On the mill: %s over peg 1 of the counting cross and %d over peg 2. The paddle is %s, the last turn was %s.",
			count(m.OverPeg1, "group"), m.OverPeg2, m.Paddle, m.LastTurn))
	}
	if n := len(s.Ties); n > 0 && s.Ties[n-1].Chain == s.Chain {
		said = append(said, fmt.Sprintf("%s at the last count tie.", count(s.Ties[n-1].Ends, "end")))
	}
	if twist := s.TwistAdvice(); twist != "" {
		said = append(said, twist)
	}
	return said
}

// leaseWords asks how the second group lies.
func (p *plain) leaseWords() []string {
	first := p.st.Current().Passes[1]
	next, other := first.Carried.First(), first.Carried.Last()
	if first.Mirrored {
		next, other = other, next
	}
	return []string{
		fmt.Sprintf("%s stand. Look at the lease: position %d of the second group should lie next to the first group, position %d last.",
			count(p.st.EndsStanding(), "end"), next, other),
		"If it is so, press Enter. If it lies the other way round, type other.",
	}
}

// saidOrder says what another order than planned means for the pass just laid.
func saidOrder(before, after counter.State) string {
	text := fmt.Sprintf("Return passes now lie in the %s order.", after.Plan.Spec.ReturnOrder)
	if before.Current().Passes[1].FirstOpening != after.Current().Passes[1].FirstOpening {
		text += " Pass 2 had the other opening first: type undo, and lay it again."
	}
	return text
}

// stepWords is the finishing step to be done.
func (p *plain) stepWords() []string {
	step, more := p.st.NextStep()
	if !more {
		return []string{"All steps are done.", "Press Enter to close the record: the warp is finished."}
	}
	done, all := len(p.st.Chains[p.st.Chain-1].Ticked), len(p.st.Steps())
	var said []string
	if done == 0 {
		said = append(said, fmt.Sprintf("Wound: %s in %s. Now tie it off; press Enter when a step is done.", count(p.st.EndsStanding(), "end"), count(p.st.Laid(), "pass")))
	}
	said = append(said, fmt.Sprintf("Step %d of %d. %s: %s", done+1, all, step.Title, step.Detail))
	if step.Caution != "" {
		said = append(said, "Take care: "+step.Caution)
	}
	return said
}

// restWords is the reminder to rest, once in a stretch of winding.
func (p *plain) restWords() []string {
	due := p.st.RestDue(p.rec.Events(), p.now())
	first := due && !p.rest
	if p.rest = due; !first {
		return nil
	}
	return []string{fmt.Sprintf("%s without a break: rest your hands, neck and shoulders.", count(p.st.Plan.Spec.RestMinutes, "minute"))}
}

// paceWords is how long the rest of the chain takes at the pace of the latest passes.
func (p *plain) paceWords() []string {
	pace := counter.Pace(p.rec.Events(), p.st.Chain)
	passes := len(p.st.Current().Passes) - p.st.Laid()
	if pace.Passes == 0 || passes == 0 {
		return nil
	}
	left := pace.Remaining(passes)
	return []string{fmt.Sprintf("%s a pass; %s to the end of the chain, %s to %s.", pace.PerPass.Round(time.Second),
		minutes(left.Likely), minutes(left.Low), minutes(left.High))}
}

// minutes writes a time in minutes, rounded up, so that nothing is ready before it was said to be.
func minutes(d time.Duration) string {
	n := int(d / time.Minute)
	if d%time.Minute > 0 {
		n++
	}
	return count(n, "minute")
}
