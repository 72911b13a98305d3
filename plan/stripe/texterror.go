package stripe

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"millside/plan/field"
	"millside/plan/measure"
)

// TextError says where a stripe order can't be read, and what would do there. It unwraps to a
// [*measure.FieldError] of the field "stripes".
type TextError struct {
	// Offset is the place in the text, in bytes from 0.
	Offset int
	// Line and Column are the same place for a person: both from 1, the column in characters.
	Line, Column int
	// Found is what stands there, "" at the end of the text.
	Found string
	// Want says what would do.
	Want string
	// Try is the whole text as it is likely to be meant, which can be read, and TryEnds its ends; "" and 0
	// where no one guess is likelier than another.
	Try     string
	TryEnds int

	mend *mend
}

// shownTry is how many characters of a mended text an error shows.
const shownTry = 120

// Error names the place, what stands there, what would do, and how the text would then read.
func (e *TextError) Error() string {
	found := "the end"
	if e.Found != "" {
		found = strconv.Quote(e.Found)
	}
	return fmt.Sprintf("stripes, line %d, column %d: %s won't do; %s", e.Line, e.Column, found, e.advice())
}

// Unwrap gives the same as an error of a field.
func (e *TextError) Unwrap() error {
	return &measure.FieldError{Field: field.StripesOf.Name, Value: e.Found, Want: e.advice()}
}

// advice says what would do, and shows it with its number of ends, so that a mistake isn't made into
// another warp unseen.
func (e *TextError) advice() string {
	if e.Try == "" {
		return e.Want
	}
	try := []rune(oneLine(e.Try))
	shown := string(try)
	if len(try) > shownTry { // the mended place is near the fault, some words before it are enough
		from := min(max(utf8.RuneCountInString(e.Try[:min(e.Offset, len(e.Try))])-shownTry/2, 0), len(try)-shownTry)
		shown = string(try[from : from+shownTry])
		if from > 0 {
			shown = "..." + shown
		}
		if from+shownTry < len(try) {
			shown += "..."
		}
	}
	return fmt.Sprintf("%s; it would read: %s (%s)", e.Want, shown, measure.Counted(e.TryEnds, "end", "ends"))
}

func (p *parser) errorAt(t token, want string) *TextError {
	before := strings.ReplaceAll(p.text[:t.offset], "\r\n", "\n")
	line := strings.LastIndexAny(before, "\n\r") + 1
	return &TextError{
		Offset: t.offset, Found: t.text, Want: want,
		Line:   1 + strings.Count(before, "\n") + strings.Count(before, "\r"),
		Column: 1 + utf8.RuneCountInString(before[line:]),
	}
}

// mendAt is an error with what is likely to mend it; nil where that isn't known.
func (p *parser) mendAt(t token, want string, m *mend) *TextError {
	err := p.errorAt(t, want)
	err.mend = m
	return err
}

// oneLine writes an order on one line, with commas where ends of lines part stripes.
func oneLine(text string) string {
	line := strings.Join(strings.Fields(text), " ")
	was, err1 := parse(text)
	is, err2 := parse(line)
	if err1 == nil && (err2 != nil || was.Size() != is.Size()) {
		return strings.Join(strings.FieldsFunc(text, func(r rune) bool { return r == '\n' || r == '\r' }), ", ")
	}
	return line
}
