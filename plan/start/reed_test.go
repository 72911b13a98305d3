package start_test

import (
	"context"
	"strings"
	"testing"

	"millside/plan/entry"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/start"
)

// Ends, and a width that follows from ends, are counted at the sett that the reed really gives (common practice, no
// source). By hand: 40 dents in 10 cm are 10.16 an inch, so 2 in a dent are 20.32 an inch; 24 in take 488 ends, and 488
// ends are 24.02 in wide, not 24.4. 22 an inch in 12 dents an inch is just that, 1-2-2-2-2-2.
func TestTheReedIsKnown(t *testing.T) {
	type said = map[*field.Field]string
	for _, c := range []struct {
		say          said
		answer, step string
	}{
		{said{field.ReedSpan: "24 in", field.SettOf: "20 an inch", field.Reed: "40 in 10 cm"},
			"488 ends", "20.32 an inch, where 20 an inch is asked for"},
		{said{field.FinishedWidth: "24 in", field.DrawIn: "0%", field.ShrinkageWidth: "0%",
			field.SettOf: "20 an inch", field.Reed: "40 in 10 cm"},
			"488 ends", "20.32 an inch, where 20 an inch is asked for"},
		{said{field.Ends: "488", field.SettOf: "20 an inch", field.Reed: "40 in 10 cm",
			field.DrawIn: "0%", field.ShrinkageWidth: "0%"},
			"24.02 in", "20.32 an inch, where 20 an inch is asked for"},
		{said{field.ReedSpan: "24 in", field.SettOf: "22 an inch", field.Reed: "12 dents an inch"}, "528 ends", ""},
		{said{field.ReedSpan: "24 in", field.SettOf: "20 an inch"}, "480 ends", ""},
	} {
		known := start.Known{Spec: entry.NewSpec(measure.Imperial)}
		for f, text := range c.say {
			if err := known.Take(f, text); err != nil {
				t.Fatal(err)
			}
		}
		r, err := start.Solve(context.Background(), known)
		if err != nil {
			t.Errorf("%v: %v", c.say, err)
			continue
		}
		step := ""
		for _, line := range r.Lines {
			if line.Name == "sett that the reed gives" {
				step = line.Value.String()
			}
		}
		if !strings.Contains(r.Answer.String(), c.answer) || !strings.HasPrefix(step, c.step) ||
			(step == "") != (c.step == "") {
			t.Errorf("%v: %s, %q", c.say, r.Answer, step)
		}
	}
}
