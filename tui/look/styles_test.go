package look

import (
	"io"
	"math"
	"strconv"
	"testing"

	"github.com/muesli/termenv"
)

// contrast is that of a colour of the palette's cube of 6 by 6 by 6 to white, as the Web Content Accessibility
// Guidelines 2.1 define it (W3C, "contrast ratio" and "relative luminance"). The levels of the cube are those that
// xterm's 256 colours have: 0, 95, 135, 175, 215, 255.
func contrast(t *testing.T, colour string) float64 {
	t.Helper()
	n, err := strconv.Atoi(colour)
	if err != nil || n < 16 || n > 231 {
		t.Fatalf("%q is not of the cube", colour)
	}
	levels := [6]float64{0, 95, 135, 175, 215, 255}
	linear := func(level float64) float64 {
		if c := level / 255; c > 0.03928 {
			return math.Pow((c+0.055)/1.055, 2.4)
		}
		return level / 255 / 12.92
	}
	n -= 16
	luminance := 0.2126*linear(levels[n/36]) + 0.7152*linear(levels[n/6%6]) + 0.0722*linear(levels[n%6])
	return 1.05 / (luminance + 0.05)
}

// On a light ground every colour that stands on the ground itself can be read: a contrast of 4.5 to 1 or more is what
// the Web Content Accessibility Guidelines 2.1 (W3C, criterion 1.4.3) ask of text.
func TestLightGroundHasContrast(t *testing.T) {
	for _, c := range lightInks {
		if got := contrast(t, c); got < 4.5 {
			t.Errorf("colour %s has a contrast of %.1f to white", c, got)
		}
	}
}

// The ground is light where the environment says so, and looks without colours stay so.
func TestLightGround(t *testing.T) {
	for value, want := range map[string]bool{"": false, "15;0": false, "0;15": true, "0;default;15": true,
		"12;8": false, "0;7": true, "15": false, "0;": false, "0;light": false} {
		if got := LightGround(func(string) string { return value }); got != want {
			t.Errorf("%q: light %v", value, got)
		}
	}
	plain := NewUncoloured(io.Discard)
	if got := plain.OnLight(termenv.ANSI256).Outward.Render("x"); got != plain.Outward.Render("x") {
		t.Errorf("%q has a colour", got)
	}
	coloured := NewStyles(io.Discard, termenv.ANSI256)
	if got := coloured.OnLight(termenv.ANSI256).Outward.Render("x"); got == coloured.Outward.Render("x") {
		t.Errorf("%q is as on a dark ground", got)
	}
}
