package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/prose"
	"millside/cmd/millside/internal/recordout"
	"millside/counter/disk"
	"millside/counter/journal"
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
		Example: "  millside wind sea-blue-tea-towels\n  millside wind \"sea-blue tea towels\" --look\n  millside " +
			"wind tea-towels --plain --say \"speak --slowly\"\n  millside wind ./stick/scarves.millside",
		Args: asked.Args(1, 1, recordArg), ValidArgsFunction: a.completeRecords,
		RunE: func(cmd *cobra.Command, given []string) error {
			if plain && look {
				return asked.Usage(cmd, errors.New("--plain winds and --look only looks; 'millside show' tells "+
					"where a warp stands, line by line"))
			}
			folder, err := a.records()
			if err != nil {
				return err
			}
			path, err := folder.Find(given[0])
			if err != nil {
				return err
			}
			if plain {
				return a.plainMode(path)
			}
			if err := a.needTerminal(fmt.Sprintf("'millside wind %s --plain' winds line by line, and 'millside show "+
				"%[1]s' tells where the warp stands", prose.Quoted(given[0]))); err != nil {
				return err
			}
			open := folder.Open
			if look {
				open = folder.Look
			}
			return a.openRecord(cmd.Context(), path, open)
		},
	}
	a.sayFlag(cmd)
	cmd.Flags().BoolVar(&plain, "plain", false, "line by line, without the full screen")
	cmd.Flags().BoolVar(&look, "look", false, "look only, count nothing")
	return cmd
}

// recordArg says what the commands that take a record want.
const recordArg = "the name or the path of one record"

// look finds a record and reads it.
func (a *app) look(nameOrPath string) (*journal.Record, error) {
	folder, err := a.records()
	if err != nil {
		return nil, err
	}
	path, err := folder.Find(nameOrPath)
	if err != nil {
		return nil, err
	}
	record, err := folder.Look(path)
	return record, recordout.HelpDamaged(err, path)
}

// openRecord shows a record on the full screen. One that can't be opened is refused with a message that
// stays, before the screen is taken over.
func (a *app) openRecord(ctx context.Context, path string, open func(string) (*journal.Record, error)) error {
	record, err := open(path)
	if errors.Is(err, disk.ErrNoLocks) {
		return a.openAlone(ctx, path)
	}
	if err != nil {
		return recordout.HelpDamaged(err, path)
	}
	defer func() { _ = record.Close() }() // the screen closed it, unless it never came up
	return a.open(ctx, tui.Options{Record: record})
}

// openAlone asks on the full screen whether to go on with a record whose folder knows no locks.
func (a *app) openAlone(ctx context.Context, path string) error {
	folder, err := a.records()
	if err != nil {
		return err
	}
	o := tui.Options{NoLocks: path}
	o.List, o.ListErr = folder.List()
	return a.open(ctx, o)
}

// completeRecords offers the records of the folder: by file with its ending, which fits one record only,
// with the name of the warp beside it.
func (a *app) completeRecords(_ *cobra.Command, given []string, begun string) ([]cobra.Completion,
	cobra.ShellCompDirective) {
	if len(given) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	folder, err := a.records()
	if err != nil {
		return nil, cobra.ShellCompDirectiveError
	}
	list, err := folder.List()
	if err != nil {
		return nil, cobra.ShellCompDirectiveError
	}
	var found []cobra.Completion
	for _, sum := range list {
		name := prose.Clean(filepath.Base(sum.Path))
		if strings.HasPrefix(strings.ToLower(name), strings.ToLower(begun)) {
			found = append(found, cobra.CompletionWithDesc(name, prose.Clean(sum.Name)))
		} else if strings.HasPrefix(strings.ToLower(sum.Name), strings.ToLower(begun)) {
			found = append(found, cobra.CompletionWithDesc(prose.Clean(sum.Name), name))
		}
	}
	if len(found) == 0 {
		return nil, cobra.ShellCompDirectiveDefault // it may be a path
	}
	return found, cobra.ShellCompDirectiveNoFileComp
}
