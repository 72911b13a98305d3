package planout

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"millside/cmd/millside/internal/prose"
	"millside/plan"
	"millside/plan/measure"
)

// The table of the largest warp, whose numbers are the longest, keeps to the width of a terminal.
func TestTheLargestTableFits(t *testing.T) {
	s := plan.DefaultSpec()
	s.Ends, s.Group = measure.MaxEnds, 1
	p, err := plan.New(s)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	PassesText(&out, p)
	lines := 0
	for line := range strings.Lines(out.String()) {
		if lines++; utf8.RuneCountInString(line) > prose.TextWidth+1 { // the line feed is one
			t.Fatalf("line %d is too long: %s", lines, line)
		}
	}
	if lines < measure.MaxEnds {
		t.Errorf("%d lines for %d passes", lines, measure.MaxEnds)
	}
}

// The whole table of the largest warp is printed in good time.
func BenchmarkPassesText100k(b *testing.B) {
	s := plan.DefaultSpec()
	s.Ends, s.Group = measure.MaxEnds, 1
	p, err := plan.New(s)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		var out bytes.Buffer
		PassesText(&out, p)
	}
}
