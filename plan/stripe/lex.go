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
	quoted                // a name in quotation marks, on one line
	shade                 // a hash sign and what follows it
	sign                  // any one other character
)

// quotationMarks may open and close a name; which of them is which is not looked at, since keyboards and
// telephones put them in as they like.
const quotationMarks = "\"“”„«»"

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

// end is the offset behind the token.
func (t token) end() int { return t.offset + len(t.text) }

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
	case strings.ContainsRune(quotationMarks, r):
		t.kind, n = quotedSpan(rest, n)
	default:
		t.kind = sign
	}
	t.text = rest[:n]
	return t
}

// quotedSpan is how many bytes a name in quotation marks takes, the marks included; one that isn't closed
// on its line is a sign by itself.
func quotedSpan(s string, first int) (kindOfToken, int) {
	for i, r := range s[first:] {
		switch {
		case r == '\n' || r == '\r':
			return sign, first
		case strings.ContainsRune(quotationMarks, r):
			return quoted, first + i + utf8.RuneLen(r)
		}
	}
	return sign, first
}

// unquoted is the name in a quoted token, its spaces single.
func (t token) unquoted() string {
	inside := strings.Trim(t.text, quotationMarks)
	return strings.Join(strings.Fields(inside), " ")
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

// reserved lists the words that the notation itself uses.
var reserved = []string{"times", "balanced", "mirror", "point", "back", "where", "is"}

func isReserved(t token) bool {
	for _, r := range reserved {
		if t.is(r) {
			return true
		}
	}
	return false
}
