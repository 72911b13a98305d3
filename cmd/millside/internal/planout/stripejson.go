package planout

import (
	"time"

	"millside/cmd/millside/internal/asked"
	"millside/plan"
	"millside/plan/stripe/schedule"
	"millside/plan/wind"
)

// stripesJSON is what a plan says of its stripes.
type stripesJSON struct {
	Notation string       `json:"notation"`
	Colours  []colourJSON `json:"colours"`
	SetUps   []SetUpJSON  `json:"set_ups"`
	Way      string       `json:"way"`
	Cost     costJSON     `json:"cost"`
	Minutes  minutesJSON  `json:"minutes"`
	Proof    proofJSON    `json:"proof"`
	Kinds    []kindJSON   `json:"kinds"`
	Compared []wayJSON    `json:"compared"`
	// Quick figures: what other paddles would give, and a small change of the order that winds far faster.
	OtherPaddles []paddleJSON     `json:"other_paddles"`
	SmallChange  *smallChangeJSON `json:"small_change,omitempty"`
	Draft        *draftJSON       `json:"draft,omitempty"` // where the stripes are from a draft
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
	Passes  int      `json:"passes"`
	Kinds   int      `json:"kinds"` // of pass
	Halts   int      `json:"halts"`
	Cuts    int      `json:"cuts"`
	Ties    int      `json:"ties"`
	Threads int      `json:"threads"` // those at the start too
	Finish  string   `json:"finish"`
	Total   timeJSON `json:"total"`
}

type minutesJSON struct {
	Pass   timeJSON `json:"pass"`
	Halt   timeJSON `json:"halt"`
	Cut    timeJSON `json:"cut"`
	Tie    timeJSON `json:"tie"`
	Thread timeJSON `json:"thread"`
	Far    timeJSON `json:"far"`
}

type proofJSON struct {
	Least bool      `json:"least" about:"it is proved that no schedule takes less by these times and limits"`
	Bound *timeJSON `json:"bound,omitempty" about:"no schedule takes less than this; left out where none is known"`
	Gap   *timeJSON `json:"gap,omitempty" about:"the total less the bound; left out where no bound is known"`
	Why   string    `json:"why"`
}

func proofToJSON(f schedule.Proof) proofJSON {
	out := proofJSON{Least: f.Least, Why: f.Why}
	if f.Bound > 0 {
		bound, gap := timeToJSON(f.Bound), timeToJSON(f.Gap)
		out.Bound, out.Gap = &bound, &gap
	}
	return out
}

// kindJSON is a kind of pass.
type kindJSON struct {
	Name      string   `json:"name"`
	Positions []int    `json:"positions"`
	Colours   []string `json:"colours"` // of those positions
	Passes    int      `json:"passes"`
}

type wayJSON struct {
	Choose    string    `json:"choose,omitempty"` // the value of --way
	Way       string    `json:"way"`
	Possible  bool      `json:"possible"`
	Work      string    `json:"work,omitempty"`
	AtTheLoom string    `json:"at_the_loom,omitempty"`
	Total     *timeJSON `json:"total,omitempty"` // left out where it isn't possible
	Saved     *timeJSON `json:"saved,omitempty"` // by the plan; below 0 where the way takes less
}

// StripesToJSON is what a plan says of its stripes.
func StripesToJSON(p *plan.Plan, s *asked.Striped) *stripesJSON {
	t := s.Times
	out := &stripesJSON{
		Notation: p.Spec.Stripes, Colours: coloursToJSON(s.Order), SetUps: SetUpsToJSON(p), Way: s.Way.String(),
		Cost: costToJSON(s.Schedule), Compared: []wayJSON{}, Kinds: []kindJSON{},
		Minutes: minutesJSON{timeToJSON(t.Pass), timeToJSON(t.Halt), timeToJSON(t.Cut), timeToJSON(t.Tie),
			timeToJSON(t.Thread), timeToJSON(t.Far)},
		OtherPaddles: paddlesToJSON(s), SmallChange: changeOfOrder(s.Change),
		Proof: proofToJSON(s.Schedule.Proof),
	}
	for _, k := range p.Kinds() {
		out.Kinds = append(out.Kinds, kindToJSON(p, k))
	}
	for i, use := range p.ColourUses() {
		out.Colours[i].Packages = use.Packages
	}
	for _, way := range s.Alternatives() {
		one := wayJSON{Choose: way.Choose, Way: way.Words, Possible: way.Possible, Work: way.Work, AtTheLoom: way.Loom}
		if way.Possible {
			total, saved := timeToJSON(way.Total), timeToJSON(way.Saved)
			one.Total, one.Saved = &total, &saved
		}
		out.Compared = append(out.Compared, one)
	}
	if s.Draft != nil {
		d := DraftToJSON(s.Draft)
		out.Draft = &d
	}
	return out
}

func costToJSON(s *schedule.Schedule) costJSON {
	finish := wind.AtLease
	if s.Sum.Far {
		finish = wind.AtCountingCross
	}
	return costJSON{s.Sum.Passes, s.Kinds, s.Sum.Halts, s.Sum.Cuts, s.Sum.Ties, s.Sum.Threads, finish.String(),
		timeToJSON(s.Total)}
}

func kindToJSON(p *plan.Plan, k plan.PassKind) kindJSON {
	out := kindJSON{Name: plan.KindName(k.Number), Passes: k.Passes}
	set := p.SetUpOf(k.First)
	for pos := range k.First.Carried.All() {
		out.Positions = append(out.Positions, pos)
		out.Colours = append(out.Colours, colourName(p, set[pos-1]))
	}
	return out
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
func setUpToJSON(p *plan.Plan, c plan.Chain, pass wind.Pass) SetUpJSON {
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
func (out *PassJSON) stripedPass(p *plan.Plan, c plan.Chain, pass wind.Pass) {
	if !p.Striped() {
		return
	}
	out.SetUp = pass.SetUp
	if kind := p.KindOf(c.Number, pass.Number); kind != 0 {
		out.Kind = plan.KindName(kind)
	}
	set := p.SetUpOf(pass)
	for pos := range pass.Carried.All() {
		out.Colours = append(out.Colours, colourName(p, set[pos-1]))
	}
	for _, change := range p.ChangesBefore(c, pass.Number) {
		out.Changes = append(out.Changes,
			changeJSON{change.Position, colourName(p, change.From), colourName(p, change.To)})
	}
}
