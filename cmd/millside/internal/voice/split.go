package voice

import (
	"errors"
	"strings"
	"unicode"
)

// splitCommand parts a command line into the program and its arguments. Blanks part words. What stands
// between two ' or between two " is kept as it is, blanks and all; such a part may stand within a word,
// and an empty one is an empty word. Nothing else means anything: no backslash, no variable, no star. So
// a ' is written between two ", and the other way about.
func splitCommand(s string) ([]string, error) {
	var words []string
	var word strings.Builder
	begun, quote := false, rune(0)
	for _, r := range s {
		switch {
		case quote != 0 && r == quote:
			quote = 0
		case quote != 0:
			word.WriteRune(r)
		case r == '\'' || r == '"':
			begun, quote = true, r
		case unicode.IsSpace(r):
			if begun {
				words = append(words, word.String())
			}
			word.Reset()
			begun = false
		default:
			begun = true
			word.WriteRune(r)
		}
	}
	if quote != 0 {
		return nil, errors.New("a quotation mark is not closed")
	}
	if begun {
		words = append(words, word.String())
	}
	if len(words) == 0 || words[0] == "" {
		return nil, errors.New("it names no program")
	}
	return words, nil
}
