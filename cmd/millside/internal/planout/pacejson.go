package planout

import (
	"millside/plan/times"
)

// spanJSON is a time with its spread, in whole milliseconds, cut down.
type spanJSON struct {
	Low    int64 `json:"low_ms"`
	Middle int64 `json:"middle_ms"`
	High   int64 `json:"high_ms"`
}

// PaceJSON is how long a pass takes.
type PaceJSON struct {
	spanJSON
	TimedPasses int `json:"timed_passes"` // 0 for a practised hand's usual times, and for those that were given
	TimedWarps  int `json:"timed_warps"`
}

// WarpTimeJSON is how long the warp takes; Text is the figure that is shown everywhere.
type WarpTimeJSON struct {
	spanJSON
	AtPegs int64  `json:"at_pegs_ms"` // the part of it for the work at the end pegs
	Text   string `json:"text"`
}

// WarpTimeToJSON is the time of a warp.
func WarpTimeToJSON(t times.TimeSpan) *WarpTimeJSON {
	return &WarpTimeJSON{spanJSON{t.Low.Milliseconds(), t.Middle.Milliseconds(), t.High.Milliseconds()},
		t.AtPegs.Milliseconds(), t.String()}
}

func paceToJSON(p times.Pace) PaceJSON {
	return PaceJSON{spanJSON{p.Low.Milliseconds(), p.Middle.Milliseconds(), p.High.Milliseconds()}, p.Passes, p.Warps}
}

// KnownPaceToJSON is a pace that may not be known.
func KnownPaceToJSON(p times.Pace) *PaceJSON {
	if !p.Known() {
		return nil
	}
	out := paceToJSON(p)
	return &out
}
