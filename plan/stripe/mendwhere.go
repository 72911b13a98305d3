package stripe

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/image/colornames"
)

const (
	sayLook  = "write a colour's name, then how it looks: red is #b03a2e"
	sayIs    = "write: is, and then how it looks, such as red is #b03a2e"
	sayShade = "write # and six figures or letters a to f, such as #b03a2e, or a known name, such as navy"
	sayMove  = "write all stripes first, and where behind the last one"
)

// fillers are words that stand where "is" is meant.
var fillers = []string{"are", "as", "like", "looks", "look", "in", "to", "means", "equals", "being", "shown", "drawn"}

// noLook is the error where no colour's name begins a look.
func (p *parser) noLook() *TextError {
	t := p.tok
	switch {
	case t.kind == endOfText: // nothing is said behind "where"
		return p.mendAt(t, sayLook, &mend{p.looks.before, t.offset, ""})
	case t.kind == number:
		if m := p.quotedName(t); m != nil {
			return p.mendAt(t, "put a name with other signs than letters in quotes", m)
		}
		if next := p.after(t); p.looks.parted && beginsPart(next) { // stripes go on
			look := p.text[p.looks.where:p.looks.last]
			return p.mendAt(t, sayMove, &mend{p.looks.before, len(p.text), ", " + p.text[t.offset:] + " " + look})
		}
	case t.is(","):
		return p.mendAt(t, sayLook, &mend{p.last, t.end(), ""})
	case len(p.colours) == 1 && (t.is("is") || t.kind == shade):
		name, to := writtenNames(p.colours)[0], t.offset
		if t.kind == shade {
			name += " is"
		}
		return p.mendAt(t, sayLook, &mend{to, to, name + " "})
	}
	return p.errorAt(t, sayLook)
}

// quotedName mends a name with other signs than letters that stands without its quotes, if it is one of the order.
func (p *parser) quotedName(from token) *mend {
	for t := from; t.kind != endOfText && !t.is(","); t = p.after(t) {
		name := strings.Join(strings.Fields(p.text[from.offset:t.end()]), " ")
		if p.number[fold(name)] > 0 {
			return &mend{from.offset, t.end(), quote(name)}
		}
	}
	return nil
}

// notOfTheOrder is the error where a name, which began at a token, is that of no stripe.
func (p *parser) notOfTheOrder(start token, name string) *TextError {
	want := "name a colour that the stripes use: " + shortNames(p.colours)
	names := writtenNames(p.colours)
	if i := p.names.like(name); i >= 0 {
		return p.mendAt(start, want, &mend{start.offset, p.last, names[i]})
	}
	words := strings.Fields(name)
	for n := len(words) - 1; n > 0 && start.kind == word; n-- { // "red as navy", "red navy"
		first := strings.Join(words[:n], " ")
		i := p.number[fold(first)]
		if i == 0 {
			i = p.names.like(first) + 1
		}
		if i == 0 {
			continue
		}
		looks := words[n:]
		for len(looks) > 0 && slices.Contains(fillers, fold(looks[0])) {
			looks = looks[1:]
		}
		switch text := strings.Join(looks, " "); {
		case text == "" && p.tok.kind == shade:
			return p.mendAt(start, sayIs, &mend{start.offset, p.tok.offset, names[i-1] + " is "})
		case text == "" && p.tok.is("is"):
			return p.mendAt(start, sayIs, &mend{start.offset, p.last, names[i-1]})
		case text != "" && (meantShade(text) != "" || knownShade(text)):
			return p.mendAt(start, sayIs, &mend{start.offset, p.last, names[i-1] + " is " + text})
		}
	}
	if i := p.number[fold(strings.Join(words[min(1, len(words)):], " "))]; i > 0 && p.tok.is("is") { // "the red is"
		return p.mendAt(start, want, &mend{start.offset, p.last, names[i-1]})
	}
	return p.errorAt(start, want)
}

// withoutIs is the error where something other than "is" follows a colour's name.
func (p *parser) withoutIs() *TextError {
	t := p.tok
	next := p.after(t)
	switch {
	case t.kind == shade || t.kind == quoted || t.kind == number:
		return p.mendAt(t, sayIs, &mend{p.last, t.offset, " is "})
	case t.is(":") || t.is("=") || t.is("-") || t.is("–") || t.is("—"):
		if next.kind == shade || next.kind == quoted || next.kind == number || next.kind == word && !isReserved(next) {
			return p.mendAt(t, sayIs, &mend{p.last, next.offset, " is "})
		}
	}
	return p.errorAt(t, sayIs)
}

// twice is the error where a colour's look is said again: once is enough where both are the same. The second began
// at a token, behind whatever parts it from the look before.
func (p *parser) twice(start token, before Shade) *TextError {
	const want = "say once how a colour looks, and take out one of the two"
	if p.tok.is("is") {
		p.next()
		if again, ok := p.shade(); ok && again == before {
			return p.mendAt(start, want, &mend{p.looks.last, p.last, ""})
		}
	}
	return p.errorAt(start, want)
}

// noShade is the error where what follows "is" is no shade.
func (p *parser) noShade() *TextError {
	from := p.tok.offset
	if m := decimalShade.FindStringSubmatch(p.text[from:]); m != nil {
		var parts [3]uint64
		for i := range parts {
			parts[i], _ = strconv.ParseUint(m[i+1], 10, 16) // three figures at the most
		}
		if max(parts[0], parts[1], parts[2]) <= 255 {
			text := fmt.Sprintf("#%02x%02x%02x", parts[0], parts[1], parts[2])
			return p.mendAt(p.tok, sayShade, &mend{from, from + len(m[0]), text})
		}
	}
	end := p.tok
	for next := p.after(end); !endsPart(next) && !partsLooks(next); next = p.after(end) {
		end = next
	}
	if end.kind == endOfText {
		return p.errorAt(p.tok, sayShade)
	}
	if text := meantShade(p.text[from:end.end()]); text != "" {
		return p.mendAt(p.tok, sayShade, &mend{from, end.end(), text})
	}
	return p.errorAt(p.tok, sayShade)
}

// unpartedLook is the error where a look is followed by something other than a comma.
func (p *parser) unpartedLook() *TextError {
	t, next := p.tok, p.after(p.tok)
	switch {
	case t.is(")") && next.kind == endOfText:
		return p.mendAt(t, "take it out", &mend{p.last, t.end(), ""})
	case partsLooks(t) || t.is("where"):
		if next.kind == endOfText {
			return p.mendAt(t, "take it out", &mend{p.last, t.end(), ""})
		}
		return p.mendAt(t, "put a comma in its place", &mend{p.last, next.offset, ", "})
	}
	return p.mendAt(t, "put a comma before it", &mend{p.last, t.offset, ", "})
}

// partsLooks says whether a sign or a word stands where a comma parts two looks.
func partsLooks(t token) bool {
	return t.is(";") || t.is("+") || t.is("&") || t.is(".") || t.is("and") || t.is("then") || t.is("plus")
}

var (
	sixFigures   = regexp.MustCompile(`^#? ?([0-9A-Fa-f]{6})$`)
	threeFigures = regexp.MustCompile(`^#([0-9A-Fa-f])([0-9A-Fa-f])([0-9A-Fa-f])$`)
	// decimalShade is a shade in three numbers from 0 to 255.
	decimalShade = regexp.MustCompile(`^(?:rgb)?[ \t]*\(?[ \t]*([0-9]{1,3})[ \t]*,[ \t]*([0-9]{1,3})[ \t]*,[ \t]*` +
		`([0-9]{1,3})[ \t]*\)?`)
)

// meantShade is the shade that a text is likely to mean, as the notation writes it; "" where no one is likelier than
// another: without its # sign, in three figures, in quotation marks, or a known name with a slip of one letter.
func meantShade(text string) string {
	bare := strings.Join(strings.Fields(strings.Trim(text, quotationMarks+"'.; ")), " ")
	if m := sixFigures.FindStringSubmatch(bare); m != nil {
		return "#" + m[1]
	}
	if m := threeFigures.FindStringSubmatch(bare); m != nil {
		return "#" + m[1] + m[1] + m[2] + m[2] + m[3] + m[3]
	}
	if knownShade(bare) && bare != text {
		return bare
	}
	return knownBySlip(bare)
}

// knownShade says whether a text is a known name of a shade.
func knownShade(text string) bool {
	_, ok := keyword(text)
	return ok
}

// knownBySlip is the one known name, or one of those of one shade, that a text is a slip of; "" where there is none.
func knownBySlip(text string) string {
	bare, found := skeleton(text), ""
	if len(bare) < shortestAlike {
		return ""
	}
	for _, name := range colornames.Names {
		x, y := unlike(bare, []rune(name))
		if !oneSlip(x, y) {
			continue
		}
		if found != "" && colornames.Map[found] != colornames.Map[name] {
			return ""
		}
		if found == "" {
			found = name
		}
	}
	return found
}
