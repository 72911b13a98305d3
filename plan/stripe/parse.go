package stripe

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"millside/plan/measure"
)

// TextError says where a stripe order can't be read, and what would do there. It unwraps to a
// [*measure.FieldError] of the field "stripes".
type TextError struct {
	// Offset is the place in the text, in bytes from 0.
	Offset int
	// Line and Column are the same place for a person: both from 1, the column in characters.
	Line, Column int
	// Found is what stands there, "" at the end of the text.
	Found string
	// Want says what would do.
	Want string
}

// Error names the place, what stands there, and what would do.
func (e *TextError) Error() string {
	found := "the end"
	if e.Found != "" {
		found = strconv.Quote(e.Found)
	}
	return fmt.Sprintf("stripes, line %d, column %d: %s won't do; %s", e.Line, e.Column, found, e.Want)
}

// Unwrap gives the same as an error of a field.
func (e *TextError) Unwrap() error {
	return &measure.FieldError{Field: "stripes", Value: e.Found, Want: e.Want}
}

// Parse reads a stripe order in the notation that the package comment describes. The text is at most
// MaxText bytes, the order at most measure.MaxEnds ends and MaxColours colours, brackets at most
// MaxDepth deep. Every error is a [*TextError] that points at the first place that can't be read.
func Parse(text string) (Order, error) {
	p := &parser{text: text, number: map[string]int{}}
	if len(text) > MaxText {
		return Order{}, p.errorAt(token{offset: MaxText}, fmt.Sprintf("write it in at most %d characters", MaxText))
	}
	if !utf8.ValidString(text) {
		bad := strings.IndexFunc(text, func(r rune) bool { return r == utf8.RuneError })
		return Order{}, p.errorAt(token{offset: bad, text: "�"}, "write it in plain letters (UTF-8)")
	}
	p.next()
	parts, err := p.parts(0)
	if err == nil {
		err = p.where()
	}
	if err != nil {
		return Order{}, err
	}
	return Order{Colours: p.colours, Parts: parts}, nil
}

type parser struct {
	text    string
	tok     token // the token that is to be read next
	colours []Colour
	number  map[string]int // a colour's number by its folded name
}

func (p *parser) next() { p.tok = lex(p.text, p.tok.offset+len(p.tok.text)) }

func (p *parser) errorAt(t token, want string) *TextError {
	before := strings.ReplaceAll(p.text[:t.offset], "\r\n", "\n")
	line := strings.LastIndexAny(before, "\n\r") + 1
	return &TextError{
		Offset: t.offset, Found: t.text, Want: want,
		Line:   1 + strings.Count(before, "\n") + strings.Count(before, "\r"),
		Column: 1 + utf8.RuneCountInString(before[line:]),
	}
}

// atEnd says whether a list of parts ends here.
func (p *parser) atEnd() bool {
	return p.tok.kind == endOfText || p.tok.is(")") || p.tok.is("where")
}

// parts reads a list of parts up to a closing bracket, "where" or the end.
func (p *parser) parts(depth int) ([]Part, error) {
	var list []Part
	var size int64
	for {
		start := p.tok
		part, err := p.part(depth)
		if err != nil {
			return nil, err
		}
		list = append(list, part)
		if size += part.size(); size > measure.MaxEnds {
			return nil, p.errorAt(start, fmt.Sprintf("with it there are more than %d ends", measure.MaxEnds))
		}
		parted := p.tok.newLine
		if p.tok.is(",") {
			p.next()
			parted = true
		}
		if p.atEnd() {
			if depth == 0 && p.tok.is(")") {
				return nil, p.errorAt(p.tok, "take it out, or open the bracket before it")
			}
			return list, nil
		}
		if !parted {
			return nil, p.errorAt(p.tok, p.unparted())
		}
	}
}

// unparted says what would do where a part is followed by something other than a comma.
func (p *parser) unparted() string {
	if p.tok.is("(") {
		return "say before it what to do with the bracket: 3 times, mirror, point or back"
	}
	return "put a comma before it"
}

// part reads one part.
func (p *parser) part(depth int) (Part, error) {
	start := p.tok
	switch {
	case start.kind == number:
		n, err := p.count()
		if err != nil {
			return Part{}, err
		}
		if !p.tok.is("times") {
			return p.stripe(n)
		}
		p.next()
		kind := Repeat
		if p.tok.is("balanced") {
			kind = Balanced
			p.next()
		}
		return p.bracket(Part{Kind: kind, Count: n}, depth)
	case start.is("mirror"):
		return p.word(Mirror, depth)
	case start.is("point"):
		return p.word(Point, depth)
	case start.is("back"):
		return p.word(Back, depth)
	case start.kind == word && !isReserved(start):
		return p.stripe(1)
	case start.is("("):
		return Part{}, p.errorAt(start, p.unparted())
	default:
		return Part{}, p.errorAt(start, "write a stripe, such as 4 red, or a bracket, such as 3 times (4 red, 2 blue)")
	}
}

func (p *parser) word(k Kind, depth int) (Part, error) {
	p.next()
	return p.bracket(Part{Kind: k}, depth)
}

// bracket reads a part's inside.
func (p *parser) bracket(part Part, depth int) (Part, error) {
	if !p.tok.is("(") {
		return Part{}, p.errorAt(p.tok, "open a bracket here: (")
	}
	if depth == MaxDepth {
		return Part{}, p.errorAt(p.tok, fmt.Sprintf("put brackets at most %d deep", MaxDepth))
	}
	p.next()
	inside, err := p.parts(depth + 1)
	if err != nil {
		return Part{}, err
	}
	if !p.tok.is(")") {
		return Part{}, p.errorAt(p.tok, "close the bracket: )")
	}
	p.next()
	part.Inside = inside
	return part, nil
}

// count reads a number of ends or times.
func (p *parser) count() (int, error) {
	n, err := strconv.Atoi(p.tok.text)
	if err != nil || n < 1 || n > measure.MaxEnds {
		return 0, p.errorAt(p.tok, fmt.Sprintf("give 1 to %d", measure.MaxEnds))
	}
	p.next()
	return n, nil
}

// stripe reads the colour of a stripe.
func (p *parser) stripe(count int) (Part, error) {
	start := p.tok
	name, err := p.name("write a colour's name after the number, such as red")
	if err != nil {
		return Part{}, err
	}
	n, ok := p.number[fold(name)]
	if !ok {
		if len(p.colours) == MaxColours {
			return Part{}, p.errorAt(start, fmt.Sprintf("use at most %d colours", MaxColours))
		}
		p.colours = append(p.colours, Colour{Name: name})
		n = len(p.colours)
		p.number[fold(name)] = n
	}
	return Part{Kind: Stripe, Count: count, Colour: n}, nil
}

// name reads a colour's name: words on one line up to anything else.
func (p *parser) name(want string) (string, error) {
	start := p.tok
	var words []string
	for p.tok.kind == word && !isReserved(p.tok) && (len(words) == 0 || !p.tok.newLine) {
		words = append(words, p.tok.text)
		p.next()
	}
	name := strings.Join(words, " ")
	if len(words) == 0 {
		return "", p.errorAt(start, want)
	}
	if utf8.RuneCountInString(name) > maxName {
		return "", p.errorAt(start, fmt.Sprintf("give a name of at most %d characters", maxName))
	}
	return name, nil
}
