package look

import (
	"io"
	"testing"

	"github.com/muesli/termenv"

	"millside/plan"
)

// A yarn stands on its own colour, with black or white on it, whichever is easier to read; without a shade, or
// without colours, it is only a letter.
func TestYarn(t *testing.T) {
	s := NewStyles(io.Discard, termenv.TrueColor)
	for shade, want := range map[string]string{
		"#f2ead7": "\x1b[38;2;0;0;0;48;2;242;234;215mA\x1b[0m",
		"#000000": "\x1b[38;2;255;255;255;48;2;0;0;0mA\x1b[0m",
		"":        "\x1b[1mA\x1b[0m",
		"plum":    "\x1b[1mA\x1b[0m",
	} {
		if got := s.Yarn(plan.StripeColour{Name: "yarn", Shade: shade}).Render("A"); got != want {
			t.Errorf("%q: %q, not %q", shade, got, want)
		}
	}
	plain := NewStyles(io.Discard, termenv.Ascii)
	if got := plain.Yarn(plan.StripeColour{Shade: "#f2ead7"}).Render("A"); got != "A" {
		t.Errorf("without colours: %q", got)
	}
}
