package stripe

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"millside/plan/field"
	"millside/plan/measure"

	"golang.org/x/text/unicode/norm"
)

// fold makes names that differ in capitals, or in how an accent is stored, the same.
func fold(name string) string { return strings.ToLower(norm.NFC.String(name)) }

// badName says what would do instead of a name that can't be written at all, "" if it can.
func badName(name string) string {
	switch {
	case name == "":
		return "a name of one word or more"
	case utf8.RuneCountInString(name) > maxName:
		return "at most 40 characters"
	case strings.Join(strings.Fields(name), " ") != name:
		return "a name with one space between words, and none around it"
	case !utf8.ValidString(name) || strings.ContainsFunc(name, unprintable):
		return "characters that can be printed"
	case strings.ContainsAny(name, quotationMarks):
		return "a name without quotation marks in it"
	}
	return ""
}

func unprintable(r rune) bool { return !unicode.IsPrint(r) || r == utf8.RuneError }

// isBare says whether a name can stand without quotation marks: words that begin with a letter, none of
// them one that the notation uses or asks about.
func isBare(name string) bool {
	at := 0
	for {
		t := lex(name, at)
		if t.kind == endOfText {
			return at > 0
		}
		if t.kind != word || isReserved(t) || oddWord(t) != "" {
			return false
		}
		at = t.end()
	}
}

// quote writes a name in quotation marks.
func quote(name string) string { return `"` + name + `"` }

// writtenNames lists the names of colours as the notation writes them: in quotation marks where one would
// be read as something else, or be asked about because it looks like one before it.
func writtenNames(colours []Colour) []string {
	names := make([]string, len(colours))
	var before nameList
	for i, c := range colours {
		names[i] = c.Name
		if !isBare(c.Name) || before.like(c.Name) >= 0 {
			names[i] = quote(c.Name)
		}
		before.add(c.Name)
	}
	return names
}

// nameList is names with their skeletons, which are dear to make anew for each comparison.
type nameList struct {
	names     []string
	skeletons [][]rune
}

func (l *nameList) add(name string) {
	l.names, l.skeletons = append(l.names, name), append(l.skeletons, skeleton(name))
}

// like is the index of a name that looks as if another were a slip of it, -1 if there is none.
func (l *nameList) like(name string) int {
	bare := skeleton(name)
	for i, other := range l.skeletons {
		if alike(bare, other) && (string(bare) == string(other) || !markedApart(name, l.names[i])) {
			return i
		}
	}
	return -1
}

// shortestAlike is the shortest name, in letters, of which another may be a slip: shorter ones are codes,
// such as bk and bl.
const shortestAlike = 4

// alike says whether one of two different names is likely to be a slip of the other, by their skeletons:
// they differ in an accent, a hyphen or a space, or by one letter. Numbers tell colours apart on purpose
// ("blue-2"), and so do two different known names ("tan", "teal"). See also markedApart.
func alike(a, b []rune) bool {
	long, short := max(len(a), len(b)), min(len(a), len(b))
	if long < shortestAlike || long-short > 1 {
		return string(a) == string(b)
	}
	x, y := unlike(a, b)
	if !oneSlip(x, y) || !allLetters(x) || !allLetters(y) {
		return false
	}
	shadeA, knownA := keyword(string(a))
	shadeB, knownB := keyword(string(b))
	return len(x)+len(y) == 0 || !knownA || !knownB || shadeA == shadeB
}

// skeleton is what is left of a name without capitals, accents, hyphens, apostrophes and spaces.
func skeleton(name string) []rune {
	var bare []rune
	for _, r := range norm.NFD.String(strings.ToLower(name)) {
		if !unicode.IsMark(r) && !unicode.IsSpace(r) && r != '-' && r != '\'' {
			bare = append(bare, r)
		}
	}
	return bare
}

// unlike cuts off what two texts begin and end with alike.
func unlike(a, b []rune) (x, y []rune) {
	for len(a) > 0 && len(b) > 0 && a[0] == b[0] {
		a, b = a[1:], b[1:]
	}
	for len(a) > 0 && len(b) > 0 && a[len(a)-1] == b[len(b)-1] {
		a, b = a[:len(a)-1], b[:len(b)-1]
	}
	return a, b
}

// oneSlip says whether what differs is one letter, one letter too many, or two that changed places.
func oneSlip(x, y []rune) bool {
	return len(x) <= 1 && len(y) <= 1 || len(x) == 2 && len(y) == 2 && x[0] == y[1] && x[1] == y[0]
}

func allLetters(rs []rune) bool {
	for _, r := range rs {
		if !unicode.IsLetter(r) {
			return false
		}
	}
	return true
}

// markedApart says whether two names differ only in a word that is a mark, of two letters at most or a
// Roman number:
// "blue a" and "blue b" are two colours on purpose.
func markedApart(a, b string) bool {
	split := func(s string) []string {
		return strings.FieldsFunc(fold(s), func(r rune) bool { return r == ' ' || r == '-' })
	}
	wa, wb := split(a), split(b)
	if len(wa) != len(wb) || len(wa) < 2 {
		return false
	}
	for i := range wa {
		if wa[i] != wb[i] && (!isMark(wa[i]) || !isMark(wb[i])) {
			return false
		}
	}
	return true
}

func isMark(s string) bool { return utf8.RuneCountInString(s) <= 2 || strings.Trim(s, "ivx") == "" }

// CheckName reports why a name can't be that of a colour. The error is a [*measure.FieldError].
func CheckName(name string) error {
	if why := badName(name); why != "" {
		return &measure.FieldError{Field: field.Colour.Name, Value: name, Want: why}
	}
	return nil
}
