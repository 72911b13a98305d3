package planout

import (
	"fmt"
	"io"

	"millside/cmd/millside/internal/sheetout"
	"millside/plan/athand"
	"millside/plan/project"
	"millside/plan/sheet"
)

// WholeText writes the figures of the cloth, the yarn and the loom, as far as the plan knows of them.
// The tables that belong to them are on the sheet.
func WholeText(w io.Writer, project *project.Project, assumed []athand.Assumed) error {
	made, err := sheet.New(project, sheet.Options{Assumed: assumed})
	if err != nil {
		return fmt.Errorf("working out the plan: %w", err)
	}
	more := false
	for _, part := range made.Parts {
		switch part.ID {
		case sheet.PartCloth, sheet.PartYarn, sheet.PartRaddle, sheet.PartReed, sheet.PartSett,
			sheet.PartBeam:
			if len(part.Rows) > 0 {
				part.Table, part.Notes, more = nil, nil, true
				sheetout.PartText(w, part, false)
			}
		case sheet.PartThreading, sheet.PartSelvedge, sheet.PartPainted, sheet.PartAssumed:
			// short, and the heddles are counted before the warp is wound
			more = true
			sheetout.PartText(w, part, false)
		}
	}
	if more {
		fmt.Fprint(w, "\n--sheet prints all of it, --how tells how each figure was reached.\n")
	}
	return nil
}
