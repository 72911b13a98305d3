package stripe_test

import (
	"slices"
	"strings"
	"testing"

	"millside/plan/field"
	"millside/plan/stripe"
	"millside/plan/stripe/schedule"
)

func TestPackages(t *testing.T) {
	colours := []stripe.Colour{{Name: "red"}, {Name: "sea blue"}, {Name: "colour-3"}}
	got, err := stripe.ParsePackages("Sea  Blue 2, colour-3 10", colours)
	if err != nil || !slices.Equal(got, []int{0, 2, 10}) {
		t.Errorf("%v (%v)", got, err)
	}
	for _, text := range []string{"red", "2", "2 red", "red -1", "red 0", "red 100001", "green 2", "red 1, red 1",
		"red 1,,red 2", "red 2 sea blue 3"} {
		if got, err := stripe.ParsePackages(text, colours); err == nil {
			t.Errorf("%q was read as %v", text, got)
		}
	}
}

// Each way of the table is known, and no other; the first is the one that is taken where nothing is asked.
func TestParseWay(t *testing.T) {
	for i, name := range field.Way.Words {
		way, cheapest, err := stripe.ParseWay(name)
		first := way == schedule.Searched && !cheapest
		if err != nil || cheapest != (name == stripe.CheapestWay) || first != (i == 0) {
			t.Errorf("%s: %v, %t, %v", name, way, cheapest, err)
		}
	}
	if way, cheapest, err := stripe.ParseWay(""); way != schedule.Searched || cheapest || err != nil {
		t.Errorf("none: %v, %t, %v", way, cheapest, err)
	}
	if _, _, err := stripe.ParseWay("sideways"); err == nil || !strings.Contains(err.Error(), "one of searched") {
		t.Errorf("sideways: %v", err)
	}
}
