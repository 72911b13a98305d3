package stripe

import (
	"strconv"
	"strings"
	"unicode"
)

// numberWords are numbers in words. They are no colours.
var numberWords = map[string]int{
	"zero": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
	"ten":    10,
	"eleven": 11, "twelve": 12, "dozen": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16,
	"seventeen": 17,
	"eighteen":  18, "nineteen": 19, "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70,
	"eighty": 80, "ninety": 90, "hundred": 100,
}

// timesWords say how often.
var timesWords = map[string]int{"once": 1, "twice": 2, "thrice": 3}

// windingWords speak of the winding and of the list itself, not of a colour. Each has what is asked about
// it.
var windingWords = map[string]string{
	"end": sayColour, "ends": sayColour, "thread": sayColour, "threads": sayColour,
	"strand": sayColour, "strands": sayColour,
	"of": sayColour, "each": sayColour, "x": sayTimes, "by": sayTimes, "time": sayTimes,
	"and": sayComma, "then": sayComma, "plus": sayComma, "next": sayComma, "followed": sayComma,
	"repeat": sayRepeat, "repeats": sayRepeat, "repeated": sayRepeat, "rep": sayRepeat,
	"alternate": sayRepeat, "alternately": sayRepeat, "alternating": sayRepeat, "again": sayRepeat, "etc": sayRepeat,
	"etcetera": sayRepeat, "until": sayRepeat, "continue": sayRepeat,
	"stripe": sayWidth, "stripes": sayWidth,
}

// What is asked about a word.
const (
	sayColour = "leave it out: write the number and the colour only, such as 4 red"
	sayWidth  = "say how many ends wide each stripe is, such as 4 red"
	sayTimes  = "write how often, and what in brackets: 3 times (4 red, 2 white)"
	sayComma  = "put a comma between two stripes"
	sayRepeat = "say what is repeated and how often: 3 times (4 red, 2 white)"
	sayNumber = "write the number in figures"
	sayBefore = "write the number before the colour, with a space between"
	orQuotes  = "; if it belongs to the name, put the name in quotes: "
)

// oddWord is what is asked about a word that is unlikely to be a colour's name, "" if there is nothing to ask.
func oddWord(t token) string {
	name := fold(t.text)
	switch {
	case windingWords[name] != "":
		return windingWords[name]
	case isNumberWord(name):
		return sayNumber
	case timesWords[name] > 0:
		return sayTimes
	case letterThenFigure(name):
		return sayBefore
	}
	return ""
}

// isNumberWord says whether a word is a number: "four", "twenty-four".
func isNumberWord(name string) bool {
	_, ok := wordValue(name)
	return ok
}

// wordValue reads a number word.
func wordValue(name string) (int, bool) {
	if n, ok := numberWords[name]; ok {
		return n, true
	}
	tens, units, ok := strings.Cut(name, "-")
	t, u := numberWords[tens], numberWords[units]
	if ok && t >= 20 && t < 100 && u >= 1 && u <= 9 {
		return t + u, true
	}
	return 0, false
}

// letterThenFigure says whether a figure follows a letter without anything between: "K4".
func letterThenFigure(name string) bool {
	var before rune
	for _, r := range name {
		if unicode.IsDigit(r) && (unicode.IsLetter(before) || unicode.IsMark(before)) {
			return true
		}
		before = r
	}
	return false
}

// stripesIn reads a word that is letters and figures in turn as stripes, the number before the letters:
// "K4R24" is "4 K, 24 R". With counted a number stands before the word already, so "K24R" is "K, 24 R".
func stripesIn(text string, counted bool) (string, bool) {
	var pieces []string
	digits := false
	for i, r := range text {
		if !unicode.IsLetter(r) && (r < '0' || r > '9') {
			return "", false
		}
		if d := r >= '0' && r <= '9'; i == 0 || d != digits {
			pieces, digits = append(pieces, ""), d
		}
		pieces[len(pieces)-1] += string(r)
	}
	var list []string
	if counted {
		list, pieces = pieces[:1], pieces[1:]
	}
	if len(pieces)%2 != 0 || len(pieces) == 0 {
		return "", false
	}
	for i := 0; i < len(pieces); i += 2 {
		count, name := pieces[i], pieces[i+1]
		if !counted {
			count, name = name, count
		}
		list = append(list, count+" "+name)
	}
	return strings.Join(list, ", "), true
}

// meantFor are words that are used for the notation's own, beside slips of one letter.
var meantFor = map[string]string{
	"mirrored": "mirror", "mirrors": "mirror", "reflect": "mirror",
	"backwards": "back", "backward": "back", "reverse": "back", "reversed": "back",
	"pointed": "point", "balance": "balanced", "time": "times", "x": "times",
}

// meant is the notation's own word that a word before a bracket is meant for, "" if it isn't known.
func meant(text string) string {
	name := fold(text)
	if own := meantFor[name]; own != "" {
		return own
	}
	for _, own := range []string{"times", "balanced", "mirror", "point", "back"} {
		if x, y := unlike([]rune(name), []rune(own)); oneSlip(x, y) {
			return own
		}
	}
	return ""
}

// figures writes the number of a number word, or of how often, "" if it is neither.
func figures(text string) string {
	name := fold(text)
	if n, ok := wordValue(name); ok {
		return strconv.Itoa(n)
	}
	if n := timesWords[name]; n > 0 {
		return strconv.Itoa(n) + " times"
	}
	return ""
}
