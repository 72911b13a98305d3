package main

import (
	"io"
	"millside/plan"
)

// sheetFormats lists the formats of a sheet.
var sheetFormats = []string{"text", "markdown", "html", "json"}

// formatOf holds the format that a file's ending means.
var formatOf = map[string]string{".txt": "text", ".md": "markdown", ".markdown": "markdown", ".html": "html", ".htm": "html", ".json": "json"}

// writeSheet writes a sheet in one of the [sheetFormats]; how adds to each figure how it was reached.
func writeSheet(w io.Writer, s *plan.Sheet, format string, how bool) error {
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
