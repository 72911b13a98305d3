package prose

import (
	"fmt"
	"io"
	"strings"
	"time"
	"unicode/utf8"

	"millside/plan/measure"
	"millside/plan/wind"
)

// labelWidth is how far the values of a summary stand in.
const labelWidth = 14

// Row writes one line of a summary; a long value goes on below itself.
func Row(w io.Writer, label, format string, values ...any) {
	value := Wrap(Clean(fmt.Sprintf(format, values...)), labelWidth)
	fmt.Fprintf(w, "%s%s%s\n", label, strings.Repeat(" ", max(labelWidth-utf8.RuneCountInString(label), 1)), value)
}

// PathRow is row for a path: it is not broken, since it may be copied from the screen.
func PathRow(w io.Writer, label, path string) {
	fmt.Fprintf(w, "%-*s%s\n", labelWidth, label, Clean(path))
}

// Count writes a number with its noun.
func Count(n int, noun string) string {
	switch {
	case n == 1:
		return "1 " + noun
	case strings.HasSuffix(noun, "s"):
		return fmt.Sprintf("%d %ses", n, noun)
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// Length shows a length with two decimals, and says so if that isn't the whole truth.
func Length(l measure.Length, unit measure.LengthUnit) string {
	text := l.As(unit, 2).String()
	if exact, err := measure.ParseLength(l.As(unit, 2).Plain()); err != nil || exact != l {
		return "about " + text
	}
	return text
}

// Positions names positions of the paddle.
func Positions(set wind.Positions) string {
	if set.Count() == 1 {
		return "position " + set.String()
	}
	return "positions " + set.String()
}

// When shows a time by the clock on the wall.
func When(t time.Time) string {
	if t.IsZero() {
		return "-"
	}
	return t.Local().Format("2006-01-02 15:04")
}
