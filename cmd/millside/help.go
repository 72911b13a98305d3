package main

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/prose"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// helpCmd is 'millside help COMMAND'. The library's own ends with code 0 for an unknown command.
func helpCmd() *cobra.Command {
	return &cobra.Command{
		Use:     "help [COMMAND]",
		Short:   "show how a command is used",
		Long:    "Shows how a command is used, as 'millside COMMAND --help' does; -h shows the shorter help.",
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

// help answers --help with all there is to know, and -h with what fits on a screen.
func (a *app) help(cmd *cobra.Command, given []string) {
	out := cmd.OutOrStdout()
	if slices.Contains(given, "-h") && !slices.Contains(given, "--help") {
		shortHelp(out, cmd)
		return
	}
	if long := strings.TrimSpace(cmd.Long); long != "" {
		fmt.Fprintf(out, "%s\n\n", filled(long))
	}
	fmt.Fprint(out, cmd.UsageString())
}

// filled breaks a text anew to the width of a terminal; lines that stand in stay as they are.
func filled(text string) string {
	var out, run []string
	flush := func() {
		if len(run) > 0 {
			out = append(out, prose.Wrap(strings.Join(run, " "), 0))
			run = nil
		}
	}
	for line := range strings.SplitSeq(text, "\n") {
		if line != "" && line[0] != ' ' {
			run = append(run, line)
			continue
		}
		flush()
		out = append(out, line)
	}
	flush()
	return strings.Join(out, "\n")
}

// mostExamples is how many examples the short help shows.
const mostExamples = 5

// shortHelp tells what a command is for, by examples, with the options that are used most.
func shortHelp(w io.Writer, cmd *cobra.Command) {
	fmt.Fprintf(w, "%s: %s\n\n", cmd.CommandPath(), cmd.Short)
	shown := 0
	for example := range strings.SplitSeq(strings.Trim(strings.ReplaceAll(cmd.Example, "\\\n", "\\\x00"), "\n"), "\n") {
		if shown++; shown <= mostExamples && !strings.Contains(example, "\x00") {
			fmt.Fprintln(w, example)
		}
	}
	if cmd.HasAvailableSubCommands() {
		fmt.Fprintln(w)
		var names []string
		for _, below := range cmd.Commands() {
			if below.IsAvailableCommand() {
				names = append(names, below.Name())
			}
		}
		fmt.Fprintf(w, "Commands: %s\n", prose.Wrap(strings.Join(names, ", "), len("Commands: ")))
	}
	common := pflag.NewFlagSet("", pflag.ContinueOnError)
	common.SortFlags = false
	local := localFlags(cmd)
	for _, f := range local {
		if len(local) <= fewFlags || f.Shorthand != "" {
			short := *f
			short.Usage = firstClause(f.Usage)
			common.AddFlag(&short)
		}
	}
	if common.HasFlags() {
		fmt.Fprintf(w, "\nOptions used most:\n%s", common.FlagUsagesWrapped(prose.TextWidth))
	}
	fmt.Fprintf(w, "\n'%s --help' tells all.\n", cmd.CommandPath())
}

// fewFlags is so few options that the short help shows them all.
const fewFlags = 5

// localFlags lists the options of a command itself but for help and version, in their order.
func localFlags(cmd *cobra.Command) []*pflag.Flag {
	var list []*pflag.Flag
	flags, inherited := cmd.Flags(), cmd.InheritedFlags()
	sorted := flags.SortFlags
	flags.SortFlags = false
	flags.VisitAll(func(f *pflag.Flag) {
		if f.Name != "help" && f.Name != "version" && inherited.Lookup(f.Name) == nil &&
			cmd.PersistentFlags().Lookup(f.Name) == nil {
			list = append(list, f)
		}
	})
	flags.SortFlags = sorted
	return list
}

// firstClause is what an option is for, without its examples.
func firstClause(usage string) string {
	for _, end := range []string{", such as", ": a ", "; ", ", with ", " (text", ": one page"} {
		usage, _, _ = strings.Cut(usage, end)
	}
	return usage
}

// usageWords are put in place of the library's own in what --help prints, and its lists of options are
// wrapped at the width of a terminal.
var usageWords = strings.NewReplacer(
	"Available Commands:", "Commands:", "Global Flags:", "Options of every command:", "Flags:", "Options:",
	".FlagUsages | trimTrailingWhitespaces", " | flagUsages | trimTrailingWhitespaces", " [command]", " COMMAND",
	"Use \"", "'", "--help\" for", "--help' tells",
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
	cmd.RunE = func(c *cobra.Command, _ []string) error {
		return asked.Usage(c, errors.New("for which shell? 'millside completion bash', zsh, fish or powershell "+
			"writes the script"))
	}
	cmd.Short = "write the script for completion in a shell"
	for _, shell := range cmd.Commands() {
		shell.Short = "the script for " + shell.Name()
		shell.Args = asked.Args(0, 0, "")
	}
}
