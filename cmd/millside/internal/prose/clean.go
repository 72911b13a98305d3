package prose

import (
	"os"
	"strings"

	"millside/plan/measure"

	"github.com/charmbracelet/x/ansi"
)

// Clean is [measure.Clean]. Names that were typed or come from a record go through it before they are shown.
func Clean(s string) string { return measure.Clean(s) }

// TextWidth is the width that text is broken to: what a terminal has at least.
const TextWidth = 80

// Wrap breaks a text at its spaces so that with the indent no line is over TextWidth; the first line is
// indented by the caller. A word that is longer stands alone. The terminal library's wrapping breaks at hyphens
// too, and so would take an option such as --ends apart.
func Wrap(text string, indent int) string {
	var b strings.Builder
	column := indent
	for i, word := range strings.Fields(text) {
		n := ansi.StringWidth(word)
		switch {
		case i == 0:
		case column+1+n > TextWidth:
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

// MostShown is how many things a line lists before it breaks off.
const MostShown = 12

// Quoted writes a word as it is typed into a shell: in quotation marks if it has blanks or anything else
// that a shell takes for more than itself.
func Quoted(word string) string {
	plain := "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789._-+/:@%,="
	windows := os.PathSeparator == '\\'
	if windows {
		plain += `\`
	}
	switch {
	case word != "" && strings.Trim(word, plain) == "":
		return word
	case !windows && strings.ContainsAny(word, "\"$`\\!"):
		return "'" + strings.ReplaceAll(word, "'", `'\''`) + "'"
	}
	return `"` + word + `"`
}
