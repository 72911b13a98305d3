package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/prose"
	"millside/counter/journal"
)

const putAwayLong = `Takes a record out of the list. It is kept, and 'millside bring-back' puts it in again;
'millside list --put-away' lists what is put away. A warp that is being wound stays.`

const deleteLong = `Deletes a record, with a way back: it is kept in a folder of its own beside the others,
and 'millside bring-back' puts it in again; 'millside list --deleted' lists what is
deleted. A warp that is being wound stays.`

const bringBackLong = `Puts a record that was put away or deleted back into the list, as it was. What is put
away is looked through first, then what is deleted.`

func (a *app) putAwayCmd() *cobra.Command {
	return a.shelveCmd("put-away", "take a record out of the list, and keep it", putAwayLong, journal.PutAway)
}

func (a *app) deleteCmd() *cobra.Command {
	return a.shelveCmd("delete", "delete a record, with a way back", deleteLong, journal.Deleted)
}

func (a *app) shelveCmd(use, short, long string, shelf journal.Shelf) *cobra.Command {
	return &cobra.Command{
		Use: use + " NAME|PATH", Short: short, Long: long, Example: "  millside " + use + " tea-towels",
		Args: asked.Args(1, 1, recordArg), ValidArgsFunction: a.completeRecords,
		RunE: func(_ *cobra.Command, given []string) error {
			store, err := a.store()
			if err != nil {
				return err
			}
			path, err := store.Find(given[0])
			if err != nil {
				return err
			}
			to, err := store.Shelve(path, shelf)
			if err != nil {
				return err
			}
			fmt.Fprintf(a.out, "Now at: %s\n'millside bring-back' brings it back.\n", prose.Clean(to))
			return nil
		},
	}
}

func (a *app) bringBackCmd() *cobra.Command {
	return &cobra.Command{
		Use: "bring-back NAME|PATH", Short: "bring back a record that was put away or deleted", Long: bringBackLong,
		Example: "  millside bring-back tea-towels", Args: asked.Args(1, 1, recordArg),
		ValidArgsFunction: cobra.NoFileCompletions,
		RunE: func(_ *cobra.Command, given []string) error {
			store, err := a.store()
			if err != nil {
				return err
			}
			path, err := store.On(journal.PutAway).Find(given[0])
			if err != nil {
				path, err = store.On(journal.Deleted).Find(given[0])
			}
			if err != nil {
				return err
			}
			to, err := store.BringBack(path)
			if err != nil {
				return err
			}
			fmt.Fprintf(a.out, "Brought back: %s\n", prose.Clean(to))
			return nil
		},
	}
}
