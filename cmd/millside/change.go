package main

import (
	"fmt"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/prose"
	"millside/counter/disk"
	"millside/counter/journal"
	"millside/plan"
	"millside/tui"

	"github.com/spf13/cobra"
)

const renameLong = `Gives a warp another name, begun or not. Its file stays where it is, and the record
keeps the names that the warp had.`

const copyLong = `Makes a record of the same plan, of which nothing is wound. Without a new name it gets
the old one with the next free number.`

const editLong = `Opens the form with the plan of a warp of which nothing is wound; the changed plan takes
its place. The plan of a warp that is begun stays: 'millside copy' makes a new one of it.

Without a screen, 'millside plan --ends N --save --in-place-of NAME' puts a plan in the
place of another.`

func (a *app) renameCmd() *cobra.Command {
	return &cobra.Command{
		Use: "rename NAME|PATH NEW-NAME", Short: "give a warp another name", Long: renameLong,
		Example: `  millside rename tea-towels "sea-blue tea towels"`,
		Args:    asked.Args(2, 2, recordArg+" and a new name"), ValidArgsFunction: a.completeRecords,
		RunE: func(_ *cobra.Command, given []string) error {
			store, sum, err := a.chosen(given[0])
			if err != nil {
				return err
			}
			if err := store.Rename(sum.Path, given[1], a.now()); err != nil {
				return err
			}
			fmt.Fprintf(a.out, "%s is called %s now.\nRecord: %s\n", prose.Clean(sum.Name), given[1],
				prose.Clean(sum.Path))
			return nil
		},
	}
}

func (a *app) copyCmd() *cobra.Command {
	return &cobra.Command{
		Use: "copy NAME|PATH [NEW-NAME]", Short: "plan the same warp once more", Long: copyLong,
		Example: "  millside copy tea-towels\n  millside copy tea-towels \"more towels\"",
		Args:    asked.Args(1, 2, recordArg+" and maybe a new name"), ValidArgsFunction: a.completeRecords,
		RunE: func(_ *cobra.Command, given []string) error {
			store, sum, err := a.chosen(given[0])
			if err != nil {
				return err
			}
			spec := sum.Spec
			spec.GoesWith = "" // the other warp goes with the one that is copied
			if len(given) > 1 {
				spec.Name = given[1]
			} else {
				list, err := store.List()
				if err != nil {
					return err
				}
				spec.Name = journal.CopyName(spec.Name, list)
			}
			p, err := plan.New(spec)
			if err != nil {
				return err
			}
			path, err := a.savePlan(p, "")
			if err != nil {
				return err
			}
			fmt.Fprintf(a.out, "%s is planned.\nRecord: %s\n", prose.Clean(spec.Name), prose.Clean(path))
			return nil
		},
	}
}

func (a *app) editCmd() *cobra.Command {
	return &cobra.Command{
		Use: "edit NAME|PATH", Short: "change a plan of which nothing is wound", Long: editLong,
		Example: "  millside edit tea-towels", Args: asked.Args(1, 1, recordArg), ValidArgsFunction: a.completeRecords,
		RunE: func(cmd *cobra.Command, given []string) error {
			_, sum, err := a.chosen(given[0])
			switch {
			case err != nil:
				return err
			case sum.Begun:
				return fmt.Errorf("%w: %s; 'millside copy' makes a new one of it", journal.ErrBegun,
					prose.Clean(sum.Path))
			}
			if err := a.needTerminal("'millside plan --save --in-place-of NAME' changes a plan"); err != nil {
				return err
			}
			return a.open(cmd.Context(), tui.Options{Spec: &sum.Spec, Edits: sum.Path})
		},
	}
}

// chosen finds a record by what was typed, and says what is in it.
func (a *app) chosen(nameOrPath string) (journal.Store, journal.Summary, error) {
	store, err := a.store()
	if err != nil {
		return store, journal.Summary{}, err
	}
	store.FS = disk.WithoutLocks(store.FS)
	path, err := store.Find(nameOrPath)
	if err != nil {
		return store, journal.Summary{}, err
	}
	sum := store.Summarize(path)
	return store, sum, sum.Err
}
