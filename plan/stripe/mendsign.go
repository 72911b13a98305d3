package stripe

import "strings"

const sayPart = "write a stripe, such as 4 red, or a bracket, such as 3 times (4 red, 2 blue)"

// leftOut takes a sign out of the text.
func (p *parser) leftOut(t token) *mend { return &mend{p.last, t.end(), ""} }

// noPart is the error where neither a stripe nor a bracket begins.
func (p *parser) noPart(t token) *TextError {
	next := p.after(t)
	switch {
	case t.is(",") && (endsPart(next) || beginsPart(next)): // one comma too many
		return p.mendAt(t, sayPart, p.leftOut(t))
	case t.is("where"):
		return p.errorAt(t, sayMove)
	case isBullet(t) && beginsPart(next):
		return p.mendAt(t, sayPart, &mend{t.offset, next.offset, ""})
	case strings.ContainsAny(t.text, quotationMarks) && t.kind == sign:
		return p.openQuote(t)
	}
	return p.errorAt(t, sayPart)
}

// isBullet says whether a sign is one that lists put before each line.
func isBullet(t token) bool {
	return t.is("-") || t.is("–") || t.is("•") || t.is("*") || t.is("·")
}

// openQuote is the error where a name in quotes isn't closed on its line: it is likely to end before the next comma,
// bracket or end of the line.
func (p *parser) openQuote(t token) *TextError {
	rest := p.text[t.end():]
	if end := strings.IndexAny(rest, ",()\n\r"); end >= 0 {
		rest = rest[:end]
	}
	if name := strings.Join(strings.Fields(rest), " "); name != "" && badName(name) == "" {
		return p.mendAt(t, "close the quotes behind the name", &mend{t.offset, t.end() + len(rest), quote(name)})
	}
	return p.errorAt(t, "close the quotes behind the name")
}

// figuresInName puts a name with a yarn's size in it into quotes: "4 8/2 navy".
func (p *parser) figuresInName(t token) *mend {
	over := p.after(t)
	under := p.after(over)
	if !over.is("/") && !over.is(".") || under.kind != number || under.end() != t.end()+1+len(under.text) {
		return nil
	}
	end := under
	for next := p.after(end); next.kind == word && !isReserved(next) && !next.newLine; next = p.after(end) {
		end = next
	}
	if !endsPart(p.after(end)) || end == under {
		return nil
	}
	return &mend{t.offset, end.end(), quote(p.text[t.offset:end.end()])}
}
