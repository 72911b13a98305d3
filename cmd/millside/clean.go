package main

import (
	"strings"
	"unicode/utf8"

	"millside/plan"
)

// clean is [plan.Clean]. Names that were typed or come from a record go through it before they are shown.
func clean(s string) string { return plan.Clean(s) }

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
