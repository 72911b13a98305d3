package planout

import (
	"fmt"
	"io"
	"strings"

	"millside/cmd/millside/internal/prose"
	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/wind"
)

// PlanText writes what a weaver wants to know of a plan on one page, with the time that it takes at the
// project's pace.
func PlanText(w io.Writer, project *project.Project) {
	p, pace := project.Plan, project.Pace
	s := p.Spec
	fmt.Fprintf(w, "Warp \"%s\"\n\n", prose.Clean(s.Name))
	prose.Row(w, "Ends", "%s", endsText(p))
	prose.Row(w, "Passes", "%s", passesOf(p))
	prose.Row(w, "Stops", "%s", stopsText(p))
	prose.Row(w, "Lease", "%s", leaseText(p))
	prose.Row(w, "At the pegs", "%s", p.WorkSum())
	prose.Row(w, "Near peg", "%s", flickText(p))
	prose.Row(w, "Mill", "%s round, a place for the end pegs every %s, %s",
		prose.Length(s.Mill.Circumference, s.Units.Short()),
		prose.Length(s.Mill.PegStep, s.Units.Short()), riseText(s))
	prose.Row(w, "Length", "%s", lengthText(p))
	prose.Row(w, "Yarn", "%s", yarnText(p))
	paddlePackages(w, project)
	prose.Row(w, "Time", "%s, by %s", p.Time(pace).Words(), p.Spec.TimeSource(pace))
	prose.Row(w, "Count ties", "%s", tiesText(p))
	if len(p.Chains) > 1 {
		if p.SplitWhy != "" {
			prose.Row(w, "Chains", "%s", p.SplitWhy)
		}
		for _, c := range p.Chains {
			prose.Row(w, fmt.Sprintf("Chain %d", c.Number), "%s: %s in %s, stops %s",
				p.WoundText(c.First, c.Last),
				prose.Count(c.Ends(), "end"), prose.Count(len(c.Passes), "pass"), c.Finish())
		}
	}
	choicesText(w, project)
}

// StepTitles lists what follows the last pass, in a few words each.
func StepTitles(w io.Writer, p *plan.Plan) {
	fmt.Fprint(w, "\nAfter the last pass:\n")
	for i, step := range finishing.Steps(p, p.Chains[len(p.Chains)-1]) {
		fmt.Fprintf(w, "  %2d  %s\n", i+1, step.Title)
	}
}

func endsText(p *plan.Plan) string {
	text := fmt.Sprintf("%d wanted, %d wound", p.Spec.Ends, p.EndsWound())
	if n := p.Spares(); n > 0 {
		text += fmt.Sprintf(", the last %d spare", n)
	}
	return text
}

func passesOf(p *plan.Plan) string {
	if p.Striped() {
		return stripedPassesOf(p)
	}
	last := p.Chains[len(p.Chains)-1]
	final := last.Passes[len(last.Passes)-1]
	text := fmt.Sprintf("%d, by %s on a paddle of %d positions", p.Passes(), prose.Count(p.Spec.Group, "end"),
		p.Spec.Positions)
	if p.LeftOut(final).Count() > 0 {
		text += fmt.Sprintf("; the last carries %d, in %s", final.Ends(), prose.Positions(final.Carried))
	}
	if len(p.Chains) > 1 {
		text += fmt.Sprintf("; %d chains", len(p.Chains))
	}
	return text
}

// stopsText says where the winding stops, and why the lease is the better place.
func stopsText(p *plan.Plan) string {
	finish := p.Chains[0].Finish()
	for _, c := range p.Chains {
		if c.Finish() != finish {
			return "not every chain at the same end; see the chains below"
		}
	}
	if finish == wind.AtLease {
		return "at the lease, where it began: an even number of passes" + leftAtFarEnd(p)
	}
	return "at the counting cross: an odd number of passes, so the last group is fastened at the far end, which is " +
		"harder"
}

// leftAtFarEnd says what begins or finishes at the far end all the same.
func leftAtFarEnd(p *plan.Plan) string {
	var all finishing.Knots
	for _, c := range p.Chains {
		k := finishing.OnTheWay(p, c, wind.FarPeg)
		all.Begin += k.Begin
		all.Finish += k.Finish
	}
	switch {
	case all == finishing.Knots{}:
		return ", so nothing is left at the far end"
	case all.Begin == 0:
		return fmt.Sprintf("; on the way %s cut off at the far end peg",
			measure.Counted(all.Finish, "end is", "ends are"))
	default:
		return fmt.Sprintf("; on the way %s cut off and %d tied on at the far end peg",
			measure.Counted(all.Finish, "end is", "ends are"), all.Begin)
	}
}

func leaseText(p *plan.Plan) string {
	if len(p.LeaseFaults) == 0 {
		return fmt.Sprintf("every end crosses its neighbours; a return pass lies in the %s order", p.Spec.ReturnOrder)
	}
	var faults []string
	for _, f := range p.LeaseFaults {
		faults = append(faults, fmt.Sprintf("end %d lies with its neighbour (chain %d, pass %d): %s", f.End, f.Chain,
			f.Pass, f.Why))
	}
	return strings.Join(faults, "; ")
}

// flickText says what the paddle does on its way round the near end peg.
func flickText(p *plan.Plan) string {
	switch kept, flicked := p.NearTurns(); {
	case kept == 0 && flicked == 0:
		return "no second bout, so nothing to keep in mind"
	case flicked == 0:
		return "the paddle keeps its opening on the way round"
	case kept == 0:
		return "flick the paddle once more on the way round"
	}
	return "the paddle keeps its opening on some passes and not on others; --passes shows each"
}

func riseText(s plan.Spec) string {
	if s.Mill.Rise == 0 {
		return "no rise"
	}
	return "a rise of " + prose.Length(s.Mill.Rise, s.Units.Short()) + " a turn"
}

func lengthText(p *plan.Plan) string {
	unit := p.Spec.Units.Long()
	text := fmt.Sprintf("%s wanted, %s on the mill: ", prose.Length(p.Spec.Length, unit),
		prose.Length(p.Path.Length, unit))
	if p.Path.Length != p.Spec.Length {
		text += "rounded up to what the pegs give, "
	}
	return text + fmt.Sprintf("%s, %s", prose.Count(p.Path.Steps, "peg step"), p.Path.InTurns())
}

// tiesText lists the passes that a count tie follows, chain by chain.
func tiesText(p *plan.Plan) string {
	if p.Spec.TieEvery == 0 {
		return "none"
	}
	text := fmt.Sprintf("every %s", prose.Count(p.Spec.TieEvery, "end"))
	for _, c := range p.Chains {
		after := tiePasses(p, c)
		if len(after) == 0 {
			continue
		}
		text += "; "
		if len(p.Chains) > 1 {
			text += fmt.Sprintf("chain %d ", c.Number)
		}
		text += "after " + passWord(len(after)) + " "
		text += strings.Join(shown(after), ", ")
	}
	return text
}

// tiePasses lists the passes of a chain that a count tie follows.
func tiePasses(p *plan.Plan, c plan.Chain) []int {
	after := []int{}
	for tie := range p.Ties(c) {
		after = append(after, tie.Due)
	}
	return after
}

func passWord(n int) string {
	if n == 1 {
		return "pass"
	}
	return "passes"
}

func shown(passes []int) []string {
	var list []string
	for i, k := range passes {
		if i == prose.MostShown {
			return append(list, fmt.Sprintf("... (%d in all)", len(passes)))
		}
		list = append(list, fmt.Sprint(k))
	}
	return list
}

// mostChoices is how many choices a page lists with their reasons.
const mostChoices = 5

// choicesText lists the first of the ways to reach the number of ends, and the plan's own, whose place
// among them is told. A striped warp has none.
func choicesText(w io.Writer, pr *project.Project) {
	s, list := pr.Plan.Spec, pr.Choices
	if len(list) == 0 {
		return
	}
	fmt.Fprintf(w, "\nWays to reach %s, %s:\n", prose.Count(s.Ends, "end"), project.ChoiceRule)
	for i, c := range list {
		mark := ""
		if c.Taken(s) {
			mark = " (this plan)"
		}
		if i >= mostChoices && mark == "" {
			continue
		}
		fmt.Fprintf(w, "  %2d  %s%s\n      %s\n", i+1, c.Label(), mark, prose.Wrap(strings.Join(c.Reasons, "; "), 6))
	}
	if more := len(list) - mostChoices; more > 0 {
		fmt.Fprintf(w, "  of %d; --json lists them all\n", len(list))
	}
}

// paddlePackages holds the packages at hand against those that the paddle carries, where they were counted.
func paddlePackages(w io.Writer, pr *project.Project) {
	row, told := pr.PackagesRow()
	switch {
	case !told:
	case row.Warning != "":
		prose.Row(w, "Packages", "%s; %s", row.Value, row.Warning)
	default:
		prose.Row(w, "Packages", "%s", row.Value)
	}
}

// yarnText says how much yarn the warp takes, and what of it is added to the ends.
func yarnText(p *plan.Plan) string {
	unit, extras := p.Spec.Units.Long(), p.Spec.Extras()
	pegs, tails := p.PegYarn(extras), p.TailYarn(extras)
	text := (p.WarpYarn() + pegs + tails).As(unit, 1).String()
	if pegs+tails == 0 {
		return text + ", nothing added"
	}
	return fmt.Sprintf("%s: %s for the ends, %s at the pegs, %s for the tails of %s tied on", text,
		p.WarpYarn().As(unit, 1), pegs.As(unit, 1), tails.As(unit, 1), prose.Count(p.WorkSum().Ties, "end"))
}
