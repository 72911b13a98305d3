package sheetout

import (
	"io"

	"millside/cmd/millside/internal/prose"
	"millside/cmd/millside/internal/schema"
	"millside/plan/sheet"
)

// These name the structures below. Fields may be added to one; a field that is renamed, taken away or given
// another meaning makes a new format with the next number.
const (
	sheetFormat = "millside-sheet-1"
	wallFormat  = "millside-wall-1"
)

// sheetFile is the whole plan for a program to read: the fields of [sheet.Sheet] beside the format.
type sheetFile struct {
	Format string `json:"format"` // sheetFormat
	*sheet.Sheet
}

// wallFile is the wall sheet for a program to read.
type wallFile struct {
	Format string `json:"format"` // wallFormat
	*sheet.Wall
}

func sheetJSON(w io.Writer, s *sheet.Sheet) error {
	return prose.WriteJSON(w, sheetFile{sheetFormat, s})
}

func wallJSON(w io.Writer, s *sheet.Wall) error { return prose.WriteJSON(w, wallFile{wallFormat, s}) }

// Formats lists the structures that this package prints for programs.
func Formats() []schema.Format {
	return []schema.Format{{Name: sheetFormat, Value: sheetFile{}}, {Name: wallFormat, Value: wallFile{}}}
}
