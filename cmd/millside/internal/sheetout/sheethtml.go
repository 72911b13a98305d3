package sheetout

import (
	"embed"
	"fmt"
	"html/template"
	"io"
	"strings"
	"unicode/utf8"

	"millside/cmd/millside/internal/drawing"
	"millside/cmd/millside/internal/prose"
	"millside/plan/figure"
	"millside/plan/sheet"
)

// Each page is one file: its style is within it, it has no script and refers to nothing outside.
//
//go:embed *.tmpl *.css
var pageFiles embed.FS

var pages = template.Must(template.New("pages").Funcs(template.FuncMap{
	"how": howOf, "drawings": partDrawings, "numbers": numberColumns, "cell": cellHTML, "clean": prose.Clean,
	"short": short, "many": manyLines, "style": style, "boxes": makeBoxes, "stripes": wallStripes, "paddle": wallPaddle,
	"fill": fillOf, "ownPage": ownPage, "pickedHeading": func() string { return sheet.PickedHeading },
	"sentence": sentence,
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

// cellHTML writes a cell: a number stands on one line with its unit, a colour has a swatch before its name.
func cellHTML(c figure.Cell) template.HTML {
	var b strings.Builder
	for _, f := range c {
		switch f := f.(type) {
		case figure.Number, figure.Count: // the number and the first word behind it
			b.WriteString(template.HTMLEscapeString(strings.Replace(prose.Clean(f.String()), " ", "\u00A0", 1)))
		case figure.Duration:
			b.WriteString(strings.ReplaceAll(f.String(), " ", "\u00A0"))
		case figure.Colour:
			if f.Shade != "" {
				fmt.Fprintf(&b, `<svg class="swatch" viewBox="0 0 10 10" aria-hidden="true">`+
					`<path d="M0 0H10V10H0Z" fill="%s"/></svg>`,
					template.HTMLEscapeString(fillOf(f.Shade)))
			}
			b.WriteString(template.HTMLEscapeString(prose.Clean(f.String())))
		case figure.Text, figure.Range, figure.List:
			b.WriteString(template.HTMLEscapeString(prose.Clean(f.String())))
		}
	}
	return template.HTML(b.String())
}

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
func short(cell figure.Cell) bool {
	const most = 22
	return utf8.RuneCountInString(cell.String()) <= most
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
	case id == sheet.PartRaddle && d.JointRaddle != nil:
		return drawing.DrawJointRaddle(d.JointRaddle)
	case id == sheet.PartReed && d.JointReed != nil:
		return drawing.DrawJointReed(d.JointReed)
	case id == sheet.PartRaddle && d.Raddle != nil:
		return []drawing.Drawing{drawing.DrawRaddle(d.Raddle)}
	case id == sheet.PartReed && d.Reed != nil:
		return []drawing.Drawing{drawing.DrawReed(d.Reed)}
	}
	return nil
}
