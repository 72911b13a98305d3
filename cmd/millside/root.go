package main

import (
	"errors"
	"fmt"
	"runtime/debug"
	"strings"

	"millside/cmd/millside/internal/asked"
	"millside/tui"

	"github.com/spf13/cobra"
)

const rootLong = `Millside helps you wind a warp on a warping mill with a warping paddle. It plans
the warp, counts every pass with one key press, and leads you through the ties
and off the mill.

Without a command it opens the home screen. To try it out, 'millside practice'
opens an invented warp at once.

Every pass is written to the disk before it is shown as counted, so you may
leave at any time. The records are kept in a folder of their own: the one that
--records names, else $MILLSIDE_RECORDS, else $XDG_DATA_HOME/millside, else
~/.local/share/millside.

Your mills, paddles, reeds and yarns can be kept in a file of your own, so that
plans name them: see 'millside at-hand --help'.

` + exitHelp

const rootExample = `  millside                       the home screen
  millside practice              try it on an invented warp
  millside plan --ends 396       work out a warp
  millside wind tea-towels       go on winding
  millside show tea-towels       where the warp stands, without a screen
  millside sheet tea-towels      the sheet for the studio wall`

// root makes the command with all its commands.
func (a *app) root() *cobra.Command {
	root := &cobra.Command{
		Use:     "millside",
		Short:   "wind a warp on a warping mill, and keep the count",
		Long:    rootLong,
		Example: rootExample,
		Version: version(),
		Args:    knownCommand,
		RunE:    func(cmd *cobra.Command, _ []string) error { return a.home(cmd) },
		// The errors are told in run, in one way for all; no command's help is thrown after them.
		SilenceErrors: true, SilenceUsage: true, DisableAutoGenTag: true,
	}
	a.sayFlag(root)
	root.SetVersionTemplate("millside {{.Version}}\n")
	root.SetFlagErrorFunc(asked.FlagError)
	root.PersistentFlags().StringVar(&a.recordsFlag, "records", "", "`folder` that holds the records")
	_ = root.MarkPersistentFlagDirname("records") // fails only for a flag that doesn't exist
	root.PersistentFlags().StringVar(&a.atHandFlag, "at-hand", "", "`file` of the mills, reeds and yarns at hand")
	root.AddCommand(a.practiceCmd(), a.planCmd(), a.newCmd(), a.windCmd(), a.listCmd(), a.showCmd(), a.sheetCmd(), a.settCmd(), a.draftCmd(), a.atHandCmd(), a.salvageCmd(), manCmd())
	root.SetHelpCommand(helpCmd())
	root.InitDefaultCompletionCmd()
	plainWords(root)
	return root
}

func (a *app) home(cmd *cobra.Command) error {
	folder, err := a.records()
	if err != nil {
		return err
	}
	if err := a.needTerminal("'millside plan' works out a warp and 'millside list' lists the records"); err != nil {
		return err
	}
	var o tui.Options
	o.List, o.ListErr = folder.List()
	return a.open(cmd.Context(), o)
}

// knownCommand refuses a word that is no command, and offers those that look alike.
func knownCommand(cmd *cobra.Command, given []string) error {
	if len(given) == 0 {
		return nil
	}
	text := fmt.Sprintf("there is no command %q", given[0])
	if cmd.SuggestionsMinimumDistance <= 0 {
		cmd.SuggestionsMinimumDistance = 2
	}
	if like := cmd.SuggestionsFor(given[0]); len(like) > 0 {
		text += "; did you mean " + strings.Join(like, " or ") + "?"
	}
	return asked.Usage(cmd, errors.New(text))
}

// helpCmd is 'millside help COMMAND'. The library's own ends with code 0 for an unknown command.
func helpCmd() *cobra.Command {
	return &cobra.Command{
		Use:     "help [COMMAND]",
		Short:   "show how a command is used",
		Long:    "Shows how a command is used, as 'millside COMMAND --help' does.",
		Example: "  millside help wind",
		RunE: func(cmd *cobra.Command, given []string) error {
			target, rest, err := cmd.Root().Find(given)
			if err == nil && len(rest) > 0 {
				err = knownCommand(target, rest)
			}
			if err != nil {
				return asked.Usage(cmd, err)
			}
			target.InitDefaultHelpFlag()
			return target.Help()
		},
	}
}

// usageWords are put in place of the library's own in what --help prints, and its lists of options are
// broken to the width of a terminal.
var usageWords = strings.NewReplacer(
	"Available Commands:", "Commands:", "Global Flags:", "Options of every command:", "Flags:", "Options:",
	".FlagUsages | trimTrailingWhitespaces", " | flagUsages | trimTrailingWhitespaces", " [command]", " COMMAND", "Use \"", "'", "--help\" for", "--help' tells",
	"more information about a command.", "more about a command.")

// plainWords fits the commands that the library makes, and its help, to the others.
func plainWords(root *cobra.Command) {
	cobra.AddTemplateFunc("flagUsages", asked.FlagUsages)
	root.SetUsageTemplate(usageWords.Replace(root.UsageTemplate()))
	for _, cmd := range root.Commands() {
		cmd.DisableFlagsInUseLine = true
		if cmd.Name() == "completion" {
			completionWords(cmd)
		}
	}
	root.DisableFlagsInUseLine = true
}

// completionWords makes a wrong word after 'completion' a wrong command line like any other.
func completionWords(cmd *cobra.Command) {
	cmd.Args = knownCommand
	cmd.RunE = func(c *cobra.Command, _ []string) error { return c.Help() }
	cmd.Short = "write the script that lets a shell complete commands and names"
	for _, shell := range cmd.Commands() {
		shell.Short = "the script for " + shell.Name()
		shell.Args = asked.Args(0, 0, "")
	}
}

// version is the version that the program was built from.
func version() string {
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" && info.Main.Version != "(devel)" {
		return info.Main.Version
	}
	return "(built from a working copy)"
}
