package draft

import (
	"fmt"
	"strconv"
	"unicode/utf8"
)

// maxWarnings is how many warnings a draft gives before the rest is only counted.
const maxWarnings = 100

// maxQuoted is how much of the draft's text a warning shows, in bytes.
const maxQuoted = 40

// Warning is something in a draft that could not be read as it stands.
type Warning struct {
	// Section is the section's name in capitals, "" before the first one and for the draft as a whole.
	Section string
	// Line counts from 1; it is 0 where something is missing, and for the draft as a whole.
	Line int
	// Text says what is wrong and what was done.
	Text string
}

// String names the section and the line.
func (w Warning) String() string {
	if w.Section == "" && w.Line == 0 {
		return w.Text
	}
	where := "before the first section"
	if w.Section != "" {
		where = "[" + w.Section + "]"
	}
	if w.Line > 0 {
		where += ", line " + strconv.Itoa(w.Line)
	}
	return where + ": " + w.Text
}

// warnings collects warnings.
type warnings struct {
	list  []Warning
	again map[[2]string]int // where in list a warning is that stands for several
	more  int               // how many there was no room for
}

func (w *warnings) add(section string, line int, format string, args ...any) {
	if len(w.list) == maxWarnings {
		w.more++
		return
	}
	w.list = append(w.list, Warning{Section: section, Line: line, Text: fmt.Sprintf(format, args...)})
}

// addOnce adds a warning that would otherwise stand at very many lines: at the first one only.
func (w *warnings) addOnce(section string, line int, text string) {
	key := [2]string{section, text}
	if _, ok := w.again[key]; ok {
		w.again[key]++
		return
	}
	if w.again == nil {
		w.again = map[[2]string]int{}
	}
	w.again[key] = 1
	w.add(section, line, "%s", text)
}

// all gives the warnings, each that stands for several with their number.
func (w *warnings) all() []Warning {
	for i, one := range w.list {
		switch n := w.again[[2]string{one.Section, one.Text}]; {
		case n == 2:
			w.list[i].Text += " (so is 1 more line)"
		case n > 2:
			w.list[i].Text = fmt.Sprintf("%s (so are %d more lines)", one.Text, n-1)
		}
	}
	if w.more > 0 {
		w.list = append(w.list, Warning{Text: fmt.Sprintf("%d more warnings are left out", w.more)})
	}
	return w.list
}

// quote shows a piece of the draft, shortened, with nothing in it that a terminal would act on.
func quote(s string) string {
	if len(s) > maxQuoted {
		n := maxQuoted
		for n > 0 && !utf8.RuneStart(s[n]) {
			n--
		}
		s = s[:n] + "..."
	}
	return strconv.Quote(s)
}
