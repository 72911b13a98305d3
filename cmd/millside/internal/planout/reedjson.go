package planout

import (
	"millside/plan/athand"
	"millside/plan/measure"
	"millside/plan/project"
)

// settledJSON is what the plan's reed makes of the sett that was asked for.
type settledJSON struct {
	Asked measure.Sett `json:"asked"`
	Gives measure.Sett `json:"gives"`
	Order []int        `json:"order,omitempty" about:"ends in each dent, over and over; left out where they differ"`
	Exact bool         `json:"exact" about:"it gives what was asked for"`
	Said  string       `json:"said,omitempty" about:"what is settled where it doesn't"`
}

// reedSettsJSON is what a reed gives near that sett.
type reedSettsJSON struct {
	Names   string          `json:"names,omitempty" about:"at hand"`
	Reed    string          `json:"reed"`
	Planned bool            `json:"planned" about:"it is the reed of the plan"`
	Setts   []givenSettJSON `json:"setts" about:"the most open first; none where no order comes near"`
}

type givenSettJSON struct {
	Sett    measure.Sett    `json:"sett"`
	Order   []int           `json:"order" about:"ends in each dent, over and over"`
	Exact   bool            `json:"exact" about:"it is the sett asked for"`
	Off     measure.Percent `json:"off" about:"how far it is from the sett asked for"`
	Closer  bool            `json:"closer"`
	Nearest bool            `json:"nearest" about:"no other order of the reed comes nearer: a plan takes it"`
	Width   *LengthJSON     `json:"width,omitempty" about:"of the warp; left out where its ends aren't known"`
	Fits    bool            `json:"fits" about:"the warp isn't wider than the reed, as far as its width is known"`
}

// TakeReeds adds what the plan's reed and the reeds at hand give for its sett, where that is known.
func (out *planJSON) TakeReeds(pr *project.Project, reeds []athand.NamedReed) {
	if s := pr.Settled; s != nil {
		out.Sett = &settledJSON{Asked: s.Asked, Gives: s.Order.Gives, Order: s.Order.Dents, Exact: s.Order.Exact,
			Said: s.Words(pr.Sley.Width, pr.SideBySide(), pr.Plan.Spec.Units).Plain()}
	}
	out.ReedSetts = reedSettsToJSON(athand.SettsOf(reeds, pr.Plan.Spec.Loom.Reed, pr.SettInReed(), pr.SideBySide()))
}

func reedSettsToJSON(list []athand.ReedSetts) []reedSettsJSON {
	var out []reedSettsJSON
	for _, r := range list {
		one := reedSettsJSON{r.Names, r.Reed.String(), r.Planned, []givenSettJSON{}}
		for _, g := range r.Setts {
			given := givenSettJSON{Sett: g.Gives, Order: g.Dents, Exact: g.Exact, Off: g.Off, Closer: g.Closer,
				Nearest: g.Nearest, Fits: g.Fits}
			if g.Width > 0 {
				width := LengthToJSON(g.Width)
				given.Width = &width
			}
			one.Setts = append(one.Setts, given)
		}
		out = append(out, one)
	}
	return out
}
