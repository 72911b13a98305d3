package hand

import (
	"regexp"
	"strings"
	"testing"

	"github.com/muesli/termenv"

	"millside/plan/figure"
)

// decimalPoint is a point between two digits of one number; a version has more points than one.
var decimalPoint = regexp.MustCompile(`(^|[^0-9.])[0-9]+\.[0-9]+([^0-9.]|$|\.[^0-9])`)

// DecimalComma fails where a page shows a decimal point to a weaver who writes a comma.
func DecimalComma(t *testing.T, pages []Page) {
	figure.WriteComma(true)
	defer figure.WriteComma(false)
	for _, page := range pages {
		view := page.Make(t, termenv.Ascii)
		for _, size := range Sizes {
			NoPoint(t, page.Name+" at "+size.String(), view(size.W, size.H))
		}
	}
}

// NoPoint fails where a text has a decimal point.
func NoPoint(t *testing.T, name, text string) {
	t.Helper()
	for line := range strings.Lines(Bare(text)) {
		if line = strings.TrimRight(line, "\n "); decimalPoint.MatchString(line) {
			t.Errorf("%s has a decimal point: %s", name, line)
		}
	}
}
