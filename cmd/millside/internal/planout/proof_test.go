package planout

import (
	"encoding/json"
	"testing"
	"time"

	"millside/plan/stripe/schedule"
)

// A bound that isn't known is left out: 0 would say that a schedule may take no time.
func TestProofWithoutABound(t *testing.T) {
	for _, c := range []struct {
		proof schedule.Proof
		want  string
	}{
		{schedule.Proof{Why: "chosen"}, `{"least":false,"why":"chosen"}`},
		{schedule.Proof{Bound: time.Minute, Gap: time.Second, Why: "found"},
			`{"least":false,"bound":{"text":"1 min","nanoseconds":60000000000},` +
				`"gap":{"text":"1 s","nanoseconds":1000000000},"why":"found"}`},
		{schedule.Proof{Bound: time.Minute, Least: true, Why: "proved"},
			`{"least":true,"bound":{"text":"1 min","nanoseconds":60000000000},` +
				`"gap":{"text":"0 s","nanoseconds":0},"why":"proved"}`},
	} {
		got, err := json.Marshal(proofToJSON(c.proof))
		if err != nil || string(got) != c.want {
			t.Errorf("%s (%v), not %s", got, err, c.want)
		}
	}
}
