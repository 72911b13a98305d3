package planout

import (
	"time"

	"millside/cmd/millside/internal/asked"
	"millside/plan"
	"millside/plan/stripe"
)

// stripesJSON is what a plan says of its stripes.
type stripesJSON struct {
	Notation string       `json:"notation"`
	Colours  []colourJSON `json:"colours"`
	SetUps   []SetUpJSON  `json:"set_ups"`
	Cost     costJSON     `json:"cost"`
	Weights  weightsJSON  `json:"weights"`
	Proof    proofJSON    `json:"proof"`
	Compared []wayJSON    `json:"compared"`
	Draft    *draftJSON   `json:"draft,omitempty"` // where the stripes are from a draft
}

// SetUpJSON is a set-up and the pass before which it is made.
type SetUpJSON struct {
	Number     int      `json:"number"`
	Chain      int      `json:"chain"`
	BeforePass int      `json:"before_pass"` // from 1 in each chain
	Colours    []string `json:"colours"`     // of each position, position 1 first; "" is an empty one
}

// changeJSON is another colour for one position; "" is an empty position.
type changeJSON struct {
	Position int    `json:"position"`
	From     string `json:"from"`
	To       string `json:"to"`
}

// timeJSON is a time, exactly in nanoseconds and as text, which is rounded to the nearest second.
type timeJSON struct {
	Text        string `json:"text"`
	Nanoseconds int64  `json:"nanoseconds"`
}

func timeToJSON(d time.Duration) timeJSON { return timeJSON{timeText(d), int64(d)} }

type costJSON struct {
	Passes       int      `json:"passes"`
	ShortPasses  int      `json:"short_passes"`
	Threaded     int      `json:"threaded"` // positions of the first set-up
	Changes      int      `json:"changes"`
	Stops        int      `json:"stops"`
	Finish       string   `json:"finish"`
	OneDirection bool     `json:"one_direction"` // every pass goes outward
	Total        timeJSON `json:"total"`
}

type weightsJSON struct {
	Pass    timeJSON `json:"pass"`
	Change  timeJSON `json:"change"`
	Stop    timeJSON `json:"stop"`
	Short   timeJSON `json:"short"`
	AtCross timeJSON `json:"at_cross"`
	Back    timeJSON `json:"back"`
}

type proofJSON struct {
	Optimal  bool     `json:"optimal"`   // nothing takes less
	Bound    timeJSON `json:"bound"`     // no schedule takes less than this
	Gap      timeJSON `json:"gap"`       // the total less the bound
	EveryWay bool     `json:"every_way"` // every way was looked at
	Why      string   `json:"why"`
}

type wayJSON struct {
	Way      string    `json:"way"`
	Possible bool      `json:"possible"`
	Cost     *costJSON `json:"cost,omitempty"`  // left out where it isn't possible
	Saved    *timeJSON `json:"saved,omitempty"` // by the plan; below 0 where the way takes less
}

// StripesToJSON is what a plan says of its stripes.
func StripesToJSON(p *plan.Plan, s *asked.Striped) *stripesJSON {
	out := &stripesJSON{
		Notation: p.Spec.Stripes, Colours: coloursToJSON(s.Order), SetUps: SetUpsToJSON(p),
		Cost: costToJSON(s.Schedule.Cost, s.Schedule.Total), Compared: []wayJSON{},
		Weights: weightsJSON{timeToJSON(s.Weights.Pass), timeToJSON(s.Weights.Change), timeToJSON(s.Weights.Stop),
			timeToJSON(s.Weights.Short), timeToJSON(s.Weights.AtCross), timeToJSON(s.Weights.Back)},
		Proof: proofJSON{s.Schedule.Proof.Optimal, timeToJSON(s.Schedule.Proof.Bound), timeToJSON(s.Schedule.Proof.Gap),
			s.Schedule.Proof.Exhaustive, s.Schedule.Proof.Why},
	}
	for i, use := range p.ColourUses() {
		out.Colours[i].Packages = use.Packages
	}
	for _, way := range s.Ways {
		one := wayJSON{Way: way.Name, Possible: way.Possible}
		if way.Possible {
			cost, saved := costToJSON(way.Cost, way.Total), timeToJSON(way.Saved)
			one.Cost, one.Saved = &cost, &saved
		}
		out.Compared = append(out.Compared, one)
	}
	if s.Draft != nil {
		d := DraftToJSON(s.Draft)
		out.Draft = &d
	}
	return out
}

func costToJSON(c stripe.Cost, total time.Duration) costJSON {
	return costJSON{c.Passes, c.Short, c.Threaded, c.Changes, c.Stops, c.Finish.String(), c.OneDirection, timeToJSON(total)}
}

// SetUpsToJSON lists the set-ups in the order of use.
func SetUpsToJSON(p *plan.Plan) []SetUpJSON {
	list := []SetUpJSON{}
	for _, c := range p.Chains {
		for _, pass := range c.Passes {
			if len(list) == 0 || list[len(list)-1].Number != pass.SetUp {
				list = append(list, setUpToJSON(p, c, pass))
			}
		}
	}
	return list
}

// setUpToJSON is the set-up of a pass, as if it were made before it.
func setUpToJSON(p *plan.Plan, c plan.Chain, pass plan.Pass) SetUpJSON {
	out := SetUpJSON{Number: pass.SetUp, Chain: c.Number, BeforePass: pass.Number, Colours: []string{}}
	for _, colour := range p.SetUpOf(pass) {
		out.Colours = append(out.Colours, colourName(p, colour))
	}
	return out
}

// colourName is the name of a colour, "" for an empty position.
func colourName(p *plan.Plan, n int) string {
	c, _ := p.Colour(n) // the zero value has no name
	return c.Name
}

// stripedPass fills in what a pass of a striped warp says beside a plain one's.
func (out *PassJSON) stripedPass(p *plan.Plan, c plan.Chain, pass plan.Pass) {
	if !p.Striped() {
		return
	}
	out.SetUp = pass.SetUp
	set := p.SetUpOf(pass)
	for pos := range pass.Carried.All() {
		out.Colours = append(out.Colours, colourName(p, set[pos-1]))
	}
	for _, change := range p.ChangesBefore(c, pass.Number) {
		out.Changes = append(out.Changes, changeJSON{change.Position, colourName(p, change.From), colourName(p, change.To)})
	}
}
