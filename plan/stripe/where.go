package stripe

import "strconv"

// where reads the shades at the end of the text, if there are any.
func (p *parser) where() error {
	if p.tok.kind == endOfText {
		return nil
	}
	p.next()
	for {
		if err := p.look(); err != nil {
			return err
		}
		parted := p.tok.newLine
		if p.tok.is(",") {
			p.next()
			parted = true
		}
		if p.tok.kind == endOfText {
			return nil
		}
		if !parted {
			return p.mendAt(p.tok, "put a comma before it", &mend{p.last, p.tok.offset, ", "})
		}
	}
}

// look reads how one colour looks: "red is #b03a2e".
func (p *parser) look() error {
	start := p.tok
	name, err := p.name("write a colour's name, then how it looks: red is #b03a2e")
	if err != nil {
		return err
	}
	n, ok := p.number[fold(name)]
	if !ok {
		return p.errorAt(start, "name a colour that the stripes use")
	}
	if p.colours[n-1].Known {
		return p.errorAt(start, "say once how a colour looks")
	}
	if !p.tok.is("is") {
		return p.errorAt(p.tok, "write: is")
	}
	p.next()
	if p.colours[n-1].Shade, ok = p.shade(); !ok {
		return p.errorAt(p.tok, "write # and six figures or letters a to f, such as #b03a2e, or a known name, such "+
			"as navy")
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
	end := p.tok
	for next := p.after(end); end.kind == word && next.kind == word && !next.newLine; next = p.after(end) {
		end = next
	}
	if end.kind != word {
		return Shade{}, false
	}
	s, ok := keyword(p.text[p.tok.offset:end.end()])
	if ok {
		p.tok = end
		p.next()
	}
	return s, ok
}

func parseShade(t token) (Shade, bool) {
	if t.kind != shade || len(t.text) != 7 {
		return Shade{}, false
	}
	v, err := strconv.ParseUint(t.text[1:], 16, 32)
	return Shade{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v)}, err == nil
}
