package stripe_test

import (
	"slices"
	"testing"

	"millside/plan/stripe"
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
