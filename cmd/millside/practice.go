package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/records"
	"millside/counter/disk"
	"millside/counter/journal"
	"millside/plan"
	"millside/plan/measure"
)

const practiceLong = `Opens an invented warp at once, to try out the keys without yarn on the mill. It
asks nothing. A practice warp that is not finished is gone on with; --fresh begins
a new one and leaves the old one as it is.

` + plainHelp + "\n\n" + sayHelp

// practiceName is what the practice warp is called; an unfinished one is found by it.
const practiceName = "Practice warp: sea-blue tea towels"

// practiceSpec is an invented warp, small enough to be wound in a few minutes of key presses.
func practiceSpec() plan.Spec {
	s := plan.DefaultSpec()
	s.Name, s.Ends, s.Group, s.Positions = practiceName, 120, 10, 12
	s.Length, s.Mill.Rise, s.TieEvery = 4*measure.Yard, 3*measure.Inch, 40
	return s
}

func (a *app) practiceCmd() *cobra.Command {
	var fresh, plain bool
	cmd := &cobra.Command{
		Use: "practice [--fresh] [--plain] [--say COMMAND]", Short: "try it on an invented warp", Long: practiceLong,
		Example:           "  millside practice\n  millside practice --fresh\n  millside practice --plain",
		Args:              asked.Args(0, 0, ""),
		ValidArgsFunction: cobra.NoFileCompletions,
		RunE: func(cmd *cobra.Command, _ []string) error {
			folder, err := a.records()
			if err != nil {
				return err
			}
			if !plain {
				if err := a.needTerminal("'millside practice --plain' goes line by line, and 'millside plan --ends " +
					"120 --passes' prints such a warp"); err != nil {
					return err
				}
			}
			path, err := a.practiceRecord(folder, fresh)
			if err != nil {
				return err
			}
			if plain {
				return a.plainMode(path)
			}
			return a.openRecord(cmd.Context(), path, folder.Open)
		},
	}
	a.sayFlag(cmd)
	cmd.Flags().BoolVar(&plain, "plain", false, "line by line, without the full screen")
	cmd.Flags().BoolVar(&fresh, "fresh", false, "begin a new practice warp")
	return cmd
}

// practiceRecord gives the path of the practice record to wind: the unfinished one that was touched last,
// or a new one.
func (a *app) practiceRecord(folder *records.Folder, fresh bool) (string, error) {
	if !fresh {
		list, err := folder.List()
		if err != nil {
			return "", err
		}
		for _, sum := range list { // unfinished first, and those touched last before others
			if sum.Err == nil && !sum.Finished && sum.Name == practiceName {
				return sum.Path, nil
			}
		}
	}
	store, err := a.store()
	if err != nil {
		return "", err
	}
	p, err := plan.New(practiceSpec())
	if err != nil {
		return "", fmt.Errorf("planning the practice warp: %w", err)
	}
	if err := os.MkdirAll(store.Dir, 0o700); err != nil {
		return "", fmt.Errorf("making the folder for records: %w", err)
	}
	for n := 1; ; n++ {
		name := "practice"
		if n > 1 {
			name = fmt.Sprintf("practice-%d", n)
		}
		record, err := journal.Create(disk.WithoutLocks(store.FS), filepath.Join(store.Dir, name+journal.Extension), p)
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			return "", err
		}
		return record.Path(), record.Close()
	}
}
