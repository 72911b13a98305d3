package measure

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// MaxName is the longest name of a warp, in characters.
const MaxName = 60

func CheckName(name string) error {
	want := fmt.Sprintf("1 to %d printable characters", MaxName)
	if n := utf8.RuneCountInString(name); strings.TrimSpace(name) == "" || n > MaxName || !Printable(name) {
		return &FieldError{Field: "name", Value: name, Want: want}
	}
	return nil
}

// Printable says whether a text can be shown on a terminal as it is.
func Printable(s string) bool {
	return utf8.ValidString(s) && !strings.ContainsFunc(s, func(r rune) bool { return !unicode.IsPrint(r) })
}

// CheckColour refuses a colour's name that can't be shown; none at all will do.
func CheckColour(c string) error {
	if c != "" && CheckName(c) != nil {
		return &FieldError{Value: c, Want: fmt.Sprintf("up to %d printable characters", MaxName)}
	}
	return nil
}

// maxGoesWith is the most characters of the line that names the other warp of a cloth.
const maxGoesWith = 500

// CheckGoesWith refuses a line that can't name the other warp of a cloth; nothing at all will do. The error is a
// [*FieldError].
func CheckGoesWith(text string) error {
	if utf8.RuneCountInString(text) > maxGoesWith || text != "" && !Printable(text) {
		return &FieldError{Field: "goes with", Value: Shortened(text),
			Want: fmt.Sprintf("at most %d printable characters", maxGoesWith)}
	}
	return nil
}
