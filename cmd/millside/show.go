package main

import (
	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/prose"
	"millside/cmd/millside/internal/recordout"
	"millside/cmd/millside/internal/sheetout"

	"github.com/spf13/cobra"
)

const showLong = `Tells where a warp stands, without a screen: passes laid and ends standing, what must
be seen on the mill if the count is right, the next pass, recounts, notes, count ties,
what went wrong and with which end, and what is done of the finishing. Of a finished warp
it tells the hand-over: marked ends, recounts, notes, pace and time. It never changes the
record and may be used while it is wound.

--events adds everything that happened, in order.

--json prints for a program to read; 'millside schema millside-show-2'
tells how it is made up.`

func (a *app) showCmd() *cobra.Command {
	var asJSON, events bool
	cmd := &cobra.Command{
		Use: "show NAME|PATH [--events] [--json]", Short: "tell where a warp stands", Long: showLong,
		Example: "  millside show sea-blue-tea-towels\n  millside show tea-towels --events\n  millside show " +
			"tea-towels --json",
		Args: asked.Args(1, 1, recordArg), ValidArgsFunction: a.completeRecords,
		RunE: func(_ *cobra.Command, given []string) error {
			record, err := a.look(given[0])
			if err != nil {
				return err
			}
			if asJSON {
				return prose.WriteJSON(a.out, recordout.ShowToJSON(record, events))
			}
			recordout.ShowText(a.out, record)
			if part := a.goesWith(record); len(part.Rows) > 0 {
				part.Table = nil // the sheet has it
				sheetout.PartText(a.out, part, false)
			}
			if events {
				recordout.EventsText(a.out, record.Events())
			}
			return nil
		},
	}
	f := cmd.Flags()
	f.BoolVar(&events, "events", false, "add everything that happened")
	f.BoolVar(&asJSON, "json", false, "print for a program to read")
	return cmd
}
