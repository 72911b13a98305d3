package planout

import (
	"strings"
	"testing"
	"time"

	"millside/cmd/millside/internal/asked"
	"millside/plan/stripe"
)

// The whole plan has what the text has: each other paddle and the small change, and nothing for a plain warp.
func TestOthersPart(t *testing.T) {
	order, err := stripe.Parse("8 times (9 black, 8 white)")
	if err != nil {
		t.Fatal(err)
	}
	changed, err := stripe.Parse("8 times (8 black, 8 white)")
	if err != nil {
		t.Fatal(err)
	}
	s := &asked.Striped{Plan: &stripe.Plan{Order: order},
		Paddles: []stripe.OtherPaddle{{Positions: 17, Name: "long", Packages: []int{9, 8}, Passes: 8,
			Total: time.Hour}},
		Change: &stripe.Change{Words: "each stripe of 9 made 8", Order: changed, Ends: 128, Total: 28 * time.Minute,
			Saved: 26 * time.Minute}}
	got := strings.Join(OthersPart(s).Notes, "\n")
	var text strings.Builder
	othersText(&text, s)
	for _, want := range []string{"17 positions (long, at hand): 8 passes, 0 halts; packages of black 9, white 8",
		"each stripe of 9 made 8: 8 times (8 black, 8 white), 128 ends, would take about 28 min, about 26 min less"} {
		if !strings.Contains(got, want) || !strings.Contains(strings.Join(strings.Fields(text.String()), " "), want) {
			t.Errorf("%q isn't in\n%s\nand\n%s", want, got, text.String())
		}
	}
	if part := OthersPart(nil); len(part.Notes) > 0 || len(part.Rows) > 0 {
		t.Errorf("a plain warp has %+v", part)
	}
}
