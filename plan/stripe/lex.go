package stripe

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// kindOfToken tells the pieces of the notation apart.
type kindOfToken uint8

const (
	endOfText kindOfToken = iota
	number                // digits
	word                  // a letter, then letters, digits, marks, hyphens and apostrophes
	shade                 // a hash sign and what follows it
	sign                  // any one other character
)

// token is one piece of the notation.
type token struct {
	kind   kindOfToken
	text   string
	offset int // of its first byte
	// newLine says that a line was broken between the token before and this one.
	newLine bool
}

// is says whether the token is the given sign or reserved word.
func (t token) is(text string) bool {
	return t.kind == sign && t.text == text || t.kind == word && fold(t.text) == text
}

// lex cuts the token that begins at or after an offset.
func lex(text string, offset int) token {
	var t token
	for offset < len(text) {
		r, n := utf8.DecodeRuneInString(text[offset:])
		if !unicode.IsSpace(r) {
			break
		}
		t.newLine = t.newLine || r == '\n' || r == '\r'
		offset += n
	}
	t.offset = offset
	rest := text[offset:]
	r, n := utf8.DecodeRuneInString(rest)
	switch {
	case rest == "":
		return t
	case r >= '0' && r <= '9':
		t.kind, n = number, span(rest, func(r rune) bool { return r >= '0' && r <= '9' })
	case unicode.IsLetter(r):
		t.kind, n = word, span(rest, inWord)
	case r == '#':
		t.kind, n = shade, 1+span(rest[1:], inWord)
	default:
		t.kind = sign
	}
	t.text = rest[:n]
	return t
}

// inWord says whether a character may stand in a word after its first letter.
func inWord(r rune) bool {
	return unicode.IsLetter(r) || unicode.IsMark(r) || unicode.IsDigit(r) || r == '-' || r == '\''
}

// span is how many bytes at the front of s are of one sort.
func span(s string, sort func(rune) bool) int {
	if n := strings.IndexFunc(s, func(r rune) bool { return !sort(r) }); n >= 0 {
		return n
	}
	return len(s)
}

// reserved lists the words that can't be part of a colour's name.
var reserved = []string{"times", "balanced", "mirror", "point", "back", "where", "is"}

func isReserved(t token) bool {
	for _, r := range reserved {
		if t.is(r) {
			return true
		}
	}
	return false
}

// badName says what would do instead of a name that isn't one, or "" if it is one.
func badName(name string) string {
	if utf8.RuneCountInString(name) > maxName {
		return "at most 40 characters"
	}
	words, at := 0, 0
	for {
		t := lex(name, at)
		if t.kind == endOfText {
			break
		}
		if t.kind != word || isReserved(t) || t.newLine {
			return "words that begin with a letter, none of them " + strings.Join(reserved, ", ")
		}
		if words++; words > 1 && name[at:t.offset] != " " {
			return "one space between words"
		}
		at = t.offset + len(t.text)
	}
	if words == 0 || at != len(name) || unicode.IsSpace([]rune(name)[0]) {
		return "a word that begins with a letter"
	}
	return ""
}
