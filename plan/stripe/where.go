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
			return p.errorAt(p.tok, "put a comma before it")
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
	if p.colours[n-1].Shade, ok = parseShade(p.tok); !ok {
		return p.errorAt(p.tok, "write # and six figures or letters a to f, such as #b03a2e")
	}
	p.colours[n-1].Known = true
	p.next()
	return nil
}

func parseShade(t token) (Shade, bool) {
	if t.kind != shade || len(t.text) != 7 {
		return Shade{}, false
	}
	v, err := strconv.ParseUint(t.text[1:], 16, 32)
	return Shade{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v)}, err == nil
}
