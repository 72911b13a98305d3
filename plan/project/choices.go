package project

import (
	"cmp"
	"millside/plan"
	"millside/plan/times"
	"millside/plan/wind"
	"slices"
	"time"
)

// ChoiceKind is one of the ways to reach a number of ends with groups of one size.
type ChoiceKind uint8

// The kinds of choice.
const (
	Divides   ChoiceKind = iota // the group divides the ends
	ShortPass                   // the last pass carries fewer ends
	SpareEnds                   // the last pass is full and the surplus is spare ends
)

// Choice is one way to wind a number of ends with one size of group. Nothing of it is a guess: its passes,
// chains and work are those of the plan that it would make.
type Choice struct {
	Kind ChoiceKind
	// Group is the ends on a full pass, and so the packages that it takes: each end needs its own.
	Group int
	// Passes is the passes of all chains, LastEnds what the last one carries, Spares the ends beyond those
	// wanted.
	Passes, LastEnds, Spares int
	// Chains is the number of chains, AtCross how many of them stop at the counting cross, Finish where the
	// last one stops.
	Chains, AtCross int
	Finish          wind.Finish
	// Flicks is how often the paddle is flicked once more on its way round the near peg. It is 0 where
	// each lease peg gets the same opening on all passes.
	Flicks int
	// CutShort is how many ends are cut off before a short last pass, CutAt the peg where.
	CutShort int
	CutAt    wind.EndPeg
	// Lacking is how many packages it takes beyond those at hand; 0 where they weren't counted.
	Lacking int
	// Raddle says how the groups suit the raddle.
	Raddle RaddleFit
	// Work is the work at the pegs, Time how long it takes with the passes.
	Work times.WorkSum
	Time times.TimeSpan
	// Slow says that it takes more than half as long again as the quickest choice that lacks no package.
	Slow bool
	// Reasons says in words what is good and what is bad about it, in the order of the ranking.
	Reasons []string
}

// ChoiceRule says in a few words what the ranking goes by.
const ChoiceRule = "the least trouble first, then the least time"

// Choices lists the ways to wind the ends of a plain warp, the least trouble first: each group that the
// paddle and a chain can hold, from 1 on. A group that doesn't divide the ends stands twice, with a short
// last pass and with spare ends. A striped warp has none: its stripes choose the group of each pass.
//
// Trouble comes before time. A choice that lacks packages is behind all that don't, and one that takes more
// than half as long again as the quickest behind those that don't: 404 ends are not wound two by two only
// because two divides them. Then come, each before the next: spare ends, chains that finish at the counting
// cross, flicks of the paddle round the near peg, ends cut off before a short last pass, packages lacking,
// groups that the raddle's teeth part; and last the time. Which trouble comes first is the project's own
// judgement, not a measured value.
func Choices(p *plan.Plan, pace times.Pace) ([]Choice, error) {
	if p.Striped() {
		return nil, nil
	}
	most := p.Spec.Positions
	if p.Spec.ChainEnds > 0 {
		most = min(most, p.Spec.ChainEnds)
	}
	var list []Choice
	known := plan.KnownSections{}
	for group := 1; group <= most; group++ {
		kinds := []ChoiceKind{Divides}
		if p.Spec.Ends%group != 0 {
			kinds = []ChoiceKind{ShortPass, SpareEnds}
		}
		for _, kind := range kinds {
			c, err := choice(p, kind, group, pace, known)
			if err != nil {
				return nil, err
			}
			list = append(list, c)
		}
	}
	markSlow(list)
	slices.SortStableFunc(list, lessTrouble)
	for i := range list {
		list[i].Reasons = list[i].reasons(p.Spec)
	}
	return list, nil
}

// markSlow marks the choices that take more than half as long again as the quickest of those that lack no
// package; where all do, of all.
func markSlow(list []Choice) {
	var quickest time.Duration
	for _, lacking := range []bool{false, true} {
		for _, c := range list {
			if (c.Lacking > 0) == lacking && (quickest == 0 || c.Time.Middle < quickest) {
				quickest = c.Time.Middle
			}
		}
		if quickest > 0 {
			break
		}
	}
	for i := range list {
		list[i].Slow = list[i].Time.Middle > quickest+quickest/2
	}
}

// lessTrouble is the order of [Choices].
func lessTrouble(x, y Choice) int {
	return cmp.Or(
		falseFirst(x.Lacking > 0, y.Lacking > 0),
		falseFirst(x.Slow, y.Slow),
		cmp.Compare(x.Spares, y.Spares),
		cmp.Compare(x.AtCross, y.AtCross),
		cmp.Compare(x.Flicks, y.Flicks),
		cmp.Compare(x.CutShort, y.CutShort),
		cmp.Compare(x.Lacking, y.Lacking),
		cmp.Compare(y.Raddle, x.Raddle), // the worst fit has the lowest number
		cmp.Compare(x.Time.Middle, y.Time.Middle),
	)
}

func falseFirst(x, y bool) int {
	switch {
	case x == y:
		return 0
	case y:
		return -1
	default:
		return 1
	}
}

// choice works out one size of group.
func choice(p *plan.Plan, kind ChoiceKind, group int, pace times.Pace, known plan.KnownSections) (Choice, error) {
	s := Choice{Kind: kind, Group: group}.In(p.Spec)
	parts, err := s.Split(known)
	if err != nil {
		return Choice{}, err
	}
	c := Choice{Kind: kind, Group: group, Chains: len(parts), Spares: parts[len(parts)-1].Last - s.Ends,
		Raddle: raddleFit(s)}
	c.addChains(parts)
	if s.Yarn.Packages > 0 {
		c.Lacking = max(c.Work.Threads-s.Yarn.Packages, 0)
	}
	if group%2 == 0 && s.ReturnOrder == wind.SameOrder {
		c.Flicks = 0 // as the lease is brought together in [plan.New]; all other groups flick once a bout
	}
	c.Time = p.TimeOf(c.Work, pace)
	return c, nil
}

// addChains adds up the passes of the chains, and what they ask of the hands beside the work at the pegs.
func (c *Choice) addChains(parts []plan.ChainPart) {
	for _, part := range parts {
		n := len(part.Passes)
		c.Flicks += (n - 1) / 2
		c.LastEnds, c.Finish = part.Passes[n-1], part.Finish()
		if n > 1 && part.Passes[n-2] > c.LastEnds {
			c.CutShort, c.CutAt = part.Passes[n-2]-c.LastEnds, wind.EndPegAfter(n-1)
		}
	}
	c.Work = workOf(parts)
	c.Passes, c.AtCross = c.Work.Passes, c.Work.FarFinishes
}

// In is the spec with the choice taken.
func (c Choice) In(s plan.Spec) plan.Spec {
	s.Group = c.Group
	switch c.Kind {
	case ShortPass:
		s.LastPass = wind.ShortLast
	case SpareEnds:
		s.LastPass = wind.FullLast
	}
	return s
}

// Taken says whether the spec winds its ends by this choice.
func (c Choice) Taken(s plan.Spec) bool { return c.Group == s.Group && c.In(s).LastPass == s.LastPass }

// workOf adds up the same for a plain warp that isn't worked out pass by pass: its passes carry the first
// positions, so between two of them only the difference is cut off or tied on.
func workOf(parts []plan.ChainPart) times.WorkSum {
	var s times.WorkSum
	for _, part := range parts {
		s.Passes += len(part.Passes)
		before := 0
		for i, ends := range part.Passes {
			s.Threads = max(s.Threads, ends)
			s.Ties += max(ends-before, 0)
			s.Cuts += max(before-ends, 0)
			if i > 0 && ends != before {
				s.Halts++
			}
			before = ends
		}
		s.Cuts += before
		if part.Finish() == wind.AtCountingCross {
			s.FarFinishes++
		}
	}
	return s
}
