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
	wallFormat  = "millside-wall-2"
)

// sheetFile is the whole plan for a program to read: the fields of [sheet.Sheet] beside the format, and in its
// parts the figures beside the texts.
type sheetFile struct {
	Format string `json:"format"` // sheetFormat
	*sheet.Sheet
	Parts []partJSON `json:"parts"`
}

// wallFile is the wall sheet for a program to read.
type wallFile struct {
	Format string `json:"format"` // wallFormat
	*sheet.Wall
}

func sheetJSON(w io.Writer, s *sheet.Sheet) error {
	return prose.WriteJSON(w, sheetFile{sheetFormat, s, partsJSON(s.Parts)})
}

func wallJSON(w io.Writer, s *sheet.Wall) error { return prose.WriteJSON(w, wallFile{wallFormat, s}) }

// Formats lists the structures that this package prints for programs.
func Formats() []schema.Format {
	return []schema.Format{{Name: sheetFormat, Value: sheetFile{}, About: aboutSheet},
		{Name: wallFormat, Value: wallFile{}, About: aboutWall},
		{Name: togetherFormat, Value: togetherFile{}, About: aboutTogether}}
}

const aboutSheet = `The whole plan of a warp. yarn is the length of all ends together. A row has name, value, how
(formula, with_numbers), usual and warning; a table has columns and lines, every line with as many cells as there are
columns. figures holds the numbers, ranges and colours of a value, and in a table those of each cell of each
line. drawings holds what can be drawn. The formulas are always there.`

const aboutWall = `The wall sheet of a warp. thread is the paddle before the first pass; ways says how each kind of pass
goes over the pegs; wound lists the chains, each with its passes in blocks that are gone through so many times; a
step has the work at the peg before it and the numbers of its passes, round by round; after lists what
follows the last pass. first_end and last_end of a chain count the ends as they are wound; those in runs are numbers
in the warp.`
