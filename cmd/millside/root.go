package main

import (
	"errors"
	"fmt"
	"runtime/debug"
	"strings"

	"millside/cmd/millside/internal/asked"
	"millside/plan/figure"
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
	root.PersistentPreRun = func(cmd *cobra.Command, _ []string) { figure.WriteForProgram(forProgram(cmd)) }
	a.sayFlag(root)
	root.SetVersionTemplate("millside {{.Version}}\n")
	root.SetFlagErrorFunc(asked.FlagError)
	root.PersistentFlags().StringVarP(&a.recordsFlag, "records", "r", "", "`folder` that holds the records")
	_ = root.MarkPersistentFlagDirname("records") // fails only for a flag that doesn't exist
	root.PersistentFlags().BoolVar(&a.alone, "alone", false,
		"wind without a lock where the folder knows none; no other window may wind the warp then")
	root.PersistentFlags().StringVar(&a.atHandFlag, "at-hand", "", "`file` of the mills, reeds and yarns at hand")
	root.AddCommand(a.practiceCmd(), a.planCmd(), a.newCmd(), a.windCmd(), a.listCmd(), a.showCmd(), a.sheetCmd(),
		a.togetherCmd(), a.startCmd(), a.settCmd(), a.draftCmd(), a.atHandCmd(), a.salvageCmd(), a.putAwayCmd(),
		a.deleteCmd(), a.bringBackCmd(), a.renameCmd(), a.copyCmd(), a.editCmd(), a.schemaCmd(), manCmd())
	root.SetHelpCommand(helpCmd())
	root.InitDefaultCompletionCmd()
	plainWords(root)
	asked.AddShortForms(root)
	root.SetGlobalNormalizationFunc(asked.BothSpellings)
	root.SetHelpFunc(a.help)
	return root
}

// forProgram says whether a command was asked to print for a program, which reads a decimal point in any locale.
func forProgram(cmd *cobra.Command) bool {
	given := func(flag, value string) bool {
		f := cmd.Flags().Lookup(flag)
		return f != nil && strings.HasSuffix(strings.ToLower(f.Value.String()), value)
	}
	return given("json", "true") || given("format", "json") || given("output", ".json") && !given("format", "text") &&
		!given("format", "html") && !given("format", "markdown")
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

// stamped is the version that a release is built with; see .ci/release.
var stamped string

// version is the version that the program was built from.
func version() string {
	if stamped != "" {
		return stamped
	}
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" && info.Main.Version != "(devel)" {
		return info.Main.Version
	}
	return "(built from a working copy)"
}
