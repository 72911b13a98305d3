package session

import (
	"time"

	"millside/counter"
	"millside/plan"
)

// reckoning is what follows from the whole record and would be dear to work out at every press: each event moves it on.
type reckoning struct {
	tempo counter.Tempo
	// runsOut are the places where a package runs out.
	runsOut []plan.Place
}

// after is the reckoning after one more event.
func (r reckoning) after(e counter.Event, before, st counter.State) reckoning {
	r.tempo = r.tempo.After(e)
	if len(before.Cones) != len(st.Cones) || before.Plan != st.Plan {
		r = r.packagesOf(st)
	}
	return r
}

// packagesOf works out where the packages run out. Packages that can't be reckoned with (in a record made by hand,
// say) are no reason to stop winding.
func (r reckoning) packagesOf(st counter.State) reckoning {
	r.runsOut = nil
	cones := st.ConesInUse()
	if cones == nil {
		return r
	}
	yarn, err := st.Plan.Yarn(cones, st.Plan.Spec.Extras())
	if err != nil {
		return r
	}
	for _, c := range yarn.Cones {
		if c.RunsOut != nil {
			r.runsOut = append(r.runsOut, *c.RunsOut)
		}
	}
	return r
}

// RunsOut lists the positions whose packages run out on a pass of the chain in hand.
func (s Session) RunsOut(pass int) []int {
	var list []int
	for _, at := range s.reckon.runsOut {
		if at.Chain == s.st.Chain && at.Pass == pass {
			list = append(list, at.Position)
		}
	}
	return list
}

// Pace is the pace of the latest passes of the chain in hand.
func (s Session) Pace() counter.PaceResult { return s.reckon.tempo.Pace(s.st.Chain) }

// TimeLeft is the time to the last pass of the chain at the winder's own pace; false while too little is known.
func (s Session) TimeLeft() (counter.Left, bool) {
	pace := s.Pace()
	if pace.Passes < counter.FewestTimed || s.st.Wound() {
		return counter.Left{}, false
	}
	return pace.Remaining(len(s.st.Current().Passes) - s.st.Laid()), true
}

// RestDue says whether the winder should rest.
func (s Session) RestDue(now time.Time) bool { return s.reckon.tempo.RestDue(s.st, now) }
