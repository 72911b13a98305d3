package planout

import "millside/plan"

// spanJSON is a time with its spread, in whole milliseconds, cut down.
type spanJSON struct {
	Low    int64 `json:"low_ms"`
	Middle int64 `json:"middle_ms"`
	High   int64 `json:"high_ms"`
}

// PaceJSON is how long a pass takes.
type PaceJSON struct {
	spanJSON
	TimedPasses int `json:"timed_passes"` // 0 for a practised hand's usual range
}

func spanToJSON(t plan.TimeSpan) spanJSON {
	return spanJSON{t.Low.Milliseconds(), t.Middle.Milliseconds(), t.High.Milliseconds()}
}

func paceToJSON(p plan.Pace) PaceJSON { return PaceJSON{spanToJSON(p.For(1)), p.Passes} }

// KnownPaceToJSON is a pace that may not be known.
func KnownPaceToJSON(p plan.Pace) *PaceJSON {
	if !p.Known() {
		return nil
	}
	out := paceToJSON(p)
	return &out
}
