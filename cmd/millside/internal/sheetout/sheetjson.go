package sheetout

import (
	"io"

	"millside/cmd/millside/internal/prose"
	"millside/plan/sheet"
)

// sheetFormat names the structure below. Fields may be added to it; a field that is renamed, taken away
// or given another meaning makes a new format with the next number.
const sheetFormat = "millside-sheet-1"

// sheetJSON writes the sheet for a program to read: the fields of [sheet.Sheet] beside the format.
func sheetJSON(w io.Writer, s *sheet.Sheet) error {
	return prose.WriteJSON(w, struct {
		Format string `json:"format"` // sheetFormat
		*sheet.Sheet
	}{sheetFormat, s})
}
