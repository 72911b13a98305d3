package main

import (
	"errors"
	"path/filepath"
	"strings"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/prose"
	"millside/cmd/millside/internal/recordout"
	"millside/counter"
	"millside/tui"

	"github.com/spf13/cobra"
)

const windLong = `Goes on winding a warp, from the pass where you stopped. The record is named by its
file or by the name of the warp, in small or capital letters, or by a path.

One program at a time may wind a warp. --look opens it to look only: nothing is
counted, and it may be wound elsewhere meanwhile.

` + plainHelp + "\n\n" + sayHelp

func (a *app) windCmd() *cobra.Command {
	var look, plain bool
	cmd := &cobra.Command{
		Use: "wind NAME|PATH [--look|--plain] [--say COMMAND]", Short: "wind a warp, or go on with it", Long: windLong,
		Example: "  millside wind sea-blue-tea-towels\n  millside wind \"sea-blue tea towels\" --look\n  millside wind tea-towels --plain --say \"speak --slowly\"\n  millside wind ./stick/scarves.millside",
		Args:    asked.Args(1, 1, recordArg), ValidArgsFunction: a.completeRecords,
		RunE: func(cmd *cobra.Command, given []string) error {
			store, record, err := a.look(given[0])
			if err != nil {
				return err
			}
			if plain && look {
				return asked.Usage(cmd, errors.New("--plain winds and --look only looks; 'millside show' tells where a warp stands, line by line"))
			}
			if plain {
				return a.plainMode(record.Path())
			}
			if err := a.needTerminal("'millside wind " + given[0] + " --plain' winds line by line, and 'millside show " + given[0] + "' tells where the warp stands"); err != nil {
				return err
			}
			return a.open(cmd.Context(), tui.Options{Store: store, Open: record.Path(), ReadOnly: look})
		},
	}
	a.sayFlag(cmd)
	cmd.Flags().BoolVar(&plain, "plain", false, "line by line, without the full screen")
	cmd.Flags().BoolVar(&look, "look", false, "look only, count nothing")
	return cmd
}

// recordArg says what the commands that take a record want.
const recordArg = "the name or the path of one record"

// look finds a record and reads it. A damaged one is so refused with a message that stays, before the
// screen is taken over.
func (a *app) look(nameOrPath string) (counter.Store, *counter.Record, error) {
	store, err := a.store()
	if err != nil {
		return store, nil, err
	}
	path, err := store.Find(nameOrPath)
	if err != nil {
		return store, nil, err
	}
	record, err := counter.Look(store.FS, path)
	return store, record, recordout.HelpDamaged(err, path)
}

// completeRecords offers the records of the folder: by file with its ending, which fits one record only,
// with the name of the warp beside it.
func (a *app) completeRecords(_ *cobra.Command, given []string, begun string) ([]cobra.Completion, cobra.ShellCompDirective) {
	if len(given) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	store, err := a.store()
	if err != nil {
		return nil, cobra.ShellCompDirectiveError
	}
	list, err := store.List()
	if err != nil {
		return nil, cobra.ShellCompDirectiveError
	}
	var found []cobra.Completion
	for _, sum := range list {
		name := prose.Clean(filepath.Base(sum.Path))
		if strings.HasPrefix(strings.ToLower(name), strings.ToLower(begun)) {
			found = append(found, cobra.CompletionWithDesc(name, prose.Clean(sum.Name)))
		}
	}
	if len(found) == 0 {
		return nil, cobra.ShellCompDirectiveDefault // it may be a path
	}
	return found, cobra.ShellCompDirectiveNoFileComp
}
