package main

import (
	"time"

	"millside/counter"
	"millside/plan"
)

// showFormat names the structure below; see planFormat for what may change in it.
const showFormat = "millside-show-1"

// showJSON is what 'millside show --json' prints.
type showJSON struct {
	Format       string     `json:"format"` // showFormat
	Path         string     `json:"path"`
	Name         string     `json:"name"`
	Spec         plan.Spec  `json:"spec"`   // the plan in force
	Passes       int        `json:"passes"` // these four are over all chains
	PassesLaid   int        `json:"passes_laid"`
	Ends         int        `json:"ends"`
	EndsStanding int        `json:"ends_standing"`
	Chain        int        `json:"chain"` // the chain in hand, from 1
	Chains       int        `json:"chains"`
	Paused       bool       `json:"paused"`
	LeaseSeen    bool       `json:"lease_seen"`
	Wound        bool       `json:"wound"` // the chain in hand has all its passes
	Finished     bool       `json:"finished"`
	Started      time.Time  `json:"started,omitzero"`
	Last         time.Time  `json:"last,omitzero"`
	CutShort     string     `json:"cut_short,omitempty"` // what was left out at the end of the file
	Mill         millJSON   `json:"mill"`
	NextPass     *passJSON  `json:"next_pass,omitempty"`
	SetUp        *setUpJSON `json:"set_up,omitempty"` // of a striped warp: that of the next pass, or of the last
	Finishing    []tickJSON `json:"finishing"`        // of the chain in hand

	Recounts []recountJSON `json:"recounts"`
	Notes    []noteJSON    `json:"notes"`
	Events   []eventJSON   `json:"events,omitempty"` // with --events
}

// millJSON is what is seen on the mill if the count of the chain in hand is right.
type millJSON struct {
	PassesLaid   int    `json:"passes_laid"`
	EndsStanding int    `json:"ends_standing"`
	OverPeg1     int    `json:"groups_over_peg_1"`
	OverPeg2     int    `json:"groups_over_peg_2"`
	Paddle       string `json:"paddle"`              // "at the lease" or "at the counting cross"
	LastTurn     string `json:"last_turn,omitempty"` // "clockwise" or "counterclockwise"
}

type tickJSON struct {
	stepJSON
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
}

func showToJSON(record *counter.Record, events bool) showJSON {
	s := record.State()
	out := showJSON{
		Format: showFormat, Path: record.Path(), Name: s.Plan.Spec.Name, Spec: s.Plan.Spec,
		Passes: s.Plan.Passes(), PassesLaid: s.PassesLaidAll(), Ends: s.Plan.EndsWound(), EndsStanding: s.EndsStandingAll(),
		Chain: s.Chain, Chains: len(s.Chains), Paused: s.Paused, LeaseSeen: s.LeaseSeen, Wound: s.Wound(), Finished: s.Finished,
		Started: s.Started, Last: s.Last, CutShort: record.Torn(), Mill: millJSON(seenOnMill(s)),
		Finishing: []tickJSON{}, Recounts: []recountJSON{}, Notes: []noteJSON{},
	}
	if pass, ok := s.NextPass(); ok {
		next := passToJSON(s.Plan, s.Current(), pass)
		out.NextPass = &next
	}
	out.SetUp = setUpShown(s)
	for i, step := range stepsToJSON(s.Steps()) {
		out.Finishing = append(out.Finishing, tickJSON{step, s.Chains[s.Chain-1].Has(s.Steps()[i].ID)})
	}
	for _, r := range s.Recounts {
		out.Recounts = append(out.Recounts, recountJSON(r))
	}
	for _, n := range s.Notes {
		out.Notes = append(out.Notes, noteJSON{n.At, n.Chain, n.Pass, n.Text})
	}
	if events {
		for _, e := range record.Events() {
			out.Events = append(out.Events, eventToJSON(e))
		}
	}
	return out
}

func eventToJSON(e counter.Event) eventJSON {
	out := eventJSON{At: e.At, Kind: string(e.Kind), Chain: e.Chain, Pass: e.Pass, Text: e.Text, Step: string(e.Step)}
	if e.Kind == counter.LeaseSeen {
		out.Order = e.Order.String()
	}
	return out
}
