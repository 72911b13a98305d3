package times_test

import (
	"encoding/json"
	"strings"
	"testing"
	"time"

	"millside/plan/times"
)

// A record keeps the guard in whole milliseconds.
func TestGuardInARecord(t *testing.T) {
	for g, want := range map[times.Guard]string{
		0:                                    "0",
		times.Guard(2 * time.Second):         "2000",
		times.Guard(1500 * time.Millisecond): "1500",
		times.Guard(-time.Second):            "-1000",
	} {
		got, err := json.Marshal(g)
		if err != nil || string(got) != want {
			t.Errorf("%s is written %s, %v; want %s", g, got, err, want)
		}
		var back times.Guard
		if err := json.Unmarshal(got, &back); err != nil || back != g {
			t.Errorf("%s reads back as %s, %v", g, back, err)
		}
	}
	if got, err := json.Marshal(times.Guard(time.Microsecond)); err == nil {
		t.Errorf("a part of a millisecond was written as %s", got)
	}
}

func TestGuardNotRead(t *testing.T) {
	for _, text := range []string{`1.5`, `"2s"`, `9223372036855`, `-9223372036855`, `99999999999999999999`, `true`} {
		g := times.Guard(time.Second)
		if err := json.Unmarshal([]byte(text), &g); err == nil || g != times.Guard(time.Second) {
			t.Errorf("%s was read as %s, %v", text, g, err)
		}
	}
}

func TestGuardRange(t *testing.T) {
	for g, want := range map[times.Guard]string{
		0:                              "",
		times.Guard(time.Minute):       "",
		times.Guard(time.Minute + 1):   "whole thousandths",
		times.Guard(61 * time.Second):  "0 to 60 s",
		-times.Guard(time.Millisecond): "0 to 60 s",
		times.Guard(time.Microsecond):  "whole thousandths",
	} {
		err := g.Check()
		if (err == nil) != (want == "") || err != nil && !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", g, err, want)
		}
	}
}
