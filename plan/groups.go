package plan

import (
	"cmp"
	"errors"
	"fmt"
	"math/big"
	"slices"

	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// GroupAsk is what the table of groups goes by.
type GroupAsk struct {
	// Ends is the ends wanted, 1 to [measure.MaxEnds].
	Ends int
	// Positions is the paddle's positions, 1 to [measure.MaxPositions].
	Positions int
	// Packages is the cones at hand, 0 where they weren't counted. Every end of a group needs its own.
	Packages int
	// ReturnOrder is the order of return passes in the lease.
	ReturnOrder ReturnOrder
	// ChainEnds is the most ends in a chain, 0 for one chain. A group above it is left out.
	ChainEnds int
	// Sett and RaddleSpace, where both are known, tell how groups suit the raddle.
	Sett        measure.Sett
	RaddleSpace measure.Length
	// Time is how long so much work takes; nil stands for [DefaultHandTimes] with no turns.
	Time func(WorkSum) TimeSpan
}

// RaddleFit says how groups suit the sections of a raddle.
type RaddleFit uint8

// The ways in which groups suit a raddle, the worst first.
const (
	RaddleUnknown RaddleFit = iota
	RaddleCuts              // groups are parted by the raddle's teeth without a short rhythm
	RaddleRhythm            // a few groups fill a few sections
	RaddleFills             // whole groups fill a section, or a group fills whole sections
)

// GroupRow is one way to wind the ends with one size of group.
type GroupRow struct {
	Kind ChoiceKind
	// Group is the ends on a full pass, and Packages how many cones it takes: as many.
	Group, Packages int
	// Passes is the passes of all chains, LastEnds what the last one carries, Spares the ends beyond
	// those wanted.
	Passes, LastEnds, Spares int
	// Chains is the number of chains; AtCross how many of them stop at the counting cross. Finish is
	// where the last one stops.
	Chains, AtCross int
	Finish          Finish
	// Raddle says how the groups suit the raddle.
	Raddle RaddleFit
	// EvenLease says that each lease peg gets the same opening on every pass, so that the paddle keeps
	// its opening round the near peg.
	EvenLease bool
	// Time is how long the passes take.
	Time TimeSpan
	// Cost is what the ranking goes by, in tenths of a pass; less is better.
	Cost int
	// Reasons says in words what is good and what is bad about it.
	Reasons []string
}

// What the ranking adds beside the costs of [Choices], in tenths of a pass. They are the project's own
// judgement of a weaver's trouble, not a measured value.
const (
	costRaddleCuts   = 2 // for each pass, where groups are parted at the raddle
	costRaddleRhythm = 1 // for each pass, where they are parted in a short rhythm
	flicksInTenth    = 2 // this many flicks of the paddle cost a tenth of a pass
)

// GroupTable lists every size of group from 2 to the positions of the paddle and the packages at hand
// (only 1 where there is no more), the least trouble first. A group that doesn't divide the ends stands
// twice, with a short last pass and with spare ends.
//
// The cost is that of [Choices]: ten for each pass, fifteen for each chain that stops at the counting
// cross, five for a short last pass, two for each spare end; and one for every two flicks round the
// near peg, one for each pass where groups are parted at the raddle in a short rhythm, two where they
// are parted without one. The error joins one [measure.FieldError] for each field that is out of its range.
func GroupTable(a GroupAsk) ([]GroupRow, error) {
	if err := a.check(); err != nil {
		return nil, err
	}
	most := a.Positions
	if a.Packages > 0 {
		most = min(most, a.Packages)
	}
	if a.ChainEnds > 0 {
		most = min(most, a.ChainEnds)
	}
	var rows []GroupRow
	for g := min(2, most); g <= most; g++ {
		kinds := []ChoiceKind{Divides}
		if a.Ends%g != 0 {
			kinds = []ChoiceKind{ShortPass, SpareEnds}
		}
		for _, kind := range kinds {
			row, err := a.row(kind, g)
			if err != nil {
				return nil, err
			}
			rows = append(rows, row)
		}
	}
	slices.SortStableFunc(rows, func(x, y GroupRow) int { return cmp.Compare(x.Cost, y.Cost) })
	return rows, nil
}

func (a GroupAsk) check() error {
	var errs measure.Faults
	errs.Count("ends", a.Ends, 1, measure.MaxEnds, "")
	errs.Count("paddle positions", a.Positions, 1, measure.MaxPositions, "")
	errs.Count("packages", a.Packages, 0, measure.MaxEnds, ", 0 where they weren't counted")
	errs.Count("ends in a chain", a.ChainEnds, 0, measure.MaxEnds, ", 0 for one chain")
	errs.Count("return order", int(a.ReturnOrder), 0, int(MirroredOrder), "")
	if a.RaddleSpace != 0 && (a.RaddleSpace < measure.Millimetre || a.RaddleSpace > 10*measure.Centimetre) {
		errs = append(errs, &measure.FieldError{Field: "raddle space", Value: a.RaddleSpace.String(), Want: "1 mm to 10 cm, or 0 for none"})
	}
	return errors.Join(errs...)
}

// row works out one size of group.
func (a GroupAsk) row(kind ChoiceKind, group int) (GroupRow, error) {
	c := newChoice(kind, a.Ends, group)
	r := GroupRow{Kind: kind, Group: group, Packages: group, Passes: c.Passes, LastEnds: c.LastEnds, Spares: c.Spares,
		EvenLease: group%2 == 0 && a.ReturnOrder == SameOrder}
	last := ShortLast
	if kind == SpareEnds {
		last = FullLast
	}
	chains, err := SplitChains(ChainAsk{Ends: a.Ends, Group: group, LastPass: last, Most: a.ChainEnds})
	if err != nil {
		return r, err
	}
	r.Chains, r.Finish, r.Time = len(chains), chains[len(chains)-1].Finish(), a.timeOf(workOf(chains))
	for _, part := range chains {
		if part.Finish() == AtCountingCross {
			r.AtCross++
		}
	}
	r.Cost = c.Cost + costFinishCross*r.AtCross
	if c.Finish == AtCountingCross { // the cost of the finish is counted chain by chain instead
		r.Cost -= costFinishCross
	}
	// The first two reasons of a choice are its passes and its last pass, the third is the finish.
	r.Reasons = append(c.Reasons[:2:2], r.finishReason(c))
	a.rateLease(&r)
	a.rateRaddle(&r)
	r.Reasons = append(r.Reasons, measure.Counted(group, "package", "packages")+", one for each end of the group", r.Time.String())
	return r, nil
}

func (a GroupAsk) timeOf(w WorkSum) TimeSpan {
	if a.Time != nil {
		return a.Time(w)
	}
	d := DefaultHandTimes().Total(w, nil)
	return TimeSpan{Low: d, Middle: d, High: d, AtPegs: DefaultHandTimes().AtPegs(w)}
}

func (r GroupRow) finishReason(c Choice) string {
	switch {
	case r.Chains == 1:
		return c.finishReason()
	case r.AtCross == 0:
		return fmt.Sprintf("all %d chains stop at the lease", r.Chains)
	default:
		return fmt.Sprintf("%d of %s at the counting cross, where the last group is harder to fasten", r.AtCross, measure.Counted(r.Chains, "chain stops", "chains stop"))
	}
}

// rateLease adds what the lease costs. A group of one has no opening to keep.
func (a GroupAsk) rateLease(r *GroupRow) {
	if r.EvenLease {
		r.Reasons = append(r.Reasons, "each lease peg always gets the same opening")
		return
	}
	r.Cost += (r.Passes/2 + flicksInTenth - 1) / flicksInTenth
	r.Reasons = append(r.Reasons, "the paddle is flicked once more round the near peg, so that the lease alternates")
}

// rateRaddle adds what the raddle costs.
func (a GroupAsk) rateRaddle(r *GroupRow) {
	if a.Sett.IsZero() || a.RaddleSpace == 0 {
		return
	}
	// Groups in a section as a fraction in its simplest form: so many groups fill so many sections.
	inSection := ratio.Quo(a.Sett.Count(a.RaddleSpace), ratio.Of(r.Group))
	groups := measure.SmallCount(ratio.Down, new(big.Rat).SetInt(inSection.Num()))
	sections := measure.SmallCount(ratio.Down, new(big.Rat).SetInt(inSection.Denom()))
	const short = 4
	switch {
	case sections == 1:
		r.Raddle = RaddleFills
		r.Reasons = append(r.Reasons, measure.Counted(groups, "group fills", "groups fill")+" a section of the raddle")
	case groups == 1:
		r.Raddle = RaddleFills
		r.Reasons = append(r.Reasons, fmt.Sprintf("a group fills %d sections of the raddle", sections))
	case groups <= short && sections <= short:
		r.Raddle, r.Cost = RaddleRhythm, r.Cost+costRaddleRhythm*r.Passes
		r.Reasons = append(r.Reasons, fmt.Sprintf("%d groups fill %d sections of the raddle, so its teeth part some", groups, sections))
	default:
		r.Raddle, r.Cost = RaddleCuts, r.Cost+costRaddleCuts*r.Passes
		r.Reasons = append(r.Reasons, "the raddle's teeth part the groups unevenly")
	}
}
