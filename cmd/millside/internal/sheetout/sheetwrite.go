package sheetout

import (
	"io"

	"millside/plan"
)

// SheetFormats lists the formats of a sheet.
var SheetFormats = []string{"text", "markdown", "html", "json"}

// FormatOf holds the format that a file's ending means.
var FormatOf = map[string]string{".txt": "text", ".md": "markdown", ".markdown": "markdown", ".html": "html", ".htm": "html", ".json": "json"}

// WriteSheet writes a sheet in one of the [SheetFormats]; how adds to each figure how it was reached.
func WriteSheet(w io.Writer, s *plan.Sheet, format string, how bool) error {
	switch format {
	case "markdown":
		return sheetMarkdown(w, s, how)
	case "html":
		return sheetHTML(w, s, how)
	case "json":
		return sheetJSON(w, s)
	default:
		return sheetText(w, s, how)
	}
}
