package asked

import (
	"errors"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"millside/cmd/millside/internal/prose"
	"millside/plan/stripe"
)

// pointedError is a stripe order that can't be read, with its text and a mark under the place.
type pointedError struct {
	err  *stripe.TextError
	text string
}

// pointAt shows the place of an error in the stripes that were typed; any other error stays as it is.
func pointAt(err error, text string) error {
	var wrong *stripe.TextError
	if !errors.As(err, &wrong) {
		return err
	}
	return &pointedError{wrong, text}
}

func (e *pointedError) Unwrap() error { return e.err }

// Error gives three lines: what is wrong, the line that it is in, and the mark. The error's own words
// begin with the field, which is called as the flag is.
func (e *pointedError) Error() string {
	line, mark := e.shown()
	return "--" + e.err.Error() + "\n  " + line + "\n  " + strings.Repeat(" ", mark) + "^"
}

// How much of a long line is shown, in columns, so that it fits into a terminal behind the program's name.
const (
	shownBefore = 40
	shownLine   = 66
)

// shown is the line that the error is in, shortened, and the column of the place in it, from 0.
func (e *pointedError) shown() (line string, mark int) {
	at := min(max(e.err.Offset, 0), len(e.text))
	start := strings.LastIndexAny(e.text[:at], "\r\n") + 1
	end := len(e.text)
	if n := strings.IndexAny(e.text[at:], "\r\n"); n >= 0 {
		end = at + n
	}
	tidy := func(s string) string { return prose.Clean(strings.ReplaceAll(s, "\t", " ")) }
	before, after := tidy(e.text[start:at]), tidy(e.text[at:end])
	if width := ansi.StringWidth(before); width > shownBefore {
		before = ansi.TruncateLeft(before, width-shownBefore, "...")
	}
	mark = ansi.StringWidth(before)
	return before + ansi.Truncate(after, shownLine-mark, "..."), mark
}
