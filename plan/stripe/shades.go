package stripe

import "golang.org/x/image/colornames"

// keyword is the shade of a name that is one of the 147 colour keywords of SVG 1.1 (W3C), which the web
// uses too. Capitals, spaces and hyphens don't matter: "Sea green" is seagreen.
func keyword(name string) (Shade, bool) {
	c, ok := colornames.Map[string(skeleton(name))]
	return Shade{R: c.R, G: c.G, B: c.B}, ok
}

// Look is how a colour is drawn: the shade that was given, else that of its name where the name is a
// colour keyword of SVG 1.1, such as navy or sea green. The name's shade is for drawings only, and stands
// in no notation. It is false where neither is known.
func (c Colour) Look() (Shade, bool) {
	if c.Known {
		return c.Shade, true
	}
	return keyword(c.Name)
}
