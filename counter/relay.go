package counter

import (
	"slices"

	"millside/plan"
	"millside/plan/wind"
)

// staysOff says whether the chains before the one in hand, which are off the mill, are the same in the plan in force as
// in the one before, end by end, in whichever order return passes lie.
func (f *Folder) staysOff(before *plan.Plan) bool {
	n := f.s.Chain - 1
	if n >= len(f.s.Plan.Chains) {
		return false
	}
	for i, c := range f.s.Plan.Chains[:n] {
		same := slices.EqualFunc(c.Passes, before.Chains[i].Passes, func(is, was wind.Pass) bool {
			return (is.Direction.Far() || is.Ends() == 1) && is.Carried == was.Carried && is.First == was.First &&
				is.FirstOpening == was.FirstOpening && slices.Equal(f.s.Plan.SetUpOf(is), before.SetUpOf(was))
		})
		if !same {
			return false
		}
	}
	return true
}

// relay keeps of a striped warp what is right in the plan for the other order as well: the chains that are off
// the mill, and the outward passes of the one in hand up to the first pass that differs. What lies on the mill
// beyond that has to be taken off and laid anew.
func (f *Folder) relay(before *plan.Plan) {
	n := f.s.Chain - 1
	kept, is, was := 0, f.s.Plan.Chains[n].Passes, before.Chains[n].Passes
	for i, p := range is[:min(len(is), f.s.Chains[n].Laid)] {
		if i >= len(was) || !p.Direction.Far() || p.Carried != was[i].Carried ||
			!slices.Equal(f.s.Plan.SetUpOf(p), before.SetUpOf(was[i])) {
			break
		}
		kept++
	}
	chains := f.s.Chains
	f.s.Chains = make([]ChainState, len(f.s.Plan.Chains))
	copy(f.s.Chains, chains[:n])
	old, c := chains[n], &f.s.Chains[n]
	c.Laid, c.WrongTurns, c.Surplus, c.Lowered = old.Laid, slices.Clone(old.WrongTurns), old.Surplus, old.Lowered
	c.TurnLines, c.WrongOpenings, c.Worked, c.Anew = slices.Clone(old.TurnLines), slices.Clone(old.WrongOpenings),
		slices.Clone(old.Worked), slices.Clone(old.Anew)
	if kept < c.Laid {
		f.unturn(c, before.Chains[n], kept)
		f.lower(c, kept)
	}
}
