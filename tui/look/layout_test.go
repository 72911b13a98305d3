package look

import (
	"slices"
	"testing"
)

// A line is never too long, and an order in a reed stays in one piece where it finds room.
func TestWrapAtHyphens(t *testing.T) {
	for _, c := range []struct {
		text string
		w    int
		want []string
	}{
		{"18.33 an inch with 1-2-2-2", 20, []string{"18.33 an inch with", "1-2-2-2"}},
		{"with 1-2", 8, []string{"with 1-2"}},
		{"with 1-2", 7, []string{"with", "1-2"}},
		{"two ends", 5, []string{"two", "ends"}},
		{"", 5, nil},
	} {
		if got := Wrap(c.text, c.w); !slices.Equal(got, c.want) {
			t.Errorf("%q in %d cells: %q", c.text, c.w, got)
		}
	}
}
