package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/files"
	"millside/cmd/millside/internal/prose"
	"millside/cmd/millside/internal/sheetout"
	"millside/counter/journal"
	"millside/plan/athand"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/sheet"

	"github.com/spf13/cobra"
)

const sheetLong = `Prints a warp's sheet. There are two. The whole plan tells all that is known: the cloth,
the warp, chains, passes, ties, yarn, raddle, reed, what each reed at hand gives near the
sett, cautions. Once winding has begun it tells what happened at the mill too, for the
loom: every marked end with its section of the raddle and its dent, recounts, notes, the
time taken.

--wall prints the wall sheet instead, made to fit on one page at the mill: what to thread,
the stripes as a picture, the way over the pegs, the passes in the order of winding with a
box to tick for each and the work at the pegs between them, count ties, what follows the
last pass.

The figures are the same in every format. text is 80 columns wide, markdown is for notes,
html is a page with drawings that prints on A4 and Letter and needs nothing else, json is
for a program. Where -o names a file, the format follows from its ending: .txt, .md, .html
or .json; -o - is standard output. A sheet never replaces a record.

--how adds to each figure of the whole plan the formula and the numbers that it comes
from; html has them unless --how=false is given. --passes lists every pass and every count
tie by itself.

json is one object whose structure is published: 'millside schema' lists the schemas. The
whole plan has "format": "millside-sheet-1", the wall sheet "millside-wall-2". Fields may
be added under a format's name, but none renamed or taken away.`

// sheetFlags are the flags that say how a sheet is written.
type sheetFlags struct {
	format, file             string
	wall, how, passes, force bool
	day                      asked.Day
	assumed                  []athand.Assumed // what the plan takes from what is at hand
}

func (a *app) sheetCmd() *cobra.Command {
	var flags sheetFlags
	cmd := &cobra.Command{
		Use: "sheet NAME|PATH [options]", Short: "print the wall sheet or the whole plan of a warp", Long: sheetLong,
		Example: "  millside sheet tea-towels --wall -o wall.html\n  millside sheet tea-towels -o towels.html\n  " +
			"millside sheet tea-towels --format markdown --how --passes",
		Args: asked.Args(1, 1, recordArg), ValidArgsFunction: a.completeRecords,
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
			project, err := project.Of(state.Plan, a.ownPace())
			if err != nil {
				return fmt.Errorf("working out the sheet: %w", err)
			}
			return a.printSheet(project, flags, a.goesWith(record), record.HandOver())
		},
	}
	flags.add(cmd)
	cmd.Flags().BoolVar(&flags.passes, "passes", false, "list every pass by itself")
	return cmd
}

// add adds the flags but --passes, which 'millside plan' has already.
func (s *sheetFlags) add(cmd *cobra.Command) {
	cmd.Flags().BoolVar(&s.wall, "wall", false,
		"the wall sheet: one page for the mill, with a box to tick for each pass")
	s.addPrinted(cmd)
}

// addPrinted adds the flags that any sheet has.
func (s *sheetFlags) addPrinted(cmd *cobra.Command) {
	f := cmd.Flags()
	f.SortFlags = false
	f.StringVar(&s.format, "format", "", "the `format` of the sheet: text, markdown, html or json (text if nothing "+
		"says otherwise)")
	_ = cmd.RegisterFlagCompletionFunc("format",
		cobra.FixedCompletions(sheetout.SheetFormats, cobra.ShellCompDirectiveNoFileComp))
	f.StringVarP(&s.file, "output", "o", "", "write the sheet into a `file`, whole or not at all; - is standard output")
	f.BoolVar(&s.force, "force", false, "replace the file if it is there already")
	f.BoolVar(&s.how, "how", false, "add to each figure how it was reached")
	f.Var(&s.day, "date", "the day that stands on the sheet, such as 2026-11-25, or none; today if not said")
}

// check refuses a format that isn't known, and settles it and the formulas where nothing was said.
func (s *sheetFlags) check(cmd *cobra.Command) error {
	if cmd.Flags().Changed("output") && strings.TrimSpace(s.file) == "" {
		return asked.Usage(cmd, &measure.FieldError{Field: "--output", Value: s.file, Want: "the name of a file"})
	}
	for _, name := range []string{"how", "passes"} {
		if f := cmd.Flags().Lookup(name); s.wall && f != nil && f.Changed && f.Value.String() == "true" {
			return asked.Usage(cmd, fmt.Errorf("--%s belongs to the whole plan: the wall sheet %s", name,
				wallHas[name]))
		}
	}
	if s.file == "-" {
		s.file = ""
	}
	ending := strings.ToLower(filepath.Ext(s.file))
	if ending == journal.Extension {
		return asked.Usage(cmd, &measure.FieldError{Field: "--output", Value: s.file, Want: "another ending: " +
			journal.Extension + " is that of a record, which a sheet never replaces"})
	}
	if s.format == "" && s.file != "" {
		if s.format = sheetout.FormatOf[ending]; s.format == "" {
			return asked.Usage(cmd, &measure.FieldError{Field: "--output", Value: s.file,
				Want: "an ending that says the format, one of .txt, .md, .html and .json, or a --format too"})
		}
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
		return asked.Usage(cmd, &measure.FieldError{Field: "--format", Value: s.format, Want: "one of " +
			strings.Join(sheetout.SheetFormats, ", ")})
	}
	return nil
}

// wallHas says why an option of the whole plan is none of the wall sheet.
var wallHas = map[string]string{"how": "has no formulas", "passes": "has a box for each pass as it is"}

// printSheet writes the sheet of a project, with more parts before the cautions, to where the flags say.
func (a *app) printSheet(project *project.Project, flags sheetFlags, more ...sheet.Part) error {
	write, err := a.sheetWriter(project, flags, more)
	if err != nil {
		return err
	}
	return a.writeSheet(flags, write)
}

// writeSheet writes a sheet to where the flags say.
func (a *app) writeSheet(flags sheetFlags, write func(io.Writer) error) error {
	if flags.file == "" {
		return write(a.out)
	}
	err := files.Write(flags.file, flags.force, write)
	if errors.Is(err, files.ErrThere) {
		return fmt.Errorf("%w; --force replaces it", err)
	}
	if err != nil {
		return err
	}
	fmt.Fprintf(a.out, "Sheet: %s\n", prose.Clean(flags.file))
	return nil
}

// sheetWriter makes the sheet, and gives what writes it.
func (a *app) sheetWriter(project *project.Project, flags sheetFlags, more []sheet.Part) (func(io.Writer) error,
	error) {
	day := flags.day.Or(a.today())
	if flags.wall {
		wall := sheet.NewWall(project.Plan, project.Pace, day)
		return func(w io.Writer) error { return sheetout.WriteWall(w, wall, flags.format) }, nil
	}
	hand, err := a.atHand()
	if err != nil {
		return nil, err
	}
	whole, err := sheet.New(project, sheet.Options{AllPasses: flags.passes, Reeds: hand.Reeds,
		Assumed: flags.assumed})
	if err != nil {
		return nil, fmt.Errorf("working out the sheet: %w", err)
	}
	whole.Date = sheet.DayText(day)
	for _, part := range more {
		whole.Insert(part)
	}
	return func(w io.Writer) error { return sheetout.WriteSheet(w, whole, flags.format, flags.how) }, nil
}

// today is the day that a sheet bears. SOURCE_DATE_EPOCH, in seconds since 1970, takes the clock's place
// where a sheet should come out the same every day (reproducible-builds.org, its specification).
func (a *app) today() time.Time {
	if seconds, err := strconv.ParseInt(a.env("SOURCE_DATE_EPOCH"), 10, 64); err == nil {
		return time.Unix(seconds, 0).UTC()
	}
	return a.now()
}
