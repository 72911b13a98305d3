package loom

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"millside/plan/measure"
)

const threadingWants = "the shaft of each end from end 1 on, such as 24 times (1, 2, 3, 4), 1, " +
	"or 1-2-3-4; 1+3 for two shafts, 0 for none"

// deepestThreading is how many brackets may stand in each other.
const deepestThreading = 8

// ParseThreading reads a threading as [Threading.String] writes it. The error is a [*measure.FieldError]
// without a field.
func ParseThreading(text string) (Threading, error) {
	p := threadingParser{words: threadingWords(text)}
	t, ok := p.list(0)
	if !ok || len(p.words) > 0 || len(t) == 0 {
		found := text
		if len(p.words) > 0 {
			found = strings.Join(p.words[:min(3, len(p.words))], " ")
		}
		return nil, &measure.FieldError{Value: found, Want: threadingWants}
	}
	return t, t.Check()
}

// threadingWords cuts a threading into numbers, words and signs.
func threadingWords(text string) []string {
	for _, sign := range []string{"(", ")", ","} {
		text = strings.ReplaceAll(text, sign, " "+sign+" ")
	}
	var words []string
	for _, w := range strings.Fields(strings.ToLower(text)) {
		words = append(words, dashed(w)...)
	}
	return words
}

// dashed cuts "1-2-3-4" into its shafts. "1-4" stays as it is, and so is refused: it may be two ends or four.
func dashed(word string) []string {
	shafts := strings.Split(word, "-")
	if len(shafts) < 3 {
		return []string{word}
	}
	words := []string{shafts[0]}
	for _, s := range shafts[1:] {
		words = append(words, ",", s)
	}
	return words
}

type threadingParser struct{ words []string }

// take takes the next word if it is the given one.
func (p *threadingParser) take(word string) bool {
	if len(p.words) == 0 || p.words[0] != word {
		return false
	}
	p.words = p.words[1:]
	return true
}

// list reads ends and brackets with commas between them, up to a closing bracket or the end.
func (p *threadingParser) list(depth int) (Threading, bool) {
	var t Threading
	for {
		part, ok := p.part(depth)
		if !ok || len(t)+len(part) > measure.MaxEnds {
			return nil, false
		}
		t = append(t, part...)
		if !p.take(",") {
			return t, true
		}
	}
}

func (p *threadingParser) part(depth int) (Threading, bool) {
	if len(p.words) < 1 {
		return nil, false
	}
	if len(p.words) > 2 && p.words[1] == "times" {
		return p.repeat(depth)
	}
	var s Shafts
	for one := range strings.SplitSeq(p.words[0], "+") {
		n, err := strconv.Atoi(one)
		if err != nil || n < 0 || n > MaxShafts || n == 0 && p.words[0] != one || slices.Contains(s, n) {
			return nil, false
		}
		if n > 0 {
			s = append(s, n)
		}
	}
	p.words = p.words[1:]
	return Threading{s}, true
}

// repeat reads "24 times (1, 2, 3, 4)".
func (p *threadingParser) repeat(depth int) (Threading, bool) {
	times, err := strconv.Atoi(p.words[0])
	if err != nil || times < 1 || times > measure.MaxEnds || p.words[2] != "(" || depth == deepestThreading {
		return nil, false
	}
	p.words = p.words[3:]
	inside, ok := p.list(depth + 1)
	if !ok || len(inside)*times > measure.MaxEnds || !p.take(")") {
		return nil, false
	}
	var t Threading
	for range times {
		t = append(t, inside...)
	}
	return t, true
}

// ParseHeddles reads how many heddles each shaft has, shaft 1 first, with commas between them; or all
// alike, "100 on 4 shafts". The error is a [*measure.FieldError] without a field.
func ParseHeddles(text string) ([]int, error) {
	wrong := &measure.FieldError{Value: text,
		Want: "the heddles on each shaft, such as 100, 100, 80, 80 or 100 on 4 shafts"}
	var n, shafts int
	if k, err := fmt.Sscanf(text, "%d on %d shafts", &n, &shafts); err == nil && k == 2 {
		if n < 0 || n > measure.MaxEnds || shafts < 1 || shafts > MaxShafts {
			return nil, wrong
		}
		return slices.Repeat([]int{n}, shafts), nil
	}
	var list []int
	for one := range strings.SplitSeq(text, ",") {
		n, err := strconv.Atoi(strings.TrimSpace(one))
		if err != nil || n < 0 || n > measure.MaxEnds || len(list) == MaxShafts {
			return nil, wrong
		}
		list = append(list, n)
	}
	return list, nil
}

// HeddlesText writes the heddles of each shaft as [ParseHeddles] reads them.
func HeddlesText(list []int) string {
	var texts []string
	for _, n := range list {
		texts = append(texts, strconv.Itoa(n))
	}
	return strings.Join(texts, ", ")
}
