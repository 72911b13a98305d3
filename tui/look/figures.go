package look

import (
	"strings"
)

const glyphHeight = 5

// Size is how large words are drawn: as they are, spread out to double width, or in block letters of 1, 2
// and more times their smallest size.
type Size int

// The sizes that have a name; Blocks+1 is twice as large as Blocks, and so on.
const (
	AsItIs Size = iota
	Double
	Blocks
)

// scale is the whole number by which block letters are enlarged, 0 for the sizes that are no block letters.
func (z Size) scale() int { return max(int(z-Blocks)+1, 0) }

// Rows is how many rows words take at a size.
func (s Styles) Rows(z Size) int {
	if z.scale() == 0 {
		return 1
	}
	if s.ASCII {
		return glyphHeight * z.scale()
	}
	return (glyphHeight*z.scale() + 1) / 2
}

// Width is how many cells words take at a size.
func (s Styles) Width(text string, z Size) int {
	switch {
	case z == AsItIs:
		return Wide(text)
	case z == Double:
		return max(2*Wide(text)-1, 0)
	}
	wide := -1 // the pixel between glyphs
	for _, r := range text {
		wide += len(glyphOf(r)[0]) + 1
	}
	return max(wide, 0) * z.scale()
}

// Big draws words at a size, without colours: all rows are equally wide. Block letters know capitals,
// figures and few signs: other runes are blanks.
func (s Styles) Big(text string, z Size) []string {
	switch {
	case z == AsItIs:
		return []string{s.signs(text)}
	case z == Double:
		return []string{strings.Join(strings.Split(s.signs(text), ""), " ")}
	case s.ASCII:
		return fullFigures(text, z.scale())
	}
	return halfFigures(text, z.scale())
}

// Wrapped draws words at a size in as many lines as they need to find room in w cells, with an empty row between lines
// of block letters; nil where a word is too wide, or where block letters don't know one of its runes.
func (s Styles) Wrapped(text string, z Size, w int) []string {
	if z >= Blocks && !Known(text) {
		return nil
	}
	var out []string
	line := ""
	flush := func() {
		if len(out) > 0 && z >= Blocks {
			out = append(out, "")
		}
		out = append(out, s.Big(line, z)...)
		line = ""
	}
	for _, word := range strings.Fields(text) {
		if s.Width(word, z) > w {
			return nil
		}
		if line != "" && s.Width(line+" "+word, z) > w {
			flush()
		}
		line = strings.TrimSpace(line + " " + word)
	}
	if line != "" {
		flush()
	}
	return out
}

// Known says whether all runes of a text can be drawn in block letters.
func Known(text string) bool {
	for _, r := range text {
		if _, ok := glyphs[r]; !ok {
			return false
		}
	}
	return true
}

// Fitting is the largest size at which words fit into w by h cells, at most the given one.
func (s Styles) Fitting(text string, most Size, w, h int) Size {
	for z := most; z > AsItIs; z-- {
		if s.Width(text, z) <= w && s.Rows(z) <= h {
			return z
		}
	}
	return AsItIs
}

// signs writes the drawn signs as single characters.
func (s Styles) signs(text string) string {
	return strings.ReplaceAll(text, string(SignThen), "▸")
}

// glyphOf is the glyph of a rune; a rune without one is a blank.
func glyphOf(r rune) [glyphHeight]string {
	if g, ok := glyphs[r]; ok {
		return g
	}
	return glyphs[' ']
}

// pixels draws text on a grid, one pixel between glyphs.
func pixels(text string) [glyphHeight]string {
	letters := []rune(text)
	var rows [glyphHeight]string
	for y := range rows {
		var row strings.Builder
		row.Grow(8 * len(letters))
		for i, r := range letters {
			if i > 0 {
				row.WriteByte(' ')
			}
			row.WriteString(glyphOf(r)[y])
		}
		rows[y] = row.String()
	}
	return rows
}

// halfFigures draws text in half blocks: a cell is about twice as high as it is wide, so one row holds two
// rows of pixels.
func halfFigures(text string, scale int) []string {
	grid := pixels(text)
	lit := func(x, y int) bool {
		return y < glyphHeight*scale && grid[y/scale][x/scale] == '#'
	}
	width := len(grid[0]) * scale
	var lines []string
	for y := 0; y < glyphHeight*scale; y += 2 {
		var b strings.Builder
		for x := range width {
			switch up, down := lit(x, y), lit(x, y+1); {
			case up && down:
				b.WriteRune('█')
			case up:
				b.WriteRune('▀')
			case down:
				b.WriteRune('▄')
			default:
				b.WriteByte(' ')
			}
		}
		lines = append(lines, b.String())
	}
	return lines
}

// fullFigures draws text in whole cells, for a terminal that has no half blocks.
func fullFigures(text string, scale int) []string {
	var lines []string
	for _, row := range pixels(text) {
		line := strings.Builder{}
		for _, r := range row {
			line.WriteString(strings.Repeat(string(r), scale))
		}
		for range scale {
			lines = append(lines, line.String())
		}
	}
	return lines
}
