package planout

import (
	"fmt"
	"io"

	"millside/cmd/millside/internal/sheetout"
	"millside/plan"
)

// WholeText writes the figures of the cloth, the yarn and the loom, as far as the plan knows of them.
// The tables that belong to them are on the sheet.
func WholeText(w io.Writer, project *plan.Project) error {
	sheet, err := project.Sheet()
	if err != nil {
		return fmt.Errorf("working out the plan: %w", err)
	}
	more := false
	for _, part := range sheet.Parts {
		switch part.ID {
		case plan.PartCloth, plan.PartYarn, plan.PartRaddle, plan.PartReed:
			if len(part.Rows) > 0 {
				part.Table, part.Notes, more = nil, nil, true
				sheetout.PartText(w, part, false)
			}
		}
	}
	if more {
		fmt.Fprint(w, "\n--sheet prints all of it, --how tells how each figure was reached.\n")
	}
	return nil
}
