package look

import "strings"

// glyphs are the block figures and the few letters that the direction needs, drawn for this project
// on a grid five pixels high.
var glyphs = map[rune][5]string{
	'0': {"###", "# #", "# #", "# #", "###"},
	'1': {" # ", "## ", " # ", " # ", "###"},
	'2': {"###", "  #", "###", "#  ", "###"},
	'3': {"###", "  #", " ##", "  #", "###"},
	'4': {"# #", "# #", "###", "  #", "  #"},
	'5': {"###", "#  ", "###", "  #", "###"},
	'6': {"###", "#  ", "###", "# #", "###"},
	'7': {"###", "  #", "  #", " # ", " # "},
	'8': {"###", "# #", "###", "# #", "###"},
	'9': {"###", "# #", "###", "  #", "###"},
	' ': {" ", " ", " ", " ", " "},
	'A': {"###", "# #", "###", "# #", "# #"},
	'D': {"## ", "# #", "# #", "# #", "## "},
	'E': {"###", "#  ", "## ", "#  ", "###"},
	'N': {"#  #", "## #", "# ##", "#  #", "#  #"},
	'O': {"###", "# #", "# #", "# #", "###"},
	'R': {"###", "# #", "## ", "# #", "# #"},
	'T': {"###", " # ", " # ", " # ", " # "},
	'U': {"# #", "# #", "# #", "# #", "###"},
	'W': {"#   #", "#   #", "# # #", "## ##", "#   #"},
	'>': {"   #  ", "   ## ", "######", "   ## ", "   #  "},
	'<': {"  #   ", " ##   ", "######", " ##   ", "  #   "},
}

const glyphHeight = 5

// pixels draws text on a grid, one pixel between glyphs. A rune without a glyph is a blank.
func Pixels(text string) [glyphHeight]string {
	var rows [glyphHeight]string
	for i, r := range []rune(text) {
		g, ok := glyphs[r]
		if !ok {
			g = glyphs[' ']
		}
		for y := range rows {
			if i > 0 {
				rows[y] += " "
			}
			rows[y] += g[y]
		}
	}
	return rows
}

// FiguresScale is the largest whole scale at which text fits into w cells by h rows, 0 if none does.
// A cell is about twice as high as it is wide, so one row holds two rows of pixels.
func FiguresScale(text string, w, h int) int {
	rows := Pixels(text)
	if len(rows[0]) == 0 {
		return 0
	}
	return max(min(w/len(rows[0]), 2*h/glyphHeight), 0)
}

// Figures draws text at a scale of 1 or more, in half blocks.
func Figures(text string, scale int) []string {
	if scale < 1 {
		return nil
	}
	grid := Pixels(text)
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

// BigText draws text as large as fits into w by h; where not even the smallest figures fit it falls
// back to the plain text.
func BigText(text string, w, h int) []string {
	if s := FiguresScale(text, w, h); s > 0 {
		return Figures(text, s)
	}
	return []string{text}
}
