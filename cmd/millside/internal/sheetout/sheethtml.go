package sheetout

import (
	_ "embed"
	"html/template"
	"io"
	"regexp"
	"unicode/utf8"

	"millside/cmd/millside/internal/drawing"
	"millside/cmd/millside/internal/prose"
	"millside/plan"
)

// The page is one file: its style is within it, it has no script and refers to nothing outside.
//
//go:embed sheet.html.tmpl
var sheetPage string

var sheetTemplate = template.Must(template.New("sheet").Funcs(template.FuncMap{
	"how": howText, "drawings": partDrawings, "numbers": numberColumns, "summary": sheetSummary, "clean": unbroken,
	"short": short,
}).Parse(sheetPage))

// sheetHTML writes the sheet as one page that prints on A4 and Letter.
func sheetHTML(w io.Writer, s *plan.Sheet, how bool) error {
	return sheetTemplate.Execute(w, struct {
		Sheet *plan.Sheet
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
func numberColumns(t *plan.SheetTable) []bool {
	_, numbers := measure(t)
	return numbers
}

// short says whether a cell is better kept on one line.
func short(cell string) bool {
	const most = 22
	return utf8.RuneCountInString(cell) <= most
}

// partDrawings draws what belongs to a part of the sheet.
func partDrawings(s *plan.Sheet, id plan.PartID) []drawing.Drawing {
	d := s.Drawings
	switch {
	case id == plan.PartPlan && d.Mill != nil:
		return []drawing.Drawing{drawing.DrawMill(d.Mill)}
	case id == plan.PartPlan && len(d.Board) > 0:
		return []drawing.Drawing{drawing.DrawBoard(d.Board, s.Units)}
	case id == plan.PartRaddle && d.Raddle != nil:
		return []drawing.Drawing{drawing.DrawRaddle(d.Raddle)}
	case id == plan.PartReed && d.Reed != nil:
		return []drawing.Drawing{drawing.DrawReed(d.Reed)}
	}
	return nil
}
