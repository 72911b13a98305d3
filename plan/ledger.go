package plan

import (
	"iter"
	"millside/plan/wind"
)

// Threading is a package's yarn put through a position of the paddle.
type Threading struct {
	// Position counts from 1.
	Position int
	// From and To are colours, counted from 1. From is 0 where the position was empty. To is 0 in a plain
	// warp, which has one yarn; in a striped one it says that the position is emptied: see
	// [Threading.Empties].
	From, To int
}

// Empties says that the yarn is only taken out, and its package is free for another position.
func (t Threading) Empties() bool { return t.From != 0 && t.To == 0 }

// PegWork is what the hands do at an end peg before a pass, or after the last one of a chain. A mill
// turns, so no yarn can wait uncut at a peg: what is not carried on is cut there.
type PegWork struct {
	// Chain counts from 1.
	Chain int
	// Before is the pass that the work comes before, from 1; the number of passes and one more stands for
	// the work after the last pass of the chain.
	Before int
	// Peg is where the paddle stands.
	Peg wind.EndPeg
	// Cut is cut off, Tie tied on; Stay is carried by both passes with the same yarn, so it is left alone.
	// A position that gets another colour may stand in Cut and in Tie.
	Cut, Tie, Stay wind.Positions
	// Thread lists what is threaded, by position, after the cutting and before the tying. A position that
	// is threaded and not tied on is parked until a later pass carries it.
	Thread []Threading
}

// Any says whether something is cut off, tied on or threaded.
func (w PegWork) Any() bool { return w.Cut|w.Tie != 0 || len(w.Thread) > 0 }

// Halt says whether the mill stands between two passes of one chain because there is work at the peg.
// Dressing the paddle at the start of a chain and freeing it at the end are no halts.
func (w PegWork) Halt() bool { return w.Any() && !w.Starts() && w.Stay|w.Tie != 0 }

// Starts says whether the work comes before the first pass of a chain.
func (w PegWork) Starts() bool { return w.Before == 1 }

// Ends says whether the work comes after the last pass of a chain: nothing is carried on.
func (w PegWork) Ends() bool { return w.Before > 1 && w.Stay|w.Tie == 0 }

// Threaded is the set of positions that get a yarn.
func (w PegWork) Threaded() wind.Positions {
	var set wind.Positions
	for _, t := range w.Thread {
		if !t.Empties() {
			set |= wind.OnePosition(t.Position)
		}
	}
	return set
}

// WorkBefore is the work at the peg before a pass of a chain, both counted from 1; the number of passes
// and one more asks for what is left to do after the last pass. A number that is neither has no work.
//
// Position by position: carried by both passes with the same yarn it stays; carried before only, it is
// cut off; carried after only, with its yarn in the paddle, it is tied on; where another colour is
// wanted, it is cut off if it was carried, threaded, and tied on when it is first carried.
func (p *Plan) WorkBefore(chain, pass int) PegWork {
	w := PegWork{Chain: chain, Before: pass, Peg: wind.EndPegAfter(pass - 1)}
	if chain < 1 || chain > len(p.Chains) || pass < 1 || pass > len(p.Chains[chain-1].Passes)+1 {
		return w
	}
	passes := p.Chains[chain-1].Passes
	var before, after wind.Positions // what the two passes carry
	if pass > 1 {
		before = passes[pass-2].Carried
	}
	if pass > len(passes) {
		w.Cut = before
		return w
	}
	after = passes[pass-1].Carried
	w.Thread = p.threadingBefore(chain, pass)
	var changed wind.Positions
	for _, t := range w.Thread {
		changed |= wind.OnePosition(t.Position)
	}
	w.Stay = (before & after).Without(changed)
	w.Cut, w.Tie = before.Without(w.Stay), after.Without(w.Stay)
	return w
}

// threadingBefore lists what the paddle gets before a pass that it had not on the pass before it, in
// whichever chain that was.
func (p *Plan) threadingBefore(chain, pass int) []Threading {
	first := chain == 1 && pass == 1
	if !p.Striped() {
		if !first {
			return nil
		}
		var list []Threading
		for pos := range p.threaded.All() {
			list = append(list, Threading{Position: pos})
		}
		return list
	}
	now := p.Chains[chain-1].Passes[pass-1]
	var had SetUp
	if !first {
		last := p.passBefore(chain, pass)
		if last.SetUp == now.SetUp {
			return nil
		}
		had = p.SetUpOf(last)
	}
	var list []Threading
	for _, c := range had.ChangesTo(p.SetUpOf(now)) {
		list = append(list, Threading(c))
	}
	return list
}

// passBefore is the pass laid before another one, which is not the first of the warp.
func (p *Plan) passBefore(chain, pass int) wind.Pass {
	if pass > 1 {
		return p.Chains[chain-1].Passes[pass-2]
	}
	passes := p.Chains[chain-2].Passes
	return passes[len(passes)-1]
}

// everCarried is the set of positions that carry an end on some pass.
func everCarried(chains []Chain) wind.Positions {
	var set wind.Positions
	for _, c := range chains {
		for _, pass := range c.Passes {
			set |= pass.Carried
		}
	}
	return set
}

// Work goes through all the work at the pegs, in order, over all chains: each time at a peg at which
// something is cut off, tied on or threaded.
func (p *Plan) Work() iter.Seq[PegWork] {
	return func(yield func(PegWork) bool) {
		for _, c := range p.Chains {
			for k := 1; k <= len(c.Passes)+1; k++ {
				if w := p.WorkBefore(c.Number, k); w.Any() && !yield(w) {
					return
				}
			}
		}
	}
}
