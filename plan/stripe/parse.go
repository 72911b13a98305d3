package stripe

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"millside/plan/measure"

	"golang.org/x/text/unicode/norm"
)

// Parse reads a stripe order in the notation that the package comment describes. The text is at most
// MaxText bytes, the order at most measure.MaxEnds ends and MaxColours colours, brackets at most
// MaxDepth deep. Every error is a [*TextError] that points at the first place that can't be read, or that
// could be meant in two ways, and shows the text as it is likely to be meant.
func Parse(text string) (Order, error) {
	order, err := parse(text)
	if wrong := (*TextError)(nil); errors.As(err, &wrong) {
		wrong.Try, wrong.TryEnds = mended(text, wrong.mend)
		return Order{}, wrong
	}
	return order, err
}

// parse reads a stripe order; its error isn't mended yet.
func parse(text string) (Order, error) {
	p := &parser{text: text, number: map[string]int{}}
	return p.order()
}

// order reads the whole text.
func (p *parser) order() (Order, error) {
	if len(p.text) > MaxText {
		return Order{}, p.errorAt(token{offset: MaxText}, fmt.Sprintf("write it in at most %d characters", MaxText))
	}
	if !utf8.ValidString(p.text) {
		bad := strings.IndexFunc(p.text, func(r rune) bool { return r == utf8.RuneError })
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
	last    int   // where the token before it ends
	colours []Colour
	names   nameList       // of the colours
	number  map[string]int // a colour's number by its folded name
	spans   []Span         // the stripes that were read
	looks   looks          // the shades behind them
}

func (p *parser) next() {
	p.last = p.tok.end()
	p.tok = lex(p.text, p.last)
}

// after is the token behind another.
func (p *parser) after(t token) token { return lex(p.text, t.end()) }

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
				return nil, p.mendAt(p.tok, "take it out, or open the bracket before it", p.leftOut(p.tok))
			}
			return list, nil
		}
		if !parted {
			return nil, p.unparted(start, part)
		}
	}
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
			return p.stripe(start, n)
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
	case start.kind == quoted || start.kind == word && !isReserved(start):
		return p.stripe(start, 1)
	case start.is("("):
		return Part{}, p.mendAt(start, sayBracket, p.timesBehind(start))
	case start.is("times"):
		return Part{}, p.errorAt(start, sayTimes)
	default:
		return Part{}, p.noPart(start)
	}
}

func (p *parser) word(k Kind, depth int) (Part, error) {
	p.next()
	return p.bracket(Part{Kind: k}, depth)
}

// bracket reads a part's inside.
func (p *parser) bracket(part Part, depth int) (Part, error) {
	if !p.tok.is("(") {
		return Part{}, p.mendAt(p.tok, "open a bracket here: (", p.bracketRound(p.tok))
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
		return Part{}, p.mendAt(p.tok, "close the bracket: )", &mend{p.last, p.last, ")"})
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

// stripe reads the colour of a stripe that begins at a token.
func (p *parser) stripe(start token, count int) (Part, error) {
	at := p.tok
	name, err := p.name("write a colour's name after the number, such as red")
	if err != nil {
		return Part{}, err
	}
	if err := p.unlikely(start, at); err != nil {
		return Part{}, err
	}
	if utf8.RuneCountInString(name) > maxName {
		return Part{}, p.errorAt(at, fmt.Sprintf("give a name of at most %d characters", maxName))
	}
	if n, ok := p.number[fold(name)]; ok {
		p.spans = append(p.spans, Span{start.offset, p.last, n})
		return Part{Kind: Stripe, Count: count, Colour: n}, nil
	}
	if len(p.colours) == MaxColours {
		return Part{}, p.errorAt(at, fmt.Sprintf("use at most %d colours", MaxColours))
	}
	if i := p.names.like(name); i >= 0 && at.kind != quoted {
		was := writtenNames(p.colours)[i]
		found := at
		found.text = p.text[at.offset:p.last]
		want := fmt.Sprintf("write %s, if that is the colour; if it is another one, put it in quotes: %s", was,
			quote(name))
		return Part{}, p.mendAt(found, want, &mend{at.offset, p.last, was})
	}
	p.colours = append(p.colours, Colour{Name: name})
	p.names.add(name)
	n := len(p.colours)
	p.number[fold(name)] = n
	p.spans = append(p.spans, Span{start.offset, p.last, n})
	return Part{Kind: Stripe, Count: count, Colour: n}, nil
}

// name reads a colour's name: one in quotation marks, or words on one line up to anything else.
func (p *parser) name(want string) (string, error) {
	start := p.tok
	var words []string
	if start.kind == quoted {
		words = append(words, start.unquoted())
		p.next()
	} else {
		for p.tok.kind == word && !isReserved(p.tok) && (len(words) == 0 || !p.tok.newLine) {
			words = append(words, p.tok.text)
			p.next()
		}
	}
	name := norm.NFC.String(strings.Join(words, " "))
	if len(words) == 0 {
		if start.kind == sign && strings.ContainsAny(start.text, quotationMarks) {
			return "", p.openQuote(start)
		}
		return "", p.mendAt(start, want, p.nameless(start))
	}
	if start.kind == quoted && badName(name) != "" {
		return "", p.errorAt(start, "put a name in the quotes: "+badName(name))
	}
	return name, nil
}
