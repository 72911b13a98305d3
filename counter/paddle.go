package counter

import (
	"slices"

	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/wind"
)

// paddleFor is what the paddle holds when a pass is wound and all before it went as planned.
func paddleFor(p *plan.Plan, chain, pass int) Paddle {
	if chain < 1 || chain > len(p.Chains) || pass < 1 || pass > len(p.Chains[chain-1].Passes) {
		return Paddle{}
	}
	held := Paddle{Dressed: true}.dressedFor(p, chain, pass)
	left := held.Carried
	for k := pass; k > 1 && left != 0; k-- {
		left &= p.WorkBefore(chain, k).Stay
		for pos := range left.All() {
			held.TiedBefore[pos-1] = k - 1
		}
	}
	return held
}

// paddleAfter is what the paddle holds after so many passes of a chain: between chains it is threaded, and
// its ends are cut off.
func paddleAfter(p *plan.Plan, chain, passes int) Paddle {
	if passes > 0 {
		return paddleFor(p, chain, passes)
	}
	if chain < 2 {
		return Paddle{}
	}
	last := p.Chains[chain-2].Passes
	return Paddle{Dressed: true, SetUp: p.SetUpOf(last[len(last)-1])}
}

// dressedFor is what the paddle holds for a pass, made out of what it holds: what is carried on and hangs where the
// paddle stands is left alone, all else is tied on before the pass.
func (h Paddle) dressedFor(p *plan.Plan, chain, pass int) Paddle {
	at := p.Chains[chain-1].Passes[pass-1]
	set := p.SetUpOf(at)
	if h.Dressed && h.Carried == at.Carried && slices.Equal(h.SetUp, set) && h.Beyond(pass) == 0 &&
		len(h.TiedBefore) > 0 {
		return Paddle{Dressed: true, Carried: at.Carried, SetUp: set, TiedBefore: h.TiedBefore}
	}
	stays := h.Stays(at.Carried, set, pass)
	now := Paddle{Dressed: true, Carried: at.Carried, SetUp: set}
	for pos := range at.Carried.All() {
		for len(now.TiedBefore) < pos {
			now.TiedBefore = append(now.TiedBefore, 0)
		}
		now.TiedBefore[pos-1] = pass
		if stays.Has(pos) && pos <= len(h.TiedBefore) {
			now.TiedBefore[pos-1] = h.TiedBefore[pos-1]
		}
	}
	return now
}

// Beyond is the carried positions whose yarn was tied on before a later pass than the one given: passes were taken off
// since, and it hangs elsewhere.
func (h Paddle) Beyond(pass int) wind.Positions {
	var set wind.Positions
	for i, k := range h.TiedBefore {
		if k > pass {
			set |= wind.OnePosition(i + 1)
		}
	}
	return set & h.Carried
}

// Stays is the positions that are left alone at the peg before a pass, counted from 1, that carries some in a set-up:
// they hold the same yarn already, and it hangs where the paddle stands.
func (h Paddle) Stays(carried wind.Positions, set plan.SetUp, pass int) wind.Positions {
	stays := h.Carried & carried
	for _, c := range h.SetUp.ChangesTo(set) {
		stays = stays.Without(wind.OnePosition(c.Position))
	}
	return stays.Without(h.Beyond(pass))
}

// Anew is work at an end peg that is in no plan, since passes had been taken off.
type Anew struct {
	// Before is the pass before which it was done.
	Before int
	// Tied is the positions that were tied on though the plan carries them on from the pass before: its end finishes
	// there, and the next one begins.
	Tied wind.Positions
	held Paddle // what the paddle held before
}

// anew dresses the paddle for a pass, and notes what of that is in no plan.
func (f *Folder) anew(c *ChainState, e Event) {
	held := f.s.Paddle
	f.s.Paddle = held.dressedFor(f.s.Plan, e.Chain, e.Pass)
	planned := paddleAfter(f.s.Plan, e.Chain, e.Pass-1)
	if !held.Dressed || held.Carried == planned.Carried && len(held.SetUp.ChangesTo(planned.SetUp)) == 0 &&
		held.Beyond(e.Pass) == 0 {
		return
	}
	var tied wind.Positions
	for i, k := range f.s.Paddle.TiedBefore {
		if k == e.Pass {
			tied |= wind.OnePosition(i + 1)
		}
	}
	c.Anew = append(c.Anew, Anew{Before: e.Pass, held: held,
		Tied: tied.Without(f.s.Plan.WorkBefore(e.Chain, e.Pass).Tie)})
}

// anewEnds is the ends of a chain that begin or finish at a peg and are in no plan.
func (s State) anewEnds(chain int) []finishing.PegEnd {
	var list []finishing.PegEnd
	for _, a := range s.Chains[chain-1].Anew {
		passes, peg := s.Plan.Chains[chain-1].Passes, wind.EndPegAfter(a.Before-1)
		if a.Before < 2 || a.Before > len(passes) {
			continue
		}
		for pos := range a.Tied.All() {
			list = append(list,
				finishing.PegEnd{End: s.Plan.EndOfWound(passes[a.Before-2].EndAt(pos)), Chain: chain, Peg: peg},
				finishing.PegEnd{End: s.Plan.EndOfWound(passes[a.Before-1].EndAt(pos)), Chain: chain, Peg: peg,
					Begins: true})
		}
	}
	return list
}
