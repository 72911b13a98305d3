package stripe

import (
	"slices"
	"strconv"
)

// looks is where the shades stand in the text.
type looks struct {
	before int  // the end of the stripes
	where  int  // the first byte of "where"
	last   int  // the end of the last look that was read, of "where" before the first
	parted bool // a look was read, and something that parts it from the next
}

// where reads the shades at the end of the text, if there are any.
func (p *parser) where() error {
	if p.tok.kind == endOfText {
		return nil
	}
	p.looks = looks{before: p.last, where: p.tok.offset, last: p.tok.end()}
	p.next()
	for {
		if err := p.look(); err != nil {
			return err
		}
		p.looks.parted, p.looks.last = p.tok.newLine, p.last
		if p.tok.is(",") {
			p.next()
			p.looks.parted = true
		}
		if p.tok.kind == endOfText {
			return nil
		}
		if !p.looks.parted {
			return p.unpartedLook()
		}
	}
}

// look reads how one colour looks: "red is #b03a2e".
func (p *parser) look() error {
	start := p.tok
	if start.kind != quoted && (start.kind != word || isReserved(start)) {
		return p.noLook()
	}
	name, err := p.name(sayLook)
	if err != nil {
		return err
	}
	n, ok := p.number[fold(name)]
	if !ok {
		return p.notOfTheOrder(start, name)
	}
	if p.colours[n-1].Known {
		return p.twice(start, p.colours[n-1].Shade)
	}
	if !p.tok.is("is") {
		return p.withoutIs()
	}
	p.next()
	if p.colours[n-1].Shade, ok = p.shade(); !ok {
		return p.noShade()
	}
	p.colours[n-1].Known = true
	return nil
}

// shade reads a shade: six figures, or a colour keyword of SVG 1.1 in one word or several.
func (p *parser) shade() (Shade, bool) {
	if p.tok.kind == shade {
		s, ok := parseShade(p.tok)
		if ok {
			p.next()
		}
		return s, ok
	}
	var list []token
	for t := p.tok; t.kind == word && !isReserved(t) && (len(list) == 0 || !t.newLine); t = p.after(t) {
		list = append(list, t)
	}
	for _, end := range slices.Backward(list) { // the longest name: "sea green", not "sea"
		if s, ok := keyword(p.text[p.tok.offset:end.end()]); ok {
			p.tok = end
			p.next()
			return s, true
		}
	}
	return Shade{}, false
}

func parseShade(t token) (Shade, bool) {
	if t.kind != shade || len(t.text) != 7 {
		return Shade{}, false
	}
	v, err := strconv.ParseUint(t.text[1:], 16, 32)
	return Shade{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v)}, err == nil
}
