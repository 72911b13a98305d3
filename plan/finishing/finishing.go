package finishing

import (
	"fmt"

	"millside/plan"
	"millside/plan/beside"
	"millside/plan/measure"
	"millside/plan/wind"
)

// StepID names a finishing step for good: records keep it, so a name is never changed or used again.
type StepID string

// The finishing steps.
const (
	StepFasten    StepID = "fasten"
	StepCut       StepID = "cut"
	StepPark      StepID = "park"
	StepKnot      StepID = "knot"
	StepNearLoop  StepID = "near-loop"
	StepNearCross StepID = "near-cross"
	StepNearChoke StepID = "near-choke"
	StepFarLoop   StepID = "far-loop"
	StepFarCross  StepID = "far-cross"
	StepFarChoke  StepID = "far-choke"
	StepAlong     StepID = "along"
	StepBorders   StepID = "borders"
	StepLabel     StepID = "label"
	StepSlow      StepID = "slow"
	StepChain     StepID = "chain"
	StepSecure    StepID = "secure"
)

// Step is one thing to do after the last pass of a chain.
type Step struct {
	ID StepID
	// Title is the step in a few words.
	Title string
	// Detail says how.
	Detail string
	// Caution is a warning that belongs to the step; it may be empty.
	Caution string
}

// alongEvery is the distance between choke ties along a warp: 1 to 2 yards is usual (common practice,
// no source), and the first stands about a yard from the cross, so two yards are the widest gap.
const alongEvery = 2 * measure.Yard

// chokeFromCross is where the first choke tie stands: about a yard from the cross (a weaver's web log,
// 2012), on a short warp a third of its length.
func chokeFromCross(p *plan.Plan) measure.Length { return min(measure.Yard, p.Path.Length/3) }

// chokeText says it: nobody measures a choke tie to the centimetre.
func chokeText(p *plan.Plan) string {
	if l := chokeFromCross(p); p.Spec.Units == measure.Imperial || l < measure.Yard {
		return p.Spec.Units.Shown(l)
	}
	return p.Spec.Units.Shown(90 * measure.Centimetre)
}

// AlongTies is how many choke ties are made between the two that stand a yard from each cross, so that
// no two are more than two yards apart. Rounded up: one tie too many does no harm.
func AlongTies(p *plan.Plan) int {
	between := p.Path.Length - 2*chokeFromCross(p)
	if between <= alongEvery {
		return 0
	}
	return int((between+alongEvery-1)/alongEvery) - 1
}

// Finishing lists the steps that follow the last pass of a chain, in order. They depend on where the
// winding stopped, on whether the warp will be dyed, on its length, and on how the loom is dressed. A chain
// without passes has none. Extra are ends that begin or finish at a peg though the plan has none there: see [PegEnd].
func Steps(p *plan.Plan, c plan.Chain, extra ...PegEnd) []Step {
	if len(c.Passes) == 0 {
		return nil
	}
	steps := fastening(p, c)
	steps = append(steps, ties(p, c, extra)...)
	return append(steps, takingOff(p, c)...)
}

// fastening frees the paddle from the warp.
func fastening(p *plan.Plan, c plan.Chain) []Step {
	last := c.Passes[len(c.Passes)-1]
	w := p.WorkBefore(c.Number, len(c.Passes)+1) // what is still carried is cut off now
	peg, other := w.Peg.String(), "the lease"
	if w.Peg == wind.FarPeg {
		other = "the counting cross"
	}
	return []Step{
		{ID: StepFasten, Title: "Fasten the group at the " + peg,
			Detail: fmt.Sprintf("Take the %s round the peg %s, as after every such pass, then wind it round the peg "+
				"twice more so that it holds.",
				measure.Counted(w.Cut.Count(), "end", "ends"), last.TurnAfter)},
		{ID: StepCut, Title: "Cut between the peg and the paddle",
			Detail: "Leave a hand's length on both sides: on the warp for a knot, on the paddle to start again.",
			Caution: "Hold the mill still with a hand or a hip while you cut. A mill that unwinds " +
				"lets the whole warp go slack."},
		parking(p, c),
		{ID: StepKnot, Title: "Knot the cut ends in two halves",
			Detail: "The ends from the holes in one knot, those from the slots in another, round the " + peg +
				". The halves keep the last group in order at " + other + "."},
	}
}

// parking puts the paddle out of the way. Before another chain it is only laid aside: that chain begins
// with it.
func parking(p *plan.Plan, c plan.Chain) Step {
	if c.Number < len(p.Chains) {
		return Step{ID: StepPark, Title: fmt.Sprintf("Lay the paddle aside, still threaded, for chain %d", c.Number+1),
			Detail: "Put an overhand knot in the ends in front of the paddle, so that none slips out, and lay it " +
				"where it can't fall."}
	}
	return Step{ID: StepPark, Title: "Park the paddle, still threaded",
		Detail: "Put an overhand knot in the ends in front of the paddle and hang it up. It is ready for the next " +
			"warp."}
}

// Loose says what has to be knotted at a peg before its loop is tied: ends that were tied on or cut off
// there on the way don't go round the peg, and would slip out of the tie.
func Loose(p *plan.Plan, c plan.Chain, peg wind.EndPeg, extra ...PegEnd) string {
	k := OnTheWay(p, c, peg)
	for _, e := range extra {
		switch {
		case e.Chain != c.Number || e.Peg != peg:
		case e.Begins:
			k.Begin++
		default:
			k.Finish++
		}
	}
	if k == (Knots{}) {
		return ""
	}
	return fmt.Sprintf(" On the way %s here: knot their tails together round the peg first, each with a neighbour, "+
		"or they slip out of the tie.", k.text())
}

// ties makes the six ties, the end where the winder stands first, and the chokes between.
func ties(p *plan.Plan, c plan.Chain, extra []PegEnd) []Step {
	tight, caution := "firmly, with a bow", ""
	if p.Spec.Dyed {
		tight = "loosely, with a bow"
		caution = "This warp will be dyed: a tight tie keeps the dye out and can cut into swollen yarn. A finger " +
			"must fit under it."
	}
	near := []Step{
		{ID: StepNearLoop, Title: "Tie the loop at the near end peg",
			Detail: "Round all ends where they go round the peg, " + tight + "." + Loose(p, c, wind.NearPeg, extra...)},
		{ID: StepNearCross, Title: "Tie the lease",
			Detail: "Four ties, one on each arm of the X between pegs A and B, not at its waist. One colour above " +
				"the pegs and " +
				"another below shows a twist later. Take the true X, not the false one beside the end peg.",
			Caution: caution},
		{ID: StepNearChoke, Title: "Choke tie near the lease", Detail: "About " +
			chokeText(p) +
			" from the lease, twice round, " + chokeHold(p) + "."},
	}
	far := []Step{
		{ID: StepFarLoop, Title: "Tie the loop at the far end peg",
			Detail: "Round all ends where they go round the peg, " + tight + "." + Loose(p, c, wind.FarPeg, extra...)},
		{ID: StepFarCross, Title: "Tie the counting cross",
			Detail: "Four ties, one on each arm of the X between pegs 1 and 2, not at its waist. Leave the count " +
				"ties in.", Caution: caution},
		{ID: StepFarChoke, Title: "Choke tie near the counting cross", Detail: "About " +
			chokeText(p) +
			" from the cross, twice round, " + chokeHold(p) + "."},
	}
	steps := append(near, far...)
	if c.Finish() == wind.AtCountingCross {
		steps = append(far, near...)
	}
	if n := AlongTies(p); n > 0 {
		steps = append(steps, Step{ID: StepAlong,
			Title: fmt.Sprintf("%s along the warp", measure.Capital(measure.Counted(n, "choke tie", "choke ties"))),
			Detail: "Evenly spaced, none more than " + p.Spec.Units.Shown(alongEvery) + " apart, " + chokeHold(p) +
				"."})
	}
	if n := len(beside.Borders(p)); n > 0 {
		steps = append(steps, Step{ID: StepBorders, Title: fmt.Sprintf("%s of the painted sections",
			measure.Counted(n, "tie at the border", "ties at the borders")),
			Detail: "From the near end peg: " + beside.BorderTies(p) + ". Round the whole chain, narrow and " +
				"firm: the tie shows the border, and keeps one dye out of the next section.",
			Caution: "Wet the warp through before it is painted, or white patches stay."})
	}
	return steps
}

func chokeHold(p *plan.Plan) string {
	if p.Spec.Dyed {
		return "loose enough for a finger"
	}
	return "tight"
}

// takingOff labels the chain and takes it off the mill. The end that comes off last is the first that
// the loom gets, so a loom that takes the raddle first has its chain begun at the lease.
func takingOff(p *plan.Plan, c plan.Chain) []Step {
	from, to, why := "lease", "counting cross", "the raddle"
	if p.Spec.Dressing == plan.ReedFirst {
		from, to, why = "counting cross", "lease", "the reed"
	}
	return []Step{
		{ID: StepLabel, Title: "Label the chain", Detail: Label(p, c)},
		{ID: StepSlow, Title: "Keep a hand or a hip on the mill",
			Detail: "Let it turn only as fast as you take the warp off: your body is the brake, and the warp stays " +
				"taut.",
			Caution: "Loose hair, sleeves, scarves and jewellery are clear of the turning mill. Cones and threads " +
				"are off the floor."},
		{ID: StepChain, Title: "Chain from the " + from, Detail: fmt.Sprintf(
			"Lift the %s off first and pull loop through loop, loosely. The %s comes off last, so it is the first "+
				"to hand for %s.", from, to, why)},
		{ID: StepSecure, Title: "Pass the last loop over the " + to,
			Detail:  "A tie through the last loop keeps the chain from running out.",
			Caution: "Rest your hands, neck and shoulders before the next job."},
	}
}

// Label is what stands on a chain's label: the warp, which chain it is, its ends and its length.
func Label(p *plan.Plan, c plan.Chain) string {
	which := fmt.Sprintf("chain %d of %d", c.Number, len(p.Chains))
	if colour, ok := p.Colour(p.ChainColour(c.Number)); ok {
		which += ", " + colour.Name
	}
	return fmt.Sprintf("Warp %q, %s, %s, %s.", p.Spec.Name, which,
		measure.Counted(c.Ends(), "end", "ends"), p.Spec.Units.Shown(p.Path.Length))
}
