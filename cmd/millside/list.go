package main

import (
	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/prose"
	"millside/cmd/millside/internal/recordout"
	"millside/counter/journal"

	"github.com/spf13/cobra"
)

const listLong = `Lists the records in the folder: those that are not finished first, and those
touched last before others. A damaged record is listed with what is wrong with it.
Of a warp that isn't finished it tells the time that is planned for the whole of it, of
a finished one the time of a pass, breaks left out, and the yarn that went
into it: the length of all ends together, nothing added for waste.

--json prints for a program to read; 'millside schema millside-list-1'
tells how it is made up.`

func (a *app) listCmd() *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use: "list [--json]", Short: "list the records", Long: listLong,
		Example: "  millside list\n  millside list --records ./stick --json", Args: asked.Args(0, 0, ""),
		ValidArgsFunction: cobra.NoFileCompletions,
		RunE: func(*cobra.Command, []string) error {
			store, err := a.store()
			if err != nil {
				return err
			}
			list, err := store.List()
			if err != nil {
				return err
			}
			if asJSON {
				return prose.WriteJSON(a.out, recordout.ListToJSON(list, journal.OwnPace(list, practiceName)))
			}
			recordout.ListText(a.out, store.Dir, list, journal.OwnPace(list, practiceName))
			return nil
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print for a program to read")
	return cmd
}
