package mill

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"github.com/muesli/termenv"

	"millside/plan/measure"
	"millside/tui/internal/hand"
)

func TestSettingsText(t *testing.T) {
	for _, s := range []Settings{{}, {Keys: []string{"f5", ".", "ctrl+n", "#"}, Bell: BellAlways}, {Bell: BellOff}} {
		if back, err := ParseSettings(s.String()); err != nil || !reflect.DeepEqual(back, s) {
			t.Errorf("%q is read as %+v, %v", s.String(), back, err)
		}
	}
	for _, text := range []string{"bell: loud", "key:", "key: a\nkey: a", "colour: red", "key: " + strings.Repeat("x", 41), strings.Repeat("#", 5000)} {
		_, err := ParseSettings(text)
		var fe *measure.FieldError
		if !errors.As(err, &fe) {
			t.Errorf("%.20q was taken: %v", text, err)
		}
	}
}

// The next step is told to whoever listens, after every pass and when a press was ignored.
func TestSpoken(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	var heard []string
	b.deps.Say = func(text string) { heard = append(heard, text) }
	s := b.press(b.winding(hand.Towels(), 9), "space", "space")
	b.send(s, hand.Key("space"))
	if len(heard) != 3 {
		t.Fatalf("heard %q", heard)
	}
	for i, want := range []string{"Pass 11 of 40, outward. 100 ends stand.",
		"Count tie at the counting cross round groups 1 to 10, 100 ends so far; not the one just laid", "One press ignored"} {
		if !strings.HasPrefix(heard[i], want) {
			t.Errorf("heard %q, want %q first", heard[i], want)
		}
	}
}
