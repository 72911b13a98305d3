package sheet

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"millside/plan"
	"millside/plan/beside"
	"millside/plan/figure"
	"millside/plan/finishing"
	"millside/plan/times"
	"millside/plan/wind"
)

// Wall is the wall sheet: what the winder at the mill looks up, and ticks.
type Wall struct {
	// Title is the name of the warp.
	Title string `json:"title"`
	// Date is the day on which the sheet was made, such as "25 November 2026"; empty for none.
	Date string `json:"date,omitzero"`
	// Ends, Passes and Chains are the totals.
	Ends   int `json:"ends"`
	Passes int `json:"passes"`
	Chains int `json:"chains"`
	// Length is the real length on the mill with its turns, Time how long the winding takes.
	Length figure.Cell `json:"length"`
	Turns  string      `json:"turns,omitzero"` // empty on a board
	Time   figure.Cell `json:"time"`
	// Stripes is the notation of the stripes, Colours and Runs what it comes to; all are empty in a plain
	// warp.
	Stripes string   `json:"stripes,omitzero"`
	Colours []Colour `json:"colours,omitempty"`
	Runs    []Run    `json:"runs,omitempty"`
	// Thread is what is in the paddle for the first pass.
	Thread Threading `json:"thread"`
	// Ways says how each kind of pass goes over the pegs and round them.
	Ways []Way `json:"ways"`
	// Wound lists the chains in the order of winding.
	Wound []Chain `json:"wound"`
	// After says what follows the last pass, the chains that are finished alike together.
	After []Ending `json:"after"`
	// Beside is what is to be done at the mill beside the passes.
	Beside []string `json:"beside,omitempty"`
	// Picked is the order list of a chain for each colour; nil for any other warp.
	Picked *Picked `json:"order_list,omitempty"`
	// Cautions are those that belong at the mill.
	Cautions []string `json:"cautions"`
	turns    figure.Number
}

// BesideHeading stands over what is to be done beside the passes.
const BesideHeading = "Beside the passes"

// Colour is a colour of a striped warp.
type Colour struct {
	Letter string `json:"letter"`
	Name   string `json:"name"`
	Shade  string `json:"shade,omitzero"` // "#" and six hexadecimal digits; empty if no one said
	Ends   int    `json:"ends"`
	// Packages is how many packages of the colour are in the paddle at once.
	Packages int `json:"packages"`
}

// Run is a run of neighbouring ends of one colour; First and Last are numbers in the warp.
type Run struct {
	First  int `json:"first" about:"its first end, by its number in the warp"`
	Last   int `json:"last" about:"its last end, by its number in the warp"`
	Colour int `json:"colour" about:"counted from 1 in colours"`
}

// Ends is how many ends the run has.
func (r Run) Ends() int { return r.Last - r.First + 1 }

// Threading is the paddle before the first pass.
type Threading struct {
	// Positions lists the colour in each position, position 1 first, counted from 1; 0 is an empty one. In a
	// plain warp every threaded position has 1.
	Positions []int `json:"positions"`
	// Letters is the same in letters, in blocks of four; empty in a plain warp.
	Letters string `json:"letters,omitzero"`
	// Text says it in words.
	Text string `json:"text"`
	// Foot says which position lies at the foot of the peg on an outward pass.
	Foot string `json:"foot"`
}

// Way is one kind of pass: the pegs and the turn.
type Way struct {
	Direction string `json:"direction"` // "outward" or "return"
	// Passes says which passes go so, where not every one in the direction does.
	Passes string `json:"passes,omitzero"`
	// First is the opening that goes over the first lease peg met, FirstPeg; the other one goes over the
	// second.
	First     string `json:"first_opening"`
	FirstPeg  string `json:"first_peg"`
	Second    string `json:"second_opening"`
	SecondPeg string `json:"second_peg"`
	// Over and Under are the pegs of the counting cross.
	Over  int `json:"over"`
	Under int `json:"under"`
	// Turn is the way round the end peg, EndPeg, after the pass.
	Turn   string `json:"turn"`
	EndPeg string `json:"end_peg"`
	// Round says what the paddle does on its way round the near end peg; empty at the far one.
	Round string `json:"round,omitzero"`
	// words is the way as [wind.Pass.Way] puts it.
	words string
}

// Chain is one chain, from its first pass to its ties.
type Chain struct {
	Number int    `json:"number"`
	First  int    `json:"first_end" about:"counted over the whole warp as the ends are wound"`
	Last   int    `json:"last_end" about:"counted as first_end is"`
	Ends   string `json:"-"` // "ends 1 to 40", and of which colour
	Passes int    `json:"passes"`
	Finish string `json:"finish"` // "at the lease" or "at the counting cross"
	// Blocks lists the passes in the order of winding, those that repeat drawn together.
	Blocks []Block `json:"blocks"`
	// Ties lists the count ties.
	Ties []Tie `json:"count_ties,omitempty"`
}

// Ending is the finishing steps of chains that stop alike, in a few words each. A step that the last chain
// does in another way has both, with a stroke between.
type Ending struct {
	Chains []int    `json:"chains"`
	Steps  []string `json:"steps"`
	ids    []finishing.StepID
}

// Block is some steps that are gone through so many times.
type Block struct {
	Times int    `json:"times"`
	Steps []Step `json:"steps"`
}

// Step is a stretch of passes that carry the same positions, and the work at the peg before it.
type Step struct {
	// Work is what is cut off, threaded and tied on before the first of the passes; empty if nothing is.
	Work string `json:"work,omitzero"`
	// Positions is what the passes carry; Letters the same in a striped warp, position by position, with
	// "-" for one that stays parked and a dot for an empty one.
	Positions string `json:"positions"`
	Letters   string `json:"letters,omitzero"`
	// Ends is how many ends each pass lays.
	Ends int `json:"ends"`
	// Passes lists the numbers of the passes, over all the times that the block is gone through: those of
	// the first time first.
	Passes [][]int `json:"passes"`
}

// Tie is a count tie at the counting cross.
type Tie struct {
	After int `json:"after_pass"`
	// From and To are the groups that the tie holds, Total the ends of the chain in it and in those before.
	From  int `json:"from_group"`
	To    int `json:"to_group"`
	Total int `json:"ends"`
}

// NewWall makes the wall sheet of a plan. The pace gives its time; the day is left out where it is zero.
func NewWall(p *plan.Plan, pace times.Pace, day time.Time) *Wall {
	s := p.Spec
	w := &Wall{
		Title: s.Name, Ends: p.EndsWound(), Passes: p.Passes(), Chains: len(p.Chains),
		Length: figure.Cell{p.Path.Length.As(s.Units.Long(), 2)}, Time: p.Time(pace).Cell(),
		Date: DayText(day), Stripes: s.StripesText(), Thread: threading(p), Ways: ways(p),
		Cautions: cautionsAtTheMill(p),
		Beside:   beside.AtTheMill(p),
		Picked:   picked(p),
	}
	if len(s.Board) == 0 {
		w.Turns, w.turns = p.Path.Turns(), p.Path.InTurns()
	}
	stripes := stripesOf(p)
	w.Colours, w.Runs = stripes.Colours, stripes.Runs
	for _, c := range p.Chains {
		w.Wound = append(w.Wound, chain(p, c))
		w.addEnding(c.Number, finishing.Steps(p, c))
	}
	return w
}

// addEnding adds the finishing steps of a chain, or only its number where another chain has the same.
func (w *Wall) addEnding(chain int, steps []finishing.Step) {
	one := Ending{Chains: []int{chain}}
	for _, step := range steps {
		one.ids = append(one.ids, step.ID)
		one.Steps = append(one.Steps, strings.ReplaceAll(step.Title, fmt.Sprintf("chain %d", chain+1),
			"the next chain"))
	}
	for i := range w.After {
		if had := &w.After[i]; slices.Equal(had.ids, one.ids) {
			had.Chains = append(had.Chains, chain)
			for k, title := range one.Steps {
				if !strings.Contains(had.Steps[k], title) {
					had.Steps[k] += " / " + title
				}
			}
			return
		}
	}
	w.After = append(w.After, one)
}

// DayText writes a day so that no one takes its month for its day; "" for the zero time.
func DayText(day time.Time) string {
	if day.IsZero() {
		return ""
	}
	return day.Format("2 January 2006")
}

// Striped says whether the warp has stripes.
func (w *Wall) Striped() bool { return len(w.Colours) > 0 }

// threading is the paddle before the first pass of all.
func threading(p *plan.Plan) Threading {
	work := p.WorkBefore(1, 1)
	t := Threading{Foot: "the lowest position lies at the foot of the peg on an outward pass"}
	if p.Spec.Foot == wind.FootLast {
		t.Foot = "the highest position lies at the foot of the peg on an outward pass"
	}
	for _, th := range work.Thread {
		for len(t.Positions) < th.Position-1 {
			t.Positions = append(t.Positions, 0)
		}
		t.Positions = append(t.Positions, max(th.To, 1))
	}
	if p.Striped() {
		set := p.SetUpOf(p.Chains[0].Passes[0])
		t.Letters, t.Text = set.Letters(), p.SetUpText(set)
		return t
	}
	t.Text = positionsText(work.Threaded()) + ", one end in each"
	return t
}

// cautionsAtTheMill are the cautions of the studio sheet that belong to the winding.
func cautionsAtTheMill(p *plan.Plan) []string {
	list := []string{"Hair, sleeves and jewellery clear of the turning mill; a hand or a hip is the brake.",
		"Threads and cones on the floor trip people. Rest your hands, neck and shoulders."}
	if p.Spec.Dyed {
		list = append(list, "Ties for dyeing are loose.")
	}
	return list
}
