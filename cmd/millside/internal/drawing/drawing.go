package drawing

import (
	"fmt"
	"strings"
)

// Drawing is a small picture on the HTML sheet. Its measures are whole units of a picture 7,000 wide, so
// that no sum of theirs is rounded twice.
type Drawing struct {
	// Title says what is drawn, for those who don't see it; Caption stands below it.
	Title, Caption string
	W, H           int
	Shapes         []shape
}

const drawingWidth = 7000

// shape is a path, a circle or a text.
type shape struct {
	Kind, Class string
	D           string // of a path
	X, Y, R     int    // of a circle or a text
	Text        string
	Anchor      string // start, middle or end
	Fill        string // a shade, "#" and six hexadecimal digits; empty for that of the class
}

// point is a place in a drawing.
type point struct{ x, y int }

func (d *Drawing) path(class string, points ...point) {
	var b strings.Builder
	for i, p := range points {
		verb := "L"
		if i == 0 {
			verb = "M"
		}
		fmt.Fprintf(&b, "%s%d %d", verb, p.x, p.y)
	}
	d.Shapes = append(d.Shapes, shape{Kind: "path", Class: class, D: b.String()})
}

// box draws a filled rectangle.
func (d *Drawing) box(class string, x, y, w, h int) {
	d.path(class, point{x, y}, point{x + w, y}, point{x + w, y + h}, point{x, y + h}, point{x, y})
}

func (d *Drawing) circle(class string, at point, r int) {
	d.Shapes = append(d.Shapes, shape{Kind: "circle", Class: class, X: at.x, Y: at.y, R: r})
}

func (d *Drawing) text(class, anchor string, x, y int, text string) {
	d.Shapes = append(d.Shapes, shape{Kind: "text", Class: class, Anchor: anchor, X: x, Y: y, Text: text})
}
