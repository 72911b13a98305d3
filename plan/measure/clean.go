package measure

import (
	"strings"
	"unicode"
)

// The two joiners that some scripts need between letters; they are format marks that do no harm.
const (
	zeroWidthNonJoiner = '\u200C'
	zeroWidthJoiner    = '\u200D'
)

// Clean takes out of a text whatever could act on a terminal instead of being read: control characters,
// marks that turn the direction of writing, separators of lines and paragraphs. Bytes that are no text
// become the replacement character. What comes from outside and was not checked goes through here before
// it is shown: names of files, messages of the system.
func Clean(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == zeroWidthNonJoiner, r == zeroWidthJoiner:
			return r
		case unicode.IsControl(r), unicode.In(r, unicode.Cf, unicode.Zl, unicode.Zp):
			return -1
		}
		return r
	}, s)
}
