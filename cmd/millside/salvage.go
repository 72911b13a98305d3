package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/prose"
	"millside/counter/journal"
	"millside/plan/measure"
)

const salvageLong = `Copies what is sound in a damaged record, up to the first bad line, into a new one.
The damaged record is never changed, and the new one must not exist yet. Count the
groups at the pegs before you go on: passes after the bad line are not in the copy.

NEW is a path if it has a slash or ends in .millside, and otherwise the name of a
file in the folder of the records.`

func (a *app) salvageCmd() *cobra.Command {
	return &cobra.Command{
		Use: "salvage DAMAGED NEW", Short: "save what is sound in a damaged record", Long: salvageLong,
		Example:           "  millside salvage tea-towels tea-towels-saved",
		Args:              asked.Args(2, 2, "a damaged record and a new one"),
		ValidArgsFunction: a.completeRecords,
		RunE: func(_ *cobra.Command, given []string) error {
			store, err := a.store()
			if err != nil {
				return err
			}
			from, err := store.Find(given[0])
			if err != nil {
				return err
			}
			to, err := store.NewPath(given[1])
			if err != nil {
				return err
			}
			got, err := journal.Salvage(store.FS, from, to, a.now())
			if err != nil {
				return err
			}
			salvageText(a.out, got, from, to)
			return nil
		},
	}
}

func salvageText(w io.Writer, got journal.SalvageResult, from, to string) {
	fmt.Fprintf(w, "New record: %s\nIt holds the plan and %s.\n", prose.Clean(to), prose.Count(got.Events, "event"))
	if got.BadLine == 0 {
		fmt.Fprintf(w, "%s is whole; the new record is a copy of it.\n", prose.Clean(from))
		return
	}
	fmt.Fprintln(w, prose.Wrap(fmt.Sprintf("Line %d of the damaged record and what follows are left out: %s.",
		got.BadLine, prose.Clean(got.Why)), 0))
	if got.Lost > 0 {
		fmt.Fprintln(w, prose.Wrap(measure.Counted(got.Lost, "line that had been counted is",
			"lines that had been counted are")+
			" missing. The new record says so until its count was set right.", 0))
	}
	fmt.Fprintln(w, "Before you go on, count the groups at the pegs.")
}
