package sheetout

import (
	"io"

	"millside/cmd/millside/internal/prose"
	"millside/plan"
)

// sheetFormat names the structure below. Fields may be added to it; a field that is renamed, taken away
// or given another meaning makes a new format with the next number.
const sheetFormat = "millside-sheet-1"

// sheetJSON writes the sheet for a program to read: the fields of [plan.Sheet] beside the format.
func sheetJSON(w io.Writer, s *plan.Sheet) error {
	return prose.WriteJSON(w, struct {
		Format string `json:"format"` // sheetFormat
		*plan.Sheet
	}{sheetFormat, s})
}
