package recordout

import (
	"time"

	"millside/cmd/millside/internal/planout"
	"millside/counter/journal"
	"millside/plan"
	"millside/plan/times"
)

// listFormat names the structure below; see planFormat for what may change in it.
const listFormat = "millside-list-1"

// listJSON is what 'millside list --json' prints.
type listJSON struct {
	Format  string        `json:"format"` // listFormat
	Records []summaryJSON `json:"records"`
}

// summaryJSON is one record. The counts are over all chains. Of a damaged record they hold what stands
// before the damage.
type summaryJSON struct {
	Path         string    `json:"path"`
	Name         string    `json:"name"`
	Passes       int       `json:"passes"`
	PassesLaid   int       `json:"passes_laid"`
	Ends         int       `json:"ends"`
	EndsStanding int       `json:"ends_standing"`
	Wound        bool      `json:"wound"`
	Finished     bool      `json:"finished"`
	Started      time.Time `json:"started,omitzero"`
	Last         time.Time `json:"last,omitzero"`
	CutShort     bool      `json:"cut_short"` // the last line was torn and is left out
	// LinesLost is how many lines that had been counted are missing at the end, as well as can be told.
	LinesLost int `json:"lines_lost,omitempty"`
	// Time is what is planned for a warp that isn't finished; left out where the plan can't be read.
	Time *planout.WarpTimeJSON `json:"time,omitempty"`
	// Pace and YarnUsed are those of a finished warp.
	Pace     *planout.PaceJSON   `json:"pace,omitempty"`
	YarnUsed *planout.LengthJSON `json:"yarn_used,omitempty"` // all ends together, nothing added for waste
	Error    string              `json:"error,omitempty"`
	Spec     *plan.Spec          `json:"spec,omitempty"`
}

// ListToJSON lists records for a program to read.
func ListToJSON(list []journal.Summary, pace times.Pace) listJSON {
	out := listJSON{Format: listFormat, Records: []summaryJSON{}}
	for _, sum := range list {
		one := summaryJSON{
			Path: sum.Path, Name: sum.Name, Passes: sum.Passes, PassesLaid: sum.Laid, Ends: sum.Ends,
			EndsStanding: sum.Standing,
			Wound:        sum.Wound, Finished: sum.Finished, Started: sum.Started, Last: sum.Last, CutShort: sum.Torn,
			LinesLost: sum.Lost.Lines,
		}
		if sum.Err != nil {
			one.Error = sum.Err.Error()
		}
		if sum.Spec.Ends != 0 {
			one.Spec = &sum.Spec
		}
		if !sum.Finished && sum.Err == nil {
			one.Time = planout.WarpTimeToJSON(sum.Spec.TimeOf(sum.Work, pace))
		}
		if sum.Finished {
			one.Pace, one.YarnUsed = planout.KnownPaceToJSON(sum.Pace.Timed()), placeToJSON(sum.Yarn, true)
		}
		out.Records = append(out.Records, one)
	}
	return out
}
