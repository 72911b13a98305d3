package sheetout

import (
	"io"

	"millside/plan/sheet"
)

// SheetFormats lists the formats of a sheet.
var SheetFormats = []string{"text", "markdown", "html", "json"}

// FormatOf holds the format that a file's ending means.
var FormatOf = map[string]string{".txt": "text", ".md": "markdown", ".markdown": "markdown", ".html": "html",
	".htm": "html", ".json": "json"}

// WriteSheet writes a sheet in one of the [SheetFormats]; how adds to each figure how it was reached.
func WriteSheet(w io.Writer, s *sheet.Sheet, format string, how bool) error {
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

// WriteWall writes a wall sheet in one of the [SheetFormats].
func WriteWall(w io.Writer, s *sheet.Wall, format string) error {
	switch format {
	case "markdown":
		return wallMarkdown(w, s)
	case "html":
		return wallHTML(w, s)
	case "json":
		return wallJSON(w, s)
	default:
		return wallText(w, s)
	}
}
