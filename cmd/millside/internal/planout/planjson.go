package planout

import (
	"millside/plan"
	"millside/plan/athand"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/sheet"
	"millside/plan/wind"
)

// planFormat names the structure below. Fields may be added to it; a field that is renamed, taken away
// or given another meaning makes a new format with the next number.
const planFormat = "millside-plan-2"

// planJSON is what 'millside plan --json' prints. Counts are whole numbers; a list is never null.
type planJSON struct {
	Format     string        `json:"format"` // planFormat
	Spec       plan.Spec     `json:"spec"`   // what was asked for, as a record keeps it
	EndsWanted int           `json:"ends_wanted"`
	EndsWound  int           `json:"ends_wound"` // spare ends included
	SpareEnds  int           `json:"spare_ends"`
	Passes     int           `json:"passes"` // over all chains
	Path       pathJSON      `json:"path"`
	WarpYarn   LengthJSON    `json:"warp_yarn"` // all ends together, nothing added
	PegYarn    LengthJSON    `json:"peg_yarn"`  // what the ends take at the end pegs
	TailYarn   LengthJSON    `json:"tail_yarn"` // for the tails of the ends that are tied on
	Pace       PaceJSON      `json:"pace"`
	Time       *WarpTimeJSON `json:"time"` // for all passes at that pace
	Faults     []faultJSON   `json:"lease_faults"`
	Work       workSumJSON   `json:"work"`
	Choices    []choiceJSON  `json:"choices"`
	SplitWhy   string        `json:"chains_why,omitempty"` // why there are so many chains
	Chains     []chainJSON   `json:"chains"`
	Stripes    *stripesJSON  `json:"stripes,omitempty"` // of a striped warp
	Draft      *draftJSON    `json:"draft,omitempty"`   // of a plain warp made of a draft; else it is in stripes
	Record     string        `json:"record,omitempty"`  // the path of the record that --save made
	// Assumed is what is taken because there is only one of it at hand.
	Assumed []assumedJSON `json:"assumed,omitempty" about:"what is taken because there is only one of it at hand"`
	// Sett is there where the plan has a sett and a reed, ReedSetts where it has a sett and there is a reed.
	Sett      *settledJSON    `json:"sett,omitempty"`
	ReedSetts []reedSettsJSON `json:"reed_setts,omitempty" about:"what each reed gives near the sett asked for"`
}

// assumedJSON is a thing at hand that is taken though it wasn't named, and the figures that the plan has from it.
type assumedJSON struct {
	Kind    string               `json:"kind" about:"mill, paddle, loom or reed"`
	Name    string               `json:"name"`
	Figures []sheet.AssumedValue `json:"figures"`
}

// AssumedToJSON puts what was assumed into the form that is printed.
func AssumedToJSON(s plan.Spec, list []athand.Assumed) []assumedJSON {
	var out []assumedJSON
	for _, a := range list {
		out = append(out, assumedJSON{a.Kind, a.Name, sheet.AssumedValues(s, a)})
	}
	return out
}

// LengthJSON is a length, exactly, in two ways.
type LengthJSON struct {
	Text       string `json:"text"` // such as "5 yd"
	Nanometres int64  `json:"nanometres"`
}

// LengthToJSON gives a length in both ways.
func LengthToJSON(l measure.Length) LengthJSON { return LengthJSON{l.String(), int64(l)} }

// pathJSON is the way on the mill. Turns has at most two decimals, rounded to the nearest; the lengths
// are rounded to the nearest nanometre.
type pathJSON struct {
	PegSteps int        `json:"peg_steps"`
	Turns    string     `json:"turns"`
	Length   LengthJSON `json:"length"`
	PerTurn  LengthJSON `json:"per_turn"`
}

type faultJSON struct {
	Chain int    `json:"chain"`
	Pass  int    `json:"pass"`
	End   int    `json:"end" about:"the second of the two neighbours, counted as the ends are wound"`
	Why   string `json:"why"`
}

type choiceJSON struct {
	Label     string   `json:"label"`
	Group     int      `json:"group"`
	Passes    int      `json:"passes"`
	LastEnds  int      `json:"last_ends"`
	SpareEnds int      `json:"spare_ends"`
	Finish    string   `json:"finish"` // "at the lease" or "at the counting cross"
	Planned   bool     `json:"planned"`
	Reasons   []string `json:"reasons"`
}

type chainJSON struct {
	Number    int        `json:"number"`
	Colour    string     `json:"colour,omitempty" about:"of all its ends, where each colour is a chain of its own"`
	FirstEnd  int        `json:"first_end" about:"counted over the whole warp as the ends are wound"`
	LastEnd   int        `json:"last_end" about:"counted as first_end is"`
	Ends      int        `json:"ends"`
	Finish    string     `json:"finish"`
	TieAfter  []int      `json:"tie_after"` // numbers of the passes that a count tie follows
	CountTies []tieJSON  `json:"count_ties"`
	Passes    []PassJSON `json:"passes"`
	// PegWorkAfter is what is left to do at the peg after the last pass.
	PegWorkAfter pegWorkJSON `json:"peg_work_after"`
	Finishing    []StepJSON  `json:"finishing"`
}

// tieJSON is a count tie: made after a pass, it holds the groups from one pass to another. Ends are those in
// it, Total those in it and in the ties of the chain before.
type tieJSON struct {
	After int `json:"after_pass"`
	From  int `json:"from_group"`
	To    int `json:"to_group"`
	Ends  int `json:"ends"`
	Total int `json:"ends_so_far"`
}

func tiesToJSON(p *plan.Plan, c plan.Chain) []tieJSON {
	list := []tieJSON{}
	for t := range p.Ties(c) {
		list = append(list, tieJSON{t.Due, t.From, t.To, t.Ends, t.Total})
	}
	return list
}

// PassJSON is one pass.
type PassJSON struct {
	Number    int    `json:"number"`    // from 1 in each chain
	Direction string `json:"direction"` // "outward" or "return"
	FirstEnd  int    `json:"first_end" about:"counted over the whole warp as the ends are wound"`
	LastEnd   int    `json:"last_end" about:"counted as first_end is"`
	// WarpEnds are the numbers in the warp; left out where they are those of the winding.
	WarpEnds       []int    `json:"warp_ends,omitempty" about:"the number in the warp of each position's end"`
	Positions      []int    `json:"positions"` // those that carry an end
	Mirrored       bool     `json:"mirrored"`  // the highest position lays the first end
	SpareEnds      int      `json:"spare_ends"`
	FirstPeg       string   `json:"first_peg"`     // "A" or "B"
	FirstOpening   string   `json:"first_opening"` // "holes up" or "slots up", over the first peg
	OverA          string   `json:"over_a"`        // the opening that goes over lease peg A
	OverB          string   `json:"over_b"`
	CrossOver      int      `json:"cross_over"`       // the peg of the counting cross, 1 or 2
	TurnAfter      string   `json:"turn_after"`       // "clockwise" or "counterclockwise"
	TwistHalfTurns int      `json:"twist_half_turns"` // behind the paddle after the turn; clockwise above 0
	KeepsOpening   bool     `json:"keeps_opening"`    // no flick round the near peg after this pass
	Before         []string `json:"before"`
	After          []string `json:"after"`
	// PegWork is what the hands do at the end peg before the pass.
	PegWork pegWorkJSON `json:"peg_work"`
	// In a striped warp: the set-up, the kind, the colours of Positions, and what is changed before the pass.
	SetUp   int          `json:"set_up,omitempty"`
	Kind    string       `json:"kind,omitempty" about:"name of its kind; left out where all passes are of one"`
	Colours []string     `json:"colours,omitempty"`
	Changes []changeJSON `json:"changes,omitempty"`
}

// StepJSON is one finishing step.
type StepJSON struct {
	ID      string `json:"id"`
	Title   string `json:"title"`
	Detail  string `json:"detail"`
	Caution string `json:"caution,omitempty"`
}

// PlanToJSON is a plan for a program to read.
func PlanToJSON(project *project.Project) planJSON {
	p := project.Plan
	out := planJSON{
		Format: planFormat, Spec: p.Spec, EndsWanted: p.Spec.Ends, EndsWound: p.EndsWound(), SpareEnds: p.Spares(),
		Passes:   p.Passes(),
		Path:     pathJSON{p.Path.Steps, p.Path.Turns(), LengthToJSON(p.Path.Length), LengthToJSON(p.Path.PerTurn)},
		WarpYarn: LengthToJSON(p.WarpYarn()), PegYarn: LengthToJSON(p.PegYarn(p.Spec.Extras())),
		TailYarn: LengthToJSON(p.TailYarn(p.Spec.Extras())),
		Pace:     paceToJSON(p.PassPace(project.Pace)), Time: WarpTimeToJSON(p.Time(project.Pace)),
		Work: workSumToJSON(p.WorkSum()), Faults: []faultJSON{}, Choices: []choiceJSON{}, Chains: []chainJSON{},
		SplitWhy: p.SplitWhy,
	}
	for _, f := range p.LeaseFaults {
		out.Faults = append(out.Faults, faultJSON(f))
	}
	for _, c := range project.Choices {
		out.Choices = append(out.Choices,
			choiceJSON{c.Label(), c.Group, c.Passes, c.LastEnds, c.Spares, c.Finish.String(), c.Taken(p.Spec),
				c.Reasons})
	}
	for _, c := range p.Chains {
		out.Chains = append(out.Chains, chainToJSON(p, c))
	}
	return out
}

func chainToJSON(p *plan.Plan, c plan.Chain) chainJSON {
	out := chainJSON{
		Number: c.Number, FirstEnd: c.First, LastEnd: c.Last, Ends: c.Ends(), Finish: c.Finish().String(),
		PegWorkAfter: pegWorkToJSON(p, p.WorkBefore(c.Number, len(c.Passes)+1)), TieAfter: tiePasses(p, c),
		CountTies: tiesToJSON(p, c), Finishing: StepsToJSON(finishing.Steps(p, c)),
	}
	if colour, ok := p.Colour(p.ChainColour(c.Number)); ok {
		out.Colour = colour.Name
	}
	for _, pass := range c.Passes {
		out.Passes = append(out.Passes, PassToJSON(p, c, pass))
	}
	return out
}

// PassToJSON is a pass of a chain.
func PassToJSON(p *plan.Plan, c plan.Chain, pass wind.Pass) PassJSON {
	out := PassJSON{
		Number: pass.Number, Direction: pass.Direction.String(), FirstEnd: pass.First, LastEnd: pass.Last,
		Mirrored: pass.Mirrored, SpareEnds: pass.Spares, FirstPeg: pass.FirstPeg().String(),
		FirstOpening: pass.FirstOpening.String(),
		OverA:        pass.OpeningAt(wind.PegA).String(), OverB: pass.OpeningAt(wind.PegB).String(),
		CrossOver: pass.CrossOver(), TurnAfter: pass.TurnAfter.String(), TwistHalfTurns: int(pass.Twist),
		KeepsOpening: c.KeepsOpening(pass.Number), Before: texts(p.Before(c, pass.Number)),
		After: texts(p.After(c, pass.Number)),
	}
	out.Positions = numbersOf(pass.Carried)
	if p.ByColour() {
		for _, pos := range out.Positions {
			out.WarpEnds = append(out.WarpEnds, p.EndOfWound(pass.EndAt(pos)))
		}
	}
	out.PegWork = pegWorkToJSON(p, p.WorkBefore(c.Number, pass.Number))
	out.stripedPass(p, c, pass)
	return out
}

// StepsToJSON lists finishing steps.
func StepsToJSON(steps []finishing.Step) []StepJSON {
	out := []StepJSON{}
	for _, s := range steps {
		out = append(out, StepJSON{string(s.ID), s.Title, s.Detail, s.Caution})
	}
	return out
}

func texts(tasks []plan.Task) []string {
	out := []string{}
	for _, t := range tasks {
		out = append(out, t.Text)
	}
	return out
}
