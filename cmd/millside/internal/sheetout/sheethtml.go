package sheetout

import (
	"embed"
	"html/template"
	"io"
	"regexp"
	"strings"
	"unicode/utf8"

	"millside/cmd/millside/internal/drawing"
	"millside/cmd/millside/internal/prose"
	"millside/plan/sheet"
)

// Each page is one file: its style is within it, it has no script and refers to nothing outside.
//
//go:embed *.tmpl *.css
var pageFiles embed.FS

var pages = template.Must(template.New("pages").Funcs(template.FuncMap{
	"how": howText, "drawings": partDrawings, "numbers": numberColumns, "summary": sheetSummary, "clean": unbroken,
	"short": short, "many": manyLines, "style": style, "boxes": makeBoxes, "stripes": wallStripes, "paddle": wallPaddle, "fill": fillOf,
}).ParseFS(pageFiles, "*.tmpl"))

// style is what the pages look like, those of the wall sheet's own last. It is the program's own text, so
// it may stand in a page as it is.
func style() (template.HTML, error) {
	var all strings.Builder
	all.WriteString("<style>\n")
	for _, name := range []string{"sheet.css", "wall.css"} {
		text, err := pageFiles.ReadFile(name)
		if err != nil {
			return "", err
		}
		all.Write(text)
	}
	all.WriteString("</style>")
	return template.HTML(all.String()), nil
}

// sheetHTML writes the sheet as one page that prints on A4 and Letter.
func sheetHTML(w io.Writer, s *sheet.Sheet, how bool) error {
	return pages.ExecuteTemplate(w, "sheet.html.tmpl", struct {
		Sheet *sheet.Sheet
		How   bool
	}{s, how})
}

// quantities finds a number and its unit.
var quantities = regexp.MustCompile(`([0-9]) (in|ft|yd|mm|cm|m|oz|lb|g|kg|s|min|h)\b`)

// unbroken is clean, with numbers kept on one line with their units.
func unbroken(s string) string {
	return percents.ReplaceAllString(quantities.ReplaceAllString(prose.Clean(s), "$1\u00A0$2"), "$1\u00A0%")
}

var percents = regexp.MustCompile(`([0-9]) %`)

// numberColumns says for each column whether it holds nothing but numbers.
func numberColumns(t *sheet.Table) []bool {
	_, numbers := columnWidths(t)
	return numbers
}

// manyLines says whether a table is so long and so narrow that it is printed in two columns.
func manyLines(t *sheet.Table) bool {
	const lines, narrow = 24, 40
	widths, _ := columnWidths(t)
	all := 0
	for _, n := range widths {
		all += n + 3
	}
	return len(t.Lines) > lines && all <= narrow
}

// short says whether a cell is better kept on one line.
func short(cell string) bool {
	const most = 22
	return utf8.RuneCountInString(cell) <= most
}

// partDrawings draws what belongs to a part of the sheet.
func partDrawings(s *sheet.Sheet, id sheet.PartID) []drawing.Drawing {
	d := s.Drawings
	switch {
	case id == sheet.PartPlan && d.Mill != nil:
		return []drawing.Drawing{drawing.DrawMill(d.Mill)}
	case id == sheet.PartPlan && len(d.Board) > 0:
		return []drawing.Drawing{drawing.DrawBoard(d.Board, s.Units)}
	case id == sheet.PartStripes && d.Stripes != nil:
		return []drawing.Drawing{drawing.DrawStripes(d.Stripes.Colours, d.Stripes.Runs)}
	case id == sheet.PartRaddle && d.Raddle != nil:
		return []drawing.Drawing{drawing.DrawRaddle(d.Raddle)}
	case id == sheet.PartReed && d.Reed != nil:
		return []drawing.Drawing{drawing.DrawReed(d.Reed)}
	}
	return nil
}
