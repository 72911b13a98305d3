package stripe

import (
	"errors"
	"strings"
)

// mend puts a text in the place of some bytes of the notation.
type mend struct {
	from, to int
	text     string
}

// A text is mended while it is typed, so only one that a person would look through, and not without end.
const (
	longestMended = 4000
	mostMends     = 200
)

// mended mends a text, and what is found behind the first place too, until it can be read. It is "" and 0
// where something can't be mended.
func mended(text string, m *mend) (string, int) {
	if len(text) > longestMended {
		return "", 0
	}
	for range mostMends {
		if m == nil {
			return "", 0
		}
		text = text[:m.from] + m.text + text[m.to:]
		order, err := parse(text)
		var wrong *TextError
		if !errors.As(err, &wrong) {
			return strings.TrimSpace(text), order.Size()
		}
		m = wrong.mend
	}
	return "", 0
}

const sayBracket = "say before it what to do with the bracket: 3 times, mirror, point or back"

// beginsPart says whether a token begins a stripe or a bracket.
func beginsPart(t token) bool {
	return t.kind == number || t.kind == quoted || t.is("mirror") || t.is("point") || t.is("back") ||
		t.kind == word && !isReserved(t)
}

// endsPart says whether a part may end before a token.
func endsPart(t token) bool {
	return t.kind == endOfText || t.newLine || t.is(",") || t.is(")") || t.is("where")
}

// unparted is the error where a part, which began at a token, is followed by something other than a comma.
func (p *parser) unparted(start token, part Part) error {
	t := p.tok
	comma := &mend{p.last, t.offset, ", "}
	switch {
	case t.is("("):
		return p.beforeBracket(start, part)
	case t.kind == number && start.kind != number && part.Kind == Stripe:
		return p.mendAt(t, sayBefore, p.numbersFirst(start))
	case t.kind == number:
		if !beginsPart(p.after(t)) || p.after(t).newLine {
			return p.errorAt(t, "put a comma before it and its colour behind it, or take it out")
		}
		return p.mendAt(t, "put a comma before it", comma)
	case t.is("+") || t.is(";") || t.is("&") || t.is(".") || t.is("|"):
		switch next := p.after(t); {
		case beginsPart(next):
			return p.mendAt(t, "put a comma in its place", &mend{p.last, next.offset, ", "})
		case endsPart(next):
			return p.mendAt(t, "take it out", p.leftOut(t))
		}
	case beginsPart(t):
		return p.mendAt(t, "put a comma before it", comma)
	case t.is("times"):
		return p.errorAt(t, sayTimes)
	}
	return p.errorAt(t, "put a comma between two stripes, and a name with other signs than letters in quotes")
}

// beforeBracket is the error where words stand before a bracket that don't say what to do with it: a slip
// of one of the notation's own words, or none at all.
func (p *parser) beforeBracket(start token, part Part) error {
	bracket := p.tok
	own := start
	if start.kind == number {
		own = p.after(start)
	}
	for next := p.after(own); next.kind == word && next.offset < bracket.offset; next = p.after(own) {
		own = next
	}
	instead := meant(own.text)
	counted := instead == "times" || instead == "balanced"
	if part.Kind != Stripe || own.kind != word || instead == "" || counted != (start.kind == number) {
		return p.mendAt(bracket, sayBracket, p.timesBehind(bracket))
	}
	return p.mendAt(own, "write "+instead, &mend{own.offset, own.end(), instead})
}

// timesBehind mends a bracket that has its number of times behind it: "(4 red) x 3".
func (p *parser) timesBehind(open token) *mend {
	depth, t := 0, open
	for ; t.kind != endOfText; t = p.after(t) {
		if t.is("(") {
			depth++
		}
		if t.is(")") {
			if depth--; depth == 0 {
				break
			}
		}
	}
	if t.kind == endOfText {
		return nil
	}
	inside := p.text[open.offset:t.end()]
	n := p.after(t)
	if n.is("x") || n.is("×") || n.is("*") {
		n = p.after(n)
	}
	if n.kind != number {
		return nil
	}
	end := n
	if times := p.after(n); times.is("times") || times.is("x") || times.is("×") {
		end = times
	}
	if !endsPart(p.after(end)) {
		return nil
	}
	return &mend{open.offset, end.end(), n.text + " times " + inside}
}

// bracketRound puts the one stripe that a bracket lacks round into it: "3 times red".
func (p *parser) bracketRound(start token) *mend {
	if !beginsPart(start) || start.newLine {
		return nil
	}
	end := start
	for next := p.after(end); !endsPart(next); next = p.after(end) {
		if next.is("(") {
			return nil
		}
		end = next
	}
	if after := p.after(end); after.is(",") || after.newLine && after.kind != endOfText {
		return nil // then it isn't known how much of the list is meant
	}
	return &mend{start.offset, end.end(), "(" + p.text[start.offset:end.end()] + ")"}
}

// numbersFirst mends names that stand before their numbers, up to the next comma: "red 4 blue 2".
func (p *parser) numbersFirst(start token) *mend {
	var list []string
	t := start
	for {
		var words []string
		for t.kind == word && !isReserved(t) || t.kind == quoted {
			words = append(words, t.text)
			t = p.after(t)
		}
		if len(words) == 0 || t.kind != number {
			return nil
		}
		list = append(list, t.text+" "+strings.Join(words, " "))
		end := t.end()
		if t = p.after(t); endsPart(t) {
			return &mend{start.offset, end, strings.Join(list, ", ")}
		}
	}
}

// nameless mends a stripe that has something other than a name behind its number: "4 x (...)", "4: red".
func (p *parser) nameless(t token) *mend {
	next := p.after(t)
	switch {
	case t.is("("):
		return &mend{p.last, t.offset, " times "}
	case (t.is("×") || t.is("*")) && next.is("("):
		return &mend{p.last, next.offset, " times "}
	case (t.is("×") || t.is("*") || t.is(":") || t.is("-") || t.is("=")) && (next.kind == word || next.kind == quoted):
		return &mend{p.last, next.offset, " "}
	case t.kind == number:
		return p.figuresInName(t)
	}
	return nil
}

// unlikely asks about a word of a stripe that is no word for a colour. The stripe began at a token, its
// name at another, and ends before the one that is to be read.
func (p *parser) unlikely(start, first token) error {
	if first.kind == quoted {
		return nil
	}
	for t := first; t.offset < p.tok.offset && t.kind == word; t = p.after(t) {
		ask := oddWord(t)
		if ask == "" {
			continue
		}
		name := p.text[first.offset:p.last]
		if letterThenFigure(fold(t.text)) {
			name = t.text
		}
		several := p.last-first.offset > len(t.text) && !p.tok.is("(") && !p.after(t).is("times")
		if several && badName(name) == "" || letterThenFigure(fold(t.text)) {
			ask += orQuotes + quote(name)
		}
		return p.mendAt(t, ask, p.withoutOdd(start, first, t))
	}
	return nil
}

// withoutOdd mends a stripe with an odd word in it.
func (p *parser) withoutOdd(start, first, t token) *mend {
	counted, leads, next := start.kind == number, t.offset == first.offset, p.after(t)
	before := start.end() // where the token before t ends
	for at := first; at.offset < t.offset; at = p.after(at) {
		before = at.end()
	}
	if leads && !counted {
		before = t.offset
	}
	out := &mend{before, t.end(), ""} // the word is left out
	switch ask := oddWord(t); {
	case ask == sayColour:
		switch {
		case leads && !counted:
			return &mend{t.offset, next.offset, ""}
		case leads || next.kind != word || next.newLine:
			return out
		}
	case ask == sayComma && leads && !counted && next.kind == number:
		return &mend{t.offset, next.offset, ""}
	case ask == sayComma && next.kind == number:
		return &mend{before, next.offset, ", "}
	case ask == sayComma && endsPart(next):
		return out
	case ask == sayTimes && counted && leads && next.is("("):
		return &mend{before, t.end(), " times"}
	case ask == sayTimes && counted && leads && next.kind == word && !isReserved(next) && oddWord(next) == "":
		return out
	case ask == sayRepeat && leads && !counted && next.kind == number:
		return p.repeatTimes(t, next)
	case leads && !counted && figures(t.text) != "":
		return &mend{t.offset, t.end(), figures(t.text)}
	case ask == sayBefore:
		return p.figuresApart(start, first, t, before)
	}
	return nil
}

// repeatTimes mends "repeat 3 times (" and "repeat 3 (".
func (p *parser) repeatTimes(t, n token) *mend {
	switch next := p.after(n); {
	case next.is("times"), next.is("x"):
		return &mend{t.offset, n.offset, ""}
	case next.is("("):
		return &mend{t.offset, n.end(), n.text + " times"}
	}
	return nil
}

// figuresApart mends words of letters and figures in turn: "K4 R24" is "4 K, 24 R".
func (p *parser) figuresApart(start, first, t token, before int) *mend {
	leads := t.offset == first.offset
	list, ok := stripesIn(t.text, leads && start.kind == number)
	if !ok {
		return nil
	}
	end := t.end()
	for next := p.after(t); next.kind == word && !next.newLine; next = p.after(next) { // all of a row at once
		more, ok := stripesIn(next.text, false)
		if !ok {
			break
		}
		list, end = list+", "+more, next.end()
	}
	if leads {
		return &mend{t.offset, end, list}
	}
	return &mend{before, end, ", " + list}
}
