package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/files"

	"github.com/spf13/cobra"
)

// manDate stands at the foot of every man page. It is fixed, so that the pages of one version are the
// same wherever and whenever they are made; move it when the text changes.
var manDate = time.Date(2026, time.November, 25, 0, 0, 0, 0, time.UTC)

func manCmd() *cobra.Command {
	return &cobra.Command{
		Use: "man DIR", Short: "write the manual pages into a folder",
		Long: "Writes a manual page for each command into a folder, which is made if it is missing.\nPages of " +
			"the same name that stand there already are replaced.",
		Example: "  millside man ~/.local/share/man/man1", Args: asked.Args(1, 1, "one folder"),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]cobra.Completion, cobra.ShellCompDirective) {
			return nil, cobra.ShellCompDirectiveFilterDirs
		},
		RunE: func(cmd *cobra.Command, given []string) error {
			if err := os.MkdirAll(given[0], 0o755); err != nil {
				return fmt.Errorf("making the folder: %w", err)
			}
			return writeMan(cmd.Root(), given[0])
		},
	}
}

// writeMan writes the page of a command and of those below it, each whole or not at all.
func writeMan(cmd *cobra.Command, dir string) error {
	name := strings.ReplaceAll(cmd.CommandPath(), " ", "-") + ".1"
	write := func(w io.Writer) error { _, err := w.Write(manPage(cmd)); return err }
	if err := files.Write(filepath.Join(dir, name), true, write); err != nil {
		return fmt.Errorf("writing the manual pages: %w", err)
	}
	for _, below := range cmd.Commands() {
		if below.IsAvailableCommand() {
			if err := writeMan(below, dir); err != nil {
				return err
			}
		}
	}
	return nil
}
