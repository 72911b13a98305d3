package main

import "millside/plan"

// spanJSON is a time with its spread, in whole milliseconds, cut down.
type spanJSON struct {
	Low    int64 `json:"low_ms"`
	Middle int64 `json:"middle_ms"`
	High   int64 `json:"high_ms"`
}

// paceJSON is how long a pass takes.
type paceJSON struct {
	spanJSON
	TimedPasses int `json:"timed_passes"` // 0 for a practised hand's usual range
}

func spanToJSON(t plan.TimeSpan) spanJSON {
	return spanJSON{t.Low.Milliseconds(), t.Middle.Milliseconds(), t.High.Milliseconds()}
}

func paceToJSON(p plan.Pace) paceJSON { return paceJSON{spanToJSON(p.For(1)), p.Passes} }

// knownPaceToJSON is a pace that may not be known.
func knownPaceToJSON(p plan.Pace) *paceJSON {
	if !p.Known() {
		return nil
	}
	out := paceToJSON(p)
	return &out
}
