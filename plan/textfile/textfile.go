// Package textfile reads the text files that a weaver writes by hand, the file of things at hand and the
// settings, in the ways in which editors keep them: UTF-8 with a mark in front or without, UTF-16, any ends
// of lines, tabs, and remarks behind a line.
package textfile

import (
	"fmt"
	"iter"
	"strings"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"

	"millside/plan/measure"
)

// Decode makes text of a file's bytes, with line feeds at the ends of lines. UTF-16 is told by the mark at
// its beginning, as editors write it. The error is a [*measure.FieldError] that says what would do.
func Decode(data string) (string, error) {
	wrong := func(what string) error {
		return &measure.FieldError{Field: "text", Value: what, Want: "text that an editor saves as UTF-8 or as UTF-16"}
	}
	switch {
	case strings.HasPrefix(data, "\xFF\xFE"), strings.HasPrefix(data, "\xFE\xFF"):
		text, ok := fromUTF16(data[2:], data[0] == 0xFE)
		if !ok {
			return "", wrong("broken UTF-16")
		}
		data = text
	case strings.ContainsRune(data, 0):
		return "", wrong("bytes of 0, as UTF-16 without its mark has")
	}
	data = strings.TrimPrefix(data, "\uFEFF")
	return strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(data), nil
}

// fromUTF16 decodes UTF-16 without its mark; ok is false if it is cut short or a half of a pair stands alone.
func fromUTF16(data string, bigEndian bool) (text string, ok bool) {
	if len(data)%2 != 0 {
		return "", false
	}
	units := make([]uint16, len(data)/2)
	for i := range units {
		low, high := data[2*i], data[2*i+1]
		if bigEndian {
			low, high = high, low
		}
		units[i] = uint16(high)<<8 | uint16(low)
	}
	text = string(utf16.Decode(units))
	return text, !strings.ContainsRune(text, utf8.RuneError)
}

// Lines goes through the lines that say something, each with its number from 1, as [Said] gives them. A remark
// begins with # at the start of a line, or with # that stands between blanks; so a # at the very end, such as
// the key of that name, is none.
func Lines(text string) iter.Seq2[int, string] {
	return func(yield func(int, string) bool) {
		number := 0
		for line := range strings.SplitSeq(text, "\n") {
			number++
			if line = Said(line); line != "" && !yield(number, line) {
				return
			}
		}
	}
}

// Said is what a line says: without its remark, with blanks for tabs, and without blanks around. It is "" for a
// line that says nothing.
func Said(line string) string {
	line = strings.TrimSpace(strings.ReplaceAll(line, "\t", " "))
	if strings.HasPrefix(line, "#") {
		return ""
	}
	if at := strings.Index(line, " # "); at >= 0 {
		line = strings.TrimSpace(line[:at])
	}
	return line
}

// Cut parts what a line is about from what it says, at the first colon, or at the first = where there is no
// colon.
func Cut(line string) (about, says string, found bool) {
	if about, says, found = strings.Cut(line, ":"); !found {
		about, says, found = strings.Cut(line, "=")
	}
	return strings.TrimSpace(about), strings.TrimSpace(says), found
}

// CheckLine refuses a line that is longer than so many bytes, or holds what can't be printed.
func CheckLine(line string, most int) error {
	if len(line) > most {
		return &measure.FieldError{Value: measure.Shortened(line),
			Want: fmt.Sprintf("a line of at most %d bytes", most)}
	}
	if !utf8.ValidString(line) || strings.ContainsFunc(line, func(r rune) bool { return !unicode.IsPrint(r) }) {
		return &measure.FieldError{Value: measure.Shortened(line), Want: "plain text without control characters"}
	}
	return nil
}

// Column is where a value stands in a line as it was written, counted in characters from 1; 0 where it doesn't.
// It is looked for behind the name of its field, if that is there; what isn't found there, before it too. A value
// that is left out or written otherwise has the column of its field.
func Column(line, field, value string) int {
	line = strings.ReplaceAll(line, "\t", " ")
	value, _ = strings.CutSuffix(value, shortened)
	from := max(strings.Index(strings.ToLower(line), strings.ToLower(field)), 0)
	at := strings.Index(line[from:], value)
	switch {
	case value != "" && at >= 0:
		at += from
	case value != "" && strings.Contains(line, value):
		at = strings.Index(line, value)
	case field != "" && from > 0:
		at = from
	default:
		return 0
	}
	return utf8.RuneCountInString(line[:at]) + 1
}

// shortened is what [measure.Shortened] puts behind a value that is too long to be shown.
const shortened = " ..."

// RawLine is a line as it was written, counted from 1; "" beyond the last.
func RawLine(text string, number int) string {
	for line := range strings.SplitSeq(text, "\n") {
		if number--; number == 0 {
			return line
		}
	}
	return ""
}

// Place names a place in a text: "line 3, column 12", or the line only where the column is 0.
func Place(line, column int) string {
	if column == 0 {
		return fmt.Sprintf("line %d", line)
	}
	return fmt.Sprintf("line %d, column %d", line, column)
}

// Renew writes a text anew that a person may have written in: it keeps each line for whose words keep holds, and
// every remark, and puts what is added behind them. The words are those of [Said].
func Renew(text string, keep func(words string) bool, added []string) string {
	var b strings.Builder
	for line := range strings.Lines(text) {
		if words := Said(line); words == "" || keep(words) {
			b.WriteString(strings.TrimRight(line, "\n") + "\n")
		}
	}
	for _, line := range added {
		b.WriteString(line + "\n")
	}
	return b.String()
}
