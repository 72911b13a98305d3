package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/prose"
	"millside/cmd/millside/internal/sheetout"
	"millside/counter"
	"millside/plan"

	"github.com/spf13/cobra"
)

const sheetLong = `Prints the studio sheet of a warp: all that hangs on the wall while it is wound and
brought to the loom. The cloth, the warp, chains, passes, ties, yarn, raddle, reed and
cautions, as far as the plan knows of them. The figures are the same in every format.
Once winding has begun it tells what happened at the mill too, for the loom: every
marked end with its raddle section and dent, recounts, notes, the time taken.

--format text is 80 columns wide, markdown is for notes, html is one page with drawings
that prints on A4 and Letter and needs nothing else, json is for a program. Where -o
names a file, the format follows from its ending: .txt, .md, .html or .json.

--how adds to each figure the formula and the numbers that it comes from; html has them
unless --how=false is given. --passes lists every pass and every count tie by itself.

json is one object with "format": "millside-sheet-1" and: title, units, ends, passes,
chains, length, yarn (all ends together), parts (id, title, rows, table, notes) and
drawings (mill or board, raddle, reed). A row has name, value, how (formula,
with_numbers), usual and warning; a table has columns and lines. The formulas are
always there. Fields may be added under this format's name, but none renamed or taken
away.`

// sheetFlags are the flags that say how a sheet is written.
type sheetFlags struct {
	format, file       string
	how, passes, force bool
}

func (a *app) sheetCmd() *cobra.Command {
	var flags sheetFlags
	cmd := &cobra.Command{
		Use: "sheet NAME|PATH [options]", Short: "print the sheet for the studio wall", Long: sheetLong,
		Example: "  millside sheet sea-blue-tea-towels\n  millside sheet tea-towels -o towels.html\n  millside sheet tea-towels --format markdown --how --passes",
		Args:    asked.Args(1, 1, recordArg), ValidArgsFunction: a.completeRecords,
		RunE: func(cmd *cobra.Command, given []string) error {
			if err := flags.check(cmd); err != nil {
				return err
			}
			record, err := a.look(given[0])
			if err != nil {
				return err
			}
			// The plan of the record stays as it is wound, with the return order that was seen.
			state := record.State()
			project, err := state.Plan.Project(a.ownPace())
			if err != nil {
				return fmt.Errorf("working out the sheet: %w", err)
			}
			return a.printSheet(cmd, project, flags, counter.HandOver(state, record.Events()))
		},
	}
	flags.add(cmd)
	cmd.Flags().BoolVar(&flags.passes, "passes", false, "list every pass by itself")
	return cmd
}

// add adds the flags but --passes, which 'millside plan' has already.
func (s *sheetFlags) add(cmd *cobra.Command) {
	f := cmd.Flags()
	f.SortFlags = false
	f.StringVar(&s.format, "format", "", "the `format` of the sheet: text, markdown, html or json (text if nothing says otherwise)")
	_ = cmd.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(sheetout.SheetFormats, cobra.ShellCompDirectiveNoFileComp))
	f.StringVarP(&s.file, "output", "o", "", "write the sheet into a `file`, whole or not at all")
	f.BoolVar(&s.force, "force", false, "replace the file if it is there already")
	f.BoolVar(&s.how, "how", false, "add to each figure how it was reached")
}

// check refuses a format that isn't known, and settles it and the formulas where nothing was said.
func (s *sheetFlags) check(cmd *cobra.Command) error {
	if s.format == "" {
		s.format = sheetout.FormatOf[strings.ToLower(filepath.Ext(s.file))]
	}
	switch s.format {
	case "":
		s.format = "text"
	case "text", "markdown", "json":
	case "html":
		if !cmd.Flags().Changed("how") {
			s.how = true
		}
	default:
		return asked.Usage(cmd, &plan.FieldError{Field: "--format", Value: s.format, Want: "one of " + strings.Join(sheetout.SheetFormats, ", ")})
	}
	if cmd.Flags().Changed("output") && strings.TrimSpace(s.file) == "" {
		return asked.Usage(cmd, &plan.FieldError{Field: "--output", Value: s.file, Want: "the name of a file"})
	}
	return nil
}

// printSheet writes the sheet of a project, with more parts before the cautions, to where the flags say.
func (a *app) printSheet(cmd *cobra.Command, project *plan.Project, flags sheetFlags, more ...plan.SheetPart) error {
	hand, err := a.atHand()
	if err != nil {
		return err
	}
	sheet, err := project.SheetWith(plan.SheetOptions{AllPasses: flags.passes, Reeds: hand.Reeds})
	if err != nil {
		return fmt.Errorf("working out the sheet: %w", err)
	}
	for _, part := range more {
		sheet.Insert(part)
	}
	if flags.file == "" {
		return sheetout.WriteSheet(a.out, sheet, flags.format, flags.how)
	}
	err = writeFile(flags.file, flags.force, func(w io.Writer) error { return sheetout.WriteSheet(w, sheet, flags.format, flags.how) })
	if errors.Is(err, errFileThere) {
		return fmt.Errorf("%w; --force replaces it", err)
	}
	if err != nil {
		return err
	}
	fmt.Fprintf(a.out, "Sheet: %s\n", prose.Clean(flags.file))
	return nil
}
