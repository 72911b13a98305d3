package recordout

import (
	"time"

	"millside/cmd/millside/internal/planout"
	"millside/counter"
	"millside/counter/journal"
	"millside/plan"
	"millside/plan/measure"
)

// showFormat names the structure below; see planFormat for what may change in it.
const showFormat = "millside-show-2"

// showJSON is what 'millside show --json' prints.
type showJSON struct {
	Format       string            `json:"format"` // showFormat
	Path         string            `json:"path"`
	Name         string            `json:"name"`
	Spec         plan.Spec         `json:"spec"`   // the plan in force
	Passes       int               `json:"passes"` // these four are over all chains
	PassesLaid   int               `json:"passes_laid"`
	Ends         int               `json:"ends"`
	EndsStanding int               `json:"ends_standing"`
	Chain        int               `json:"chain"` // the chain in hand, from 1
	Chains       int               `json:"chains"`
	Paused       bool              `json:"paused"`
	LeaseSeen    bool              `json:"lease_seen"`
	Wound        bool              `json:"wound"` // the chain in hand has all its passes
	Finished     bool              `json:"finished"`
	Started      time.Time         `json:"started,omitzero"`
	Last         time.Time         `json:"last,omitzero"`
	CutShort     string            `json:"cut_short,omitempty"` // what was left out at the end of the file
	Mill         millJSON          `json:"mill"`
	NextPass     *planout.PassJSON `json:"next_pass,omitempty"`
	// of a striped warp: that of the next pass, or of the last
	SetUp     *planout.SetUpJSON `json:"set_up,omitempty"`
	Finishing []tickJSON         `json:"finishing"` // of the chain in hand

	Recounts []recountJSON `json:"recounts"`
	Notes    []noteJSON    `json:"notes"`
	Ties     []tieJSON     `json:"count_ties"`
	// Incidents lists what went wrong, in the order of noting, those taken back included.
	Incidents []incidentJSON `json:"incidents"`
	// Pace is that of all passes laid so far, breaks left out; left out where nothing could be timed.
	Pace *planout.PaceJSON `json:"pace,omitempty"`
	// HandOver is what the loom must know of the winding, as on the sheet.
	HandOver []namedJSON `json:"hand_over"`
	Events   []eventJSON `json:"events,omitempty"` // with --events
}

// millJSON is what is seen on the mill if the count of the chain in hand is right.
type millJSON struct {
	PassesLaid   int    `json:"passes_laid"`
	EndsStanding int    `json:"ends_standing"`
	OverPeg1     int    `json:"groups_over_peg_1"`
	OverPeg2     int    `json:"groups_over_peg_2"`
	Paddle       string `json:"paddle"`              // "at the lease" or "at the counting cross"
	LastTurn     string `json:"last_turn,omitempty"` // "clockwise" or "counterclockwise"
	Twist        int    `json:"twist_half_turns"`    // behind the paddle, wrong turns included; clockwise above 0
}

type tickJSON struct {
	planout.StepJSON
	Done bool `json:"done"`
}

type recountJSON struct {
	At     time.Time `json:"at"`
	Chain  int       `json:"chain"`
	From   int       `json:"from"` // passes laid before
	To     int       `json:"to"`
	Reason string    `json:"reason"`
}

type noteJSON struct {
	At         time.Time `json:"at"`
	Chain      int       `json:"chain"`
	PassesLaid int       `json:"passes_laid"`
	Text       string    `json:"text"`
}

// eventJSON is one event; what its kind doesn't use is left out. See package counter for the kinds.
type eventJSON struct {
	At    time.Time `json:"at"`
	Kind  string    `json:"kind"`
	Chain int       `json:"chain,omitempty"`
	// Pass is left out when it is 0, which only a recount to nothing and a note before the first pass are.
	Pass  int    `json:"pass,omitempty"`
	Text  string `json:"text,omitempty"`
	Step  string `json:"step,omitempty"`
	Order string `json:"order,omitempty"`

	Position int                 `json:"position,omitempty"`
	What     string              `json:"what,omitempty"`
	Place    *planout.LengthJSON `json:"place,omitempty"` // from the lease
	Line     int                 `json:"line,omitempty"`  // the number of the mark that is taken back
	Foot     string              `json:"foot,omitempty"`  // "first" or "last"
	Weight   string              `json:"weight,omitempty"`
}

type tieJSON struct {
	At         time.Time `json:"at"`
	Chain      int       `json:"chain"`
	PassesLaid int       `json:"passes_laid"`
	Ends       int       `json:"ends"` // of the chain
}

type incidentJSON struct {
	Number    int                 `json:"number"` // of its line in the record
	At        time.Time           `json:"at"`
	Chain     int                 `json:"chain"`
	Pass      int                 `json:"pass"`
	Position  int                 `json:"position,omitempty"` // left out where it happened to the whole pass
	End       int                 `json:"end,omitempty"`      // its number in the warp
	What      string              `json:"what"`               // "broken", "knot", "missed-opening" or "wrong-peg"
	Place     *planout.LengthJSON `json:"place,omitempty"`    // from the lease
	Text      string              `json:"text,omitempty"`
	Withdrawn bool                `json:"withdrawn"` // noted by mistake
	Undone    bool                `json:"undone"`    // its pass is not laid now
}

// namedJSON is a line of the hand-over.
type namedJSON struct {
	Name  string `json:"name"`
	Value string `json:"value"`
}

// placeToJSON is a place that may not be known.
func placeToJSON(l measure.Length, known bool) *planout.LengthJSON {
	if !known {
		return nil
	}
	out := planout.LengthToJSON(l)
	return &out
}

func incidentToJSON(in counter.IncidentState) incidentJSON {
	return incidentJSON{Number: in.Number, At: in.At, Chain: in.Chain, Pass: in.Pass, Position: in.Position,
		End:  in.End,
		What: string(in.What), Place: placeToJSON(in.Place, in.HasPlace), Text: in.Text, Withdrawn: in.Withdrawn,
		Undone: in.Undone}
}

// ShowToJSON tells where a warp stands, with every event where they are asked for.
func ShowToJSON(record *journal.Record, events bool) showJSON {
	s := record.State()
	out := showJSON{
		Format: showFormat, Path: record.Path(), Name: s.Plan.Spec.Name, Spec: s.Plan.Spec,
		Passes: s.Plan.Passes(), PassesLaid: s.PassesLaidAll(), Ends: s.Plan.EndsWound(),
		EndsStanding: s.EndsStandingAll(),
		Chain:        s.Chain, Chains: len(s.Chains), Paused: s.Paused, LeaseSeen: s.LeaseSeen, Wound: s.Wound(),
		Finished: s.Finished,
		Started:  s.Started, Last: s.Last, CutShort: record.Torn(), Mill: millToJSON(s),
		Pace: planout.KnownPaceToJSON(record.PaceOverall().Timed()), HandOver: []namedJSON{},
		Finishing: []tickJSON{}, Recounts: []recountJSON{}, Notes: []noteJSON{}, Ties: []tieJSON{},
		Incidents: []incidentJSON{},
	}
	if pass, ok := s.NextPass(); ok {
		next := planout.PassToJSON(s.Plan, s.Current(), pass)
		out.NextPass = &next
	}
	out.SetUp = setUpShown(s)
	for i, step := range planout.StepsToJSON(s.Steps()) {
		out.Finishing = append(out.Finishing, tickJSON{step, s.Chains[s.Chain-1].Has(s.Steps()[i].ID)})
	}
	for _, r := range s.Recounts {
		out.Recounts = append(out.Recounts, recountJSON(r))
	}
	for _, n := range s.Notes {
		out.Notes = append(out.Notes, noteJSON{n.At, n.Chain, n.Pass, n.Text})
	}
	for _, t := range s.Ties {
		out.Ties = append(out.Ties, tieJSON{t.At, t.Chain, t.Pass, t.Ends})
	}
	for _, in := range s.Incidents {
		out.Incidents = append(out.Incidents, incidentToJSON(in))
	}
	for _, r := range record.HandOver().Rows {
		out.HandOver = append(out.HandOver, namedJSON{r.Name, r.Value.Plain()})
	}
	if events {
		for e := range record.All() {
			out.Events = append(out.Events, eventToJSON(e))
		}
	}
	return out
}

func millToJSON(s counter.State) millJSON {
	m := SeenOnMill(s)
	return millJSON{m.PassesLaid, m.EndsStanding, m.OverPeg1, m.OverPeg2, m.Paddle, m.LastTurn, int(s.Twist())}
}

func eventToJSON(e counter.Event) eventJSON {
	out := eventJSON{At: e.At, Kind: string(e.Kind), Chain: e.Chain, Pass: e.Pass, Text: e.Text, Step: string(e.Step),
		Position: e.Position, What: string(e.What), Place: placeToJSON(e.Place, e.HasPlace), Line: e.Line}
	if e.Kind == counter.LeaseSeen {
		out.Order = e.Order.String()
	}
	if e.Kind == counter.FootSeen {
		out.Foot = e.Foot.String()
	}
	if e.Weight > 0 {
		out.Weight = e.Weight.String()
	}
	return out
}
