package stripe

// Span is a piece of the notation that lays ends of one colour: "4 red".
type Span struct {
	// From and To are its bytes, from 0, To behind the last.
	From, To int
	// Colour counts from 1.
	Colour int
}

// Spans lists the stripes in a text in their order, and the colours that they count, so that a text can be
// shown in its colours while it is typed. Where the text can't be read further it gives those up to there.
// The shades behind "where" come with those that could be read.
func Spans(text string) ([]Span, []Colour) {
	p := &parser{text: text, number: map[string]int{}}
	_, _ = p.order() // what was read before an error counts too
	return p.spans, p.colours
}
