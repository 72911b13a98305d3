package main

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// The two joiners that some scripts need between letters; they are format marks that do no harm.
const (
	zeroWidthNonJoiner = '\u200C'
	zeroWidthJoiner    = '\u200D'
)

// clean takes out of a text whatever could act on a terminal instead of being read: control characters,
// marks that turn the direction of writing, separators of lines and paragraphs. Bytes that are no text
// become the replacement character. Names that were typed or come from a record go through here before
// they are shown.
func clean(s string) string {
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

// textWidth is the width that text is broken to: what a terminal has at least.
const textWidth = 80

// wrap breaks a text at its spaces so that with the indent no line is over textWidth; the first line is
// indented by the caller. A word that is longer stands alone.
func wrap(text string, indent int) string {
	var b strings.Builder
	column := indent
	for i, word := range strings.Fields(text) {
		n := utf8.RuneCountInString(word)
		switch {
		case i == 0:
		case column+1+n > textWidth:
			b.WriteByte('\n')
			b.WriteString(strings.Repeat(" ", indent))
			column = indent
		default:
			b.WriteByte(' ')
			column++
		}
		b.WriteString(word)
		column += n
	}
	return b.String()
}
